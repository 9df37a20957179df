/** How much of an answer its chart has room for, in the picture and in its alternative text. Pure. */
import type { SurpriseOdds } from '../../forecast/surprise-odds.ts';
import type { Growth } from '../../forecast/value-growth.ts';
import type { Day } from '../../sprint/calendar.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import type { HistoryAdvice, RangeAdvice, RatioHistory } from './advice.ts';

/** As many as the range is made from. */
const MOST_PAST_SPRINTS = 12;

export function shownSprints({ past }: Pick<RangeAdvice, 'past'>): readonly PastSprint[] {
  return past.slice(-MOST_PAST_SPRINTS);
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
}

export interface HistoryWindow {
  readonly past: readonly PastSprint[];
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
    past: shown,
    earlier,
    ratios: ratios.map((ratio) => shownRatio(ratio, earlier)),
    growth: growth?.slice(earlier),
    baselineEnds: {
      velocity: past.find(({ sprintId }) => sprintId === velocityBaseline?.sprintId)?.endsOn,
      growth: past[growth?.findIndex(({ velocityGrowth }) => isDefined(velocityGrowth)) ?? -1]?.endsOn,
    },
  };
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
