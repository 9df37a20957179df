/** Changes to a card of the sprint: drop it and take that back, reopen it, blocked, moving again; and the list of them all. */
import { randomUUID } from 'node:crypto';
import { currentBlock } from '../../sprint/blocks.ts';
import { runningSummary, type SprintSummary } from '../../sprint/summary.ts';
import { baselineFor } from '../history/baseline-of.ts';
import { type ListedPlanChange, listedPlanChanges } from '../planning/listed-plan-changes.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { directPost } from '../posting/post-kinds.ts';
import { Refusal, type RefusalDetails } from '../refusal.ts';
import {
  type Admitted,
  dayWithin,
  type Membership,
  openSprint,
  type Place,
  requireFacilitator,
  type SprintReference,
  todayOf,
} from '../team/place.ts';
import type { Actor, RecordedFact, Sprint, SprintHeading } from '../team/team.ts';
import { type CardLine, cardLine, cardName, findCard, type SprintCardState, statesOf } from './card-line.ts';
import { tellOfBlocks } from './tell-of-blocks.ts';

/** Why a card was dropped, or on what it is blocked. */
export const MAX_REASON_LENGTH = 300;

export interface CardChange {
  readonly heading: SprintHeading;
  readonly card: CardLine;
}

type CardReference = SprintReference & { readonly reference: string };

/** With the sprint's day that it is about. */
type DatedChange = CardChange & { readonly day: string };

/** Takes a card out of the sprint. @throws Refusal `no-such-card`, `card-dropped`, `bad-argument`. */
export async function dropCard(
  deps: AppDependencies,
  actor: Actor,
  input: CardReference & { readonly reason: string },
): Promise<CardChange> {
  const reason = reasonIn(input.reason, 'drop', 'drop-reason');
  const drop = async (tx: Transaction, { state, membership, record }: ChangeContext): Promise<void> => {
    const { team, sprint } = membership;
    await record('drop', reason);
    const { productOwnerId } = team;
    if (productOwnerId === undefined || productOwnerId === actor.userId) return;
    const about = { sprintId: sprint.id, cardIds: [state.card.id], byUserId: actor.userId, reason };
    await tx.write.posts.add([directPost(team, productOwnerId, { kind: 'cards-dropped', ...about })]);
  };
  return changeCard(deps, actor, input, drop, { admitted: 'product-owner-too' });
}

/**
 * Takes a drop back: the card is open again with what was left on it.
 *
 * @throws Refusal `no-such-card`, `card-not-dropped`, `not-a-facilitator`
 */
export async function undropCard(
  deps: AppDependencies,
  actor: Actor,
  input: CardReference,
): Promise<CardChange> {
  return changeCard(
    deps,
    actor,
    input,
    async (tx, { state, facts, membership, record }) => {
      const drop = facts.findLast(({ kind, cardId }) => kind === 'drop' && cardId === state.card.id);
      const isOwn = drop?.memberId === actor.userId;
      if (!isOwn && membership.team.productOwnerId !== actor.userId) requireFacilitator(membership, 'undrop');
      await record('undrop');
      await tx.write.posts.refreshSent(membership.sprint.id, 'cards-dropped');
    },
    { expected: 'dropped', admitted: 'product-owner-too' },
  );
}

/**
 * Says that a finished card is not done after all; only its owners and facilitators may.
 *
 * @throws Refusal `card-not-finished`, `not-card-owner`.
 */
export async function reopenCard(
  deps: AppDependencies,
  actor: Actor,
  input: CardReference,
): Promise<CardChange> {
  return changeCard(deps, actor, input, async (_tx, { state, membership, record }) => {
    if (!state.finished) throw new Refusal('card-not-finished', { card: cardName(state.card) });
    requireOwner(actor, state, membership, 'reopen');
    await record('reopen');
  });
}

/**
 * Says that a card is stuck, and on what; only its owners and facilitators may.
 *
 * @throws Refusal `card-finished`, `not-card-owner`, `bad-argument`.
 */
export async function blockCard(
  deps: AppDependencies,
  actor: Actor,
  input: CardReference & { readonly on: string },
): Promise<CardChange> {
  const on = reasonIn(input.on, 'blocked', 'blocked-on');
  return changeCard(deps, actor, input, async (tx, { state, membership, record }) => {
    if (state.finished) throw new Refusal('card-finished', { card: cardName(state.card) });
    requireOwner(actor, state, membership, 'block');
    await record('blocked', on);
    await tellOfBlocks(tx, membership, actor, [state]);
  });
}

/**
 * Says that a blocked card is moving again; only its owners and facilitators may.
 *
 * @throws Refusal `card-not-blocked`, `not-card-owner`.
 */
export async function unblockCard(
  deps: AppDependencies,
  actor: Actor,
  input: CardReference,
): Promise<DatedChange> {
  return changeCard(deps, actor, input, async (_tx, { state, membership, record }) => {
    if (!currentBlock(state)) throw new Refusal('card-not-blocked', { card: cardName(state.card) });
    requireOwner(actor, state, membership, 'block');
    await record('moving');
  });
}

function requireOwner(
  { userId }: Actor,
  { card }: SprintCardState,
  { member }: Membership,
  act: RefusalDetails['not-card-owner']['act'],
): void {
  if (!member.isFacilitator && !card.ownerIds.includes(userId))
    throw new Refusal('not-card-owner', { card: cardName(card), act });
}

function reasonIn(typed: string, command: 'drop' | 'blocked', code: 'drop-reason' | 'blocked-on'): string {
  const reason = typed.trim();
  if (reason !== '' && reason.length <= MAX_REASON_LENGTH) return reason;
  const problem = { code, most: MAX_REASON_LENGTH };
  throw new Refusal('bad-argument', { command, problem, example: undefined });
}

interface ChangeContext {
  readonly state: SprintCardState;
  readonly facts: readonly RecordedFact[];
  readonly membership: Membership & { readonly sprint: Sprint };
  /** Records it of the card. */
  readonly record: (kind: Exclude<RecordedFact['kind'], 'answer'>, note?: string) => Promise<unknown>;
}

async function changeCard(
  deps: AppDependencies,
  actor: Actor,
  input: CardReference,
  change: (tx: Transaction, context: ChangeContext) => Promise<void>,
  {
    expected = 'in-sprint',
    admitted = 'members',
  }: { readonly expected?: 'in-sprint' | 'dropped'; readonly admitted?: Admitted } = {},
): Promise<DatedChange> {
  return deps.store.transaction(async (tx) => {
    const membership = await openSprint(tx, actor, input, deps.clock.now(), admitted);
    const { team, sprint } = membership;
    const today = todayOf(team, deps.clock.now());
    const day = dayWithin(sprint, today);
    const records = await tx.read.recordsOf(sprint.id);
    const state = findCard(statesOf(records), input.reference);
    const isDropped = state.droppedOn !== undefined;
    if (isDropped !== (expected === 'dropped')) {
      throw new Refusal(isDropped ? 'card-dropped' : 'card-not-dropped', { card: cardName(state.card) });
    }
    const record: ChangeContext['record'] = (kind, note = '') =>
      tx.write.cards.insertFacts([
        {
          kind,
          id: randomUUID(),
          cardId: state.card.id,
          memberId: actor.userId,
          day,
          note,
          recordedAt: deps.clock.now(),
          supersedesId: undefined,
        },
      ]);
    await change(tx, { state, facts: records.facts, membership, record });
    const states = statesOf(await tx.read.recordsOf(sprint.id));
    const after = states.find(({ card }) => card.id === state.card.id) as SprintCardState;
    await tx.write.posts.refreshAboutDay(sprint.id, after.card.ownerIds, today);
    return { heading: { team, sprint }, card: cardLine(after), day };
  });
}

/** All cards of the running sprint. */
export async function listCards(
  deps: AppDependencies,
  actor: Actor,
  place: Place,
): Promise<{
  heading: SprintHeading;
  cards: CardLine[];
  summary: SprintSummary;
  planChanges: ListedPlanChange[];
  /** The product owner who isn't on the team may see them and drop one, and that is all. */
  isOnTeam: boolean;
}> {
  return deps.store.transaction(async (tx) => {
    const now = deps.clock.now();
    const { team, sprint, member } = await openSprint(tx, actor, { place }, now, 'product-owner-too');
    const records = await tx.read.recordsOf(sprint.id);
    const states = statesOf(records);
    const baseline = await baselineFor(tx.read, team, sprint.id);
    return {
      heading: { team, sprint },
      cards: states.map(cardLine),
      summary: runningSummary(states, { ...team, baseline }),
      planChanges: await listedPlanChanges(tx.read, sprint.id, records),
      isOnTeam: member.isActive,
    };
  });
}
