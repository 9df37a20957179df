/** Limits of forms and Home pages. Numbers: docs.slack.dev/reference/views and docs.slack.dev/surfaces/modals. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { button, input, option, select, typed } from './block-samples.ts';
import { chars, many, mrkdwn, plain, refusal, type Scene, startScene } from './fixture.ts';

let scene: Scene;
beforeAll(async () => {
  scene = await startScene();
});
afterAll(() => scene.stop());

const modal = (more: object = {}) => ({
  type: 'modal',
  title: plain('Plan'),
  submit: plain('Save'),
  blocks: [],
  ...more,
});
const divider = () => ({ type: 'divider' });
const withInput = (element: unknown, more: object = {}) => ({ blocks: [input(element, more)] });

/** A view is checked before its trigger, so a form that passes is refused for the trigger only. */
async function formProblems(view: unknown): Promise<string> {
  const open = scene.client.views.open({ trigger_id: '1.2.none', view: view as never });
  const { error, messages } = await refusal(open);
  return error === 'invalid_trigger_id' ? 'passes' : `${error} ${messages.join('\n')}`;
}

const limits: [rule: string, most: object, beyond: object, says: string][] = [
  [
    'a title has at most 24 characters',
    { title: plain(chars(24)) },
    { title: plain(chars(25)) },
    'must be less than 25 characters [json-pointer:/view/title/text]',
  ],
  [
    'a submit button has at most 24 characters',
    { submit: plain(chars(24)) },
    { submit: plain(chars(25)) },
    'must be less than 25 characters',
  ],
  [
    'a close button has at most 24 characters',
    { close: plain(chars(24)) },
    { close: plain(chars(25)) },
    'must be less than 25 characters',
  ],
  [
    'a form has at most 100 blocks',
    { blocks: many(100, divider) },
    { blocks: many(101, divider) },
    'no more than 100 items allowed [json-pointer:/view/blocks]',
  ],
  [
    'private metadata has at most 3,000 characters',
    { private_metadata: chars(3000) },
    { private_metadata: chars(3001) },
    'must be less than 3001 characters',
  ],
  [
    'a callback id has at most 255 characters',
    { callback_id: chars(255) },
    { callback_id: chars(256) },
    'must be less than 256 characters',
  ],
  [
    'an external id has at most 255 characters',
    { external_id: chars(255) },
    { external_id: chars(256) },
    'must be less than 256 characters',
  ],
  [
    'a form with inputs has a submit button',
    withInput(typed()),
    { ...withInput(typed()), submit: undefined },
    'missing required field: submit',
  ],
  [
    'a select has at most 100 options',
    withInput(select({ options: many(100, () => option()) })),
    withInput(select({ options: many(101, () => option()) })),
    'no more than 100 items allowed [json-pointer:/view/blocks/0/element/options]',
  ],
  [
    'a select of several has at most 100 options',
    withInput(select({ type: 'multi_static_select', options: many(100, () => option()) })),
    withInput(select({ type: 'multi_static_select', options: many(101, () => option()) })),
    'no more than 100 items allowed',
  ],
  [
    'an option value has at most 150 characters',
    withInput(select({ options: [option({ value: chars(150) })] })),
    withInput(select({ options: [option({ value: chars(151) })] })),
    'must be less than 151 characters',
  ],
  [
    'an option text has at most 75 characters',
    withInput(select({ options: [option({ text: plain(chars(75)) })] })),
    withInput(select({ options: [option({ text: plain(chars(76)) })] })),
    'must be less than 76 characters',
  ],
  [
    'a first choice is on offer',
    withInput(select({ initial_option: option() })),
    withInput(select({ initial_option: option({ value: '8' }) })),
    'initial options must exactly match',
  ],
  [
    'first choices are on offer',
    withInput(select({ type: 'checkboxes', initial_options: [option()] })),
    withInput(select({ type: 'checkboxes', initial_options: [option(), option({ value: '8' })] })),
    'initial options must exactly match',
  ],
  [
    'checkboxes have at most 10 options',
    withInput(select({ type: 'checkboxes', options: many(10, () => option()) })),
    withInput(select({ type: 'checkboxes', options: many(11, () => option()) })),
    'no more than 10 items allowed',
  ],
  [
    'a label has at most 2,000 characters',
    withInput(typed(), { label: plain(chars(2000)) }),
    withInput(typed(), { label: plain(chars(2001)) }),
    'must be less than 2001 characters',
  ],
  [
    'a hint has at most 2,000 characters',
    withInput(typed(), { hint: plain(chars(2000)) }),
    withInput(typed(), { hint: plain(chars(2001)) }),
    'must be less than 2001 characters',
  ],
  [
    'a max_length is at most 3,000',
    withInput(typed({ max_length: 3000 })),
    withInput(typed({ max_length: 3001 })),
    'must be at most 3000',
  ],
  [
    'a first day exists',
    withInput({ type: 'datepicker', initial_date: '2026-02-28' }),
    withInput({ type: 'datepicker', initial_date: '2026-02-30' }),
    'Invalid ISO date [json-pointer:/view/blocks/0/element/initial_date]',
  ],
  [
    'an input block holds an input, and no button',
    withInput(typed()),
    withInput(button()),
    'unsupported or missing type [json-pointer:/view/blocks/0/element/type]',
  ],
  ['a form has a title', {}, { title: undefined }, 'missing required field: title [json-pointer:/view]'],
  [
    'a form has no properties of its own making',
    {},
    { submit_disabled: true },
    'invalid additional property: submit_disabled [json-pointer:/view]',
  ],
  [
    'a Home page is no form',
    {},
    { type: 'home', title: undefined, submit: undefined },
    'must be a view of type modal',
  ],
];

describe('the largest thing that is allowed passes, one step beyond is refused', () => {
  test.each(limits)('%s', async (_rule, most, beyond, says) => {
    expect(await formProblems(modal(most))).toBe('passes');
    expect(await formProblems(modal(beyond))).toContain(`[ERROR] ${says}`);
  });
});

test('a view of more than 250 kB is too large', async () => {
  const section = () => ({ type: 'section', text: mrkdwn(chars(2900)) });
  // 85 sections of about 2,960 bytes each are just above 250,000 bytes, 84 just below.
  expect(await formProblems(modal({ blocks: many(84, section) }))).toBe('passes');
  expect(await formProblems(modal({ blocks: many(85, section) }))).toContain('view_too_large');
});

test('a view that is no JSON is refused', async () => {
  const call = scene.client.apiCall('views.open', { trigger_id: '1.2.none', view: '{' });
  expect((await refusal(call)).error).toBe('invalid_arguments');
});

describe('Home pages', () => {
  const publish = (view: object, more: object = {}) =>
    scene.client.views.publish({
      user_id: 'U1ANA0000',
      view: { type: 'home', blocks: [], ...view } as never,
      ...more,
    });

  test('a Home page has at most 100 blocks and no title', async () => {
    expect((await publish({ blocks: many(100, divider) })).ok).toBe(true);
    expect((await refusal(publish({ blocks: many(101, divider) }))).error).toBe('invalid_arguments');
    expect((await refusal(publish({ title: plain('a') }))).error).toBe('invalid_arguments');
  });

  test('publishing again replaces the page, and a stale hash is a conflict', async () => {
    const first = await publish({ callback_id: 'first' });
    const second = await publish({ callback_id: 'second' }, { hash: first.view?.hash });
    expect(second.view?.id).toBe(first.view?.id);
    expect(scene.standIn.homeOf('U1ANA0000')?.callback_id).toBe('second');
    expect((await refusal(publish({}, { hash: first.view?.hash }))).error).toBe('hash_conflict');
  });

  test('only people of the workspace have one', async () => {
    const call = scene.client.views.publish({ user_id: 'U404', view: { type: 'home', blocks: [] } });
    expect((await refusal(call)).error).toBe('user_not_found');
  });
});

describe('blocks.validate', () => {
  const validate = (content: object) => scene.client.apiCall('blocks.validate', { ...content });
  const sections = (count: number) => many(count, () => ({ type: 'section', text: mrkdwn('x') }));

  test.each([
    ['invalid_blocks', { blocks: sections(50) }, { blocks: sections(51) }],
    ['invalid_message', { message: { blocks: sections(50) } }, { message: { blocks: sections(51) } }],
    ['invalid_view', { view: modal({ blocks: sections(100) }) }, { view: modal({ blocks: sections(101) }) }],
  ])('shows nothing, takes what would be taken and else says %s', async (code, most, beyond) => {
    expect(await validate(most)).toMatchObject({ ok: true });
    expect((await refusal(validate(beyond))).error).toBe(code);
    expect(scene.standIn.allPosts()).toEqual([]);
  });

  test('checks one thing at a time', async () => {
    const both = { blocks: sections(1), view: modal() };
    expect((await refusal(validate(both))).error).toBe('invalid_arguments');
    expect((await refusal(validate({}))).error).toBe('invalid_arguments');
  });
});
