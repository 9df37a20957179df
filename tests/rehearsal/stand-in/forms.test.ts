/** Forms: triggers, filling in, the stack; with a real Bolt app as the bot. */
import type { App } from '@slack/bolt';
import { afterEach, describe, expect, test } from 'vitest';
import type { JsonObject } from '../../../src/rehearsal/stand-in/page-state.ts';
import { plain, refusal, type Scene, TestClock } from './fixture.ts';
import { form, input, number, openForm as openFormIn } from './form-fixture.ts';

let scene: Scene;
afterEach(() => scene.stop());

/** Opens the form in a scene of its own. */
async function openForm(...args: Parameters<typeof openFormIn>) {
  const opened = await openFormIn(...args);
  scene = opened.scene;
  return opened;
}

describe('triggers', () => {
  test('a trigger opens one form, within three seconds', async () => {
    // Signed requests must be near the real time, so this clock starts there.
    const clock = new TestClock(Date.now());
    const view = form([]);
    const { triggers } = await openForm(view, () => {}, { realNowMs: clock.nowMs });
    const open = () => scene.client.views.open({ trigger_id: String(triggers.at(-1)), view });
    expect((await refusal(open())).error).toBe('exchanged_trigger_id');
    await scene.standIn.command('U2BEN', 'C1TEAM', '/loadline later');
    clock.ms += 3000;
    expect((await open()).view?.type).toBe('modal');
    await scene.standIn.command('U2BEN', 'C1TEAM', '/loadline later');
    clock.ms += 3001;
    expect((await refusal(open())).error).toBe('expired_trigger_id');
  });

  test('a form with problems does not use the trigger up', async () => {
    const { triggers } = await openForm(form([]));
    await scene.standIn.command('U1ANA', 'C1TEAM', '/loadline later');
    const open = (view: never) => scene.client.views.open({ trigger_id: String(triggers.at(-1)), view });
    expect((await refusal(open(form([{ type: 'chart' }])))).error).toBe('invalid_arguments');
    expect((await open(form([]))).ok).toBe(true);
  });

  test('only the person who acted sees the form', async () => {
    await openForm(form([]));
    expect(scene.standIn.viewOf('U1ANA')).toMatchObject({ callback_id: 'f', private_metadata: '' });
    expect(scene.standIn.viewOf('U2BEN')).toBeUndefined();
  });
});

describe('filling in', () => {
  test('the client keeps a form back while a required field is empty or a limit is broken', async () => {
    let submissions = 0;
    const blocks = [
      input('left', number({ min_value: '0', max_value: '999.5' })),
      input('whole', number({ is_decimal_allowed: false }), { optional: true }),
      input('note', { type: 'plain_text_input', min_length: 3, max_length: 5 }, { optional: true }),
    ];
    const { viewId } = await openForm(form(blocks), (app) =>
      app.view('f', async ({ ack }) => {
        submissions += 1;
        await ack();
      }),
    );
    const { standIn } = scene;
    const errorsWith = async (values: Record<string, string | null>) => {
      standIn.fill('U1ANA', viewId, values);
      const outcome = await standIn.submit('U1ANA', viewId);
      return outcome.ok ? {} : (outcome.fieldErrors ?? {});
    };
    expect(Object.keys(await errorsWith({}))).toEqual(['left']);
    expect(await errorsWith({ left: '-1' })).toEqual({ left: 'Please enter 0 or more.' });
    expect(await errorsWith({ left: '1000' })).toEqual({ left: 'Please enter 999.5 or less.' });
    expect(await errorsWith({ left: 'two' })).toEqual({ left: 'Please enter a number.' });
    expect(await errorsWith({ left: '2.5', whole: '0.5' })).toEqual({
      whole: 'Please enter a whole number.',
    });
    expect(await errorsWith({ whole: '4', note: 'ab' })).toEqual({
      note: 'Please write at least 3 characters.',
    });
    expect(await errorsWith({ note: 'abcdef' })).toEqual({ note: 'Please write at most 5 characters.' });
    expect(submissions).toBe(0);
    expect(await errorsWith({ note: null, whole: null })).toEqual({});
    expect(submissions).toBe(1);
    expect(standIn.viewOf('U1ANA')).toBeUndefined();
  });

  test('a submission carries every value in the platform form', async () => {
    let state: JsonObject = {};
    const options = [plain('Five'), plain('Eight')].map((text) => ({ text, value: text.text.toLowerCase() }));
    const blocks = [
      input('text', { type: 'plain_text_input', initial_value: 'first' }),
      input('choice', { type: 'static_select', options }),
      input('several', { type: 'multi_static_select', option_groups: [{ label: plain('All'), options }] }),
      input('who', { type: 'multi_users_select' }),
      input('where', { type: 'conversations_select', response_url_enabled: true }),
      input('day', { type: 'datepicker', initial_date: '2026-11-02' }),
      input('time', { type: 'timepicker' }),
      input('moment', { type: 'datetimepicker' }),
      input('empty', { type: 'checkboxes', options }, { optional: true }),
    ];
    let urls: unknown[] = [];
    const { viewId } = await openForm(form(blocks), (app) =>
      app.view('f', async ({ ack, view, body }) => {
        state = view.state.values as unknown as JsonObject;
        urls = (body as unknown as { response_urls: unknown[] }).response_urls;
        await ack();
      }),
    );
    scene.standIn.fill('U1ANA', viewId, {
      choice: 'eight',
      several_in: ['five', 'eight'],
      who: ['U2BEN'],
      where: 'C1TEAM',
      time: '09:15',
      moment: 1793610000,
    });
    expect(await scene.standIn.submit('U1ANA', viewId)).toEqual({ ok: true });
    expect(state).toEqual({
      text: { text_in: { type: 'plain_text_input', value: 'first' } },
      choice: { choice_in: { type: 'static_select', selected_option: options[1] } },
      several: { several_in: { type: 'multi_static_select', selected_options: options } },
      who: { who_in: { type: 'multi_users_select', selected_users: ['U2BEN'] } },
      where: { where_in: { type: 'conversations_select', selected_conversation: 'C1TEAM' } },
      day: { day_in: { type: 'datepicker', selected_date: '2026-11-02' } },
      time: { time_in: { type: 'timepicker', selected_time: '09:15' } },
      moment: { moment_in: { type: 'datetimepicker', selected_date_time: 1793610000 } },
      empty: { empty_in: { type: 'checkboxes', selected_options: [] } },
    });
    expect(urls).toMatchObject([{ block_id: 'where', channel_id: 'C1TEAM' }]);
  });

  test('what the form does not offer can not be put in', async () => {
    const options = [{ text: plain('Five'), value: '5' }];
    const { viewId } = await openForm(form([input('choice', { type: 'static_select', options })]));
    expect(() => scene.standIn.fill('U1ANA', viewId, { choice: '8' })).toThrow('not one of the choices');
    expect(() => scene.standIn.fill('U1ANA', viewId, { colour: '8' })).toThrow('means 0 inputs');
    expect(() => scene.standIn.fill('U2BEN', viewId, { choice: '5' })).toThrow('not on top');
  });
});

describe('the stack', () => {
  test('three forms at most lie on each other', async () => {
    const button = {
      type: 'actions',
      elements: [{ type: 'button', action_id: 'deeper', text: plain('Deeper') }],
    };
    const view = form([button]);
    const errors: string[] = [];
    await openForm(view, (app) =>
      app.action('deeper', async ({ ack, body, client }) => {
        const push = client.views.push({
          trigger_id: (body as unknown as { trigger_id: string }).trigger_id,
          view,
        });
        errors.push(
          await push.then(
            () => 'ok',
            (error: { data: { error: string } }) => error.data.error,
          ),
        );
        await ack();
      }),
    );
    for (const _ of [1, 2, 3]) {
      const viewId = String(scene.standIn.viewOf('U1ANA')?.id);
      await scene.standIn.click('U1ANA', { viewId }, 'deeper');
    }
    expect(errors).toEqual(['ok', 'ok', 'push_limit_reached']);
  });

  test('a push needs an open form', async () => {
    const { triggers } = await openForm(form([]));
    await scene.standIn.command('U2BEN', 'C1TEAM', '/loadline later');
    const push = scene.client.views.push({ trigger_id: String(triggers.at(-1)), view: form([]) });
    expect((await refusal(push)).error).toBe('not_found');
  });

  test('closing is told to the app only when it asked for it', async () => {
    const closed: unknown[] = [];
    const listen = (app: App) =>
      app.view({ callback_id: 'f', type: 'view_closed' }, async ({ ack, body }) => {
        closed.push((body as { is_cleared?: boolean }).is_cleared);
        await ack();
      });
    const first = await openForm(form([]), listen);
    await scene.standIn.closeView('U1ANA', first.viewId);
    expect(closed).toEqual([]);
    await scene.stop();
    const second = await openForm(form([], { notify_on_close: true, clear_on_close: true }), listen);
    await scene.standIn.closeView('U1ANA', second.viewId);
    expect(closed).toEqual([true]);
    expect(await scene.standIn.submit('U1ANA', second.viewId)).toMatchObject({
      reason: 'That form is not on top.',
    });
  });
});

describe('updating', () => {
  test('a stale hash is a conflict, a closed form is not found, and ids of our own must be unique', async () => {
    const { viewId, triggers } = await openForm(form([], { external_id: 'mine' }));
    const hash = String(scene.standIn.viewOf('U1ANA')?.hash);
    const update = (more: object) =>
      scene.client.views.update({ view: form([], { external_id: 'mine' }), ...more } as never);
    const fresh = await update({ view_id: viewId, hash });
    expect(fresh.view?.hash).not.toBe(hash);
    expect((await refusal(update({ view_id: viewId, hash }))).error).toBe('hash_conflict');
    expect((await update({ external_id: 'mine' })).view?.id).toBe(viewId);
    expect((await refusal(update({ view_id: viewId, external_id: 'mine' }))).error).toBe('invalid_arguments');
    await scene.standIn.command('U2BEN', 'C1TEAM', '/loadline later');
    const again = scene.client.views.open({
      trigger_id: String(triggers.at(-1)),
      view: form([], { external_id: 'mine' }),
    });
    expect((await refusal(again)).error).toBe('duplicate_external_id');
    await scene.standIn.closeView('U1ANA', viewId);
    expect((await refusal(update({ view_id: viewId }))).error).toBe('not_found');
  });
});
