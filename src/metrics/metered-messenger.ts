/** A messenger that counts what was delivered, by kind of post. Changes nothing about it. */

import type { Clock } from '../app/ports/app-dependencies.ts';
import type { Messenger } from '../app/ports/messenger.ts';
import { DeliveryFailure } from '../app/posting/delivery-failure.ts';
import type { MessageContent } from '../app/posting/post-kinds.ts';
import type { Metrics, PostHow } from './metrics.ts';

type Meter = Pick<Metrics, 'promptSent' | 'postDelivered' | 'postAttemptFailed'>;

/** @param nowMs for durations only; how late a prompt is goes by the clock */
export function meteredMessenger(
  messenger: Messenger,
  meter: Meter,
  clock: Clock,
  nowMs: () => number = () => performance.now(),
): Messenger {
  async function metered<T>(content: MessageContent, how: PostHow, send: () => Promise<T>): Promise<T> {
    const beganMs = nowMs();
    const seconds = () => (nowMs() - beganMs) / 1_000;
    try {
      const sent = await send();
      meter.postDelivered(content.kind, how, seconds());
      if (content.kind === 'daily-prompt' && how === 'new') {
        meter.promptSent(delaySeconds(content.prompt.dueAt, clock));
      }
      return sent;
    } catch (error) {
      const failure = error instanceof DeliveryFailure ? error : undefined;
      meter.postAttemptFailed(how, failure?.kind ?? 'defect', failure?.code ?? 'unknown', seconds());
      throw error;
    }
  }
  return {
    post: (workspaceId, to, key, content, image, maySend) =>
      metered(content, 'new', () => messenger.post(workspaceId, to, key, content, image, maySend)),
    find: (workspaceId, to, key, since) => messenger.find(workspaceId, to, key, since),
    update: (workspaceId, at, content, image, maySend) =>
      metered(content, 'update', () => messenger.update(workspaceId, at, content, image, maySend)),
  };
}

function delaySeconds(dueAt: Date | undefined, clock: Clock): number | undefined {
  return dueAt && (clock.now().getTime() - dueAt.getTime()) / 1_000;
}
