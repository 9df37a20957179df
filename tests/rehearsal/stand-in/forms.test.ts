/** Forms: triggers, filling in, the stack; with a real Bolt app as the bot. */
import type { App } from '@slack/bolt';
import { afterEach, describe, expect, test } from 'vitest';
import type { InputValue, JsonObject } from '../../../src/rehearsal/stand-in/page-state.ts';
import { plain, refusal, type Scene, TestClock } from './fixture.ts';
import { form, input, openForm as openFormIn, typed } from './form-fixture.ts';

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
    await scene.standIn.command('U2BEN0000', 'C1TEAM0000', '/loadline later');
    clock.ms += 3000;
    expect((await open()).view?.type).toBe('modal');
    await scene.standIn.command('U2BEN0000', 'C1TEAM0000', '/loadline later');
    clock.ms += 3001;
    expect((await refusal(open())).error).toBe('expired_trigger_id');
  });

  test('a form with problems does not use the trigger up', async () => {
    const { triggers } = await openForm(form([]));
    await scene.standIn.command('U1ANA0000', 'C1TEAM0000', '/loadline later');
    const open = (view: never) => scene.client.views.open({ trigger_id: String(triggers.at(-1)), view });
    expect((await refusal(open(form([{ type: 'chart' }])))).error).toBe('invalid_arguments');
    expect((await open(form([]))).ok).toBe(true);
  });

  test('only the person who acted sees the form', async () => {
    await openForm(form([]));
    expect(scene.standIn.viewOf('U1ANA0000')).toMatchObject({ callback_id: 'f', private_metadata: '' });
    expect(scene.standIn.viewOf('U2BEN0000')).toBeUndefined();
  });
});

describe('filling in', () => {
  test('the client keeps a form back while a required field is empty or a limit is broken', async () => {
    let submissions = 0;
    const blocks = [
      input('left', typed({ max_length: 5 })),
      input('day', { type: 'datepicker' }, { optional: true }),
      input('time', { type: 'timepicker' }, { optional: true }),
      input('who', { type: 'multi_users_select', max_selected_items: 1 }, { optional: true }),
    ];
    const { viewId } = await openForm(form(blocks), (app) =>
      app.view('f', async ({ ack }) => {
        submissions += 1;
        await ack();
      }),
    );
    const { standIn } = scene;
    const errorsWith = async (values: Record<string, InputValue>) => {
      standIn.fill('U1ANA0000', viewId, values);
      const outcome = await standIn.submit('U1ANA0000', viewId);
      return outcome.ok ? {} : (outcome.fieldErrors ?? {});
    };
    expect(Object.keys(await errorsWith({}))).toEqual(['left']);
    expect(await errorsWith({ left: 'abcdef' })).toEqual({ left: 'Please write at most 5 characters.' });
    expect(await errorsWith({ left: 'abcde', day: '2026-02-30' })).toEqual({ day: 'Please choose a date.' });
    expect(await errorsWith({ day: null, time: '24:00' })).toEqual({ time: 'Please choose a time.' });
    expect(await errorsWith({ time: null, who: ['U1ANA0000', 'U2BEN0000'] })).toEqual({
      who: 'Please choose at most 1.',
    });
    expect(submissions).toBe(0);
    expect(await errorsWith({ who: [] })).toEqual({});
    expect(submissions).toBe(1);
    expect(standIn.viewOf('U1ANA0000')).toBeUndefined();
  });

  test('a submission carries every value in the platform form', async () => {
    let state: JsonObject = {};
    const options = [plain('Five'), plain('Eight')].map((text) => ({ text, value: text.text.toLowerCase() }));
    const blocks = [
      input('text', { type: 'plain_text_input', initial_value: 'first' }),
      input('choice', { type: 'static_select', options }),
      input('several', { type: 'multi_static_select', options }),
      input('who', { type: 'multi_users_select' }),
      input('day', { type: 'datepicker', initial_date: '2026-11-02' }),
      input('time', { type: 'timepicker' }),
      input('empty', { type: 'checkboxes', options }, { optional: true }),
    ];
    const { viewId } = await openForm(form(blocks), (app) =>
      app.view('f', async ({ ack, view }) => {
        state = view.state.values as unknown as JsonObject;
        await ack();
      }),
    );
    scene.standIn.fill('U1ANA0000', viewId, {
      choice: 'eight',
      several_in: ['five', 'eight'],
      who: ['U2BEN0000'],
      time: '09:15',
    });
    expect(await scene.standIn.submit('U1ANA0000', viewId)).toEqual({ ok: true });
    expect(state).toEqual({
      text: { text_in: { type: 'plain_text_input', value: 'first' } },
      choice: { choice_in: { type: 'static_select', selected_option: options[1] } },
      several: { several_in: { type: 'multi_static_select', selected_options: options } },
      who: { who_in: { type: 'multi_users_select', selected_users: ['U2BEN0000'] } },
      day: { day_in: { type: 'datepicker', selected_date: '2026-11-02' } },
      time: { time_in: { type: 'timepicker', selected_time: '09:15' } },
      empty: { empty_in: { type: 'checkboxes', selected_options: [] } },
    });
  });

  test('what the form does not offer can not be put in', async () => {
    const options = [{ text: plain('Five'), value: '5' }];
    const { viewId } = await openForm(form([input('choice', { type: 'static_select', options })]));
    expect(() => scene.standIn.fill('U1ANA0000', viewId, { choice: '8' })).toThrow('not one of the choices');
    expect(() => scene.standIn.fill('U1ANA0000', viewId, { colour: '8' })).toThrow('means 0 inputs');
    expect(() => scene.standIn.fill('U2BEN0000', viewId, { choice: '5' })).toThrow('not on top');
  });
});

describe('the stack', () => {
  test('three forms at most lie on each other', async () => {
    const view = form([]);
    await openForm(view, (app) => app.view('f', async ({ ack }) => ack({ response_action: 'push', view })));
    const outcomes: boolean[] = [];
    for (const _ of [1, 2, 3]) {
      const viewId = String(scene.standIn.viewOf('U1ANA0000')?.id);
      outcomes.push((await scene.standIn.submit('U1ANA0000', viewId)).ok);
    }
    expect(outcomes).toEqual([true, true, false]);
  });

  test('a push needs a trigger and an open form, and counts like one that answers a submission', async () => {
    const view = form([]);
    const { triggers, viewId } = await openForm(view);
    await scene.standIn.command('U2BEN0000', 'C1TEAM0000', '/loadline later');
    const push = () => scene.client.views.push({ trigger_id: String(triggers.at(-1)), view });
    expect((await refusal(push())).error).toBe('not_found');
    for (const error of [undefined, undefined, 'push_limit_reached']) {
      await scene.standIn.command('U1ANA0000', 'C1TEAM0000', '/loadline later');
      if (error) expect((await refusal(push())).error).toBe(error);
      else expect((await push()).view).toMatchObject({ root_view_id: viewId });
    }
  });

  test('closing is told to the app only when it asked for it', async () => {
    const closed: unknown[] = [];
    const listen = (app: App) =>
      app.view({ callback_id: 'f', type: 'view_closed' }, async ({ ack, body }) => {
        closed.push((body as { is_cleared?: boolean }).is_cleared);
        await ack();
      });
    const first = await openForm(form([]), listen);
    await scene.standIn.closeView('U1ANA0000', first.viewId);
    expect(closed).toEqual([]);
    await scene.stop();
    const second = await openForm(form([], { notify_on_close: true, clear_on_close: true }), listen);
    await scene.standIn.closeView('U1ANA0000', second.viewId);
    expect(closed).toEqual([true]);
  });

  test('a form that is not on top can be neither sent off nor closed', async () => {
    const { viewId } = await openForm(form([]));
    expect(await scene.standIn.closeView('U1ANA0000', viewId)).toEqual({ ok: true });
    const gone = { ok: false, reason: 'That form is not on top.' };
    expect(await scene.standIn.submit('U1ANA0000', viewId)).toEqual(gone);
    expect(await scene.standIn.closeView('U1ANA0000', viewId)).toEqual(gone);
  });
});

describe('updating', () => {
  test('a stale hash is a conflict, a closed form is not found, and ids of our own must be unique', async () => {
    const { viewId, triggers } = await openForm(form([], { external_id: 'mine' }));
    const hash = String(scene.standIn.viewOf('U1ANA0000')?.hash);
    const update = (more: object) =>
      scene.client.views.update({ view: form([], { external_id: 'mine' }), ...more } as never);
    const fresh = await update({ view_id: viewId, hash });
    expect(fresh.view?.hash).not.toBe(hash);
    expect((await refusal(update({ view_id: viewId, hash }))).error).toBe('hash_conflict');
    expect((await update({ external_id: 'mine' })).view?.id).toBe(viewId);
    expect((await refusal(update({ view_id: viewId, external_id: 'mine' }))).error).toBe('invalid_arguments');
    await scene.standIn.command('U2BEN0000', 'C1TEAM0000', '/loadline later');
    const again = scene.client.views.open({
      trigger_id: String(triggers.at(-1)),
      view: form([], { external_id: 'mine' }),
    });
    expect((await refusal(again)).error).toBe('duplicate_external_id');
    await scene.standIn.closeView('U1ANA0000', viewId);
    expect((await refusal(update({ view_id: viewId }))).error).toBe('not_found');
  });
});
