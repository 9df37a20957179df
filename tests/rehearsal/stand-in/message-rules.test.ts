/** Rules of blocks in messages beyond sizes. Source: docs.slack.dev/reference/block-kit. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { actions, button, input, option, section, select, typed } from './block-samples.ts';
import { chars, mrkdwn, plain, refusal, type Scene, startScene } from './fixture.ts';

let scene: Scene;
beforeAll(async () => {
  scene = await startScene();
});
afterAll(() => scene.stop());

const post = (blocks: unknown) =>
  scene.client.chat.postMessage({ channel: 'C1TEAM', text: 'fallback', blocks: blocks as never });

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
  ['a picture from nowhere', [{ type: 'image', alt_text: 'a' }], 'missing required field: slack_file'],
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
  ['an input, which belongs into a form', [input(typed())], 'unsupported or missing type'],
  ['a typed input among buttons', [actions(typed())], 'unsupported or missing type'],
  // The platform has more than Loadline sends; the page could not show it.
  ['a menu among buttons', [actions(select({ initial_option: option() }))], 'unsupported or missing type'],
  ['rich text', [{ type: 'rich_text', elements: [] }], 'unsupported or missing type'],
  [
    'something beside the text of a section',
    [section({ accessory: button() })],
    'invalid additional property: accessory',
  ],
  [
    'a picture from the web',
    [{ type: 'image', alt_text: 'a', image_url: 'https://example.com/a.png', slack_file: { id: 'F404' } }],
    'invalid additional property: image_url',
  ],
  [
    'a button that opens a link',
    [actions(button({ url: 'https://example.com' }))],
    'invalid additional property: url',
  ],
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
  const longest = await chat.postMessage({ channel: 'C1TEAM', text: chars(40_001) });
  expect(longest.message?.text).toHaveLength(40_000);
  const { ts } = await chat.postMessage({ channel: 'C1TEAM', text: chars(4001) });
  const change = (length: number) => chat.update({ channel: 'C1TEAM', ts: String(ts), text: chars(length) });
  expect((await change(4000)).ok).toBe(true);
  expect((await refusal(change(4001))).error).toBe('msg_too_long');
  const aside = { channel: 'C1TEAM', user: 'U1ANA' };
  expect((await refusal(chat.postEphemeral({ ...aside, text: chars(4001) }))).error).toBe('msg_too_long');
});

test('a message of nothing is refused', async () => {
  expect((await refusal(scene.client.chat.postMessage({ channel: 'C1TEAM', text: ' ' }))).error).toBe(
    'no_text',
  );
});

test('blocks that are no list are refused as a format', async () => {
  expect((await refusal(post('{"type":"divider"}'))).error).toBe('invalid_blocks_format');
  expect((await refusal(post('[{'))).error).toBe('invalid_blocks_format');
});
