/**
 * The answer to a form is lost on its way back, and the person sends the same form off again: the platform gives that
 * another trigger, another time and another hash.
 */
import { afterEach, beforeEach, expect, it } from 'vitest';
import { requestSignature } from '../../src/rehearsal/stand-in/bot-link.ts';
import type { Database } from '../../src/store/database.ts';
import { emptyDatabase } from '../support/databases.ts';
import { ManyWorkspacesBot, NORTH, SIGNING_SECRET } from '../support/many-workspaces-bot.ts';
import { ANA, type Belongings, CHANNEL_ID, furnish, NORTH_MARK } from './two-workspaces.ts';

let database: Database;
let bot: ManyWorkspacesBot;
let north: Belongings;
beforeEach(async () => {
  database = await emptyDatabase('Postgres');
  bot = await ManyWorkspacesBot.start(database, '2026-10-19T06:00:00Z');
  await bot.install(NORTH);
  north = await furnish({ deps: bot.deps, database, pass: (to) => bot.pass(to) }, NORTH, NORTH_MARK);
});
afterEach(() => bot.stop());

type View = NonNullable<ReturnType<ReturnType<ManyWorkspacesBot['platform']['standIn']>['viewOf']>>;

let sent = 0;
async function sendOff(view: View, values: object): Promise<string> {
  sent += 1;
  const payload = {
    type: 'view_submission',
    user: { id: ANA },
    team: { id: NORTH },
    trigger_id: `trigger-${sent}`,
    view: { ...view, hash: `${sent}.hash`, state: { values } },
  };
  const body = new URLSearchParams({ payload: JSON.stringify(payload) }).toString();
  const seconds = Math.floor(Date.now() / 1_000);
  const response = await fetch(`${bot.url}/slack/events`, {
    method: 'POST',
    headers: {
      'content-type': 'application/x-www-form-urlencoded',
      'x-slack-request-timestamp': String(seconds),
      'x-slack-signature': requestSignature(SIGNING_SECRET, seconds, body),
    },
    body,
  });
  expect(response.status).toBe(200);
  return response.text();
}

async function openedForm(words: string): Promise<View> {
  const standIn = bot.platform.standIn(NORTH);
  await standIn.command(ANA, CHANNEL_ID, `/loadline ${words}`);
  await bot.settle();
  const view = standIn.viewOf(ANA);
  if (!view) throw new Error('no form was opened');
  return structuredClone(view);
}

const cardTitles = async (): Promise<string[]> =>
  (await bot.deps.store.read((read) => read.recordsOf(north.sprintId))).cards.map(({ title }) => title);

const fieldOf = (view: View, block: string, typed: string) => {
  const { element } = (view.blocks as { block_id?: string; element?: { action_id: string } }[]).find(
    ({ block_id }) => block_id === block,
  ) as { element: { action_id: string } };
  return { [block]: { [element.action_id]: { type: 'plain_text_input', value: typed } } };
};

it('a pull that is sent off again pulls one card', async () => {
  const view = await openedForm('pull');
  const values = fieldOf(view, 'cards', 'Mend the fender, 2');
  await sendOff(view, values);
  const again = await sendOff(view, values);
  await bot.settle();
  expect((await cardTitles()).filter((title) => title === 'Mend the fender')).toHaveLength(1);
  expect(JSON.parse(again)).toEqual({ response_action: 'clear' });
});

it('two at the same time pull one card', async () => {
  const view = await openedForm('pull');
  const values = fieldOf(view, 'cards', 'Mend the fender, 2');
  await Promise.all([sendOff(view, values), sendOff(view, values)]);
  await bot.settle();
  expect((await cardTitles()).filter((title) => title === 'Mend the fender')).toHaveLength(1);
});

it('a form that was refused can be corrected and sent off, and another form pulls another card', async () => {
  const view = await openedForm('pull');
  expect(await sendOff(view, fieldOf(view, 'cards', 'Mend the fender, lots'))).toContain('errors');
  await sendOff(view, fieldOf(view, 'cards', 'Mend the fender, 2'));
  const next = await openedForm('pull');
  expect(next.id).not.toBe(view.id);
  await sendOff(next, fieldOf(next, 'cards', 'Mend the fender, 2'));
  await bot.settle();
  expect((await cardTitles()).filter((title) => title === 'Mend the fender')).toHaveLength(2);
});
