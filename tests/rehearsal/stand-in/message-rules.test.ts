/** Rules of blocks in messages beyond sizes. Source: docs.slack.dev/reference/block-kit. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { actions, button, image, input, option, section, select, typed } from './block-samples.ts';
import { chars, mrkdwn, plain, refusal, type Scene, startScene } from './fixture.ts';

let scene: Scene;
beforeAll(async () => {
  scene = await startScene();
});
afterAll(() => scene.stop());

const post = (blocks: unknown) =>
  scene.client.chat.postMessage({ channel: 'C1TEAM0000', text: 'fallback', blocks: blocks as never });

const rules: [rule: string, blocks: unknown[], says: string][] = [
  [
    'an unknown kind of block',
    [{ type: 'chart' }],
    'unsupported or missing type [json-pointer:/blocks/0/type]',
  ],
  [
    'an unknown kind of element',
    [actions({ type: 'slider' })],
    'unsupported or missing type [json-pointer:/blocks/0/elements/0/type]',
  ],
  [
    'a property that the block does not have',
    [{ type: 'divider', colour: 'red' }],
    'invalid additional property: colour [json-pointer:/blocks/0]',
  ],
  [
    'emoji marks on formatted text',
    [section({ text: { ...mrkdwn('a'), emoji: true } })],
    'invalid additional property: emoji',
  ],
  [
    'formatted text where only plain text may be',
    [{ type: 'header', text: mrkdwn('a') }],
    'must be one of: plain_text',
  ],
  ['an empty text', [section({ text: plain('') })], 'must be more than 0 characters'],
  ['a section of nothing', [{ type: 'section' }], 'must define `text` or `fields`'],
  ['an actions block of nothing', [actions()], 'must provide at least 1 items'],
  ['a header without text', [{ type: 'header' }], 'missing required field: text [json-pointer:/blocks/0]'],
  [
    'a picture without alternative text',
    [{ type: 'image', slack_file: { id: 'F404' } }],
    'missing required field: alt_text',
  ],
  [
    'a picture from nowhere',
    [{ type: 'image', alt_text: 'a' }],
    'must define exactly one of `image_url` or `slack_file`',
  ],
  [
    'a picture from two places',
    [image({ slack_file: { id: 'F1' } })],
    'must define exactly one of `image_url` or `slack_file`',
  ],
  [
    'a picture file that was never uploaded',
    [{ type: 'image', alt_text: 'a', slack_file: { id: 'F404' } }],
    'invalid slack file [json-pointer:/blocks/0/slack_file]',
  ],
  [
    'the same block_id twice',
    [
      { type: 'divider', block_id: 'a' },
      { type: 'divider', block_id: 'a' },
    ],
    '`block_id` "a" already exists',
  ],
  [
    'the same action_id twice in one block',
    [actions(button({ action_id: 'a' }), button({ action_id: 'a' }))],
    '`action_id` "a" already exists',
  ],
  [
    'a first choice that is not on offer',
    [actions(select({ initial_option: option({ value: '8' }) }))],
    'initial options must exactly match',
  ],
  ['a typed input outside an input block', [actions(typed())], 'unsupported or missing type'],
  ['a button in an input block', [input(button())], 'unsupported or missing type'],
  [
    'a day that does not exist',
    [actions({ type: 'datepicker', initial_date: '2026-02-30' })],
    '[json-pointer:/blocks/0/elements/0/initial_date]',
  ],
  ['a link that is no web address', [actions(button({ url: 'javascript:alert(1)' }))], 'must be a valid url'],
  [
    'a picture beside text that was never uploaded',
    [section({ accessory: { type: 'image', alt_text: 'a', slack_file: { id: 'F404' } } })],
    'invalid slack file',
  ],
  // The platform takes it; Loadline never sends it.
  ['rich text', [{ type: 'rich_text', elements: [] }], 'unsupported or missing type'],
];

test.each(rules)('refused: %s', async (_rule, blocks, says) => {
  const { error, messages } = await refusal(post(blocks));
  expect(error).toBe('invalid_blocks');
  expect(messages.join('\n')).toContain(says);
});

test('action ids may repeat in different blocks', async () => {
  const answer = await post([actions(button({ action_id: 'a' })), actions(button({ action_id: 'a' }))]);
  expect(answer.ok).toBe(true);
});

test('every problem is reported at once', async () => {
  const { messages } = await refusal(post([{ type: 'header' }, { type: 'chart' }, section({ extra: 1 })]));
  expect(messages).toHaveLength(3);
});

test('a posted text is cut at 40,000 characters, a changed one refused above 4,000', async () => {
  const { chat } = scene.client;
  const longest = await chat.postMessage({ channel: 'C1TEAM0000', text: chars(40_001) });
  expect(longest.message?.text).toHaveLength(40_000);
  const { ts } = await chat.postMessage({ channel: 'C1TEAM0000', text: chars(4001) });
  const change = (length: number) =>
    chat.update({ channel: 'C1TEAM0000', ts: String(ts), text: chars(length) });
  expect((await change(4000)).ok).toBe(true);
  expect((await refusal(change(4001))).error).toBe('msg_too_long');
  const aside = { channel: 'C1TEAM0000', user: 'U1ANA0000' };
  expect((await refusal(chat.postEphemeral({ ...aside, text: chars(4001) }))).error).toBe('msg_too_long');
});

test('a message of nothing is refused', async () => {
  expect((await refusal(scene.client.chat.postMessage({ channel: 'C1TEAM0000', text: ' ' }))).error).toBe(
    'no_text',
  );
});

test('blocks that are no list are refused as a format', async () => {
  expect((await refusal(post('{"type":"divider"}'))).error).toBe('invalid_blocks_format');
  expect((await refusal(post('[{'))).error).toBe('invalid_blocks_format');
});
