/**
 * What questions about the past cost a team with a thousand sprints among two hundred others, against the same team with
 * ten sprints alone: processor time of the bot from the signed command to the words and the picture.
 */
import { type AppProcess, MAIN, startApp } from './app-process.ts';
import { openBenchDatabase, startBenchDatabases } from './bench-database.ts';
import { type Bench, type BenchRow, benchRow } from './bench-row.ts';
import { channelId, type Filling, fillTeams, memberId } from './fill-teams.ts';
import { percentile } from './percentile.ts';
import { type QuickPlatform, startQuickPlatform } from './quick-platform.ts';
import { commandFields, sendSigned } from './signed-request.ts';

const TEAM: Filling = {
  teams: 1,
  membersATeam: 8,
  cardsAMember: 3,
  answeredDays: 4,
  pastSprints: 10,
  prompted: true,
};
const LONG_HISTORY = 1_000;
const OTHER_TEAMS = 199;
const QUESTIONS = ['status', 'history', 'range', 'odds', 'forecast 60'];
/** The first answers read the past, which is kept from then on. */
const WARM_UP = 4;
const SAMPLES = 25;

async function installation(databaseUrl: string, isLarge: boolean): Promise<void> {
  await (await openBenchDatabase(databaseUrl)).close();
  await fillTeams(databaseUrl, { ...TEAM, pastSprints: isLarge ? LONG_HISTORY : TEAM.pastSprints });
  if (isLarge) await fillTeams(databaseUrl, { ...TEAM, firstTeam: 2, teams: OTHER_TEAMS });
}

let asked = 0;

/** Processor time in ms, until the words have come and the picture, if there is one, with them. */
async function costOf(app: AppProcess, platform: QuickPlatform, question: string): Promise<number> {
  asked += 1;
  const key = `past-${asked}`;
  const beganMs = app.processorMs();
  const words = platform.arrival(`respond ${key}`);
  const responseUrl = platform.responseUrl(key);
  await sendSigned(app.eventsUrl, commandFields(memberId(1, 1), channelId(1), question, responseUrl));
  const { body } = await words;
  if (question === 'status' && !body.includes('slack_file')) await platform.arrival(`respond ${key}`);
  return app.processorMs() - beganMs;
}

export const longHistoryBench: Bench = {
  name: 'long-history',
  takesSeconds: 90,
  async run(): Promise<BenchRow[]> {
    const databases = await startBenchDatabases();
    const platform = await startQuickPlatform();
    const apps: AppProcess[] = [];
    try {
      for (const isLarge of [false, true]) {
        const databaseUrl = await databases.create();
        await installation(databaseUrl, isLarge);
        apps.push(await startApp(MAIN, platform.url, { DATABASE_URL: databaseUrl }));
      }
      const [small, large] = apps as [AppProcess, AppProcess];
      const rows: BenchRow[] = [];
      for (const question of QUESTIONS) {
        const costs: { small: number[]; large: number[] } = { small: [], large: [] };
        for (let i = 0; i < WARM_UP + SAMPLES; i += 1) {
          const inSmall = await costOf(small, platform, question);
          const inLarge = await costOf(large, platform, question);
          if (i < WARM_UP) continue;
          costs.small.push(inSmall);
          costs.large.push(inLarge);
        }
        rows.push(
          benchRow({
            name: `${question} with ${LONG_HISTORY} past sprints among ${OTHER_TEAMS + 1} teams, processor time`,
            unit: 'ms',
            value: percentile(costs.large, 0.5),
            baseline: `the only team with ${TEAM.pastSprints}`,
            baselineValue: percentile(costs.small, 0.5),
            bound: { of: 'ratio', atMost: 1.2 },
          }),
        );
      }
      return rows;
    } finally {
      await Promise.all(apps.map((app) => app.stop()));
      await platform.stop();
      await databases.stop();
    }
  },
};
