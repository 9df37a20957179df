/** Rules of blocks in messages beyond sizes. Source: docs.slack.dev/reference/block-kit. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { actions, button, image, input, number, option, section, select, typed } from './block-samples.ts';
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
    'formatted text where only plain text may stand',
    [{ type: 'header', text: mrkdwn('a') }],
    'must be one of: plain_text',
  ],
  ['an empty text', [section({ text: plain('') })], 'must be more than 0 characters'],
  ['a section of nothing', [{ type: 'section' }], 'must define `text` or `fields`'],
  ['an actions block of nothing', [actions()], 'must provide at least 1 items'],
  ['a header without text', [{ type: 'header' }], 'missing required field: text [json-pointer:/blocks/0]'],
  [
    'a picture without alternative text',
    [{ type: 'image', image_url: 'https://example.com/a.png' }],
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
  [
    'options beside option groups',
    [actions(select({ option_groups: [{ label: plain('a'), options: [option()] }] }))],
    'must define exactly one of `options` or `option_groups`',
  ],
  ['a typed input outside an input block', [actions(typed())], 'unsupported or missing type'],
  ['a button in an input block', [input(button())], 'unsupported or missing type'],
  [
    'a number input that does not say whether decimals are allowed',
    [input({ type: 'number_input' })],
    'missing required field: is_decimal_allowed',
  ],
  [
    'a smallest number that is not a string',
    [number({ min_value: 0 })],
    'must provide a value of type string',
  ],
  [
    'a smallest number above the largest',
    [number({ min_value: '9', max_value: '1' })],
    '`min_value` cannot be greater than `max_value`',
  ],
  [
    'a first number outside its limits',
    [number({ initial_value: '9', max_value: '8' })],
    '`initial_value` must lie between',
  ],
  [
    'a decimal first number where only whole ones are allowed',
    [number({ is_decimal_allowed: false, initial_value: '0.5' })],
    '`initial_value` must not be a decimal',
  ],
  [
    'a day that does not exist',
    [actions({ type: 'datepicker', initial_date: '2026-02-30' })],
    '[json-pointer:/blocks/0/elements/0/initial_date]',
  ],
  ['a link that is no web address', [actions(button({ url: 'javascript:alert(1)' }))], 'must be a valid url'],
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

test('rich text passes as a tree and is refused with a stray leaf', async () => {
  const tree = (leaf: object) => [
    { type: 'rich_text', elements: [{ type: 'rich_text_section', elements: [leaf] }] },
  ];
  expect((await post(tree({ type: 'text', text: 'a', style: { bold: true } }))).ok).toBe(true);
  expect((await refusal(post(tree({ type: 'sound' })))).error).toBe('invalid_blocks');
});

test('the text of a message has at most 4,000 characters', async () => {
  const { client } = scene;
  expect((await client.chat.postMessage({ channel: 'C1TEAM', text: chars(4000) })).ok).toBe(true);
  expect((await refusal(client.chat.postMessage({ channel: 'C1TEAM', text: chars(4001) }))).error).toBe(
    'msg_too_long',
  );
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
