/**
 * Nobody of one workspace reaches anything of another by any request that the platform can send: command, button, form,
 * words, home page, file. Everything in North has the same ids as in South, and the intruder knows all of North's own.
 * Buttons, forms and words are taken from the lists that the bot itself works with, so that none is left out.
 */

import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BUTTONS, COMMANDS, FORMS } from '../../src/slack/commands/commands.ts';
import { ACTIONS, ANSWER_PARTS, answerField, INPUT } from '../../src/slack/ids.ts';
import { PULL_FIELDS } from '../../src/slack/views/cards/card-forms.ts';
import type { Database } from '../../src/store/database.ts';
import { emptyDatabase } from '../support/databases.ts';
import { ManyWorkspacesBot, NORTH, SOUTH } from '../support/many-workspaces-bot.ts';
import {
  ANA,
  type Belongings,
  CHANNEL_ID,
  furnish,
  NORTH_MARK,
  rowsAbout,
  SOUTH_MARK,
  TODAY,
} from './two-workspaces.ts';

let database: Database;
let bot: ManyWorkspacesBot;
let north: Belongings;
let south: Belongings;
let northBefore: string[];
let stolenFileId: string;

beforeAll(async () => {
  database = await emptyDatabase('Postgres');
  bot = await ManyWorkspacesBot.start(database, '2026-10-19T06:00:00Z');
  for (const teamId of [NORTH, SOUTH]) await bot.install(teamId);
  const surroundings = { deps: bot.deps, database, pass: (to: string) => bot.pass(to) };
  north = await furnish(surroundings, NORTH, NORTH_MARK);
  south = await furnish(surroundings, SOUTH, SOUTH_MARK);
  await bot.settle();
  const file = Buffer.from(`${NORTH_MARK} file`);
  stolenFileId = bot.platform.standIn(NORTH).pickFile(ANA, 'sprints.csv', file);
  northBefore = await rowsAbout(database, north);
}, 180_000);
afterAll(() => bot.stop());

/** Everything that can be seen in South. */
function seenInSouth(): string {
  const standIn = bot.platform.standIn(SOUTH);
  const people = [ANA, 'U0BEN', 'U0CHI'];
  return JSON.stringify([
    standIn.allPosts(),
    people.map((user) => [
      standIn.viewOf(user),
      standIn.homeOf(user),
      standIn.messagesOf(user, CHANNEL_ID),
      standIn.messagesOf(user, 'dm'),
    ]),
  ]);
}

/** Sends the requests as South's, and looks for anything of North that was touched or shown. */
async function expectNothingOfNorth(bodies: readonly object[]): Promise<void> {
  const callsBefore = bot.platform.calls.length;
  const answers = await Promise.all(bodies.map((body) => bot.send({ team_id: SOUTH, ...body })));
  expect(answers.map(({ status }) => status)).toEqual(bodies.map(() => 200));
  expect(answers.map(({ text }) => text).join()).not.toContain(NORTH_MARK);
  await bot.settle();
  expect(bot.platform.calls.slice(callsBefore).filter(({ teamId }) => teamId !== SOUTH)).toEqual([]);
  expect(seenInSouth()).not.toContain(NORTH_MARK);
  expect(await rowsAbout(database, north)).toEqual(northBefore);
}

let requests = 0;
const trigger = (): string => {
  requests += 1;
  return `trigger-${requests}`;
};

const person = (workspaceId: string) => ({ user: { id: ANA }, team: { id: workspaceId } });

function press(action_id: string, value: unknown, channelId: string, workspaceId = SOUTH): object {
  return {
    type: 'block_actions',
    ...person(workspaceId),
    trigger_id: trigger(),
    channel: { id: channelId },
    actions: [{ type: 'button', action_id, block_id: 'b', value: JSON.stringify(value) }],
  };
}

/** Every value that some button may carry, with North's ids in it. */
function stolenValues({ sprintId, closedSprintId, teamId, bodyId, cardIds }: Belongings): object[] {
  const answers = cardIds.map((cardId) => [cardId, '', '1', '', 'stolen']);
  return [
    { sprintId },
    { sprintId: closedSprintId },
    { bodyId },
    { sprintId, day: TODAY },
    { sprintId, day: TODAY, answers },
    { sprintId: south.sprintId, day: TODAY, answers },
    { channelId: CHANNEL_ID },
    ...[
      { about: 'odds' },
      { about: 'range' },
      { about: 'history' },
      { about: 'kept' },
      { about: 'forecast', backlogPoints: 20, growthPoints: 0 },
    ].map((question) => ({ teamId, question })),
  ];
}

describe('both workspaces', () => {
  it('have posts, each its own, and nothing of the other', () => {
    for (const [teamId, mark, other] of [
      [NORTH, NORTH_MARK, SOUTH_MARK],
      [SOUTH, SOUTH_MARK, NORTH_MARK],
    ] as const) {
      const texts = [...bot.textsIn(teamId, CHANNEL_ID), ...bot.textsIn(teamId, 'dm')];
      expect(texts.filter((text) => text.includes(mark)).length).toBeGreaterThan(3);
      expect(texts.filter((text) => text.includes(other))).toEqual([]);
    }
  });

  it('have people of their own, though their ids are the same', async () => {
    const zones = await Promise.all(
      [NORTH, SOUTH].map(async (teamId) => (await bot.deps.directory.profile(teamId, ANA)).timeZone),
    );
    expect(zones).toEqual(['Etc/UTC', 'Asia/Tokyo']);
  });

  it('may send requests with the same trigger or event id: neither is a repetition of the other', async () => {
    const texts = (teamId: string) => bot.textsIn(teamId, 'dm').length;
    for (const teamId of [NORTH, SOUTH]) {
      const before = texts(teamId);
      await bot.send({
        type: 'event_callback',
        team_id: teamId,
        event_id: 'Ev-same',
        event: { type: 'message', channel: 'D0ANA', channel_type: 'im', user: ANA, ts: '1.1', text: 'help' },
      });
      expect(texts(teamId)).toBe(before + 1);
    }
  });
});

describe('a form that is sent off with the same trigger in both workspaces', () => {
  it('is done in both', async () => {
    for (const { workspaceId, sprintId } of [north, south]) {
      const cardsOf = async () =>
        (await bot.deps.store.read((read) => read.recordsOf(sprintId))).cards.length;
      const before = await cardsOf();
      await bot.send({
        type: 'view_submission',
        ...person(workspaceId),
        trigger_id: 'trigger-same',
        view: {
          id: 'V0000001AB',
          callback_id: 'pull-form',
          private_metadata: JSON.stringify({ sprintId }),
          state: {
            values: {
              [PULL_FIELDS.cards]: { [INPUT]: { value: `Repair, 1, <@${ANA}>` } },
            },
          },
        },
      });
      expect(await cardsOf()).toBe(before + 1);
    }
    // The prompts that the new cards brought up to date are on their way.
    await bot.settle();
    northBefore = await rowsAbout(database, north);
  });
});

describe('nothing of the other workspace comes of', () => {
  it.each([...BUTTONS.keys()])('the button %s with stolen ids', { timeout: 60_000 }, async (action) => {
    await expectNothingOfNorth(
      stolenValues(north).map((value, n) => press(action, value, n % 2 === 0 ? CHANNEL_ID : 'D0ANA')),
    );
  });

  it.each([...FORMS.keys()])('the form %s with stolen ids', { timeout: 60_000 }, async (callback_id) => {
    const { sprintId, closedSprintId, teamId, cardIds, cardKey } = north;
    const contexts = [
      { channelId: CHANNEL_ID, replyTo: north.prompt.channelId },
      { teamId },
      { teamId: south.teamId },
      { sprintId },
      { sprintId, day: TODAY },
      { sprintId: south.sprintId, day: TODAY },
      { teamId, round: 1, files: [{ id: stolenFileId, name: 'sprints.csv' }] },
      { teamId: south.teamId, round: 1, files: [{ id: stolenFileId, name: 'sprints.csv' }] },
      { kind: 'erase' },
      {},
    ];
    const typed = [closedSprintId, cardKey];
    const bodies = contexts.flatMap((context) =>
      typed.map((text) => ({
        type: 'view_submission',
        ...person(SOUTH),
        trigger_id: trigger(),
        view: {
          id: 'V0000001AB',
          callback_id,
          private_metadata: JSON.stringify(context),
          state: { values: enteredEverywhere(text, cardIds) },
        },
      })),
    );
    await expectNothingOfNorth(bodies);
  });

  it.each(COMMANDS.map(({ word }) => word))('the word %s', { timeout: 60_000 }, async (word) => {
    const { sprintId, teamId, cardIds, cardKey } = north;
    const rests = ['', cardKey, `${cardKey}: 1`, cardIds[0], sprintId, teamId].map((rest) =>
      `${word} ${rest}`.trim(),
    );
    await expectNothingOfNorth(
      rests.flatMap((text) => [
        {
          command: '/loadline',
          text,
          team_id: SOUTH,
          user_id: ANA,
          channel_id: CHANNEL_ID,
          trigger_id: trigger(),
        },
        wordsFrom(text, {}),
      ]),
    );
  });

  it('words under the other’s prompt', async () => {
    const { channelId, ts } = north.prompt;
    await expectNothingOfNorth(
      ['0', '1: 0', `${north.cardKey}: 0`].map((text) =>
        wordsFrom(text, { channel: channelId, thread_ts: ts }),
      ),
    );
  });

  it('the home page', async () => {
    await expectNothingOfNorth([
      {
        type: 'event_callback',
        event_id: 'Ev-home',
        event: { type: 'app_home_opened', user: ANA, tab: 'home' },
      },
    ]);
  });

  it('a file of the other, by its id or its address', async () => {
    const address = `${bot.platform.url}/files/${stolenFileId}/download/sprints.csv`;
    const values = (file: object) => ({
      files: { [INPUT]: { type: 'file_input', files: [file] } },
    });
    const file = { id: stolenFileId, name: 'sprints.csv', size: 12, mimetype: 'text/csv' };
    const bodies = [file, { ...file, url_private_download: address }].map((one) => ({
      type: 'view_submission',
      ...person(SOUTH),
      trigger_id: trigger(),
      view: {
        id: 'V0000001AB',
        callback_id: 'import-form',
        private_metadata: JSON.stringify({ teamId: south.teamId, round: 1, files: [] }),
        state: { values: values(one) },
      },
    }));
    await expectNothingOfNorth(bodies);
    // It can be read by whom it belongs to, so what was refused was not a file that is nowhere.
    expect(bot.platform.standIn(NORTH).fileOf(stolenFileId)?.toString()).toBe(`${NORTH_MARK} file`);
  });

  it('a request that names both workspaces', async () => {
    const both = {
      ...press(ACTIONS.shareStatus, { sprintId: north.sprintId }, CHANNEL_ID),
      team: { id: NORTH },
    };
    await expectNothingOfNorth([both]);
  });
});

describe('the very same requests', () => {
  const cases: [what: string, body: () => object][] = [
    ['a button', () => press(ACTIONS.shareStatus, { sprintId: north.sprintId }, CHANNEL_ID, NORTH)],
    [
      'another button',
      () =>
        press(ACTIONS.shareAdvice, { teamId: north.teamId, question: { about: 'range' } }, CHANNEL_ID, NORTH),
    ],
    [
      'a form',
      () => ({
        type: 'view_submission',
        ...person(NORTH),
        trigger_id: trigger(),
        view: {
          id: 'V0000001AB',
          callback_id: 'cancel-form',
          private_metadata: JSON.stringify({ sprintId: north.sprintId }),
          state: { values: enteredEverywhere(north.cardKey, north.cardIds) },
        },
      }),
    ],
  ];

  it.each(cases)('do what they say where their ids belong: %s', async (_what, body) => {
    const before = await rowsAbout(database, north);
    await bot.send({ team_id: NORTH, ...body() });
    expect(await rowsAbout(database, north)).not.toEqual(before);
  });
});

function wordsFrom(text: string, more: object): object {
  return {
    type: 'event_callback',
    event_id: `Ev-${trigger()}`,
    event: {
      type: 'message',
      channel: 'D0ANA',
      channel_type: 'im',
      user: ANA,
      ts: '1793692800.000100',
      text,
      ...more,
    },
  };
}

/** The same in every field of every form. */
function enteredEverywhere(text: string, cardIds: readonly string[]): object {
  const entered = {
    value: text,
    selected_option: { value: text },
    selected_options: [{ value: text }, ...cardIds.map((value) => ({ value }))],
    selected_users: [ANA],
    selected_date: '2026-11-16',
    selected_time: '10:00',
  };
  const names = [...FORMS.values()].flatMap(({ fields = {} }) => Object.values(fields));
  const cardFields = cardIds.flatMap((cardId) => ANSWER_PARTS.map((part) => answerField(part, cardId)));
  return Object.fromEntries([...names, ...cardFields].map((name) => [name, { [INPUT]: entered }]));
}
