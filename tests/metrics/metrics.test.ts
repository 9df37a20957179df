/** What is counted, under which names, and that nothing in it says who somebody is. */
import { describe, expect, it } from 'vitest';
import { createMetrics, LATE_AFTER_SECONDS } from '../../src/metrics/metrics.ts';
import { watchQueue } from '../../src/metrics/queue-gauges.ts';
import { figureOf } from './read-metrics.ts';

const BUILD = { version: '0.1.0', nodeVersion: 'v24.0.0', database: 'postgres' };

describe('the metrics', () => {
  it('are named after the advice of Prometheus: prefix, base units, _total for counters only', async () => {
    const { register } = createMetrics(BUILD);
    watchQueue(register, async () => ({
      waitingCount: 0,
      oldestSeconds: 0,
      givenUpCount: 0,
      heldBackCount: 0,
    }));
    const own = (await register.getMetricsAsJSON()).filter(({ name }) => !/^(?:nodejs|process)_/.test(name));
    expect(own.length).toBeGreaterThan(20);
    for (const { name, type, help } of own) {
      expect(name).toMatch(/^loadline_[a-z]+(?:_[a-z]+)+$/);
      // prometheus.io/docs/practices/naming: a counter ends in _total, a time is in seconds.
      expect([name, name.endsWith('_total')]).toEqual([name, String(type) === 'counter']);
      expect(name).not.toMatch(/_(?:ms|milliseconds|minutes|hours)(?:_|$)/);
      expect(help).toMatch(/\.$/);
      if (String(type) === 'histogram') expect(name).toMatch(/_seconds$/);
    }
  });

  it('have only labels that tell kinds and codes apart', async () => {
    const { register } = createMetrics(BUILD);
    const labels = register
      .getMetricsAsArray()
      .filter(({ name }) => name.startsWith('loadline_'))
      .flatMap((metric) => (metric as unknown as { labelNames: string[] }).labelNames);
    expect(new Set(labels)).toEqual(
      new Set(['version', 'node', 'database', 'how', 'kind', 'outcome', 'code', 'reason']),
    );
  });

  it('count a prompt as late only when it came later than the limit', async () => {
    const metrics = createMetrics(BUILD);
    for (const delay of [0, LATE_AFTER_SECONDS, LATE_AFTER_SECONDS + 1, undefined]) metrics.promptSent(delay);
    expect(await figureOf(metrics.register, 'loadline_prompts_sent_total')).toBe(4);
    expect(await figureOf(metrics.register, 'loadline_prompts_late_total')).toBe(1);
    expect(await figureOf(metrics.register, 'loadline_prompt_delay_seconds_count')).toBe(3);
  });

  it('count a refused post as dead at once, and one that failed too often when it is given up', async () => {
    const metrics = createMetrics(BUILD);
    metrics.postAttemptFailed('new', 'refused', 'is_archived', 0.1);
    metrics.postAttemptFailed('new', 'uncertain', 'http_500', 0.1);
    metrics.deliveryGivenUp();
    const dead = (reason: string) => figureOf(metrics.register, 'loadline_posts_dead_total', { reason });
    expect([await dead('refused'), await dead('given-up')]).toEqual([1, 1]);
    expect(
      await figureOf(metrics.register, 'loadline_post_attempts_failed_total', {
        outcome: 'uncertain',
        code: 'http_500',
      }),
    ).toBe(1);
  });

  it('sum up codes that are no codes, and those beyond a bound, so that no flood of series is made', async () => {
    const metrics = createMetrics(BUILD);
    metrics.failed('two words\n# TYPE forged counter');
    metrics.failed('x'.repeat(61));
    for (let n = 0; n < 300; n += 1) metrics.failed(`code_${n}`);
    const text = await metrics.register.getSingleMetricAsString('loadline_errors_total');
    const series = text.split('\n').filter((line) => line.startsWith('loadline_errors_total{'));
    expect(series).toHaveLength(201);
    expect(await figureOf(metrics.register, 'loadline_errors_total', { code: 'other' })).toBe(102);
    expect(text).not.toContain('forged');
  });

  it('begin at 0 where a rate or an alert looks for the first event', async () => {
    const { register } = createMetrics(BUILD);
    for (const [name, labels] of [
      ['loadline_posts_dead_total', { reason: 'given-up' }],
      ['loadline_clock_ticks_total', { outcome: 'failed' }],
      ['loadline_prompts_late_total', {}],
    ] as const) {
      expect(await figureOf(register, name, labels)).toBe(0);
    }
  });
});

describe('the queue’s gauges', () => {
  it('are read from the database once for all of them, each time somebody looks', async () => {
    const { register } = createMetrics(BUILD);
    let reads = 0;
    watchQueue(register, async () => {
      reads += 1;
      return { waitingCount: 7, oldestSeconds: 61.5, givenUpCount: 2, heldBackCount: 3 };
    });
    await register.metrics();
    expect(reads).toBe(1);
    await register.metrics();
    expect(reads).toBe(2);
    expect(await figureOf(register, 'loadline_queue_age_seconds')).toBe(61.5);
    expect(await figureOf(register, 'loadline_queue_posts')).toBe(7);
    expect(await figureOf(register, 'loadline_queue_given_up_posts')).toBe(2);
    expect(await figureOf(register, 'loadline_held_back_posts')).toBe(3);
    expect(await figureOf(register, 'loadline_database_up')).toBe(1);
  });

  it.each([
    ['fails', () => Promise.reject(new Error('down'))],
    ['never answers', () => new Promise<never>(() => undefined)],
  ])('do not repeat an old figure when the database %s, and say that it is down', async (_how, broken) => {
    const { register } = createMetrics(BUILD);
    let read: () => Promise<{
      waitingCount: number;
      oldestSeconds: number;
      givenUpCount: number;
      heldBackCount: number;
    }> = async () => ({ waitingCount: 7, oldestSeconds: 61.5, givenUpCount: 2, heldBackCount: 3 });
    watchQueue(register, () => read(), 50);
    await register.metrics();
    read = broken;
    expect(await figureOf(register, 'loadline_database_up')).toBe(0);
    expect(await figureOf(register, 'loadline_queue_age_seconds')).toBeNaN();
  });
});
