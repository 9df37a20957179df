/**
 * Whether the bot slows down while a team works with it for years: everything that people ask of it in turns, while one
 * sprint after the other is planned, answered for and closed through the bot. Compares the first third of the requests with
 * the last, which are the same but for what lies behind them.
 */
import postgres from 'postgres';
import { answerField } from '../../src/slack/ids.ts';
import { dayPlus } from '../../src/sprint/calendar.ts';
import { type AppProcess, MAIN, startApp } from './app-process.ts';
import { openBenchDatabase, startBenchDatabases } from './bench-database.ts';
import { type Bench, type BenchRow, benchRow } from './bench-row.ts';
import { channelId, fillTeams, memberId, sprintId, teamId, today } from './fill-teams.ts';
import { type QuickPlatform, startQuickPlatform } from './quick-platform.ts';
import { commandFields, type Exchange, sendSigned, submissionFields } from './signed-request.ts';

const TEAM = 1;
const MEMBERS = 7;
const CARDS_A_MEMBER = 2;
/** As many as a chart of the history shows, so that none has more to draw than another. */
const PAST_SPRINTS = 26;
const SPRINTS = 96;
const REQUESTS = 3_000;
/** Before it counts: a process compiles for long what it does often. */
const WARM_UP_SPRINTS = 6;
const WARM_UP_REQUESTS = 1_000;
const AT_ONCE = 4;
const ESTIMATE_POINTS = 8;
const LASTS_DAYS = 14;

interface OpenSprint {
  readonly id: string;
  /** Of each member, from the first on. */
  readonly cardIds: readonly (readonly string[])[];
}

interface Scene {
  readonly app: AppProcess;
  readonly platform: QuickPlatform;
  readonly sql: postgres.Sql;
  sprint: OpenSprint;
  asked: number;
}

const personOf = (asked: number): number => 1 + (asked % MEMBERS);

/** Once more on a connection that the bot had just closed because nothing came on it, as the platform does. */
async function sent({ app }: Scene, fields: Record<string, string>): Promise<Exchange> {
  return sendSigned(app.eventsUrl, fields).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'ECONNRESET') throw error;
    return sendSigned(app.eventsUrl, fields);
  });
}

/** Until all that it shows has come. */
async function command(scene: Scene, asked: number, text: string): Promise<void> {
  const { platform } = scene;
  const key = `mixed-${asked}`;
  const words = platform.arrival(`respond ${key}`);
  const fields = commandFields(
    memberId(TEAM, personOf(asked)),
    channelId(TEAM),
    text,
    platform.responseUrl(key),
  );
  await sent(scene, fields);
  const { body } = await words;
  if (text === 'status' && !body.includes('slack_file')) await platform.arrival(`respond ${key}`);
}

let forms = 0;

/** @returns what the bot shows next; empty: it has taken the form */
async function submitted(
  scene: Scene,
  form: string,
  { context, values, person }: { context: object; values: Record<string, string>; person: number },
): Promise<string> {
  forms += 1;
  const fields = submissionFields({
    userId: memberId(TEAM, person),
    callbackId: `${form}-form`,
    context: JSON.stringify(context),
    values,
    // The same form sent off again would not be carried out.
    viewId: `V${forms}`,
  });
  return (await sent(scene, fields)).body;
}

/** A point more or less is worked than was said before, so that each answer changes something. */
async function answer(scene: Scene, asked: number): Promise<void> {
  const { id, cardIds } = scene.sprint;
  const person = personOf(asked);
  const worked = 1 + (Math.floor(asked / MEMBERS) % 3);
  const values = (cardIds[person - 1] ?? []).flatMap((card): [string, string][] => [
    [answerField('left', card), String(ESTIMATE_POINTS - worked)],
    [answerField('worked', card), String(worked)],
  ]);
  const context = { sprintId: id, day: today() };
  const said = await submitted(scene, 'answer', { context, values: Object.fromEntries(values), person });
  if (said !== '' && !said.includes('Still working')) throw new Error(`The answer was not taken: ${said}`);
}

function planValues(name: string, startsOn: string): Record<string, string> {
  const cards = Array.from({ length: MEMBERS * CARDS_A_MEMBER }, (_, i) => {
    return `Tide table ${i + 1}, ${ESTIMATE_POINTS}, <@${memberId(TEAM, 1 + (i % MEMBERS))}>`;
  });
  const endsOn = dayPlus(startsOn, LASTS_DAYS - 1);
  return { name, goal: 'Ferries berth', startsOn, endsOn, closesAt: '23:59', cards: cards.join('\n') };
}

/** @returns the fingerprint of what is shown */
async function planPreview(scene: Scene, name: string, startsOn: string): Promise<string> {
  const values = planValues(name, startsOn);
  const shown = await submitted(scene, 'plan', { context: { teamId: teamId(TEAM) }, values, person: 1 });
  const seen = /seen\\*":\\*"([\w-]+)/.exec(shown)?.[1];
  if (seen === undefined) throw new Error(`This is no preview of a plan: ${shown.slice(0, 2_000)}`);
  return seen;
}

/** In this order, again and again: what each is to the others stays the same from third to third. */
const MIX: readonly ((scene: Scene, asked: number) => Promise<unknown>)[] = [
  answer,
  (scene, asked) => command(scene, asked, 'status'),
  answer,
  (scene, asked) => command(scene, asked, 'cards'),
  answer,
  (scene, asked) => command(scene, asked, 'range'),
  answer,
  (scene, asked) => command(scene, asked, 'status'),
  answer,
  (scene, asked) => command(scene, asked, 'odds'),
  answer,
  (scene, asked) => command(scene, asked, 'privacy'),
  answer,
  (scene, asked) => command(scene, asked, 'history'),
  answer,
  (scene, asked) => command(scene, asked, 'forecast 60'),
  (scene) => planPreview(scene, 'The next one', dayPlus(today(), 10 * LASTS_DAYS)),
  (scene, asked) => command(scene, asked, ''),
];

async function openSprint(sql: postgres.Sql, id: string): Promise<OpenSprint> {
  const cards = await sql<{ card_id: string; user_id: string }[]>`select o.card_id, o.user_id
    from loadline.card_owners as o join loadline.cards as c on c.id = o.card_id
    where c.sprint_id = ${id} order by c.number`;
  const cardIds = Array.from({ length: MEMBERS }, (_, i) =>
    cards.filter(({ user_id }) => user_id === memberId(TEAM, i + 1)).map(({ card_id }) => card_id),
  );
  return { id, cardIds };
}

/** Closes the sprint and plans the next. The closed one is moved to its time, so that each ended on a day of its own. */
async function nextSprint(scene: Scene, number: number, sprintsLeft: number): Promise<void> {
  const { sql, sprint } = scene;
  const closed = await submitted(scene, 'close', { context: { sprintId: sprint.id }, values: {}, person: 1 });
  if (closed !== '') throw new Error(`The sprint did not close: ${closed}`);
  const earlier = (1 + sprintsLeft) * LASTS_DAYS;
  await sql.begin(async (tx) => {
    await tx`update loadline.sprints set starts_on = starts_on - ${earlier}::int, ends_on = ends_on - ${earlier}::int
      where id = ${sprint.id}`;
    await tx`update loadline.past_sprints set ends_on = ends_on - ${earlier}::int where sprint_id = ${sprint.id}`;
  });
  const seen = await planPreview(scene, `Harbour ${number}`, today());
  await submitted(scene, 'plan-preview', { context: { teamId: teamId(TEAM), seen }, values: {}, person: 1 });
  const [planned] = await sql<{ id: string }[]>`select id from loadline.sprints
    where team_id = ${teamId(TEAM)} and state = 'open'`;
  if (!planned) throw new Error('No sprint was planned.');
  scene.sprint = await openSprint(sql, planned.id);
}

async function ask(scene: Scene, requests: number): Promise<void> {
  const end = scene.asked + requests;
  const inTurn = async (): Promise<void> => {
    while (scene.asked < end) {
      const asked = scene.asked;
      scene.asked += 1;
      await MIX[asked % MIX.length]?.(scene, asked);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, inTurn));
}

interface Third {
  readonly aSecond: number;
  readonly processorMs: number;
}

async function third(scene: Scene, sprints: number, requestsASprint: number, from: number): Promise<Third> {
  const [beganMs, processorBeganMs, before] = [performance.now(), scene.app.processorMs(), scene.asked];
  for (let i = 0; i < sprints; i += 1) {
    await ask(scene, requestsASprint);
    await nextSprint(scene, from + i, SPRINTS - from - i);
  }
  const asked = scene.asked - before;
  const measured = {
    aSecond: (1_000 * asked) / (performance.now() - beganMs),
    processorMs: (scene.app.processorMs() - processorBeganMs) / asked,
  };
  const { aSecond, processorMs } = measured;
  console.error(`  ${asked} requests: ${aSecond.toFixed(1)} a second, ${processorMs.toFixed(1)} ms each`);
  return measured;
}

async function grown(scene: Scene, requests: number): Promise<BenchRow[]> {
  const counted = SPRINTS - WARM_UP_SPRINTS;
  const requestsASprint = Math.ceil(requests / counted);
  await third(scene, WARM_UP_SPRINTS, Math.ceil(WARM_UP_REQUESTS / WARM_UP_SPRINTS), 0);
  const thirds: Third[] = [];
  for (let i = 0; i < 3; i += 1) {
    const from = WARM_UP_SPRINTS + (i * counted) / 3;
    thirds.push(await third(scene, counted / 3, requestsASprint, from));
  }
  const [first, , last] = thirds as [Third, Third, Third];
  const cards = (SPRINTS + 1) * MEMBERS * CARDS_A_MEMBER;
  const during = `the last third of ${requests}, up to ${SPRINTS} closed sprints and ${cards} cards`;
  return [
    benchRow({
      name: `processor time of a mixed request, in ${during}`,
      unit: 'ms',
      value: last.processorMs,
      baseline: 'in the first third',
      baselineValue: first.processorMs,
      bound: { of: 'ratio', atMost: 1.2 },
    }),
    benchRow({
      name: `mixed requests, in ${during}`,
      unit: 'per second',
      value: last.aSecond,
      baseline: 'in the first third',
      baselineValue: first.aSecond,
      bound: { of: 'ratio', atLeast: 1 / 1.2 },
    }),
  ];
}

export const mixedBench: Bench = {
  name: 'mixed',
  takesSeconds: 270,
  async run({ requests = REQUESTS } = {}): Promise<BenchRow[]> {
    const databases = await startBenchDatabases();
    const platform = await startQuickPlatform();
    let app: AppProcess | undefined;
    let sql: postgres.Sql | undefined;
    try {
      const databaseUrl = await databases.create();
      await (await openBenchDatabase(databaseUrl)).close();
      await fillTeams(databaseUrl, {
        teams: 1,
        membersATeam: MEMBERS,
        cardsAMember: CARDS_A_MEMBER,
        answeredDays: 0,
        pastSprints: PAST_SPRINTS,
        prompted: true,
      });
      sql = postgres(databaseUrl, { max: 1, onnotice: () => undefined });
      // Those that came before anything: no sprint of this run may end before them.
      await sql`update loadline.sprints set starts_on = starts_on - ${SPRINTS * LASTS_DAYS}::int,
        ends_on = ends_on - ${SPRINTS * LASTS_DAYS}::int where state = 'closed'`;
      await sql`update loadline.past_sprints set ends_on = ends_on - ${SPRINTS * LASTS_DAYS}::int`;
      app = await startApp(MAIN, platform.url, { DATABASE_URL: databaseUrl });
      const sprint = await openSprint(sql, sprintId(TEAM));
      return await grown({ app, platform, sql, sprint, asked: 0 }, requests);
    } finally {
      await app?.stop();
      await sql?.end();
      await platform.stop();
      await databases.stop();
    }
  },
};
