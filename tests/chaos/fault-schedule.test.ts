import { expect, it } from 'vitest';
import { faultSchedule } from './fault-schedule.ts';

it('brings the same faults at the same moments with the same seed, and others with another', () => {
  expect(faultSchedule(7, 60_000, 3)).toEqual(faultSchedule(7, 60_000, 3));
  expect(faultSchedule(7, 60_000, 3)).not.toEqual(faultSchedule(8, 60_000, 3));
});

it('holds every kind of fault in a long run, in order, within its time', () => {
  const faults = faultSchedule(1, 1_800_000, 3);
  const times = faults.map(({ atMs }) => atMs);
  expect(times).toEqual(times.toSorted((a, b) => a - b));
  expect(Math.max(...times)).toBeLessThan(1_800_000);
  const kinds = new Set(
    faults.map((fault) => (fault.kind === 'api' ? `api ${fault.trouble.kind}` : fault.kind)),
  );
  expect([...kinds].sort()).toEqual([
    'api cut-after',
    'api cut-before',
    'api error-after',
    'api error-before',
    'api no-answer',
    'api slow',
    'api slow-down',
    'clock',
    'database-away',
    'database-cut',
    'database-full',
    'database-half-close',
    'database-read-only',
    'database-restart',
    'database-silent',
    'database-slow',
    'freeze',
    'kill',
    'requests',
    'stop',
  ]);
});

it('names only processes that there are', () => {
  const named = faultSchedule(3, 600_000, 2).flatMap((fault) =>
    'bot' in fault && fault.bot !== undefined ? [fault.bot] : [],
  );
  expect([...new Set(named)].sort()).toEqual([0, 1]);
});
