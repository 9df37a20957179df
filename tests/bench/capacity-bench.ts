/**
 * How many answers a second are taken with 99 of 100 acknowledged within 300 ms: the highest rate, found by search, of one
 * bot, of two on one database, and of a bare Bolt app that does one INSERT. All share the machine with Postgres, the
 * platform and those who answer.
 */
import { setTimeout as wait } from 'node:timers/promises';
import { AnswerRefused, everybodyOnce, type MemberOfTeam, next, submitAnswers } from './answer-submission.ts';
import { type AppProcess, BARE_APP, MAIN, startApp } from './app-process.ts';
import { openBenchDatabase, startBenchDatabases } from './bench-database.ts';
import { type Bench, type BenchRow, benchRow } from './bench-row.ts';
import { type Filling, fillTeams } from './fill-teams.ts';
import { percentile } from './percentile.ts';
import { startQuickPlatform } from './quick-platform.ts';

const FILLING: Filling = {
  teams: 6_000,
  membersATeam: 8,
  cardsAMember: 3,
  answeredDays: 2,
  pastSprints: 0,
  prompted: true,
};
const TRIAL_SECONDS = 8;
const LIMIT_MS = 300;
const FIRST_RATE = 20;
/** Answers of each process before the search: one that has just started still compiles, and takes three times as long. */
const WARM_UP = 1_000;
/** The search ends when the rate that is kept and the one that is not are so close. */
const PRECISION = 1.1;
/** Between trials, so that what one caused is over before the next begins. */
const REST_MS = 3_000;

/** Each answer at its own time, however long those before take. @returns whether the rate was kept */
async function isKept(
  apps: readonly AppProcess[],
  rate: number,
  members: Iterator<MemberOfTeam, undefined>,
): Promise<boolean> {
  const beganMs = performance.now();
  const underWay: Promise<number>[] = [];
  for (let i = 0; i < rate * TRIAL_SECONDS; i += 1) {
    const dueMs = beganMs + (i * 1000) / rate;
    const earlyMs = dueMs - performance.now();
    if (earlyMs > 0) await wait(earlyMs);
    const { eventsUrl } = apps[i % apps.length] as AppProcess;
    underWay.push(
      submitAnswers(eventsUrl, next(members), FILLING).then(
        ({ answeredMs }) => answeredMs - dueMs,
        (error: unknown) => {
          if (error instanceof AnswerRefused) throw error;
          // The bot was too busy to take it.
          return Number.POSITIVE_INFINITY;
        },
      ),
    );
  }
  const isInTime = percentile(await Promise.all(underWay), 0.99) <= LIMIT_MS;
  await wait(REST_MS);
  return isInTime;
}

/** The bare app does the same work whoever answers, and takes more than there are members. */
function* everybodyAgain(): Generator<MemberOfTeam, undefined> {
  for (;;) yield* everybodyOnce(FILLING);
}

/** Doubles the rate until it is not kept, then halves the span between the two, by ratio. @returns answers a second */
async function highestRate(
  apps: readonly AppProcess[],
  members: Iterator<MemberOfTeam, undefined>,
): Promise<number> {
  const warmUp = async ({ eventsUrl }: AppProcess) => {
    for (let i = 0; i < WARM_UP; i += 1) await submitAnswers(eventsUrl, next(members), FILLING);
  };
  await Promise.all(apps.map(warmUp));
  let kept = 0;
  let missed = FIRST_RATE;
  while (await isKept(apps, missed, members)) {
    kept = missed;
    missed *= 2;
  }
  // Below the first rate the search would take longer than it says.
  while (kept > 0 && missed / kept > PRECISION) {
    const rate = Math.sqrt(kept * missed);
    if (await isKept(apps, rate, members)) kept = rate;
    else missed = rate;
  }
  return kept;
}

export const capacityBench: Bench = {
  name: 'capacity',
  takesSeconds: 400,
  async run(): Promise<BenchRow[]> {
    const databases = await startBenchDatabases();
    const platform = await startQuickPlatform();
    /** Each search has a database of its own, and its processes alone. */
    const search = async (script: string, processes: number): Promise<number> => {
      const databaseUrl = await databases.create();
      await (await openBenchDatabase(databaseUrl)).close();
      await fillTeams(databaseUrl, FILLING);
      const apps: AppProcess[] = [];
      try {
        while (apps.length < processes)
          apps.push(await startApp(script, platform.url, { DATABASE_URL: databaseUrl }));
        return await highestRate(apps, script === BARE_APP ? everybodyAgain() : everybodyOnce(FILLING));
      } finally {
        await Promise.all(apps.map((app) => app.stop()));
      }
    };
    try {
      const bare = await search(BARE_APP, 1);
      const one = await search(MAIN, 1);
      const two = await search(MAIN, 2);
      const row = {
        unit: 'per second',
        baseline: 'a bare Bolt app, one INSERT',
        baselineValue: bare,
      } as const;
      const kept = `99 of 100 within ${LIMIT_MS} ms`;
      return [
        benchRow({
          ...row,
          name: `answers that one process takes, ${kept}`,
          value: one,
          bound: { of: 'ratio', atLeast: 0.4 },
        }),
        benchRow({
          ...row,
          name: `answers that two processes take, ${kept}`,
          value: two,
          bound: { of: 'value', atLeast: 100 },
        }),
      ];
    } finally {
      await platform.stop();
      await databases.stop();
    }
  },
};
