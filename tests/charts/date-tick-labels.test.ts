import { describe, expect, test } from 'vitest';
import { dateTickLabels } from '../../src/charts/date-tick-labels.ts';

describe('the dates under an axis of sprints', () => {
  test('are all written when there is room, with the year where it begins', () => {
    expect(dateTickLabels(['2026-12-04', '2026-12-18', '2027-01-01'], 60)).toEqual([
      '4 Dec\n2026',
      '18 Dec',
      '1 Jan\n2027',
    ]);
  });

  test('are every n-th back from the last when there is not', () => {
    const dates = ['2026-10-02', '2026-10-16', '2026-10-30', '2026-11-13', '2026-11-27', '2026-12-11'];
    expect(dateTickLabels(dates, 20)).toEqual(['', '', '30 Oct\n2026', '', '', '11 Dec']);
  });

  test('are none when there is no sprint', () => {
    expect(dateTickLabels([], 60)).toEqual([]);
  });
});
