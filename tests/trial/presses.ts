/** Hears which buttons of the trial are pressed. */
import type { App, BlockAction, ButtonAction } from '@slack/bolt';
import { NotTried, type Press, type Presses } from './trial-step.ts';

const PATIENCE_MS = 180_000;

export function pressesOf(app: App): Presses {
  const waiting = new Map<string, (press: Press) => void>();
  app.action<BlockAction<ButtonAction>>(/^trial_/, async ({ ack, body, action }) => {
    await ack();
    waiting.get(action.action_id)?.({
      triggerId: body.trigger_id,
      responseUrl: body.response_url ?? '',
      value: action.value ?? '',
    });
    waiting.delete(action.action_id);
  });
  return {
    next: (actionId) =>
      new Promise((resolve, reject) => {
        const late = setTimeout(() => reject(new NotTried('nobody pressed the button')), PATIENCE_MS);
        waiting.set(actionId, (press) => {
          clearTimeout(late);
          resolve(press);
        });
      }),
  };
}
