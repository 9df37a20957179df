/**
 * What a person, or somebody who forges what the platform sends back, puts into a command, a button, a form or a
 * reply: the bot answers in words, never fails, and stores nothing that no one may be shown.
 */

import { sql } from 'drizzle-orm';
import fc from 'fast-check';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { BUTTONS, COMMANDS, FORMS } from '../../src/slack/commands/commands.ts';
import { ANSWER_PARTS, answerField, INPUT } from '../../src/slack/ids.ts';
import { FakePlatform } from '../slack/support/fake-platform.ts';
import { CHANNEL, type Harness, openHarness, PEOPLE } from '../support/app-harness.ts';
import { rowsOf } from '../support/rows-of.ts';
import { search } from '../support/search-width.ts';
import { harmIn, textsIn } from './harm.ts';
import { hostileText, UNWANTED } from './hostile-text.ts';
import { commandBody, formBody, pressBody, type WholeBot, wholeBot, wordsBody } from './whole-bot.ts';

const platform = new FakePlatform();
let harness: Harness;
let bot: WholeBot;
let teamId: string;
let sprintId: string;
let cardIds: string[];

beforeAll(() => platform.listen());
afterAll(() => platform.close());
beforeEach(async () => {
  platform.reset();
  harness = await openHarness({ now: '2026-11-02T08:00:00Z' });
  const team = await harness.setUpTeam({ productOwnerId: PEOPLE.ana });
  const { sprint } = await harness.plan(team, {
    cards: 'Tide table, 5, @Ana\nCrane log, 3, @Ana\nPilot roster, 2, @Ben',
  });
  harness.set('2026-11-04T09:20:00Z');
  teamId = team.id;
  sprintId = sprint.id;
  cardIds = (await harness.records(sprintId)).cards.map(({ id }) => id);
  bot = wholeBot(harness);
});

/** Sends it, and holds the answer to the rules that hold for every answer. */
async function send(body: object): Promise<void> {
  const before = bot.log.entries().length;
  const acks = await bot.push(body);
  await bot.app.idle();
  expect(acks).toHaveLength(1);
  const bad = bot.log
    .entries()
    .slice(before)
    .filter(({ level }) => level === 'error' || level === 'fatal');
  expect(bad).toEqual([]);
  const shown = [...acks, ...platform.calls.map(({ args }) => args), ...platform.responses];
  platform.calls.length = 0;
  platform.responses.length = 0;
  const cardLinks = (await harness.records(sprintId)).cards.flatMap(({ link }) => link ?? []);
  expect(harmIn(shown, cardLinks)).toEqual([]);
}

async function always<T>(arbitrary: fc.Arbitrary<T>, attack: (input: T) => Promise<void>): Promise<void> {
  await fc.assert(fc.asyncProperty(arbitrary, attack), search(50));
  expect(await unwantedInDatabase()).toEqual([]);
}

/** Everything in the database that nobody may be shown, as `table: text`. */
async function unwantedInDatabase(): Promise<string[]> {
  const found: string[] = [];
  const tables = ['teams', 'members', 'sprints', 'cards', 'answers', 'card_changes', 'plan_drafts', 'posts'];
  for (const table of tables) {
    const rows = await rowsOf<{ row: unknown }>(
      harness.database,
      sql`select to_jsonb(t) as row from loadline.${sql.identifier(table)} t`,
    );
    for (const { row } of rows) {
      for (const text of textsIn(row))
        if (UNWANTED.test(text)) found.push(`${table}: ${JSON.stringify(text)}`);
    }
  }
  return found;
}

const words = hostileText(40_000);

describe('anything typed', () => {
  it('after the command, the bot answers', async () => {
    const word = fc.constantFrom('', 'nonsense', ...COMMANDS.map((command) => command.word));
    await always(fc.tuple(word, words), async ([command, rest]) => {
      await send(commandBody(`${command} ${rest}`));
    });
  });

  it('after a word of the command with what it takes, the bot answers', async () => {
    const start = fc.constantFrom('pull ', 'drop 1 ', 'answer 2: ', 'value Harbour 12: ', 'take ', 'range ');
    const end = fc.constantFrom(', 3, @ana', ' 3', ': 3', '');
    await always(fc.tuple(start, hostileText(150), end), async ([before, text, after]) => {
      await send(commandBody(`${before}${text}${after}`));
    });
  });

  it('as an answer in words, the bot answers', async () => {
    await always(words, (text) => send(wordsBody(text)));
  });
});

/** JSON as a button or a form would hold it, now and then with something else in its place. */
function forged(): fc.Arbitrary<string> {
  const id = fc.oneof(fc.constantFrom(teamId, sprintId, CHANNEL.channelId, ...cardIds), hostileText(80));
  const day = fc.constantFrom('2026-11-03', '2026-11-04', '2026-02-30', '0000-00-00', '9999-99-99', '\u0000');
  const answer = fc.tuple(
    fc.oneof(fc.constantFrom(...cardIds), id),
    hostileText(20),
    fc.oneof(fc.constantFrom('0', '7', '3'), hostileText(20)),
    hostileText(20),
    hostileText(600),
  );
  const amount = fc.oneof(fc.double(), fc.constantFrom(-1, 0, 1e9, 1e308));
  const question = fc.oneof(
    fc.record({ about: fc.constantFrom('odds', 'history', '__proto__') }),
    fc.record({ about: fc.constant('range'), startsOn: day, endsOn: day, awayDays: amount }),
    fc.record({ about: fc.constant('forecast'), backlogPoints: amount, growthPoints: amount }),
  );
  const value = fc.oneof(
    fc.record({ sprintId: id }),
    fc.record({ sprintId: id, day }),
    fc.record({ channelId: id }),
    fc.record({ channelId: id, replyTo: id }),
    fc.record({ teamId: id, replyTo: id }),
    fc.record({ sprintId: id, day, replyTo: id }),
    fc.record({ teamId: id, question }),
    fc.record({ sprintId: id, day, answers: fc.array(answer, { maxLength: 3 }) }),
    fc.record({ teamId: id, round: fc.integer(), files: fc.array(fc.record({ id, name: id })), seen: id }),
  );
  return fc.oneof(
    { weight: 6, arbitrary: value.map((held) => JSON.stringify(held)) },
    { weight: 1, arbitrary: fc.json().map((text) => text.slice(0, 2_000)) },
    { weight: 1, arbitrary: hostileText(2_000) },
    { weight: 1, arbitrary: fc.constantFrom('['.repeat(2_000), '{"__proto__":{"sprintId":"x"}}', 'null') },
  );
}

describe('anything in a button', () => {
  it('the bot answers', async () => {
    const action = fc.oneof(
      { weight: 9, arbitrary: fc.constantFrom(...[...BUTTONS.keys()]) },
      { weight: 1, arbitrary: fc.constantFrom('__proto__', 'constructor', 'x') },
    );
    await always(fc.tuple(action, forged()), async ([actionId, value]) => {
      await send(pressBody(actionId, value));
    });
  });
});

/** What the platform may hold of a field, and what only a forger sends. */
function entered(): fc.Arbitrary<object> {
  const text = hostileText();
  return fc.oneof(
    { weight: 8, arbitrary: fc.record({ value: text }) },
    fc.record({ selected_date: text }),
    fc.record({ selected_time: text }),
    fc.record({ selected_option: fc.record({ value: text }) }),
    fc.record({ selected_options: fc.array(fc.record({ value: text }), { maxLength: 3 }) }),
    fc.record({ selected_users: fc.array(fc.oneof(text, fc.constantFrom(...Object.values(PEOPLE)))) }),
    fc.record({ value: fc.jsonValue(), selected_option: fc.jsonValue(), selected_users: fc.jsonValue() }),
    fc.record({
      files: fc.array(fc.oneof(fc.jsonValue(), fc.record({ id: text, name: text, size: fc.double() }))),
    }),
  );
}

/** Fields that make most forms nearly right, so that the attack gets further than the first check. */
function nearlyRight(): Record<string, object> {
  const [first] = cardIds as [string];
  return {
    name: { value: 'Harbour 13' },
    timeZone: { value: 'Europe/Lisbon' },
    promptAt: { selected_time: '09:15' },
    workingDays: { selected_options: [{ value: '1' }] },
    memberIds: { selected_users: [PEOPLE.ana, PEOPLE.ben] },
    facilitatorIds: { selected_users: [PEOPLE.ana] },
    closesAt: { selected_time: '17:00' },
    startsOn: { selected_date: '2026-11-16' },
    endsOn: { selected_date: '2026-11-27' },
    goal: { value: 'Ferries' },
    cards: { value: 'Paint the buoys, 3, @ana' },
    title: { value: 'Paint the buoys' },
    estimate: { value: '3' },
    reference: { selected_option: { value: first } },
    recordedValue: { value: '12' },
    [answerField('left', first)]: { value: '4' },
  };
}

function fieldsOf(callbackId: string): string[] {
  const form = FORMS.get(callbackId);
  const own = Object.values(form?.fields ?? {});
  const [first] = cardIds as [string];
  return form?.name === 'answer' ? [...own, ...ANSWER_PARTS.map((part) => answerField(part, first))] : own;
}

/** What the bot itself puts into the form. */
function contextOf(callbackId: string): object {
  if (callbackId === 'setup-form') return { channelId: CHANNEL.channelId };
  if (callbackId === 'answer-form') return { sprintId, day: '2026-11-04' };
  if (callbackId === 'import-form') return { teamId, round: 1, files: [] };
  const ofSprint: string[] = ['pull-form', 'drop-form', 'close-form', 'cancel-form'];
  return ofSprint.includes(callbackId) ? { sprintId } : { teamId };
}

describe('anything in a form', () => {
  it.each([...FORMS.keys()])('the bot answers: %s', async (callbackId) => {
    const fields = fieldsOf(callbackId);
    const context = fc.oneof(
      { weight: 9, arbitrary: fc.constant(JSON.stringify(contextOf(callbackId))) },
      { weight: 1, arbitrary: forged() },
    );
    const attacked = fc.tuple(fc.constantFrom(...fields, '__proto__'), entered());
    const values = fc.array(attacked, { minLength: 1, maxLength: 2 });
    await always(fc.tuple(context, values), async ([metadata, attacks]) => {
      const state = { ...nearlyRight(), ...Object.fromEntries(attacks) };
      const blocks = fields.map((block_id) => ({ type: 'input', block_id }));
      const held = Object.entries(state).map(([field, value]) => [field, { [INPUT]: value }]);
      await send(
        formBody({
          id: 'V1',
          callback_id: callbackId,
          private_metadata: metadata.slice(0, 3_000),
          blocks,
          state: { values: Object.fromEntries(held) },
        }),
      );
    });
  });
});
