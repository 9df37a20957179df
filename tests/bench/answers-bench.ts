/**
 * The way of an answer, from the signed form to its acknowledgement, which comes when the answer is committed; against a
 * bare Bolt app that does one INSERT. Both are processes of their own on one Postgres.
 */
import { setTimeout as wait } from 'node:timers/promises';
import postgres from 'postgres';
import { recordAnswers } from '../../src/app/answering/record-answers.ts';
import type { AppDependencies } from '../../src/app/ports/app-dependencies.ts';
import { asOneRequest, writtenOnce } from '../../src/app/written-once.ts';
import { everybodyOnce, type MemberOfTeam, next, submitAnswers } from './answer-submission.ts';
import { type AppProcess, BARE_APP, MAIN, startApp } from './app-process.ts';
import { openBenchDatabase, startBenchDatabases } from './bench-database.ts';
import type { Bench, BenchRow } from './bench-row.ts';
import { benchRow } from './bench-row.ts';
import { COUNTING_STATEMENTS, statementsDuring } from './count-statements.ts';
import type { Filling } from './fill-teams.ts';
import { cardId, directChannelId, fillTeams, memberId, sprintId, today } from './fill-teams.ts';
import { percentile } from './percentile.ts';
import { type QuickPlatform, startQuickPlatform, WORKSPACE_ID } from './quick-platform.ts';
import type { Exchange } from './signed-request.ts';

const TEAMS = 500;
const FILLING: Filling = {
  teams: TEAMS,
  membersATeam: 8,
  cardsAMember: 3,
  answeredDays: 4,
  pastSprints: 10,
  prompted: true,
};
const WARM_UP = 100;
const SAMPLES = 300;
const A_SECOND = 50;
const SECONDS = 60;
/** Teams in which the statements of one answer are counted. */
const COUNTED = 20;

const submit = (eventsUrl: string, member: MemberOfTeam): Promise<Exchange> =>
  submitAnswers(eventsUrl, member, FILLING);

const took = ({ sentMs, answeredMs }: Exchange): number => answeredMs - sentMs;

interface Measured {
  readonly tookMs: number[];
  /** Processor time, with all that an answer causes after it was acknowledged. */
  processorMs: number;
}

/** In turns; each waits until nothing is going on any more, so that neither is measured under the other's work. */
async function inTurns(
  bot: AppProcess,
  bare: AppProcess,
  platform: QuickPlatform,
  members: Iterator<MemberOfTeam, undefined>,
): Promise<{ byBot: Measured; byBare: Measured }> {
  const byBot: Measured = { tookMs: [], processorMs: 0 };
  const byBare: Measured = { tookMs: [], processorMs: 0 };
  const measure = async (measured: Measured, app: AppProcess, member: MemberOfTeam, count: boolean) => {
    const beganMs = await app.processorMs();
    const channel = directChannelId(memberId(member.team, member.member));
    const settled = app === bot ? platform.arrival(`chat.update ${channel}`) : undefined;
    const exchange = await submit(app.eventsUrl, member);
    await settled;
    if (!count) return;
    measured.tookMs.push(took(exchange));
    measured.processorMs += (await app.processorMs()) - beganMs;
  };
  for (let i = 0; i < WARM_UP + SAMPLES; i += 1) {
    const member = next(members);
    await measure(byBot, bot, member, i >= WARM_UP);
    await measure(byBare, bare, member, i >= WARM_UP);
  }
  return { byBot, byBare };
}

/** Each at its own time, however long those before take, so that a stall shows in all that come during it. */
async function atARate(eventsUrl: string, members: Iterator<MemberOfTeam, undefined>): Promise<number[]> {
  const beganMs = performance.now();
  const underWay: Promise<number>[] = [];
  for (let i = 0; i < A_SECOND * SECONDS; i += 1) {
    const dueMs = beganMs + (i * 1000) / A_SECOND;
    const earlyMs = dueMs - performance.now();
    if (earlyMs > 0) await wait(earlyMs);
    underWay.push(submit(eventsUrl, next(members)).then(({ answeredMs }) => answeredMs - dueMs));
  }
  return Promise.all(underWay);
}

/** Of one answer, as it is recorded before its acknowledgement. Nothing else runs on the database meanwhile. */
async function statementsOfAnswers(databaseUrl: string): Promise<number> {
  const database = await openBenchDatabase(databaseUrl);
  try {
    await fillTeams(databaseUrl, { ...FILLING, teams: COUNTED + 1 });
    const clock = { now: () => new Date() };
    const deps = { store: writtenOnce(database.store, clock), clock } as AppDependencies;
    const answer = (team: number) => {
      const actor = { workspaceId: WORKSPACE_ID, userId: memberId(team, 1) };
      const answers = [{ cardId: cardId(team, 1, 1), left: '1', worked: '3', surprise: '', note: '' }];
      return asOneRequest(`count ${team}`, () =>
        recordAnswers(deps, actor, { sprintId: sprintId(team), day: today(), answers }),
      );
    };
    // A connection's first statements are its own.
    await answer(COUNTED + 1);
    const statements = await statementsDuring(databaseUrl, async () => {
      for (let team = 1; team <= COUNTED; team += 1) await answer(team);
    });
    return statements / COUNTED;
  } finally {
    await database.close();
  }
}

/** An acknowledgement of what was not kept would be quick and worthless. */
async function requireRecorded(databaseUrl: string, submissions: number): Promise<void> {
  const client = postgres(databaseUrl, { max: 1 });
  const wanted = submissions * FILLING.cardsAMember;
  try {
    for (let triesLeft = 30; ; triesLeft -= 1) {
      const [row] = await client`select count(*)::int as count from loadline.answers where day = ${today()}`;
      if (row?.count === wanted) return;
      if (triesLeft === 0) throw new Error(`${row?.count} of ${wanted} answers were recorded.`);
      await wait(1_000);
    }
  } finally {
    await client.end();
  }
}

export const answersBench: Bench = {
  name: 'answers',
  takesSeconds: 150,
  async run(): Promise<BenchRow[]> {
    const databases = await startBenchDatabases(COUNTING_STATEMENTS);
    const platform = await startQuickPlatform();
    const apps: AppProcess[] = [];
    try {
      const databaseUrl = await databases.create();
      await (await openBenchDatabase(databaseUrl)).close();
      await fillTeams(databaseUrl, FILLING);
      const statements = await statementsOfAnswers(await databases.create());
      const settings = { DATABASE_URL: databaseUrl };
      const bot = await startApp(MAIN, platform.url, settings);
      apps.push(bot);
      const bare = await startApp(BARE_APP, platform.url, settings);
      apps.push(bare);
      const members = everybodyOnce(FILLING);
      const { byBot, byBare } = await inTurns(bot, bare, platform, members);
      const busyBotMs = await atARate(bot.eventsUrl, members);
      const busyBareMs = await atARate(bare.eventsUrl, everybodyOnce(FILLING));
      await requireRecorded(databaseUrl, WARM_UP + SAMPLES + A_SECOND * SECONDS);
      return [
        benchRow({
          name: 'answer form, sent to committed, p95',
          unit: 'ms',
          value: percentile(byBot.tookMs, 0.95),
          baseline: 'bare Bolt app, one INSERT, p95',
          baselineValue: percentile(byBare.tookMs, 0.95),
          bound: { of: 'ratio', atMost: 2 },
        }),
        benchRow({
          name: 'processor time of an answer, until the prompt shows it',
          unit: 'ms',
          value: byBot.processorMs / SAMPLES,
          baseline: 'bare Bolt app, one INSERT, nothing shown',
          baselineValue: byBare.processorMs / SAMPLES,
          bound: { of: 'ratio', atMost: 2 },
        }),
        benchRow({
          name: 'statements to record an answer, with begin and commit',
          unit: 'statements',
          value: statements,
          baseline: 'one INSERT',
          baselineValue: 1,
          bound: { of: 'value', atMost: 12 },
        }),
        benchRow({
          name: `answer forms, ${A_SECOND} a second for ${SECONDS} s, p99`,
          unit: 'ms',
          value: percentile(busyBotMs, 0.99),
          baseline: 'bare Bolt app at the same rate, p99',
          baselineValue: percentile(busyBareMs, 0.99),
          bound: { of: 'value', atMost: 300 },
        }),
      ];
    } finally {
      await Promise.all(apps.map((app) => app.stop()));
      await platform.stop();
      await databases.stop();
    }
  },
};
