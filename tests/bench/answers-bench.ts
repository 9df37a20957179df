/**
 * The way of an answer, from the signed form to its acknowledgement, which comes when the answer is committed, and on to
 * the updated prompt; against a bare Bolt app that does one INSERT, and one that also updates a message. All are processes
 * of their own on one Postgres.
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
/** A process that has just started still compiles what it runs. */
const WARM_UP = 600;
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
  /** Processor time until an answer was acknowledged, of all together. */
  acknowledgedMs: number;
  /** The same with all that an answer causes afterwards. */
  processorMs: number;
}

interface Subject {
  readonly app: AppProcess;
  /** Whether an update of a message follows the acknowledgement. */
  readonly shows: boolean;
}

/** After the last call to the platform, what it was good for is noted in the database and the queue. */
const NOTED_MS = 40;

/** In turns; each waits until nothing is going on any more, so that none is measured under another's work. */
async function inTurns(
  subjects: readonly Subject[],
  platform: QuickPlatform,
  members: Iterator<MemberOfTeam, undefined>,
): Promise<Measured[]> {
  const all = subjects.map((): Measured => ({ tookMs: [], acknowledgedMs: 0, processorMs: 0 }));
  for (let i = 0; i < WARM_UP + SAMPLES; i += 1) {
    const member = next(members);
    const channel = directChannelId(memberId(member.team, member.member));
    for (const [place, { app, shows }] of subjects.entries()) {
      const beganMs = app.processorMs();
      const shown = shows ? platform.arrival(`chat.update ${channel}`) : undefined;
      const exchange = await submit(app.eventsUrl, member);
      const acknowledgedMs = app.processorMs();
      await shown;
      await wait(NOTED_MS);
      const measured = all[place] as Measured;
      if (i < WARM_UP) continue;
      measured.tookMs.push(took(exchange));
      measured.acknowledgedMs += acknowledgedMs - beganMs;
      measured.processorMs += app.processorMs() - beganMs;
    }
  }
  return all;
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
  takesSeconds: 280,
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
      const showing = await startApp(BARE_APP, platform.url, { ...settings, BARE_APP_SHOWS: 'yes' });
      apps.push(showing);
      const subjects = [
        { app: bot, shows: true },
        { app: bare, shows: false },
        { app: showing, shows: true },
      ];
      const measured = await inTurns(subjects, platform, members);
      const [byBot, byBare, byShowing] = measured as [Measured, Measured, Measured];
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
          name: 'processor time of an answer, until it is committed and acknowledged',
          unit: 'ms',
          value: byBot.acknowledgedMs / SAMPLES,
          baseline: 'bare Bolt app, one INSERT',
          baselineValue: byBare.acknowledgedMs / SAMPLES,
          bound: { of: 'ratio', atMost: 2 },
        }),
        benchRow({
          name: 'processor time of an answer, with all that follows',
          unit: 'ms',
          value: byBot.processorMs / SAMPLES,
          baseline: 'bare Bolt app, one INSERT and one chat.update',
          baselineValue: byShowing.processorMs / SAMPLES,
          bound: { of: 'ratio', atMost: 2 },
        }),
        benchRow({
          name: 'statements to record an answer, with begin and commit',
          unit: 'statements',
          value: statements,
          baseline: 'one INSERT',
          baselineValue: 1,
          bound: { of: 'value', atMost: 10 },
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
