/**
 * The way of a status, from the signed command to the words of the answer, with the whole of its statistics; against a
 * bare Bolt app that does one SELECT, and against itself in a small installation. All are processes of their own on one
 * Postgres.
 */
import { type AppProcess, BARE_APP, MAIN, startApp } from './app-process.ts';
import { openBenchDatabase, startBenchDatabases } from './bench-database.ts';
import type { Bench, BenchRow } from './bench-row.ts';
import { benchRow } from './bench-row.ts';
import type { Filling } from './fill-teams.ts';
import { channelId, fillTeams, memberId } from './fill-teams.ts';
import { percentile } from './percentile.ts';
import { type QuickPlatform, startQuickPlatform } from './quick-platform.ts';
import { commandFields, sendSigned } from './signed-request.ts';

/** The team that asks is the first; it is the same in both installations but for its history. */
const TEAM: Filling = {
  teams: 1,
  membersATeam: 8,
  cardsAMember: 3,
  answeredDays: 4,
  pastSprints: 10,
  prompted: true,
};
const MANY_TEAMS = 10_000;
/** Enough for their rows to be in the way. */
const OTHER_TEAMS = { cardsAMember: 1, answeredDays: 1 };
const LONG_HISTORY = 1_000;
/** For all of them. A process that has just started still compiles what it runs, a bot longer than an app of thirty lines. */
const WARM_UP = 300;
const SAMPLES = 200;

async function smallInstallation(databaseUrl: string): Promise<void> {
  await (await openBenchDatabase(databaseUrl)).close();
  await fillTeams(databaseUrl, TEAM);
}

async function largeInstallation(databaseUrl: string): Promise<void> {
  await (await openBenchDatabase(databaseUrl)).close();
  await fillTeams(databaseUrl, { ...TEAM, pastSprints: LONG_HISTORY });
  await fillTeams(databaseUrl, { ...TEAM, ...OTHER_TEAMS, firstTeam: 2, teams: MANY_TEAMS - 1 });
}

let asked = 0;

/** Until the first answer has arrived. Resolves when all that the command causes is over. */
async function askedFor(
  app: AppProcess,
  platform: QuickPlatform,
  isBot: boolean,
): Promise<{ readonly tookMs: number; readonly processorMs: number }> {
  asked += 1;
  const beganMs = app.processorMs();
  const key = `ask-${asked}`;
  const words = platform.arrival(`respond ${key}`);
  // Asked for at once: the chart may come while the processor time is read.
  const chart = words.then(({ body }) =>
    !isBot || body.includes('slack_file') ? undefined : platform.arrival(`respond ${key}`),
  );
  const fields = commandFields(
    memberId(1, 1 + (asked % TEAM.membersATeam)),
    channelId(1),
    'status',
    platform.responseUrl(key),
  );
  const { sentMs } = await sendSigned(app.eventsUrl, fields);
  const { atMs, body } = await words;
  const processorMs = app.processorMs() - beganMs;
  if (isBot && !body.includes('Harbour 12')) throw new Error(`The answer is not the status: ${body}`);
  await chart;
  return { tookMs: atMs - sentMs, processorMs };
}

export const statusBench: Bench = {
  name: 'status',
  takesSeconds: 200,
  async run(): Promise<BenchRow[]> {
    const databases = await startBenchDatabases();
    const platform = await startQuickPlatform();
    const apps: AppProcess[] = [];
    const started = async (script: string, databaseUrl: string): Promise<AppProcess> => {
      const app = await startApp(script, platform.url, { DATABASE_URL: databaseUrl });
      apps.push(app);
      return app;
    };
    try {
      const smallUrl = await databases.create();
      const largeUrl = await databases.create();
      await smallInstallation(smallUrl);
      await largeInstallation(largeUrl);
      const small = await started(MAIN, smallUrl);
      const large = await started(MAIN, largeUrl);
      const bare = await started(BARE_APP, smallUrl);
      const smallMs: number[] = [];
      const largeMs: number[] = [];
      const bareMs: number[] = [];
      const processorMs = { small: 0, bare: 0 };
      for (let i = 0; i < WARM_UP + SAMPLES; i += 1) {
        const bySmall = await askedFor(small, platform, true);
        const byBare = await askedFor(bare, platform, false);
        const byLarge = await askedFor(large, platform, true);
        if (i < WARM_UP) continue;
        smallMs.push(bySmall.tookMs);
        bareMs.push(byBare.tookMs);
        largeMs.push(byLarge.tookMs);
        processorMs.small += bySmall.processorMs;
        processorMs.bare += byBare.processorMs;
      }
      return [
        benchRow({
          name: 'status, asked to words sent, p95',
          unit: 'ms',
          value: percentile(smallMs, 0.95),
          baseline: 'bare Bolt app, one SELECT, p95',
          baselineValue: percentile(bareMs, 0.95),
          bound: { of: 'ratio', atMost: 3 },
        }),
        benchRow({
          name: 'processor time of a status, until its words are sent',
          unit: 'ms',
          value: processorMs.small / SAMPLES,
          baseline: 'bare Bolt app, one SELECT',
          baselineValue: processorMs.bare / SAMPLES,
          bound: { of: 'ratio', atMost: 3 },
        }),
        benchRow({
          name: `status among ${MANY_TEAMS} teams with ${LONG_HISTORY} sprints of history, p95`,
          unit: 'ms',
          value: percentile(largeMs, 0.95),
          baseline: `status of the only team with ${TEAM.pastSprints} sprints, p95`,
          baselineValue: percentile(smallMs, 0.95),
          bound: { of: 'ratio', atMost: 1.2 },
        }),
      ];
    } finally {
      await Promise.all(apps.map((app) => app.stop()));
      await platform.stop();
      await databases.stop();
    }
  },
};
