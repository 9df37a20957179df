/** Invented bodies of work that a team keeps, with what was told of them; the dates of today are the forecast's own. */
import type { KeptAdvice } from '../../src/app/advice/advice.ts';
import type { BodyOfWork, ToldDates } from '../../src/app/bodies/body-of-work.ts';
import { releaseForecast } from '../../src/forecast/release-forecast.ts';
import { type Day, dayPlus } from '../../src/sprint/calendar.ts';
import { exampleTeam } from './past-examples.ts';

const TODAY = '2026-11-13';
const velocities = [24, 23, 26, 27, 21, 28, 24];

export function aBody(change: Partial<BodyOfWork> = {}): BodyOfWork {
  return {
    id: 'body-1',
    teamId: exampleTeam.id,
    name: 'Harbour lights',
    place: 1,
    leftPoints: 80,
    growthPoints: undefined,
    growthMostPoints: undefined,
    sharePercent: undefined,
    keptAt: new Date('2026-08-21T09:00:00Z'),
    saidAt: new Date('2026-11-13T16:00:00Z'),
    doneAt: undefined,
    ...change,
  };
}

/** Told every two weeks before today, the latest last. @param likely the likely dates; null: none */
export function toldBefore(likely: readonly (Day | null)[], change: Partial<ToldDates> = {}): ToldDates[] {
  return likely.map((on, i) => ({
    bodyId: 'body-1',
    toldOn: dayPlus(TODAY, -14 * (likely.length - i)),
    leftPoints: 100,
    sprintsSinceSaid: 0,
    optimisticOn: on === null ? undefined : dayPlus(on, -20),
    likelyOn: on ?? undefined,
    pessimisticOn: on === null ? undefined : dayPlus(on, 35),
    ...change,
  }));
}

export function keptAdvice(
  bodies: readonly (Partial<BodyOfWork> & {
    readonly told?: readonly ToldDates[];
    readonly sprintsSinceSaid?: number;
  })[],
  past: readonly number[] = velocities,
): KeptAdvice {
  return {
    team: exampleTeam,
    on: TODAY,
    sprints: past.length,
    importedSprints: 0,
    question: { about: 'kept' },
    startsOn: '2026-11-16',
    sprintLengthDays: 14,
    askerMayKeep: true,
    bodies: bodies.map(({ told = [], sprintsSinceSaid = 0, ...change }, i) => {
      const body = aBody({ id: `body-${i + 1}`, place: i + 1, ...change });
      return {
        body,
        told,
        sprintsSinceSaid,
        growth: { points: body.growthPoints ?? 0, span: undefined, measuredSprints: undefined },
        forecast: releaseForecast({
          backlogPoints: body.leftPoints,
          scopeGrowthPoints: body.growthPoints ?? 0,
          sprints: past.map((velocityPoints) => ({ velocityPoints, time: 1 })),
          startsOn: '2026-11-16',
          sprintLengthDays: 14,
          comingTimes: [1],
        }),
      };
    }),
    done: [],
  };
}

const moving = toldBefore([
  '2026-12-20',
  '2026-12-24',
  '2027-01-10',
  '2027-01-08',
  '2027-01-04',
  '2027-01-04',
]);
export const ordinaryKept = keptAdvice([
  { told: moving },
  { name: 'Beacons', leftPoints: 150, told: toldBefore(['2027-02-20', '2027-03-04', '2027-03-02']) },
]);
export const keptTwice = keptAdvice([{ told: toldBefore(['2027-01-10']) }]);
export const staleKept = keptAdvice([
  {
    told: [...moving.slice(0, 4), ...toldBefore(['2027-01-20'], { sprintsSinceSaid: 1 })],
    sprintsSinceSaid: 2,
  },
]);
export const keptSince26Sprints = keptAdvice([
  { told: toldBefore(Array.from({ length: 40 }, (_, i) => dayPlus('2026-10-01', 4 * i))) },
]);
export const keptInCrowd = keptAdvice(
  Array.from({ length: 10 }, (_, i) => ({
    name: `Quay ${i + 1} ${'with a long name '.repeat(2)}`,
    told: moving,
  })),
);
export const keptWithoutEnd = keptAdvice([
  { leftPoints: 2_900, told: toldBefore(['2031-01-10', '2031-02-10'], { pessimisticOn: undefined }) },
]);
