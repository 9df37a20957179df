/**
 * The way of an answer, from the signed form to its acknowledgement, which comes when the answer is committed; against a
 * bare Bolt app that does one INSERT. Both are processes of their own on one Postgres.
 */
import { setTimeout as wait } from 'node:timers/promises';
import postgres from 'postgres';
import { type MemberOfTeam, submitAnswers } from './answer-submission.ts';
import { type AppProcess, BARE_APP, MAIN, startApp } from './app-process.ts';
import { openBenchDatabase, startBenchDatabases } from './bench-database.ts';
import type { Bench, BenchRow } from './bench-row.ts';
import { benchRow } from './bench-row.ts';
import type { Filling } from './fill-teams.ts';
import { directChannelId, fillTeams, memberId, today } from './fill-teams.ts';
import { percentile } from './percentile.ts';
import { type QuickPlatform, startQuickPlatform } from './quick-platform.ts';
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

/** One after the other, so that teams take turns. */
function* everybody(): Generator<MemberOfTeam, undefined> {
  for (let member = 1; member <= FILLING.membersATeam; member += 1) {
    for (let team = 1; team <= TEAMS; team += 1) yield { team, member };
  }
}

const submit = (eventsUrl: string, member: MemberOfTeam): Promise<Exchange> =>
  submitAnswers(eventsUrl, member, FILLING);

const took = ({ sentMs, answeredMs }: Exchange): number => answeredMs - sentMs;

/** In turns; each waits until nothing is going on any more, so that neither is measured under the other's work. */
async function inTurns(
  bot: AppProcess,
  bare: AppProcess,
  platform: QuickPlatform,
  members: Iterator<MemberOfTeam, undefined>,
): Promise<{ botMs: number[]; bareMs: number[] }> {
  const botMs: number[] = [];
  const bareMs: number[] = [];
  for (let i = 0; i < WARM_UP + SAMPLES; i += 1) {
    const member = next(members);
    const userId = memberId(member.team, member.member);
    const settled = [
      platform.arrival(`chat.postMessage ${userId}`),
      platform.arrival(`chat.update ${directChannelId(userId)}`),
    ];
    const bySubject = await submit(bot.eventsUrl, member);
    await Promise.all(settled);
    const byBaseline = await submit(bare.eventsUrl, member);
    if (i < WARM_UP) continue;
    botMs.push(took(bySubject));
    bareMs.push(took(byBaseline));
  }
  return { botMs, bareMs };
}

function next(members: Iterator<MemberOfTeam, undefined>): MemberOfTeam {
  const member = members.next().value;
  if (!member) throw new RangeError('there are not enough members');
  return member;
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
    const databases = await startBenchDatabases();
    const platform = await startQuickPlatform();
    const apps: AppProcess[] = [];
    try {
      const databaseUrl = await databases.create();
      await (await openBenchDatabase(databaseUrl)).close();
      await fillTeams(databaseUrl, FILLING);
      const settings = { DATABASE_URL: databaseUrl };
      const bot = await startApp(MAIN, platform.url, settings);
      apps.push(bot);
      const bare = await startApp(BARE_APP, platform.url, settings);
      apps.push(bare);
      const members = everybody();
      const { botMs, bareMs } = await inTurns(bot, bare, platform, members);
      const busyBotMs = await atARate(bot.eventsUrl, members);
      const busyBareMs = await atARate(bare.eventsUrl, everybody());
      await requireRecorded(databaseUrl, WARM_UP + SAMPLES + A_SECOND * SECONDS);
      return [
        benchRow({
          name: 'answer form, sent to committed, p95',
          unit: 'ms',
          value: percentile(botMs, 0.95),
          baseline: 'bare Bolt app, one INSERT, p95',
          baselineValue: percentile(bareMs, 0.95),
          bound: { of: 'ratio', atMost: 2 },
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
