import { describe, expect, test } from 'vitest';
import { nextSprintDays, sprintRhythmDays } from '../../../src/app/planning/sprint-rhythm.ts';
import { NO_DAYS_OFF } from '../../../src/sprint/work-calendar.ts';

const WEEKDAYS = { workingDays: [1, 2, 3, 4, 5], daysOff: NO_DAYS_OFF };
// Monday to Friday of the week after.
const NOVEMBER = { startsOn: '2026-11-02', endsOn: '2026-11-13' };

describe('the next sprint', () => {
  test('of a team without any begins today and takes in two working weeks', () => {
    const none = { open: [], lastFinished: undefined };
    // A Monday.
    expect(nextSprintDays(WEEKDAYS, none, '2026-11-02')).toEqual(NOVEMBER);
  });

  test('that begins in the middle of a week takes in two working weeks too, and ends on a working day', () => {
    const none = { open: [], lastFinished: undefined };
    // A Tuesday.
    expect(nextSprintDays(WEEKDAYS, none, '2026-11-03').endsOn).toBe('2026-11-16');
    const monday = { full: ['2026-11-16'], half: [] };
    expect(nextSprintDays({ ...WEEKDAYS, daysOff: monday }, none, '2026-11-03').endsOn).toBe('2026-11-13');
  });

  test('is not made shorter by one that a holiday or a late start shortened', () => {
    for (const short of [
      { startsOn: '2026-11-03', endsOn: '2026-11-13' },
      { startsOn: '2026-11-02', endsOn: '2026-11-12' },
    ]) {
      const next = nextSprintDays(WEEKDAYS, { open: [], lastFinished: short }, '2026-11-16');
      expect(next).toEqual({ startsOn: '2026-11-16', endsOn: '2026-11-27' });
    }
  });

  test('of no whole weeks ends by the same length, on a working day', () => {
    const three = { startsOn: '2026-11-02', endsOn: '2026-11-04' };
    expect(nextSprintDays(WEEKDAYS, { open: [three], lastFinished: undefined }, '2026-11-02')).toEqual({
      startsOn: '2026-11-05',
      endsOn: '2026-11-06',
    });
  });

  test('begins on the first working day after the last open one, on every day of asking, and is as long', () => {
    const planned = { startsOn: '2026-11-16', endsOn: '2026-11-20' };
    const taken = {
      open: [NOVEMBER, planned],
      lastFinished: { startsOn: '2026-10-19', endsOn: '2026-10-30' },
    };
    expect(nextSprintDays(WEEKDAYS, taken, '2026-11-04')).toEqual({
      startsOn: '2026-11-23',
      endsOn: '2026-11-27',
    });
  });

  test('begins after the day on which a sprint has ended, and not before today', () => {
    const over = { open: [], lastFinished: NOVEMBER };
    expect(nextSprintDays(WEEKDAYS, over, '2026-11-13').startsOn).toBe('2026-11-16');
    expect(nextSprintDays(WEEKDAYS, over, '2026-12-01').startsOn).toBe('2026-12-01');
    // A Saturday.
    expect(nextSprintDays(WEEKDAYS, over, '2026-12-05').startsOn).toBe('2026-12-07');
  });

  test('is not held up in the past by a sprint that is open again for corrections', () => {
    const reopened = { open: [NOVEMBER], lastFinished: undefined };
    expect(nextSprintDays(WEEKDAYS, reopened, '2026-11-18').startsOn).toBe('2026-11-18');
  });

  test('may begin today where a sprint was closed before its last day', () => {
    expect(nextSprintDays(WEEKDAYS, { open: [], lastFinished: NOVEMBER }, '2026-11-11').startsOn).toBe(
      '2026-11-11',
    );
  });

  test('knows the team’s own working days', () => {
    const sundays = { workingDays: [7, 1, 2, 3, 4], daysOff: NO_DAYS_OFF };
    // A Friday.
    expect(nextSprintDays(sundays, { open: [], lastFinished: NOVEMBER }, '2026-11-20').startsOn).toBe(
      '2026-11-22',
    );
  });
});

describe('the days from sprint to sprint', () => {
  const starting = (...days: string[]) => days.map((startsOn) => ({ startsOn, endsOn: startsOn }));

  test('are the median distance of their starts, in any order', () => {
    expect(sprintRhythmDays(starting('2026-02-23', '2026-01-05', '2026-01-19', '2026-02-02'))).toBe(14);
  });

  test('are those of the latest six distances, so that a new rhythm is believed after four', () => {
    const fortnights = ['2025-10-06', '2025-10-20', '2025-11-03', '2025-11-17', '2025-12-01'];
    const weeks = ['2025-12-08', '2025-12-15', '2025-12-22', '2025-12-29'];
    expect(sprintRhythmDays(starting(...fortnights, ...weeks))).toBe(7);
    expect(sprintRhythmDays(starting(...fortnights, ...weeks.slice(0, 2)))).toBe(14);
  });

  test('are whole days where the median lies between two', () => {
    expect(sprintRhythmDays(starting('2026-01-05', '2026-01-12', '2026-01-20'))).toBe(8);
  });

  test('pass over sprints that began together, as imported ones may', () => {
    expect(sprintRhythmDays(starting('2026-01-05', '2026-01-05', '2026-01-05', '2026-01-26'))).toBe(21);
  });

  test('of a single sprint are its own length in whole weeks', () => {
    expect(sprintRhythmDays([NOVEMBER])).toBe(14);
    expect(sprintRhythmDays([{ startsOn: '2026-11-02', endsOn: '2026-11-06' }])).toBe(7);
    expect(sprintRhythmDays([{ startsOn: '2026-11-02', endsOn: '2026-11-08' }])).toBe(7);
  });

  test('are two weeks where there was no sprint', () => {
    expect(sprintRhythmDays([])).toBe(14);
  });
});
