/** A message becomes a card: the shortcut in its menu. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/app/refusal.ts';
import { titleOf } from '../../../src/slack/commands/pull-message.ts';
import { SHORTCUTS } from '../../../src/slack/ids.ts';
import { type BotUnderTest, botUnderTest, sentForm } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import { CHANNEL_ID, MIRA_ID, team, WORKSPACE_ID } from '../support/samples.ts';
import { callsOf } from '../support/spy-use-cases.ts';

const platform = new FakePlatform();
const LINK = 'https://harbour.slack.example/archives/C0PIER/p1762248000000100?thread_ts=1.2&cid=C0PIER';
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

interface Block {
  block_id?: string;
  element?: { initial_value?: string };
}

async function choose(
  message: object,
  more: object = {},
  bot = botUnderTest(platform),
): Promise<BotUnderTest> {
  await bot.push({
    type: 'message_action',
    callback_id: SHORTCUTS.pullMessageIn,
    trigger_id: 'trigger-1',
    team: { id: WORKSPACE_ID },
    user: { id: MIRA_ID },
    channel: { id: CHANNEL_ID, name: 'pier' },
    message_ts: '1762248000.000100',
    response_url: platform.responseUrl,
    message: { type: 'message', user: 'U0OLE', ts: '1762248000.000100', ...message },
    ...more,
  });
  await bot.app.idle();
  return bot;
}

const shown = () => platform.callsTo('views.open')[0]?.view as { callback_id?: string; blocks: Block[] };
const begun = (field: string) =>
  shown().blocks.find(({ block_id }) => block_id === field)?.element?.initial_value;
const linked = () => platform.answer('chat.getPermalink', { permalink: LINK });

describe('the shortcut on a message', () => {
  it('opens the form with a line of the first words and the message’s address, which lacks its estimate only', async () => {
    linked();
    const bot = await choose({ text: '*Fix* the <https://t.example|tide table>\nIt is wrong since May.' });
    expect(platform.callsTo('chat.getPermalink')).toEqual([
      { channel: CHANNEL_ID, message_ts: '1762248000.000100' },
    ]);
    expect(begun('cards')).toBe(`Fix the tide table\t?\t${LINK}`);
    expect(callsOf(bot.useCases)).toContainEqual(['pullForm', { channelId: CHANNEL_ID, isDirect: false }]);
    await bot.submit(sentForm(shown()));
    expect(callsOf(bot.useCases)).toContainEqual([
      'pullCards',
      { sprintId: 'sprint-1', text: `Fix the tide table\t?\t${LINK}` },
    ]);
  });

  it.each(['channel_not_found', 'message_not_found', 'internal_error'])(
    'says so and goes on when the platform gives no address: %s',
    async (code) => {
      platform.refuse('chat.getPermalink', code);
      await choose({ text: 'Fix the tide table' });
      expect(begun('cards')).toBe('Fix the tide table\t?');
      expect(JSON.stringify(shown())).toContain('The message’s address isn’t known here');
    },
  );

  it('elsewhere asks for which of several teams, and keeps title and link', async () => {
    linked();
    const bot = botUnderTest(platform);
    const found = await bot.useCases.overview(
      { workspaceId: WORKSPACE_ID, userId: MIRA_ID },
      {
        channelId: 'direct',
        isDirect: true,
      },
    );
    const [one] = found.teams;
    if (!one) throw new Error('no team');
    const other = { ...one, team: { ...team, id: 'team-2', name: 'Lighthouse', channelId: 'C0LIGHT' } };
    bot.useCases.overview.mockResolvedValue({ ...found, teams: [one, other] });
    await choose({ text: 'Fix the tide table' }, { channel: { id: 'C0ELSEWHERE' } }, bot);
    expect(shown().callback_id).toBe('pull-team-form');
    const picked = { type: 'static_select', selected_option: { value: 'C0LIGHT' } };
    const acks = await bot.submit(sentForm(shown(), { channelId: picked }));
    expect(JSON.stringify(acks)).toContain('Fix the tide table');
    expect(JSON.stringify(acks)).toContain(LINK);
    expect(callsOf(bot.useCases)).toContainEqual(['pullForm', { channelId: 'C0LIGHT', isDirect: false }]);
  });

  it('says in a form why nothing can be pulled in', async () => {
    linked();
    const bot = botUnderTest(platform);
    bot.useCases.pullForm.mockRejectedValue(new Refusal('no-sprint-running', {}));
    await choose({ text: 'Fix it' }, {}, bot);
    expect(JSON.stringify(shown())).toContain('No sprint is running');
  });

  it('is for nobody without a team', async () => {
    linked();
    const bot = botUnderTest(platform);
    bot.useCases.overview.mockResolvedValue({ teams: [], canSetUpHere: false } as never);
    await choose({ text: 'Fix it' }, {}, bot);
    expect(shown().callback_id ?? '').toBe('');
    expect(platform.callsTo('views.open')).toHaveLength(1);
  });
});

describe('the title of a message', () => {
  const names = new Map([['U0OLE', 'Ole']]);
  it.each([
    ['a mention', { text: 'Ask <@U0OLE> about &lt;tides&gt; &amp; more' }, 'Ask Ole about <tides> & more'],
    ['a quoted first line', { text: '\n&gt; _Low_ water\nmore' }, 'Low water'],
    ['a file alone', { text: '', files: [{ id: 'F1', name: 'tides.csv', title: 'Tides' }] }, 'tides.csv'],
    [
      'blocks of an app',
      { blocks: [{ type: 'section', text: { type: 'mrkdwn', text: '*Build* failed' } }], bot_id: 'B1' },
      'Build failed',
    ],
    [
      'an attachment of an app',
      { attachments: [{ fallback: 'Pump 3 is down', color: 'red' }] },
      'Pump 3 is down',
    ],
    ['nothing that can be read', { blocks: [{ type: 'divider' }] }, ''],
    ['a very long line', { text: 'tide '.repeat(500) }, `${'tide '.repeat(500).slice(0, 199).trimEnd()}…`],
  ])('is made of %s', (_what, message, title) => {
    expect(titleOf(message as never, names, 200)).toBe(title);
  });
});
