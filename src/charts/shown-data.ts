/** What of a burndown or an answer is shown, in the picture and in its alternative text. Pure. */
import type { ForecastAdvice, RangeAdvice } from '../app/advice/advice.ts';
import type { PastSprint } from '../app/history/past-sprint.ts';
import type { AdvisedRange } from '../forecast/advised-range.ts';
import { RELEASE_CHANCES, type ReleaseDate, type ReleaseForecast } from '../forecast/release-forecast.ts';
import type { SurpriseOdds } from '../forecast/surprise-odds.ts';
import type { Burndown } from '../sprint/burndown.ts';
import { dayPlus } from '../sprint/calendar.ts';
import type { Thresholds } from '../sprint/thresholds.ts';
import { isDefined, type UndefinedValue } from '../sprint/undefined-value.ts';
import { type Verdict, verdictOf } from '../sprint/verdict.ts';

/** Where the line of points left ends: position 0 is the start of the sprint, n the evening of its n-th day. */
export function leftEnd({ commitmentPoints, days }: Burndown) {
  const index = days.findLastIndex((day) => day.leftPoints !== undefined);
  const leftPoints = days[index]?.leftPoints ?? commitmentPoints;
  return {
    position: index + 1,
    day: days[index]?.day,
    leftPoints,
    idealPoints: days[index]?.idealPoints ?? commitmentPoints,
    /** Whether the line came up to its end from below. */
    rising: leftPoints > (days[index - 1]?.leftPoints ?? commitmentPoints),
  };
}

/** As many as the range is made from. */
export const mostPastSprints = 12;

export function shownSprints({ past }: Pick<RangeAdvice, 'past'>): readonly PastSprint[] {
  return past.slice(-mostPastSprints);
}

/** An end of the coming range, or what takes the place of one. */
export interface RangeEnd {
  readonly kind:
    | 'at least'
    | 'at most'
    | 'exactly'
    | 'about'
    | 'low end'
    | 'high end'
    | 'no low end'
    | 'no high end';
  readonly points: number;
}

/** From low to high. */
export function rangeEnds(advised: AdvisedRange): RangeEnd[] {
  const ends = (...all: [RangeEnd['kind'], number][]) => all.map(([kind, points]) => ({ kind, points }));
  switch (advised.kind) {
    case 'range': {
      const { lowPoints: low, highPoints: high } = advised;
      return low === high ? ends(['exactly', low]) : ends(['at least', low], ['at most', high]);
    }
    case 'at most':
      return ends(['no low end', advised.highPoints], ['at most', advised.highPoints]);
    case 'at least':
      return ends(['at least', advised.lowPoints], ['no high end', advised.lowPoints]);
    case 'crossed':
      return ends(['at most', advised.highPoints], ['low end', advised.lowPoints]);
    case 'middle way':
      return ends(
        ['high end', advised.highPoints],
        ['about', advised.points],
        ['low end', advised.lowPoints],
      );
    case 'none':
      return [];
  }
}

export type PastVerdict = Verdict | 'not known';

/**
 * By today's thresholds. An import may leave out how much of the commitment was finished (then it is `not known`), or
 * the surprise work (then the kept share alone decides).
 */
export function pastVerdict(
  { commitmentPoints, ratios }: Pick<PastSprint, 'commitmentPoints' | 'ratios'>,
  thresholds: Thresholds,
): PastVerdict {
  if (commitmentPoints === 0) return 'no plan';
  const { keptShare, surpriseRatio } = ratios;
  if (!isDefined(keptShare)) return 'not known';
  return verdictOf({ keptShare, surpriseRatio: isDefined(surpriseRatio) ? surpriseRatio : 0 }, thresholds)
    .verdict;
}

/** More rows would be too small to read. */
export const mostSizes = 30;

/** The sizes of most cards, by size. */
export function shownOdds(sizes: readonly SurpriseOdds[]): readonly SurpriseOdds[] {
  if (sizes.length <= mostSizes) return sizes;
  const mostCards = sizes.toSorted((a, b) => b.cards - a.cards || a.estimatePoints - b.estimatePoints);
  return mostCards.slice(0, mostSizes).toSorted((a, b) => a.estimatePoints - b.estimatePoints);
}

export const dateNames = ['optimistic', 'likely', 'pessimistic'] as const;

export interface NamedDate {
  readonly name: (typeof dateNames)[number];
  readonly chance: number;
  readonly date: ReleaseDate | UndefinedValue;
}

export function namedDates({ dates }: ReleaseForecast): NamedDate[] {
  return dateNames.flatMap((name, place): NamedDate[] => {
    const [date, chance] = [dates[place], RELEASE_CHANCES[place]];
    return date === undefined || chance === undefined ? [] : [{ name, chance, date }];
  });
}

/** The last day before the next sprint starts. @param sprint from 1 */
export function sprintEnd(
  { startsOn, sprintLengthDays }: Pick<ForecastAdvice, 'startsOn' | 'sprintLengthDays'>,
  sprint: number,
): string {
  return dayPlus(startsOn, sprint * sprintLengthDays - 1);
}

/** The sprint that holds the day, from 1, and its end. */
export function holdingSprint(date: ReleaseDate, advice: ForecastAdvice) {
  const sprint = Math.max(1, Math.ceil(date.sprints));
  return { sprint, endsOn: sprintEnd(advice, sprint) };
}
