/** The ports that count and time what goes through them. */

import type { Clock } from '../app/ports/app-dependencies.ts';
import type { Messenger } from '../app/ports/messenger.ts';
import type { PromptWriting } from '../app/ports/sprints.ts';
import type { Store } from '../app/ports/store.ts';
import { DeliveryFailure } from '../app/posting/delivery-failure.ts';
import type { MessageContent } from '../app/posting/post-kinds.ts';
import { Refusal } from '../app/refusal.ts';
import { withPorts, writingBy } from '../app/writing-by.ts';
import { firstCodeOf } from '../error-chain.ts';
import type { MetPrompt, Metrics, PostHow } from './metrics.ts';

type StoreMeter = Pick<Metrics, 'promptsRecorded' | 'promptMet' | 'databaseFailed' | 'transactionEnded'>;

/** What a transaction did; it counts once it is committed. */
interface Tally {
  due: number;
  asked: number;
  readonly met: MetPrompt[];
}

/** A store that counts what was committed and what the database failed. Changes nothing about either. */
export function meteredStore(store: Store, meter: StoreMeter): Store {
  /** Times it, and counts it when it was the database that failed. */
  async function metered<T>(work: () => Promise<T>): Promise<T> {
    const beganMs = performance.now();
    try {
      return await work();
    } catch (error) {
      const code = isDatabaseFailure(error) ? firstCodeOf(error) : undefined;
      if (code !== undefined) meter.databaseFailed(code);
      throw error;
    } finally {
      meter.transactionEnded((performance.now() - beganMs) / 1_000);
    }
  }

  const { rememberEvent, updatePost } = store.single;
  return {
    single: {
      rememberEvent: (...given) => metered(() => rememberEvent(...given)),
      updatePost: (...given) => metered(() => updatePost(...given)),
    },

    read: (work) => metered(() => store.read(work)),

    transaction: (work) =>
      metered(async () => {
        let tally: Tally = { due: 0, asked: 0, met: [] };
        const result = await store.transaction((tx) => {
          // The work may run again after a conflict; only its last run was committed.
          tally = { due: 0, asked: 0, met: [] };
          return work(
            writingBy(tx, (write) => withPorts(write, { prompts: (prompts) => counting(prompts, tally) })),
          );
        });
        if (tally.due > 0) meter.promptsRecorded(tally.due, tally.asked);
        for (const how of tally.met) meter.promptMet(how);
        return result;
      }),
  };
}

function counting(writing: PromptWriting, tally: Tally): PromptWriting {
  return {
    async insert(prompts) {
      const fresh = await writing.insert(prompts);
      tally.due += prompts.length;
      tally.asked += fresh.length;
      return fresh;
    },
    async setState(prompt, state, at) {
      const refreshed = await writing.setState(prompt, state, at);
      if (state !== 'asked') tally.met.push(state);
      return refreshed;
    },
    called: (kind, prompts) => writing.called(kind, prompts),
  };
}

/** A refusal by a use case ends its transaction as well, and is no failure of the database. */
function isDatabaseFailure(error: unknown): boolean {
  return !(error instanceof Refusal) && !(error instanceof DeliveryFailure);
}

type DeliveryMeter = Pick<Metrics, 'promptSent' | 'postDelivered' | 'postAttemptFailed'>;

/**
 * A messenger that counts what was delivered, by kind of post. Changes nothing about it.
 *
 * @param clock tells how late a prompt is
 */
export function meteredMessenger(messenger: Messenger, meter: DeliveryMeter, clock: Clock): Messenger {
  async function metered<T>(content: MessageContent, how: PostHow, send: () => Promise<T>): Promise<T> {
    const beganMs = performance.now();
    const seconds = () => (performance.now() - beganMs) / 1_000;
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
    isShared: (workspaceId, channelId) => messenger.isShared(workspaceId, channelId),
    find: (workspaceId, to, key, since) => messenger.find(workspaceId, to, key, since),
    update: (workspaceId, at, content, image, maySend) =>
      metered(content, 'update', () => messenger.update(workspaceId, at, content, image, maySend)),
    removeOwn: (workspaceId, channelId, beforeTs) => messenger.removeOwn(workspaceId, channelId, beforeTs),
  };
}

function delaySeconds(dueAt: Date | undefined, clock: Clock): number | undefined {
  return dueAt && (clock.now().getTime() - dueAt.getTime()) / 1_000;
}
