/**
 * What the ledger shows about how a sprint went: which cards, how many points, on which day. Facts, of which the first
 * explains most; what caused them is for the team to find. Nothing here is about a person.
 */
import { blockedCardDays } from './blocks.ts';
import type { Day } from './calendar.ts';
import { estimateErrorPoints } from './estimate-error.ts';
import type { CardState } from './ledger.ts';
import type { Scale } from './scale.ts';

/** What may have caused a crossed threshold. All amounts are points. */
interface CauseDetails {
  /** Unfinished cards that were blocked on two evenings or more. `cardId`: the one that was for longest. */
  blocked: {
    readonly cardId: string;
    readonly cards: number;
    readonly cardDays: number;
    readonly points: number;
    readonly unfinishedPoints: number;
  };
  /** Committed cards were dropped, and others came in after planning. */
  'plan-changed': {
    readonly droppedCards: number;
    readonly droppedPoints: number;
    readonly pulledInPoints: number;
    readonly unfinishedPoints: number;
  };
  /** Work went into cards that were pulled in after planning. `from`: the day on which the first of them came. */
  'pulled-in-before': {
    readonly pulledInPoints: number;
    readonly unfinishedPoints: number;
    readonly from: Day;
  };
  dropped: { readonly cards: number; readonly points: number; readonly unfinishedPoints: number };
  /** One card holds at least half of what was not finished. */
  'one-card': {
    readonly cardId: string;
    readonly points: number;
    readonly unfinishedPoints: number;
    readonly leftPoints: number;
    readonly surprisePoints: number;
    readonly driftPoints: number;
  };
  /** Committed cards grew by at least half of what was not finished. */
  grew: {
    readonly growthPoints: number;
    readonly surprisePoints: number;
    readonly driftPoints: number;
    readonly unfinishedPoints: number;
  };
  /** Of the days that the members usually work, a good part was off or away. */
  'days-off': { readonly daysOff: number; readonly of: number };
  'never-begun': { readonly cards: number; readonly points: number; readonly unfinishedPoints: number };
  'open-on-last-morning': { readonly cards: number; readonly of: number };
  /** The cards that were not finished had less than half of their size left. */
  'nearly-done': { readonly cards: number; readonly leftPoints: number; readonly unfinishedPoints: number };
  /** What was worked on committed cards against what was committed. */
  'worked-less': { readonly workedPoints: number; readonly commitmentPoints: number };
  'surprise-one-card': {
    readonly cardId: string;
    readonly surprisePoints: number;
    readonly allPoints: number;
  };
  /** Nearly all of the surprise work came in the cards of this size and larger. */
  'surprise-large-cards': {
    readonly sizePoints: number;
    readonly cards: number;
    readonly surprisePoints: number;
    readonly allPoints: number;
  };
  'surprise-spread': { readonly cards: number; readonly of: number };
  'pulled-in-after': { readonly points: number; readonly allPoints: number };
  /** In the last third of the sprint, while committed cards were open. */
  'pulled-in-late': { readonly points: number; readonly allPoints: number; readonly from: Day };
  'pulled-in-while-open': { readonly points: number; readonly allPoints: number };
  /** One card holds at least half of the points by which estimates were off. */
  'estimates-one-card': {
    readonly cardId: string;
    readonly estimatePoints: number;
    readonly sizePoints: number;
    readonly offPoints: number;
    readonly allPoints: number;
  };
  'estimates-spread': {
    readonly cards: number;
    readonly of: number;
    readonly larger: number;
    readonly allPoints: number;
  };
}

/** How much the members were there, in member-days. */
export interface WorkTime {
  /** Without days off and days away. */
  readonly memberDays: number;
  /** On the weekdays on which each works, had nobody been off or away. */
  readonly usualMemberDays: number;
}

/** What a kept sprint can show. */
interface GoodSignDetails {
  'all-finished': {
    readonly cards: number;
    readonly day: Day;
    /** Working days of the sprint after that one. */
    readonly daysLeft: number;
  };
  'nothing-grew': { readonly cards: number };
  'little-surprise': { readonly surprisePoints: number; readonly commitmentPoints: number };
}

type Coded<Details> = { [Code in keyof Details]: { readonly code: Code } & Details[Code] }[keyof Details];

export type Cause = Coded<CauseDetails>;
export type GoodSign = Coded<GoodSignDetails>;

/** A part of the whole explains it when it is at least this much. Ours, no published source. */
const EXPLAINS_AT_LEAST = 0.5;
/** "Nearly all". Ours, no published source. */
const NEARLY_ALL = 0.8;
/** One evening is soon over. Ours, no published source. */
const BLOCKED_EVENINGS = 2;
/** With more days off, less gets finished for no other reason. Ours, no published source. */
const MANY_DAYS_OFF = 0.2;
/** Growth that is worth praise is no more than this part of the commitment. Ours, no published source. */
const LITTLE_GROWTH = 0.1;
/** Where a sprint's end begins. Ours, no published source. */
const LAST_THIRD = 2 / 3;
/** With fewer cards, many of them open says nothing. */
const MANY_CARDS = 3;

/**
 * Why part of the commitment was not finished, the most telling first: blocks, a plan that changed, what the team did in its
 * place, what was taken out, one card, growth, days off, cards that nobody began, too many open at once; and else that little
 * was left, or that less was worked than committed to. Empty when everything committed was finished.
 *
 * @param days the sprint's working days, ascending
 * @param time undefined: not known
 */
export function whyUnfinished(states: readonly CardState[], days: readonly Day[], time?: WorkTime): Cause[] {
  const committed = states.filter(({ card }) => card.origin === 'planned');
  const unfinished = committed.filter(({ finished }) => !finished);
  const unfinishedPoints = estimatesOf(unfinished);
  if (unfinishedPoints === 0) return [];
  const explains = (points: number): boolean => points >= EXPLAINS_AT_LEAST * unfinishedPoints;
  const found: Cause[] = [];

  const evenings = (state: CardState): number => blockedCardDays([state], days);
  const blocked = unfinished.filter((state) => evenings(state) >= BLOCKED_EVENINGS);
  const longest = mostBy(blocked, evenings);
  if (longest && explains(estimatesOf(blocked))) {
    found.push({
      code: 'blocked',
      cardId: longest.card.id,
      cards: blocked.length,
      cardDays: blockedCardDays(blocked, days),
      points: estimatesOf(blocked),
      unfinishedPoints,
    });
  }

  const pulledIn = states.filter(({ card }) => card.origin === 'pulled-in');
  const dropped = unfinished.filter(({ droppedOn }) => droppedOn !== undefined);
  const droppedPoints = estimatesOf(dropped);
  if (droppedPoints > 0 && explains(droppedPoints)) {
    const inPlace = { pulledInPoints: estimatesOf(pulledIn), unfinishedPoints };
    found.push(
      inPlace.pulledInPoints >= EXPLAINS_AT_LEAST * droppedPoints
        ? { code: 'plan-changed', droppedCards: dropped.length, droppedPoints, ...inPlace }
        : { code: 'dropped', cards: dropped.length, points: droppedPoints, unfinishedPoints },
    );
  }

  const worked = pulledIn.filter(({ workedPoints }) => workedPoints > 0);
  const pulledInPoints = workedOn(worked);
  const [from] = worked.map(({ card }) => card.enteredOn).sort();
  if (from !== undefined && explains(pulledInPoints)) {
    found.push({ code: 'pulled-in-before', pulledInPoints, unfinishedPoints, from });
  }

  const open = unfinished.filter(({ droppedOn }) => droppedOn === undefined);
  const largest = mostBy(open, ({ card }) => card.estimatePoints);
  // Of two alike, none is the one.
  const isOne = open.every(
    (one) => one === largest || one.card.estimatePoints < estimatesOf([largest ?? one]),
  );
  const isSaidToBeBlocked = found[0]?.code === 'blocked' && blocked.length === 1 && longest === largest;
  if (largest && isOne && !isSaidToBeBlocked && explains(largest.card.estimatePoints)) {
    const { card, leftPoints, surprisePoints, driftPoints } = largest;
    const points = card.estimatePoints;
    const left = { leftPoints, surprisePoints, driftPoints };
    found.push({ code: 'one-card', cardId: card.id, points, unfinishedPoints, ...left });
  }

  const stayed = committed.filter(({ droppedOn }) => droppedOn === undefined);
  const surprisePoints = surpriseOf(stayed);
  const driftPoints = stayed.reduce((sum, state) => sum + state.driftPoints, 0);
  const growthPoints = surprisePoints + driftPoints;
  if (growthPoints > 0 && open.length > 0 && explains(growthPoints)) {
    found.push({ code: 'grew', growthPoints, surprisePoints, driftPoints, unfinishedPoints });
  }

  const daysOff = time ? time.usualMemberDays - time.memberDays : 0;
  if (time && open.length > 0 && daysOff > 0 && daysOff >= MANY_DAYS_OFF * time.usualMemberDays) {
    found.push({ code: 'days-off', daysOff, of: time.usualMemberDays });
  }

  // Who knows that a card is larger or smaller has looked into it.
  const notBegun = open.filter(
    ({ workedPoints, entries }) =>
      workedPoints === 0 && entries.every(({ growthPoints }) => growthPoints === 0),
  );
  if (notBegun.length > 1 && explains(estimatesOf(notBegun))) {
    found.push({
      code: 'never-begun',
      cards: notBegun.length,
      points: estimatesOf(notBegun),
      unfinishedPoints,
    });
  }

  const openAtTheEnd = openOnLastMorning(committed, days);
  if (openAtTheEnd >= MANY_CARDS && openAtTheEnd >= EXPLAINS_AT_LEAST * committed.length) {
    found.push({ code: 'open-on-last-morning', cards: openAtTheEnd, of: committed.length });
  }

  if (found.length > 0) return found;
  const leftPoints = open.reduce((sum, state) => sum + state.leftPoints, 0);
  if (leftPoints < EXPLAINS_AT_LEAST * unfinishedPoints) {
    return [{ code: 'nearly-done', cards: open.length, leftPoints, unfinishedPoints }];
  }
  return [
    {
      code: 'worked-less',
      workedPoints: workedOn(committed),
      commitmentPoints: estimatesOf(committed),
    },
  ];
}

function openOnLastMorning(committed: readonly CardState[], days: readonly Day[]): number {
  const lastDay = days.at(-1);
  if (lastDay === undefined) return 0;
  const isOver = (day: Day | undefined): boolean => day !== undefined && day < lastDay;
  return committed.filter(({ finishedOn, droppedOn }) => !isOver(finishedOn) && !isOver(droppedOn)).length;
}

/** Where the surprise work came from. Empty when there was none. */
export function whereSurpriseCame(states: readonly CardState[]): Cause[] {
  const held = states.filter(({ surprisePoints }) => surprisePoints > 0);
  const allPoints = surpriseOf(held);
  if (allPoints === 0) return [];
  const most = mostBy(held, ({ surprisePoints }) => surprisePoints) as CardState;
  if (most.surprisePoints >= EXPLAINS_AT_LEAST * allPoints) {
    const { card, surprisePoints } = most;
    return [{ code: 'surprise-one-card', cardId: card.id, surprisePoints, allPoints }];
  }
  return [
    largeCardsWith(states, allPoints) ?? { code: 'surprise-spread', cards: held.length, of: states.length },
  ];
}

/** The largest size from which on cards hold nearly all surprise work, when they are at most half of the cards. */
function largeCardsWith(states: readonly CardState[], allPoints: number): Cause | undefined {
  const sizes = [...new Set(states.map(({ card }) => card.estimatePoints))].sort((a, b) => b - a);
  for (const sizePoints of sizes) {
    const large = states.filter(({ card }) => card.estimatePoints >= sizePoints);
    const surprisePoints = surpriseOf(large);
    if (surprisePoints < NEARLY_ALL * allPoints) continue;
    if (large.length > states.length / 2) return undefined;
    return { code: 'surprise-large-cards', sizePoints, cards: large.length, surprisePoints, allPoints };
  }
  return undefined;
}

/**
 * Whether work was pulled in when the committed cards were finished, or while they were open. Empty without such work.
 *
 * @param days the sprint's working days, ascending
 */
export function whenPulledIn(states: readonly CardState[], days: readonly Day[]): Cause[] {
  const pulledIn = states.filter(({ card }) => card.origin === 'pulled-in');
  const allPoints = estimatesOf(pulledIn);
  if (allPoints === 0) return [];
  const committed = states.filter(({ card }) => card.origin === 'planned');
  const isOver = ({ finishedOn, droppedOn }: CardState, day: Day): boolean =>
    (finishedOn ?? droppedOn ?? '9') <= day;
  const after = pulledIn.filter(({ card }) => committed.every((state) => isOver(state, card.enteredOn)));
  const points = estimatesOf(after);
  if (points >= EXPLAINS_AT_LEAST * allPoints) return [{ code: 'pulled-in-after', points, allPoints }];
  const lateFrom = days[Math.ceil(days.length * LAST_THIRD)] ?? '9';
  const late = pulledIn.filter((state) => !after.includes(state) && state.card.enteredOn >= lateFrom);
  const [from] = late.map(({ card }) => card.enteredOn).sort();
  if (from !== undefined && estimatesOf(late) >= EXPLAINS_AT_LEAST * allPoints) {
    return [{ code: 'pulled-in-late', points: estimatesOf(late), allPoints, from }];
  }
  return [{ code: 'pulled-in-while-open', points: allPoints - points, allPoints }];
}

/** Which cards the estimates were furthest off, after the snap to the scale. Empty when none was off. */
export function whereEstimatesWereOff(states: readonly CardState[], scale: Scale): Cause[] {
  const stayed = states.filter(({ droppedOn }) => droppedOn === undefined);
  const error = (state: CardState): number => estimateErrorPoints(state, scale);
  const off = stayed.filter((state) => error(state) > 0);
  const most = mostBy(off, error);
  if (!most) return [];
  const allPoints = off.reduce((sum, state) => sum + error(state), 0);
  const offPoints = error(most);
  if (offPoints >= EXPLAINS_AT_LEAST * allPoints) {
    const { card, trueSizePoints: sizePoints } = most;
    const { id: cardId, estimatePoints } = card;
    return [{ code: 'estimates-one-card', cardId, estimatePoints, sizePoints, offPoints, allPoints }];
  }
  const larger = off.filter(({ card, trueSizePoints }) => trueSizePoints > card.estimatePoints).length;
  return [{ code: 'estimates-spread', cards: off.length, of: stayed.length, larger, allPoints }];
}

/**
 * What went well, the most telling first. Empty when nothing was committed to.
 *
 * @param days the sprint's working days, ascending
 */
export function whatWentWell(states: readonly CardState[], days: readonly Day[]): GoodSign[] {
  const committed = states.filter(({ card }) => card.origin === 'planned');
  if (committed.length === 0) return [];
  const found: GoodSign[] = [];
  const finishedOn = committed.map((state) => state.finishedOn);
  if (finishedOn.every((day) => day !== undefined)) {
    const day = finishedOn.reduce((latest, one) => (one > latest ? one : latest));
    found.push({
      code: 'all-finished',
      cards: committed.length,
      day,
      daysLeft: days.filter((other) => other > day).length,
    });
  }
  const growth = states.map(({ surprisePoints, driftPoints }) => Math.max(0, surprisePoints + driftPoints));
  const growthPoints = growth.reduce((sum, one) => sum + one, 0);
  const commitmentPoints = estimatesOf(committed);
  if (growthPoints === 0) found.push({ code: 'nothing-grew', cards: states.length });
  else if (growthPoints <= LITTLE_GROWTH * commitmentPoints) {
    found.push({ code: 'little-surprise', surprisePoints: surpriseOf(states), commitmentPoints });
  }
  return found;
}

function estimatesOf(states: readonly CardState[]): number {
  return states.reduce((sum, { card }) => sum + card.estimatePoints, 0);
}

function workedOn(states: readonly CardState[]): number {
  return states.reduce((sum, { workedPoints }) => sum + workedPoints, 0);
}

function surpriseOf(states: readonly CardState[]): number {
  return states.reduce((sum, { surprisePoints }) => sum + surprisePoints, 0);
}

function mostBy(states: readonly CardState[], value: (state: CardState) => number): CardState | undefined {
  return states.reduce<CardState | undefined>(
    (most, state) => (most === undefined || value(state) > value(most) ? state : most),
    undefined,
  );
}
