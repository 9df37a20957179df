/**
 * The morning of a large installation: ten thousand members are due in the same minute. How long it takes until all their
 * prompts are recorded and queued, with how many statements; until all are delivered through the limits of the platform,
 * held by the stand-in; and how much memory the bot holds when all of them have answered.
 */
import { setTimeout as wait } from 'node:timers/promises';
import postgres from 'postgres';
import { startStandIn } from '../../src/rehearsal/stand-in/stand-in.ts';
import { submitAnswers } from './answer-submission.ts';
import { type AppProcess, BOT_TOKEN, MAIN, SIGNING_SECRET, startApp } from './app-process.ts';
import { askEverybody } from './ask-everybody.ts';
import { startBenchDatabases } from './bench-database.ts';
import type { Bench, BenchRow } from './bench-row.ts';
import { benchRow } from './bench-row.ts';
import { COUNTING_STATEMENTS } from './count-statements.ts';
import type { Filling } from './fill-teams.ts';
import { memberId } from './fill-teams.ts';
import { WORKSPACE_ID } from './quick-platform.ts';

const FILLING: Filling = {
  teams: 1_250,
  membersATeam: 8,
  cardsAMember: 3,
  answeredDays: 4,
  pastSprints: 3,
  prompted: false,
};
const MEMBERS = FILLING.teams * FILLING.membersATeam;
const STATEMENT_MEMBERS = 500;
/**
 * With the platform's own limits ten thousand posts take half an hour. Here they are six times as high, which asks six
 * times as much of the bot.
 */
const LIMITS_SCALE = 6;
/** What the stand-in allows (src/rehearsal/stand-in/rate-limits.ts): posts a minute, and at first as many at once. */
const POSTS_A_MINUTE = 300 * LIMITS_SCALE;
const FLOOR_S = (60 * (MEMBERS - POSTS_A_MINUTE)) / POSTS_A_MINUTE;
const POLL_MS = 250;
const ANSWERS_AT_ONCE = 8;

export const morningBench: Bench = {
  name: 'morning',
  takesSeconds: 600,
  async run(): Promise<BenchRow[]> {
    const databases = await startBenchDatabases(COUNTING_STATEMENTS);
    try {
      const databaseUrl = await databases.create();
      const asked = await askEverybody(databaseUrl, FILLING);
      const { deliveredS, startedMb, morningMb } = await deliverAndAnswer(databaseUrl);
      return [
        benchRow({
          name: `${MEMBERS} prompts due at once, recorded and queued`,
          unit: 's',
          value: asked.tookMs / 1_000,
          baseline: 'one INSERT of as many rows',
          baselineValue: asked.plainMs / 1_000,
          bound: { of: 'value', atMost: 5 },
        }),
        benchRow({
          name: `statements for ${STATEMENT_MEMBERS} of them`,
          unit: 'statements',
          value: (asked.statements * STATEMENT_MEMBERS) / MEMBERS,
          baseline: 'one for each member',
          baselineValue: STATEMENT_MEMBERS,
          bound: { of: 'value', atMost: 4 },
        }),
        benchRow({
          name: `${MEMBERS} prompts delivered`,
          unit: 's',
          value: deliveredS,
          baseline: `what the platform's limits allow, ${LIMITS_SCALE} times as high as they are`,
          baselineValue: FLOOR_S,
          bound: { of: 'ratio', atMost: 1.1 },
        }),
        benchRow({
          name: 'memory after a morning with as many answers',
          unit: 'MB',
          value: morningMb,
          baseline: 'just started',
          baselineValue: startedMb,
          bound: { of: 'value', atMost: 250 },
        }),
      ];
    } finally {
      await databases.stop();
    }
  },
};

function everybody(): string[] {
  return Array.from({ length: FILLING.teams }, (_, team) =>
    Array.from({ length: FILLING.membersATeam }, (_member, member) => memberId(team + 1, member + 1)),
  ).flat();
}

async function deliverAndAnswer(
  databaseUrl: string,
): Promise<{ deliveredS: number; startedMb: number; morningMb: number }> {
  const platform = await startStandIn({
    signingSecret: SIGNING_SECRET,
    botToken: BOT_TOKEN,
    teamId: WORKSPACE_ID,
    users: everybody().map((id) => ({ id, name: id.toLowerCase() })),
    channels: [],
    now: () => new Date(),
    rateLimits: { scale: LIMITS_SCALE },
  });
  let bot: AppProcess | undefined;
  try {
    bot = await startApp(MAIN, platform.url, { DATABASE_URL: databaseUrl });
    const startedMb = await bot.residentMb();
    const beganMs = performance.now();
    await untilDelivered(databaseUrl);
    const deliveredS = (performance.now() - beganMs) / 1_000;
    const posts = platform.allPosts().length;
    if (posts !== MEMBERS) throw new Error(`${posts} posts came for ${MEMBERS} members.`);
    await everybodyAnswers(bot);
    return { deliveredS, startedMb, morningMb: await bot.residentMb() };
  } finally {
    await bot?.stop();
    await platform.stop();
  }
}

async function untilDelivered(databaseUrl: string): Promise<void> {
  const client = postgres(databaseUrl, { max: 1 });
  try {
    for (;;) {
      const [row] = await client`select count(*)::int as unsent from loadline.posts where state <> 'sent'`;
      if (row?.unsent === 0) return;
      await wait(POLL_MS);
    }
  } finally {
    await client.end();
  }
}

/** An hour's answers, as fast as they are taken. */
async function everybodyAnswers({ eventsUrl }: AppProcess): Promise<void> {
  let nextTeam = 1;
  const worker = async (): Promise<void> => {
    while (nextTeam <= FILLING.teams) {
      const team = nextTeam;
      nextTeam += 1;
      for (let member = 1; member <= FILLING.membersATeam; member += 1)
        await submitAnswers(eventsUrl, { team, member }, FILLING);
    }
  };
  await Promise.all(Array.from({ length: ANSWERS_AT_ONCE }, worker));
}
