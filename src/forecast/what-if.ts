/** How the chances of a running sprint would change with its cards, its time or its work. It changes nothing. */
import type { LoadedSprint } from './load-signal.ts';
import type { Amount } from './planned-and-projected.ts';
import { chanceToGetThrough, pointsUntil, type WorkChance, workChance } from './whole-cards.ts';

export interface Supposed {
  /** Which of the open cards is taken out, by its place among them; undefined: none. */
  readonly without: number | undefined;
  /** Points of one more card, pulled in; 0: none. */
  readonly morePoints: number;
  /** How much of the team's time that is still to come it has, 0 to 1. */
  readonly timeShare: number;
}

export interface SprintChances {
  /** The chance (0 to 1) that as many committed points get finished as the kept share asks for. */
  readonly kept: number;
  /** The chance (0 to 1) that everything in the sprint gets finished. */
  readonly all: number;
}

/**
 * The chances of a running sprint if something were otherwise.
 *
 * Formula: the chance to get through t points stays what it is now, P(W ≥ t): `workChance` of the projection up to all that is
 * open, `stillFinishable` beyond. With a share f of the time to come it is P(W ≥ t ÷ f). The cards change: one fewer, one more
 * (pulled in, not begun); the missing points don't, since a card that is taken out stays in the commitment. Then, as for the
 * load signal, P(W ≥ T) with T from `pointsUntil`, and P(W ≥ all cards).
 * Units: points in, chances from 0 to 1 out. With nothing supposed they are those of the load signal.
 * How it misleads: an hour of anybody is taken to be worth as much as of anybody else; and a team that has a card fewer, or
 * a day less, may choose other cards.
 * Source: ours.
 *
 * @param beyond the chance to get through more than is open, counted like the open cards
 * @example whatIf({ sizes: [], finishedPoints: 0, open: [], missingPoints: 0 }, { cdf: () => 0 }, () => 0, { without: undefined, morePoints: 0, timeShare: 1 }).all === 1
 */
export function whatIf(
  { sizes, finishedPoints, open, missingPoints }: LoadedSprint,
  velocity: Amount,
  beyond: WorkChance,
  { without, morePoints, timeShare }: Supposed,
): SprintChances {
  const openPoints = sumOf(open);
  const upToOpen = workChance({ cdf: (points) => velocity.cdf(finishedPoints + points) }, sizes, openPoints);
  const work: WorkChance = (points) => {
    if (points <= 0) return 1;
    if (timeShare <= 0) return 0;
    const inFullTime = points / timeShare;
    return inFullTime <= openPoints
      ? upToOpen(inFullTime)
      : Math.min(upToOpen(openPoints), beyond(inFullTime));
  };
  const cards = [
    ...open.filter((_, i) => i !== without),
    ...(morePoints > 0 ? [{ estimatePoints: morePoints, isCommitted: false, isBegun: false }] : []),
  ];
  return { kept: chanceToGetThrough(pointsUntil(cards, missingPoints), work), all: work(sumOf(cards)) };
}

function sumOf(cards: LoadedSprint['open']): number {
  return cards.reduce((total, { estimatePoints }) => total + estimatePoints, 0);
}
