import { describe, expect, test } from 'vitest';
import { comingSprint, rangeOf, readCommitment } from '../../../src/app/advice/range-advice.ts';
import { commitmentRange } from '../../../src/forecast/commitment-range.ts';
import { DEFAULT_THRESHOLDS } from '../../../src/sprint/thresholds.ts';
import { NO_DAYS_OFF } from '../../../src/sprint/work-calendar.ts';
import { aMember } from '../../store/store-examples.ts';
import { finishing, missing, pastSprintsOf } from '../past-sprints.ts';

const RULES = { thresholds: DEFAULT_THRESHOLDS };

const TEAM = { timeZone: 'Europe/Lisbon', workingDays: [1, 2, 3, 4, 5], daysOff: NO_DAYS_OFF };
const THREE = [
  { ...aMember(), isActive: true },
  { ...aMember(), isActive: true },
  { ...aMember(), isActive: false },
  { ...aMember(), isActive: true },
];
const DAYS = { startsOn: '2026-11-02', endsOn: '2026-11-13' };
const COMING = comingSprint(TEAM, THREE, DAYS, undefined);

/** Committed 20 and pulled in about 4 each time, and finished it all: it can carry a little more than it promises. */
const STEADY = pastSprintsOf([3.5, 4, 4.5, 4, 3.5, 4.5, 4, 4].map((pulledIn) => finishing(20, pulledIn)));

describe('the coming sprint', () => {
  test('counts the working days of its span and the members of today', () => {
    expect(COMING).toEqual({ ...DAYS, workingDays: 10, members: 3, memberDays: 30, awayDays: undefined });
  });

  test('has no day that the team’s zone leaves out', () => {
    // Apia had no 30 December 2011, a Friday (IANA tz database, 2025c).
    const days = { startsOn: '2011-12-26', endsOn: '2011-12-30' };
    expect(comingSprint({ ...TEAM, timeZone: 'Pacific/Apia' }, THREE, days, 0).workingDays).toBe(4);
  });
});

describe('the range', () => {
  test('is that of the statistics, for the members and days that there will be', () => {
    const { range } = rangeOf(RULES, STEADY, { ...COMING, awayDays: 6 });
    const reckoned = commitmentRange(
      STEADY,
      { workingDays: 10, memberDays: 24, memberDaysWhenAllThere: 30 },
      DEFAULT_THRESHOLDS,
    );
    if ('undefined' in range || 'undefined' in reckoned) throw new Error('there is a range');
    expect([range.lowPoints, range.highPoints]).toEqual([reckoned.lowPoints, reckoned.highPoints]);
  });

  test('is as much narrower as people are away', () => {
    const high = (awayDays: number): number => {
      const { range } = rangeOf(RULES, STEADY, { ...COMING, awayDays });
      return 'undefined' in range ? Number.NaN : (range.highPoints as number);
    };
    expect(high(15) / high(0)).toBeCloseTo(0.5, 0.9);
  });

  test('goes by the members of today and their calendars, whether anybody was said to be away or not', () => {
    const highOf = (team: typeof TEAM, people: typeof THREE): number => {
      const { range } = rangeOf(RULES, STEADY, comingSprint(team, people, DAYS, undefined));
      return 'undefined' in range ? Number.NaN : (range.highPoints as number);
    };
    const whole = highOf(TEAM, THREE);
    const halfTime = THREE.map((person) => ({ ...person, worksOn: [1, 2] }));
    const oneWeekOff = { full: ['02', '03', '04', '05', '06'].map((day) => `2026-11-${day}`), half: [] };
    expect(highOf(TEAM, halfTime) / whole).toBeCloseTo(0.4, 1);
    expect(highOf({ ...TEAM, daysOff: oneWeekOff }, THREE) / whole).toBeCloseTo(0.5, 1);
    expect(highOf(TEAM, [...THREE, ...THREE]) / whole).toBeCloseTo(2, 1);
    expect(rangeOf(RULES, STEADY, COMING).range).toMatchObject({ missing: [] });
  });

  test('does not exist when everybody is away, also when members have left since they were counted', () => {
    const empty = { undefined: { code: 'nobody-there' } };
    for (const awayDays of [30, 40]) {
      expect(rangeOf(RULES, STEADY, { ...COMING, awayDays }).range).toEqual(empty);
    }
  });

  test('comes with the sprints that it is made from: the latest twelve with a commitment', () => {
    const many = pastSprintsOf(Array.from({ length: 20 }, (_, i) => finishing(i === 17 ? 0 : 20, 4)));
    const { past } = rangeOf(RULES, many, COMING);
    expect(past.map(({ name }) => name)).toEqual(
      [8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 19, 20].map((n) => `Harbour ${n}`),
    );
  });

  test('comes with the sprints that there are when they are too few', () => {
    const few = pastSprintsOf([finishing(20, 4), finishing(0, 12), finishing(18, 0)]);
    const { past, range } = rangeOf(RULES, few, COMING);
    expect(range).toEqual({
      undefined: { code: 'few-sprints', needed: 3, known: 2, having: 'commitment' },
    });
    expect(past.map(({ name }) => name)).toEqual(['Harbour 1', 'Harbour 3']);
  });
});

describe('a commitment', () => {
  const advice = rangeOf(RULES, STEADY, { ...COMING, awayDays: 0 });
  const ends = 'undefined' in advice.range ? undefined : advice.range;
  const [low, high] = [ends?.lowPoints as number, ends?.highPoints as number];

  test('is kept, and runs out of work, with the chances that the ends stand for', () => {
    const at = (points: number) => readCommitment(points, advice);
    // 80% kept at the high end, 20% run out at the low end (design, section 5).
    expect(low).toBeLessThan(high);
    expect(at(high).kept).toBeGreaterThanOrEqual(0.8);
    expect(at(high + 10).kept).toBeLessThan(0.8);
    expect(at(low).ranOut).toBeLessThanOrEqual(0.2);
    expect(at(low - 1).ranOut).toBeGreaterThan(0.2);
    expect(at(high).finishedWhole).toBeLessThan(at(high).kept as number);
  });

  test('of nothing has no chances', () => {
    const none = { undefined: { code: 'nothing-committed' } };
    expect(readCommitment(0, advice)).toEqual({ kept: none, finishedWhole: none, ranOut: none });
  });

  test('has the chances that are known where one isn’t', () => {
    const noPullIns = STEADY.map((sprint) => ({ ...sprint, pulledInPoints: undefined }));
    const oneEnded = rangeOf(RULES, noPullIns, { ...COMING, awayDays: 0 });
    expect(oneEnded.range).toMatchObject({ lowPoints: { undefined: { code: 'few-sprints', known: 0 } } });
    expect(readCommitment(1, oneEnded).kept).toBeGreaterThan(0.9);
    expect(readCommitment(1, oneEnded).ranOut).toHaveProperty('undefined');
  });

  test('has no chances before there is a range, for the same reason', () => {
    const { range } = rangeOf(RULES, [], COMING);
    expect(readCommitment(20, { range, thresholds: DEFAULT_THRESHOLDS })).toEqual({
      kept: range,
      finishedWhole: range,
      ranOut: range,
    });
  });
});

describe('what would help', () => {
  test('is smaller cards where sprints were missed by one that stayed open', () => {
    // The card of 13 was begun in each; with it the sprints of 21 would have been kept.
    const cards = [13, 5, 8, 5, 3].map((estimatePoints, i) => ({
      estimatePoints,
      surprisePoints: 0,
      doneShare: i === 0 ? 0.5 : 1,
    }));
    const wavering = [4, 30, 8, 21, 3, 21, 6, 21].map((points) => ({ ...missing(34, points), cards }));
    const { range } = rangeOf(RULES, pastSprintsOf(wavering), COMING);
    expect(range).toMatchObject({
      advised: { unserved: { remedies: [{ code: 'smaller-cards', sprints: 3, of: 8 }] } },
    });
  });
});
