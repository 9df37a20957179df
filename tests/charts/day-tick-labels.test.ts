import { describe, expect, test } from 'vitest';
import { dayTickLabels } from '../../src/charts/day-tick-labels.ts';
import { fortyDays, type midSprint } from './burndown-examples.ts';

const datesOf = (burndown: typeof midSprint) => burndown.days.map(({ day }) => day);

describe('the days under an axis', () => {
  test('are all written when there is room, with the month where it begins', () => {
    expect(dayTickLabels(['2026-11-30', '2026-12-01', '2026-12-02'], 60)).toEqual([
      'start',
      'Mon 30\nNov',
      'Tue 1\nDec',
      'Wed 2',
    ]);
  });

  test('are the first of each week and the last when there is not', () => {
    const labels = dayTickLabels(datesOf(fortyDays), 15);
    expect(labels).toHaveLength(41);
    expect(labels.filter((label) => label !== '')).toEqual([
      'start',
      'Mon 21\nSep',
      'Mon 28',
      'Mon 5\nOct',
      'Mon 12',
      'Mon 19',
      'Mon 26',
      'Mon 2\nNov',
      'Fri 6',
    ]);
  });

  test('skip weeks as well when even these would touch', () => {
    const labels = dayTickLabels(datesOf(fortyDays), 5);
    const shown = labels.flatMap((label, position) => (label === '' ? [] : [position]));
    const gaps = shown.slice(1).map((position, index) => position - (shown[index] ?? 0));
    expect(Math.min(...gaps) * 5).toBeGreaterThanOrEqual(50);
    expect(shown.at(-1)).toBe(40);
  });

  test('fill up with other days when no week begins in the sprint', () => {
    expect(dayTickLabels(['2026-11-02', '2026-11-03', '2026-11-04', '2026-11-05'], 30)).toEqual([
      'start',
      '',
      'Tue 3\nNov',
      '',
      'Thu 5',
    ]);
  });

  test('take the next working day as the first of its week when Monday is off', () => {
    const labels = dayTickLabels(['2026-11-05', '2026-11-06', '2026-11-10', '2026-11-11', '2026-11-12'], 30);
    expect(labels).toEqual(['start', '', '', 'Tue 10\nNov', '', 'Thu 12']);
  });

  test('see a new week after a gap even when the weekday is a later one', () => {
    // Monday, then Wednesday of the week after.
    const labels = dayTickLabels(['2026-11-02', '2026-11-03', '2026-11-11', '2026-11-12', '2026-11-13'], 30);
    expect(labels).toEqual(['start', '', '', 'Wed 11\nNov', '', 'Fri 13']);
  });

  test('need only the start when the sprint has no days', () => {
    expect(dayTickLabels([], 600)).toEqual(['start']);
  });
});
