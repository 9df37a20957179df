/** Limits of blocks in messages. Numbers: docs.slack.dev/reference/block-kit (blocks and block elements). */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { actions, button, image, input, option, section, select, typed } from './block-samples.ts';
import { chars, many, mrkdwn, plain, refusal, type Scene, startScene } from './fixture.ts';

let scene: Scene;
beforeAll(async () => {
  scene = await startScene();
});
afterAll(() => scene.stop());

const post = (blocks: unknown) =>
  scene.client.chat.postMessage({ channel: 'C1TEAM0000', text: 'fallback', blocks: blocks as never });

/** Each row: the rule, the largest thing that passes, one step beyond, and what the refusal says. */
const limits: [rule: string, most: unknown[], beyond: unknown[], says: string][] = [
  [
    'a message has at most 50 blocks',
    many(50, () => ({ type: 'divider' })),
    many(51, () => ({ type: 'divider' })),
    'no more than 50 items allowed [json-pointer:/blocks]',
  ],
  [
    'a section text has at most 3,000 characters',
    [section({ text: mrkdwn(chars(3000)) })],
    [section({ text: mrkdwn(chars(3001)) })],
    'must be less than 3001 characters [json-pointer:/blocks/0/text/text]',
  ],
  [
    'a section has at most 10 fields',
    [section({ fields: many(10, () => plain('a')) })],
    [section({ fields: many(11, () => plain('a')) })],
    'no more than 10 items allowed [json-pointer:/blocks/0/fields]',
  ],
  [
    'a field has at most 2,000 characters',
    [section({ fields: [plain(chars(2000))] })],
    [section({ fields: [plain(chars(2001))] })],
    'must be less than 2001 characters',
  ],
  [
    'a header has at most 150 characters',
    [{ type: 'header', text: plain(chars(150)) }],
    [{ type: 'header', text: plain(chars(151)) }],
    'must be less than 151 characters',
  ],
  [
    'a context has at most 10 elements',
    [{ type: 'context', elements: many(10, () => plain('a')) }],
    [{ type: 'context', elements: many(11, () => plain('a')) }],
    'no more than 10 items allowed',
  ],
  [
    'an actions block has at most 25 elements',
    [actions(...many(25, () => button()))],
    [actions(...many(26, () => button()))],
    'no more than 25 items allowed [json-pointer:/blocks/0/elements]',
  ],
  [
    'a block_id has at most 255 characters',
    [{ type: 'divider', block_id: chars(255) }],
    [{ type: 'divider', block_id: chars(256) }],
    'must be less than 256 characters',
  ],
  [
    'an action_id has at most 255 characters',
    [actions(button({ action_id: chars(255) }))],
    [actions(button({ action_id: chars(256) }))],
    'must be less than 256 characters',
  ],
  [
    'a button text has at most 75 characters',
    [actions(button({ text: plain(chars(75)) }))],
    [actions(button({ text: plain(chars(76)) }))],
    'must be less than 76 characters',
  ],
  [
    'a button value has at most 2,000 characters',
    [actions(button({ value: chars(2000) }))],
    [actions(button({ value: chars(2001) }))],
    'must be less than 2001 characters',
  ],
  [
    'a select has at most 100 options',
    [actions(select({ options: many(100, () => option()) }))],
    [actions(select({ options: many(101, () => option()) }))],
    'no more than 100 items allowed',
  ],
  [
    'an option text has at most 75 characters',
    [actions(select({ options: [option({ text: plain(chars(75)) })] }))],
    [actions(select({ options: [option({ text: plain(chars(76)) })] }))],
    'must be less than 76 characters',
  ],
  [
    'an option value has at most 150 characters',
    [actions(select({ options: [option({ value: chars(150) })] }))],
    [actions(select({ options: [option({ value: chars(151) })] }))],
    'must be less than 151 characters',
  ],
  [
    'radio buttons have at most 10 options',
    [actions({ type: 'radio_buttons', options: many(10, () => option()) })],
    [actions({ type: 'radio_buttons', options: many(11, () => option()) })],
    'no more than 10 items allowed',
  ],
  [
    'checkboxes have at most 10 options',
    [actions({ type: 'checkboxes', options: many(10, () => option()) })],
    [actions({ type: 'checkboxes', options: many(11, () => option()) })],
    'no more than 10 items allowed',
  ],
  [
    'an overflow menu has at most 5 options',
    [section({ accessory: { type: 'overflow', options: many(5, () => option()) } })],
    [section({ accessory: { type: 'overflow', options: many(6, () => option()) } })],
    'no more than 5 items allowed [json-pointer:/blocks/0/accessory/options]',
  ],
  [
    'a placeholder has at most 150 characters',
    [actions(select({ placeholder: plain(chars(150)) }))],
    [actions(select({ placeholder: plain(chars(151)) }))],
    'must be less than 151 characters',
  ],
  [
    'a label has at most 2,000 characters',
    [input(typed(), { label: plain(chars(2000)) })],
    [input(typed(), { label: plain(chars(2001)) })],
    'must be less than 2001 characters',
  ],
  [
    'a hint has at most 2,000 characters',
    [input(typed(), { hint: plain(chars(2000)) })],
    [input(typed(), { hint: plain(chars(2001)) })],
    'must be less than 2001 characters',
  ],
  [
    'an alternative text has at most 2,000 characters',
    [image({ alt_text: chars(2000) })],
    [image({ alt_text: chars(2001) })],
    'must be less than 2001 characters',
  ],
  [
    'a confirmation text has at most 300 characters',
    [actions(button({ confirm: { text: plain(chars(300)) } }))],
    [actions(button({ confirm: { text: plain(chars(301)) } }))],
    'must be less than 301 characters',
  ],
];

describe('the largest thing that is allowed passes, one step beyond is refused', () => {
  test.each(limits)('%s', async (_rule, most, beyond, says) => {
    expect((await post(most)).ok).toBe(true);
    const { error, messages } = await refusal(post(beyond));
    expect(error).toBe('invalid_blocks');
    expect(messages.join('\n')).toContain(`[ERROR] ${says}`);
  });
});

test('all texts of a message’s blocks together have at most 11,000 characters', async () => {
  const sections = (...lengths: number[]) => lengths.map((length) => section({ text: plain(chars(length)) }));
  expect((await post(sections(3000, 3000, 3000, 2000))).ok).toBe(true);
  expect((await refusal(post(sections(3000, 3000, 3000, 2001)))).error).toBe('msg_blocks_too_long');
});
