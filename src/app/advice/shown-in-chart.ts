/** How much of an answer its chart has room for, in the picture and in its alternative text. Pure. */
import {
  type AdvisedCommitment,
  type CommitmentChances,
  commitmentChances,
} from '../../forecast/commitment-range.ts';
import type { Interval } from '../../forecast/points-distribution.ts';
import type { SurpriseOdds } from '../../forecast/surprise-odds.ts';
import type { Growth } from '../../forecast/value-growth.ts';
import {
  growthPerMemberDay,
  memberDayGrowth,
  type PastBaseline,
  workingTime,
} from '../../sprint/baseline.ts';
import type { Day } from '../../sprint/calendar.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import type { HistoryAdvice, RangeAdvice, RatioHistory } from './advice.ts';

/** The chances of possible commitments, and the advised one of them. */
export interface CommitmentCurve {
  readonly advised: AdvisedCommitment;
  /** Up to the advised one, where both ends hold; undefined where they don't, or one isn't known. */
  readonly span: Interval | undefined;
  /** In ascending order, from hardly anything to what is hardly ever finished. */
  readonly steps: readonly { readonly points: number; readonly chances: CommitmentChances }[];
}

const MOST_STEPS = 60;
/** So many times what is advised, the lines lie near the ground. */
const FAR_BEYOND = 1.6;

/** Undefined where too little is known for advice. */
export function commitmentCurve({
  range,
  thresholds,
}: Pick<RangeAdvice, 'range' | 'thresholds'>): CommitmentCurve | undefined {
  if ('undefined' in range) return undefined;
  const { advised, lowPoints, model } = range;
  if ('undefined' in advised || 'undefined' in model.finishes) return undefined;
  const low = isDefined(lowPoints) ? lowPoints : 0;
  const last = Math.max(FAR_BEYOND * advised.points, 1.1 * low);
  const step = Math.max(1, Math.ceil(last / MOST_STEPS));
  const steps = Array.from({ length: Math.ceil(last / step) }, (_, i) => (i + 1) * step);
  const isSpan = !advised.unserved && isDefined(lowPoints);
  return {
    advised,
    span: isSpan ? { low: lowPoints, high: advised.points } : undefined,
    steps: steps.map((points) => ({ points, chances: commitmentChances(model, points, thresholds) })),
  };
}

/** More rows would be too small to read. */
export const MOST_SIZES_SHOWN = 30;

/** The sizes of most cards, by size. */
export function sizesOfMostCards(sizes: readonly SurpriseOdds[], most: number): readonly SurpriseOdds[] {
  const mostCards = sizes.toSorted((a, b) => b.cards - a.cards || a.estimatePoints - b.estimatePoints);
  return mostCards.slice(0, most).toSorted((a, b) => a.estimatePoints - b.estimatePoints);
}

/** A year of two-week sprints. */
const MOST_HISTORY_SPRINTS = 26;

/** Places count from the first sprint shown. Limits and signals come from all sprints, shown or not. */
export interface ShownRatio extends Omit<RatioHistory, 'crossedAt'> {
  readonly signalsAt: ReadonlySet<number>;
  readonly crossedAt: ReadonlySet<number>;
  /**
   * Of velocity growth, where the length or the size of the team differed in one of the sprints: the growth for each
   * member-day, one a sprint.
   */
  readonly perMemberDay?: readonly (number | undefined)[] | undefined;
}

export type ShownSprint = Pick<PastSprint, 'endsOn' | 'importedAt'>;

export interface HistoryWindow {
  readonly past: readonly ShownSprint[];
  /** Sprints before those shown. */
  readonly earlier: number;
  readonly ratios: readonly ShownRatio[];
  readonly growth: readonly Growth[] | undefined;
  /** Last days of the sprints that velocity growth, and growth beside the recorded value, are measured by. */
  readonly baselineEnds: { readonly velocity: Day | undefined; readonly growth: Day | undefined };
}

export function historyWindow({ past, ratios, growth, velocityBaseline }: HistoryAdvice): HistoryWindow {
  const earlier = Math.max(0, past.length - MOST_HISTORY_SPRINTS);
  const shown = past.slice(earlier);
  return {
    past: shown.map(({ endsOn, importedAt }) => ({ endsOn, importedAt })),
    earlier,
    ratios: ratios.map((ratio) => ({
      ...shownRatio(ratio, earlier),
      ...(ratio.ratio === 'velocityGrowth' && { perMemberDay: perMemberDay(shown, velocityBaseline) }),
    })),
    growth: growth?.slice(earlier),
    baselineEnds: {
      velocity: past.find(({ sprintId }) => sprintId === velocityBaseline?.sprintId)?.endsOn,
      growth: past[growth?.findIndex(({ velocityGrowth }) => isDefined(velocityGrowth)) ?? -1]?.endsOn,
    },
  };
}

function perMemberDay(
  shown: readonly PastSprint[],
  found: PastBaseline | undefined,
): readonly (number | undefined)[] | undefined {
  if (!found) return undefined;
  const by = (growth: typeof memberDayGrowth) =>
    shown.map((sprint) =>
      sprint.velocityPoints === undefined
        ? undefined
        : growth(sprint.velocityPoints, workingTime(sprint), found.baseline),
    );
  return by(growthPerMemberDay).some((growth) => growth !== undefined) ? by(memberDayGrowth) : undefined;
}

function shownRatio(history: RatioHistory, earlier: number): ShownRatio {
  const { chart, crossedAt, values } = history;
  const placed = (indices: readonly number[]) =>
    new Set(indices.map((index) => index - earlier).filter((index) => index >= 0));
  return {
    ...history,
    values: values.slice(earlier),
    signalsAt: placed('undefined' in chart ? [] : chart.signals.map(({ index }) => index)),
    crossedAt: placed(crossedAt),
  };
}
