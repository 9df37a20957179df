/** What the app's answer to a submitted form does; with a real Bolt app as the bot. */
import { afterEach, describe, expect, test } from 'vitest';
import type { Scene } from './fixture.ts';
import { form, input, openForm, typed } from './form-fixture.ts';

let scene: Scene;
afterEach(() => scene.stop());

describe("the app's answer to a submission", () => {
  /** Submits a form of one field to a bot that answers in the given way. */
  async function answered(answer: unknown): Promise<unknown> {
    const opened = await openForm(form([input('left', typed())]), (app) =>
      app.view('f', async ({ ack }) => ack(answer as never)),
    );
    scene = opened.scene;
    scene.standIn.fill('U1ANA0000', opened.viewId, { left: '3' });
    return scene.standIn.submit('U1ANA0000', opened.viewId);
  }
  const held = () => scene.standIn.viewOf('U1ANA0000')?.state.values.left?.left_in?.value;

  test('nothing closes the form', async () => {
    expect(await answered(undefined)).toEqual({ ok: true });
    expect(scene.standIn.viewOf('U1ANA0000')).toBeUndefined();
  });

  test('errors are at their fields and what was typed stays', async () => {
    const outcome = await answered({ response_action: 'errors', errors: { left: 'More than there was.' } });
    expect(outcome).toMatchObject({ ok: false, fieldErrors: { left: 'More than there was.' } });
    expect(held()).toBe('3');
  });

  test('errors at a field that is no input are refused', async () => {
    const outcome = await answered({ response_action: 'errors', errors: { right: 'a' } });
    expect(outcome).toMatchObject({ ok: false, reason: expect.stringContaining('right') });
    expect(outcome).not.toHaveProperty('fieldErrors');
  });

  test('update shows other content in the same form, and keeps what was typed where the ids stay', async () => {
    const next = form([input('why', { type: 'plain_text_input' }), input('left', typed())]);
    expect(await answered({ response_action: 'update', view: next })).toEqual({ ok: true });
    expect(scene.standIn.viewOf('U1ANA0000')?.blocks).toHaveLength(2);
    expect(held()).toBe('3');
  });

  test('a field of the same id but another kind starts empty', async () => {
    const next = form([input('left', { type: 'multi_users_select' })]);
    await answered({ response_action: 'update', view: next });
    expect(scene.standIn.viewOf('U1ANA0000')?.state.values.left?.left_in).toEqual({
      type: 'multi_users_select',
      selected_users: [],
    });
  });

  test('push lays a form on top, and closing that one shows the first again', async () => {
    expect(await answered({ response_action: 'push', view: form([], { callback_id: 'why' }) })).toEqual({
      ok: true,
    });
    const top = scene.standIn.viewOf('U1ANA0000');
    expect(top?.callback_id).toBe('why');
    await scene.standIn.closeView('U1ANA0000', String(top?.id));
    expect(scene.standIn.viewOf('U1ANA0000')).toMatchObject({ callback_id: 'f', id: top?.previous_view_id });
  });

  test('clear closes all', async () => {
    expect(await answered({ response_action: 'clear' })).toEqual({ ok: true });
    expect(scene.standIn.viewOf('U1ANA0000')).toBeUndefined();
  });

  test.each([
    ['a form with problems', { response_action: 'update', view: form([{ type: 'chart' }]) }],
    ['no form', { response_action: 'push' }],
    ['an unknown action', { response_action: 'dance' }],
    ['errors without a field', { response_action: 'errors', errors: {} }],
  ])('%s is refused and the form stays as it was', async (_what, answer) => {
    expect(await answered(answer)).toMatchObject({ ok: false, reason: expect.stringContaining('refuses') });
    expect(held()).toBe('3');
  });
});
