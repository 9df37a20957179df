/** A bot with one form, opened by Ana with the command. */
import type { App } from '@slack/bolt';
import { expect } from 'vitest';
import type { StandInOptions } from '../../../src/rehearsal/stand-in/stand-in-options.ts';
import { plain, type Scene, startScene } from './fixture.ts';

export const input = (id: string, element: object, more: object = {}) => ({
  type: 'input',
  block_id: id,
  label: plain(id),
  element: { action_id: `${id}_in`, ...element },
  ...more,
});
export const typed = (more: object = {}) => ({ type: 'plain_text_input', ...more });
export const form = (blocks: object[], more: object = {}): never =>
  ({
    type: 'modal',
    callback_id: 'f',
    title: plain('Answer'),
    submit: plain('Save'),
    blocks,
    ...more,
  }) as never;

/** A bot that opens the given form on the command and keeps triggers and submissions. */
export async function openForm(
  view: never,
  more: (app: App) => void = () => {},
  options: Partial<StandInOptions> = {},
): Promise<{ scene: Scene; triggers: string[]; viewId: string }> {
  const triggers: string[] = [];
  const scene = await startScene(options, (app) => {
    app.command('/loadline', async ({ command, ack, client }) => {
      triggers.push(command.trigger_id);
      if (command.text !== 'later') await client.views.open({ trigger_id: command.trigger_id, view });
      await ack();
    });
    more(app);
  });
  const outcome = await scene.standIn.command('U1ANA0000', 'C1TEAM0000', '/loadline');
  expect(outcome).toEqual({ ok: true });
  return { scene, triggers, viewId: String(scene.standIn.viewOf('U1ANA0000')?.id) };
}
