/** Changes to a card that is in the sprint: drop, take, reopen; and the list of them all. */
import { randomUUID } from 'node:crypto';
import { runningSummary, type SprintSummary } from '../../sprint/summary.ts';
import { refreshOwnersPrompts } from '../answering/refresh-prompt.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { Refusal } from '../refusal.ts';
import { openSprint, type Place, type SprintReference, todayOf } from '../team/place.ts';
import type { Actor, SprintHeading } from '../team/team.ts';
import {
  type CardLine,
  cardLine,
  cardName,
  findCard,
  isOpenCard,
  type SprintCardState,
  statesOf,
} from './card-line.ts';

const MAX_REASON_LENGTH = 300;

export interface CardChange {
  readonly heading: SprintHeading;
  readonly card: CardLine;
}

/** Takes a card out of the sprint. @throws Refusal `no-such-card`, `card-dropped`, `bad-argument`. */
export async function dropCard(
  deps: AppDependencies,
  actor: Actor,
  input: SprintReference & { readonly reference: string; readonly reason: string },
): Promise<CardChange> {
  const reason = input.reason.trim();
  if (reason === '' || reason.length > MAX_REASON_LENGTH) {
    throw new Refusal('bad-argument', {
      command: 'drop',
      problem: { code: 'drop-reason', most: MAX_REASON_LENGTH },
      example: undefined,
    });
  }
  return changeCard(deps, actor, input, async (tx, { state, day }) => {
    await tx.write.cards.insertFacts([{ ...factBase(deps, actor, state, day), kind: 'drop', note: reason }]);
  });
}

/** Takes a share in a card: the actor becomes one of its owners. @throws Refusal `already-owner`. */
export async function takeCard(
  deps: AppDependencies,
  actor: Actor,
  input: SprintReference & { readonly reference: string },
): Promise<CardChange> {
  return changeCard(deps, actor, input, async (tx, { state }) => {
    if (state.card.ownerIds.includes(actor.userId))
      throw new Refusal('already-owner', { card: cardName(state.card) });
    await tx.write.cards.addOwner(state.card.id, actor.userId);
  });
}

/**
 * Says that a finished card is not done after all; only its owners and facilitators may.
 *
 * @throws Refusal `card-not-finished`, `not-card-owner`.
 */
export async function reopenCard(
  deps: AppDependencies,
  actor: Actor,
  input: SprintReference & { readonly reference: string },
): Promise<CardChange> {
  return changeCard(deps, actor, input, async (tx, { state, day, isFacilitator }) => {
    const card = cardName(state.card);
    if (!state.finished) throw new Refusal('card-not-finished', { card });
    if (!isFacilitator && !state.card.ownerIds.includes(actor.userId))
      throw new Refusal('not-card-owner', { card });
    await tx.write.cards.insertFacts([{ ...factBase(deps, actor, state, day), kind: 'reopen', note: '' }]);
  });
}

function factBase(deps: AppDependencies, actor: Actor, state: SprintCardState, day: string) {
  return {
    id: randomUUID(),
    cardId: state.card.id,
    memberId: actor.userId,
    day,
    recordedAt: deps.clock.now(),
    supersedesId: undefined,
  };
}

async function changeCard(
  deps: AppDependencies,
  actor: Actor,
  input: SprintReference & { readonly reference: string },
  change: (
    tx: Transaction,
    context: { state: SprintCardState; day: string; isFacilitator: boolean },
  ) => Promise<void>,
): Promise<CardChange> {
  return deps.store.transaction(async (tx) => {
    const { team, sprint, member } = await openSprint(tx, actor, input, deps.clock.now());
    const today = todayOf(team, deps.clock.now());
    const day = today > sprint.endsOn ? sprint.endsOn : today < sprint.startsOn ? sprint.startsOn : today;
    const state = findCard(statesOf(await tx.read.recordsOf(sprint.id)), input.reference);
    if (state.droppedOn !== undefined) throw new Refusal('card-dropped', { card: cardName(state.card) });
    await change(tx, { state, day, isFacilitator: member.isFacilitator });
    const states = statesOf(await tx.read.recordsOf(sprint.id));
    const after = states.find(({ card }) => card.id === state.card.id) as SprintCardState;
    await refreshOwnersPrompts(tx, after.card, today);
    return { heading: { team, sprint }, card: cardLine(after) };
  });
}

/** All cards of the running sprint. */
export async function listCards(
  deps: AppDependencies,
  actor: Actor,
  place: Place,
): Promise<{ heading: SprintHeading; cards: CardLine[]; openCount: number; summary: SprintSummary }> {
  return deps.store.transaction(async (tx) => {
    const { team, sprint } = await openSprint(tx, actor, { place }, deps.clock.now());
    const states = statesOf(await tx.read.recordsOf(sprint.id));
    const baseline = await tx.read.baselineOf(team, sprint.id);
    return {
      heading: { team, sprint },
      cards: states.map(cardLine),
      openCount: states.filter(isOpenCard).length,
      summary: runningSummary(states, {
        scale: team.scale,
        thresholds: team.thresholds,
        baseline,
      }),
    };
  });
}
