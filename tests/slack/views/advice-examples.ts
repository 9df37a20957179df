/** Answers to the planning questions, made by the real statistics from invented sprints of an invented harbour. */

import type {
  AdviceQuestion,
  ForecastAdvice,
  HistoryAdvice,
  OddsAdvice,
  RangeAdvice,
} from '../../../src/app/advice/advice.ts';
import { forecastOf } from '../../../src/app/advice/forecast-advice.ts';
import { historyOf } from '../../../src/app/advice/history-advice.ts';
import { oddsOf } from '../../../src/app/advice/odds-advice.ts';
import { rangeOf } from '../../../src/app/advice/range-advice.ts';
import type { PastCard, PastSprint } from '../../../src/app/history/past-sprint.ts';
import { type Day, dayPlus } from '../../../src/sprint/calendar.ts';
import type { Ratio } from '../../../src/sprint/undefined-value.ts';
import { undefinedBecause } from '../../../src/sprint/undefined-value.ts';
import { pastRatios } from '../../support/past-ratios.ts';
import { team } from './view-examples.ts';

const FIRST_DAY = '2026-01-05';
const NOT_KNOWN = undefinedBecause('cards-not-imported');

/** What went into a sprint and came out of it, in points. */
interface PastAmounts {
  readonly commitment: number;
  readonly finished: number;
  readonly pulledIn?: number;
  readonly surprise?: number;
  readonly imported?: boolean;
  readonly cards?: readonly PastCard[];
  readonly value?: number;
}

/** The n-th sprint from 0, two weeks each; everything that an import may leave out is left out of an imported one. */
export function pastSprint(place: number, amounts: PastAmounts): PastSprint {
  const { commitment, finished, pulledIn = 0, surprise = 0, imported = false } = amounts;
  const startsOn = dayPlus(FIRST_DAY, 14 * place);
  const share = (part: number): Ratio =>
    commitment === 0 ? undefinedBecause('no-commitment') : part / commitment;
  const load = commitment + pulledIn + surprise;
  return {
    teamId: team.id,
    sprintId: `sprint-${place + 1}`,
    name: `Harbour ${place + 1}`,
    startsOn,
    endsOn: dayPlus(startsOn, 11),
    importedAt: imported ? new Date('2026-10-01T09:00:00Z') : undefined,
    workingDays: 10,
    memberDays: imported ? undefined : 50,
    commitmentPoints: commitment,
    pulledInPoints: pulledIn,
    surprisePoints: surprise,
    velocityPoints: finished + pulledIn,
    workedPoints: imported ? undefined : finished + pulledIn + surprise,
    committedFinishedPoints: imported ? undefined : finished,
    ratios: pastRatios({
      keptShare: imported ? NOT_KNOWN : share(finished),
      pullInRatio: share(pulledIn),
      surpriseRatio: share(surprise),
      planShare: commitment / load,
      estimateAccuracy: imported ? NOT_KNOWN : 1 - surprise / load,
      onScaleShare: imported ? NOT_KNOWN : 0.75,
      finishShare: imported ? NOT_KNOWN : (finished + pulledIn) / (finished + pulledIn + surprise),
    }),
    trace: [],
    cards: amounts.cards ?? [],
    recordedValue: amounts.value,
  };
}

/** `count` cards of a size, of which some held so much surprise work each. */
export function cardsOf(estimatePoints: number, count: number, surprises: readonly number[]): PastCard[] {
  return Array.from({ length: count }, (_, i) => ({ estimatePoints, surprisePoints: surprises[i] ?? 0 }));
}

/** A steady team that commits to a little too little. */
export const STEADY: readonly PastSprint[] = [
  [20, 20, 5],
  [22, 21, 4],
  [20, 20, 7],
  [24, 22, 3],
  [21, 21, 6],
  [23, 22, 5],
  [22, 22, 6],
  [24, 23, 4],
  [21, 21, 8],
].map(([commitment = 0, finished = 0, pulledIn = 0], place) =>
  pastSprint(place, {
    commitment,
    finished,
    pulledIn,
    surprise: place % 4 === 1 ? 6 : 2,
    imported: place < 4,
    cards:
      place < 4
        ? []
        : [
            ...cardsOf(1, 4, []),
            ...cardsOf(3, 5, place % 2 === 0 ? [1] : []),
            ...cardsOf(8, place === 8 ? 4 : 3, [3, 2]),
            ...(place === 5 ? cardsOf(13, 1, [5]) : []),
          ],
    ...(place >= 5 ? { value: 1000 + 300 * (place - 5) } : {}),
  }),
);

const base = {
  team,
  on: '2026-11-16',
} as const;

function known(past: readonly PastSprint[]) {
  return {
    sprints: past.length,
    importedSprints: past.filter(({ importedAt }) => importedAt !== undefined).length,
  };
}

const coming = { startsOn: '2026-11-30', endsOn: '2026-12-11', workingDays: 10, members: 5, memberDays: 50 };

export function rangeAdvice(past: readonly PastSprint[], awayDays?: number): RangeAdvice {
  const question: AdviceQuestion = { about: 'range', ...(awayDays === undefined ? {} : { awayDays }) };
  return { ...base, ...known(past), question, ...rangeOf(team, past, { ...coming, awayDays }) };
}

export function oddsAdvice(past: readonly PastSprint[]): OddsAdvice {
  return { ...base, ...known(past), question: { about: 'odds' }, ...oddsOf(past) };
}

export function forecastAdvice(
  past: readonly PastSprint[],
  backlogPoints: number | 'none' = 120,
  growth: number | 'measured' = 0,
  byDay?: Day,
): ForecastAdvice {
  const growthPoints = growth === 'measured' ? undefined : growth;
  const work = backlogPoints === 'none' ? {} : { backlogPoints };
  const question = { about: 'forecast', ...work, growthPoints, byDay } as const;
  const ground = { team, members: [], startsOn: '2026-11-30', sprintLengthDays: 14, lent: [] };
  return { ...base, ...known(past), question, ...forecastOf(question, past, ground) };
}

export function historyAdvice(past: readonly PastSprint[]): HistoryAdvice {
  return {
    ...base,
    ...known(past),
    question: { about: 'history' },
    ...historyOf(team, past),
    goals: { sprints: 6, met: 4, partly: 1, kept: 5 },
  };
}
