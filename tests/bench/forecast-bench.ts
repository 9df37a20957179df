/** The release forecast of a large body of work, against a plain loop over the same velocities. */
import { gradedReleases, inOrderOfChance, MOST_SPRINTS_GRADED } from '../../src/forecast/graded-releases.ts';
import { releaseForecast, type WorkAhead } from '../../src/forecast/release-forecast.ts';
import type { Bench } from './bench-row.ts';
import { benchRow } from './bench-row.ts';
import { medianTimes } from './median-time.ts';

const BACKLOG_POINTS = 1000;
/** Small velocities take the most sprints. */
const VELOCITIES = [8.5, 11, 7, 9.5, 12];

/** As long a past as is looked back at, of the team and of two others. */
const PAST = Array.from({ length: MOST_SPRINTS_GRADED.own }, (_, i) => ({
  velocityPoints: VELOCITIES[i % VELOCITIES.length] as number,
  time: 40,
}));

function forecast() {
  return releaseForecast({
    backlogPoints: BACKLOG_POINTS,
    scopeGrowthPoints: 0,
    sprints: PAST,
    startsOn: '2026-11-02',
    sprintLengthDays: 14,
    comingTimes: [40],
    graded: { team: 'A', releases: ['A', 'B', 'C'].flatMap((team) => gradedReleases(team, PAST)) },
  });
}

/** What is told of ten bodies of work in turn when a sprint closes, each of which grows, nobody knows how fast. */
function tenInTurn(): void {
  const releases = inOrderOfChance(['A', 'B', 'C'].flatMap((team) => gradedReleases(team, PAST)));
  const ahead: WorkAhead[] = [];
  for (let points = 51; points <= 60; points += 1) {
    releaseForecast({
      backlogPoints: points,
      scopeGrowthPoints: 2,
      scopeGrowthDeviation: 1,
      growsInTurnOnly: true,
      ahead: [...ahead],
      sprints: PAST,
      startsOn: '2026-11-02',
      sprintLengthDays: 14,
      comingTimes: [40],
      graded: { team: 'A', releases },
    });
    ahead.push({ points, growthPoints: 2, growthDeviation: 1, growsWaiting: false });
  }
}

/** Adds up sprints in half points until the backlog is likely done, and knows nothing of a wandering pace. */
function plainLoop(): number {
  const enough = 2 * BACKLOG_POINTS;
  let chances = Float64Array.of(1);
  for (let sprints = 1; ; sprints += 1) {
    const next = new Float64Array(enough + 1);
    for (let halves = 0; halves < chances.length; halves += 1) {
      const chance = (chances[halves] as number) / VELOCITIES.length;
      for (const velocity of VELOCITIES) {
        const sum = Math.min(enough, halves + 2 * velocity);
        next[sum] = (next[sum] as number) + chance;
      }
    }
    chances = next;
    if ((chances[enough] as number) >= 0.85) return sprints;
  }
}

export const forecastBench: Bench = {
  name: 'forecast',
  takesSeconds: 2,
  async run() {
    const { subjectMs, baselineMs } = await medianTimes(forecast, plainLoop);
    const ten = await medianTimes(tenInTurn, plainLoop);
    return [
      benchRow({
        name: `release forecast of ${BACKLOG_POINTS} points`,
        unit: 'ms',
        value: subjectMs,
        baseline: 'plain loop over the same velocities',
        baselineValue: baselineMs,
        bound: { of: 'value', atMost: 30 },
      }),
      benchRow({
        name: 'release forecasts of ten growing bodies of work in turn',
        unit: 'ms',
        value: ten.subjectMs,
        baseline: 'plain loop over the same velocities',
        baselineValue: ten.baselineMs,
        bound: { of: 'value', atMost: 50 },
      }),
    ];
  },
};
