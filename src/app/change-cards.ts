/** Changes to the sprint's cards after planning: pull in, drop, take, reopen, list. */
import { randomUUID } from 'node:crypto';
import { MAX_POINTS, parsePoints } from '../sprint/points.ts';
import type { SprintSummary } from '../sprint/summary.ts';
import { runningSummary } from '../sprint/summary.ts';
import type { SprintCardState } from './card-line.ts';
import { cardLine, cardName, findCard, isOpenCard, statesOf } from './card-line.ts';
import { MAX_CARDS, MAX_TITLE_LENGTH, parseCardLine } from './card-paste.ts';
import type { CardLine, PaceReading, SprintHeading } from './message-content.ts';
import type { Membership, Place, SprintReference } from './place.ts';
import { openSprint, requireBegun, todayOf } from './place.ts';
import type { AppDependencies, SprintRecords, Transaction } from './ports.ts';
import { refreshPrompt } from './refresh-prompt.ts';
import type { InputProblem } from './refusal.ts';
import { Refusal, refuseIfAny } from './refusal.ts';
import { paceReading, workingDaysOf } from './sprint-pace.ts';
import type { Actor, Sprint, SprintCard, Team } from './team.ts';

const MAX_REASON_LENGTH = 300;

export interface PullForm {
  readonly heading: SprintHeading;
  readonly pace: PaceReading;
  readonly workingDaysLeft: number;
  readonly memberIds: readonly string[];
}

export interface CardChange {
  readonly heading: SprintHeading;
  readonly card: CardLine;
}

export interface PulledCard extends CardChange {
  readonly summary: SprintSummary;
}

type OpenSprint = Membership & { readonly sprint: Sprint };

/** What to weigh before a card is pulled in. */
export async function pullForm(deps: AppDependencies, actor: Actor, place: Place): Promise<PullForm> {
  return deps.store.transaction(async (tx) => {
    const { team, sprint, members } = await openSprint(tx, actor, { place }, deps.clock.now());
    const today = todayOf(team, deps.clock.now());
    requireBegun(sprint, today);
    const states = statesOf(await tx.recordsOf(sprint.id));
    return {
      heading: { team, sprint },
      pace: paceReading(team, sprint, states, today),
      workingDaysLeft: workingDaysOf(team, sprint, today).left,
      memberIds: members.filter(({ isActive }) => isActive).map(({ userId }) => userId),
    };
  });
}

/**
 * Brings a card into the running sprint.
 *
 * @throws Refusal `bad-input` (title, estimate, ownerIds), `too-many-cards`, `sprint-not-begun`.
 */
export async function pullCard(
  deps: AppDependencies,
  actor: Actor,
  input: SprintReference & {
    readonly title: string;
    readonly estimate: string;
    readonly ownerIds: readonly string[];
  },
): Promise<PulledCard> {
  return deps.store.transaction(async (tx) => {
    const found = await openSprint(tx, actor, input, deps.clock.now());
    const title = input.title.replace(/\s+/g, ' ').trim();
    const estimatePoints = parsePoints(input.estimate);
    const problems: InputProblem[] = [];
    if (title === '' || title.length > MAX_TITLE_LENGTH) {
      problems.push({
        field: 'title',
        message: `Give the card a title of 1 to ${MAX_TITLE_LENGTH} characters.`,
      });
    }
    if (estimatePoints === undefined) {
      problems.push({
        field: 'estimate',
        message: `Write points in halves from 0 to ${MAX_POINTS}, for example 3 or 0.5.`,
      });
    }
    const strangers = input.ownerIds.filter(
      (id) => !found.members.some(({ userId, isActive }) => userId === id && isActive),
    );
    if (strangers.length > 0) {
      problems.push({ field: 'ownerIds', message: 'Choose members of the team only.' });
    }
    refuseIfAny(problems);
    // One reading of a line for planning and pulling: a leading key is told apart from the title.
    const parsed = parseCardLine(`"${title.replaceAll('"', '""')}",${estimatePoints}`, []);
    if (typeof parsed === 'string')
      throw new Refusal('bad-input', { problems: [{ field: 'title', message: parsed }] });
    return pullIn(deps, tx, actor, found, { ...parsed, ownerIds: [...new Set(input.ownerIds)] });
  });
}

/** The same from a line as it is pasted into a plan: `title, estimate, @owner`. */
export async function pullLine(
  deps: AppDependencies,
  actor: Actor,
  { place, line }: { readonly place: Place; readonly line: string },
): Promise<PulledCard> {
  return deps.store.transaction(async (tx) => {
    const found = await openSprint(tx, actor, { place }, deps.clock.now());
    const people = found.members.filter(({ isActive }) => isActive);
    const parsed = /[\r\n]/.test(line.trim()) ? 'bring in one card at a time.' : parseCardLine(line, people);
    if (typeof parsed === 'string') {
      throw new Refusal('bad-argument', {
        command: 'pull',
        problem: parsed,
        example: 'Berth calendar shows tides, 5, @name',
      });
    }
    return pullIn(deps, tx, actor, found, parsed);
  });
}

async function pullIn(
  deps: AppDependencies,
  tx: Transaction,
  actor: Actor,
  { team, sprint }: OpenSprint,
  wanted: { key: string | undefined; title: string; estimatePoints: number; ownerIds: readonly string[] },
): Promise<PulledCard> {
  const today = todayOf(team, deps.clock.now());
  requireBegun(sprint, today);
  const { cards, facts } = await tx.recordsOf(sprint.id);
  if (cards.length >= MAX_CARDS) throw new Refusal('too-many-cards', { limit: MAX_CARDS });
  const keys = new Set(cards.map(({ key }) => key.toLowerCase()));
  if (wanted.key !== undefined && keys.has(wanted.key.toLowerCase())) {
    throw new Refusal('key-taken', { key: wanted.key, sprintName: sprint.name });
  }
  const number = Math.max(0, ...cards.map((card) => card.number)) + 1;
  const card: SprintCard = {
    id: randomUUID(),
    sprintId: sprint.id,
    number,
    key: wanted.key ?? (keys.has(String(number)) ? `#${number}` : String(number)),
    title: wanted.title,
    estimatePoints: wanted.estimatePoints,
    origin: 'pulled-in',
    // A reopened sprint takes late entries for its last day.
    enteredOn: today > sprint.endsOn ? sprint.endsOn : today,
    ownerIds: wanted.ownerIds,
    addedBy: actor.userId,
  };
  await tx.insertCards([card]);
  await refreshPrompts(tx, card, today);
  return pulledCard(tx, team, sprint, { cards: [...cards, card], facts }, card);
}

/** Brings the day's lists of a card's owners up to date, for people answer by the places in them. */
async function refreshPrompts(tx: Transaction, card: SprintCard, day: string): Promise<void> {
  for (const userId of card.ownerIds) await refreshPrompt(tx, card.sprintId, userId, day);
}

async function pulledCard(
  tx: Transaction,
  team: Team,
  sprint: Sprint,
  records: SprintRecords,
  card: SprintCard,
): Promise<PulledCard> {
  const states = statesOf(records);
  const baselineVelocityPoints = await tx.baselineVelocityPoints(team, sprint.id);
  return {
    heading: { team, sprint },
    card: cardLine(states.find((state) => state.card.id === card.id) as SprintCardState),
    summary: runningSummary(states, {
      scale: team.scale,
      thresholds: team.thresholds,
      baselineVelocityPoints,
    }),
  };
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
      problem: `say in up to ${MAX_REASON_LENGTH} characters why the card is dropped.`,
      example: '3 the harbour office withdrew the wish',
    });
  }
  return changeCard(deps, actor, input, async (tx, { state, day }) => {
    await tx.insertFacts([{ ...factBase(deps, actor, state, day), kind: 'drop', note: reason }]);
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
    await tx.addOwner(state.card.id, actor.userId);
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
    await tx.insertFacts([{ ...factBase(deps, actor, state, day), kind: 'reopen', note: '' }]);
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
    const state = findCard(statesOf(await tx.recordsOf(sprint.id)), input.reference);
    if (state.droppedOn !== undefined) throw new Refusal('card-dropped', { card: cardName(state.card) });
    await change(tx, { state, day, isFacilitator: member.isFacilitator });
    const states = statesOf(await tx.recordsOf(sprint.id));
    const after = states.find(({ card }) => card.id === state.card.id) as SprintCardState;
    await refreshPrompts(tx, after.card, today);
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
    const states = statesOf(await tx.recordsOf(sprint.id));
    const baselineVelocityPoints = await tx.baselineVelocityPoints(team, sprint.id);
    return {
      heading: { team, sprint },
      cards: states.map(cardLine),
      openCount: states.filter(isOpenCard).length,
      summary: runningSummary(states, {
        scale: team.scale,
        thresholds: team.thresholds,
        baselineVelocityPoints,
      }),
    };
  });
}
