/** The store and the messenger that count do what the ones inside do, and count what became of it. */
import { describe, expect, it } from 'vitest';
import type { Messenger } from '../../src/app/ports/messenger.ts';
import type { PromptWriting } from '../../src/app/ports/sprints.ts';
import type { Store, Transaction } from '../../src/app/ports/store.ts';
import { DeliveryFailure } from '../../src/app/posting/delivery-failure.ts';
import type { MessageContent } from '../../src/app/posting/post-kinds.ts';
import { Refusal } from '../../src/app/refusal.ts';
import { meteredMessenger, meteredStore } from '../../src/metrics/metered-ports.ts';
import { createMetrics } from '../../src/metrics/metrics.ts';
import { fakeStore } from '../support/fake-store.ts';
import { figureOf } from './read-metrics.ts';

const DUE_AT = new Date('2026-11-03T09:15:00Z');
const PROMPTS = ['ana', 'ben', 'cem'].map((userId) => ({
  sprintId: 's1',
  userId,
  day: '2026-11-03',
  postId: `post-${userId}`,
}));

const freshMetrics = () => createMetrics({ version: '0', nodeVersion: 'v24', database: 'postgres' });

/** A store whose database has one of the prompts already. */
function storeWith(after: () => void = () => undefined): Store {
  const prompts: PromptWriting = {
    insert: async (asked) => asked.slice(1),
    setState: async () => 0,
    called: async () => undefined,
  };
  const tx = { write: { prompts } } as Transaction;
  return {
    ...fakeStore({}),
    async transaction(work) {
      const result = await work(tx);
      after();
      return result;
    },
  };
}

describe('the store that counts', () => {
  it('counts prompts that were due, those that were new, and how prompts were met, once committed', async () => {
    const metrics = freshMetrics();
    const fresh = await meteredStore(storeWith(), metrics).transaction(async (tx) => {
      await tx.write.prompts.setState(PROMPTS[0] as (typeof PROMPTS)[0], 'away', DUE_AT);
      return tx.write.prompts.insert(PROMPTS);
    });
    expect(fresh).toEqual(PROMPTS.slice(1));
    expect(await figureOf(metrics.register, 'loadline_prompts_due_total')).toBe(3);
    expect(await figureOf(metrics.register, 'loadline_prompts_asked_total')).toBe(2);
    expect(await figureOf(metrics.register, 'loadline_prompts_answered_total', { how: 'away' })).toBe(1);
    expect(await figureOf(metrics.register, 'loadline_transaction_duration_seconds_count')).toBe(1);
  });

  it('counts nothing of what was rolled back but the failure, under the database’s code', async () => {
    const metrics = freshMetrics();
    const failure = new Error('Failed query', { cause: Object.assign(new Error('gone'), { code: '57P01' }) });
    const store = meteredStore(
      storeWith(() => {
        throw failure;
      }),
      metrics,
    );
    await expect(store.transaction((tx) => tx.write.prompts.insert(PROMPTS))).rejects.toBe(failure);
    expect(await figureOf(metrics.register, 'loadline_prompts_due_total')).toBe(0);
    expect(await figureOf(metrics.register, 'loadline_database_errors_total', { code: '57P01' })).toBe(1);
  });

  it('counts work that ran twice, because of a conflict, once', async () => {
    const metrics = freshMetrics();
    const inner = storeWith();
    const twice: Store = {
      ...inner,
      transaction: async (work) => {
        await inner.transaction(work);
        return inner.transaction(work);
      },
    };
    await meteredStore(twice, metrics).transaction((tx) => tx.write.prompts.insert(PROMPTS));
    expect(await figureOf(metrics.register, 'loadline_prompts_due_total')).toBe(3);
  });

  it('does not hold a refusal against the database', async () => {
    const metrics = freshMetrics();
    const refused = meteredStore(storeWith(), metrics).transaction(() =>
      Promise.reject(new Refusal('no-draft', {})),
    );
    await expect(refused).rejects.toMatchObject({ code: 'no-draft' });
    expect(await metrics.register.getSingleMetricAsString('loadline_database_errors_total')).not.toContain(
      'no-draft',
    );
  });
});

const PROMPT = { kind: 'daily-prompt', prompt: { dueAt: DUE_AT } } as unknown as MessageContent;
const AT = { channelId: 'C1', ts: '1.0' };

function messengerWith(answer: () => Promise<typeof AT>): Messenger {
  return {
    post: answer,
    isShared: async () => false,
    find: async () => AT,
    update: async () => void (await answer()),
    removeOwn: async () => ({ removed: 0, left: 0, beforeTs: '1.0', isDone: true }),
  };
}

describe('the messenger that counts', () => {
  it('counts posts by kind, and how long after its time a prompt reached its member', async () => {
    const metrics = freshMetrics();
    const clock = { now: () => new Date(DUE_AT.getTime() + 301_000) };
    const messenger = meteredMessenger(
      messengerWith(async () => AT),
      metrics,
      clock,
    );
    expect(await messenger.post('W', { userId: 'U' }, 'key', PROMPT, undefined, () => true)).toEqual(AT);
    await messenger.update('W', AT, PROMPT, undefined, () => true);
    const delivered = (how: string) =>
      figureOf(metrics.register, 'loadline_posts_delivered_total', { kind: 'daily-prompt', how });
    expect([await delivered('new'), await delivered('update')]).toEqual([1, 1]);
    // An update is not a second prompt.
    expect(await figureOf(metrics.register, 'loadline_prompts_sent_total')).toBe(1);
    expect(await figureOf(metrics.register, 'loadline_prompts_late_total')).toBe(1);
    expect(await figureOf(metrics.register, 'loadline_prompt_delay_seconds_sum')).toBe(301);
  });

  it('hands a failure on as it is, and counts it by what is known of the post', async () => {
    const metrics = freshMetrics();
    const failure = new DeliveryFailure('refused', 'is_archived');
    const messenger = meteredMessenger(
      messengerWith(() => Promise.reject(failure)),
      metrics,
      { now: () => DUE_AT },
    );
    await expect(messenger.post('W', { channelId: 'C' }, 'key', PROMPT, undefined, () => true)).rejects.toBe(
      failure,
    );
    expect(await figureOf(metrics.register, 'loadline_posts_dead_total', { reason: 'refused' })).toBe(1);
    expect(await figureOf(metrics.register, 'loadline_prompts_sent_total')).toBe(0);
  });
});
