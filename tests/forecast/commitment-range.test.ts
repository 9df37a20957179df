import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ComingTime } from '../../src/forecast/availability.ts';
import type { SprintEvidence } from '../../src/forecast/commitment-evidence.ts';
import type { CommitmentRange, CrossedRange, RangeThresholds } from '../../src/forecast/commitment-range.ts';
import { chanceKept, chancePulledInTooMuch, commitmentRange } from '../../src/forecast/commitment-range.ts';
import { aPastSprint } from './past-sprint.ts';

const THRESHOLDS: RangeThresholds = {
  keptShareAtLeast: 0.8,
  pullInRatioAtMost: 0.2,
  surpriseRatioAtMost: 0.2,
};
const ALL_THERE: ComingTime = { workingDays: 10, memberDays: 50, memberDaysWhenAllThere: 50 };

function sprint(commitment: number, pulledIn: number, finished: number, velocity: number): SprintEvidence {
  return aPastSprint({
    commitmentPoints: commitment,
    pulledInPoints: pulledIn,
    committedFinishedPoints: finished,
    velocityPoints: velocity,
  });
}

function range(
  past: readonly SprintEvidence[],
  coming: ComingTime = ALL_THERE,
  thresholds: RangeThresholds = THRESHOLDS,
): CommitmentRange {
  return commitmentRange(past, coming, thresholds) as CommitmentRange;
}

function repeated(one: SprintEvidence, times: number): SprintEvidence[] {
  return Array.from({ length: times }, () => one);
}

/** Commits to about 21 points and pulls in about 9 more, most of which it finishes. */
const TIMID = [
  sprint(21, 9, 21, 29),
  sprint(20, 11, 20, 30),
  sprint(22, 8, 22, 29),
  sprint(21, 10, 21, 31),
  sprint(20, 9, 20, 28),
  sprint(21, 10, 21, 30),
];
/** Commits to about 40 points and finishes about 25. */
const BOLD = [
  sprint(40, 0, 25, 25),
  sprint(42, 0, 24, 24),
  sprint(38, 0, 26, 26),
  sprint(40, 0, 25, 25),
  sprint(41, 0, 27, 27),
  sprint(40, 0, 24, 24),
];

const anySprint = fc
  .record({
    commitment: fc.integer({ min: 1, max: 60 }),
    pulledIn: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 25 })),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    pulledInShare: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .map(({ commitment, pulledIn, share, pulledInShare }) => {
    const finished = Math.round(commitment * share);
    return sprint(commitment, pulledIn, finished, finished + Math.round(pulledIn * pulledInShare));
  });

describe('the range to commit to', () => {
  test('raises the sights of a team that commits to too little', () => {
    const { lowPoints, highPoints, crossed } = range(TIMID);
    expect(lowPoints).toBeGreaterThanOrEqual(25);
    expect(lowPoints).toBeLessThanOrEqual(29);
    expect(highPoints).toBeGreaterThanOrEqual(lowPoints as number);
    expect(crossed).toBeUndefined();
  });

  test('lowers those of a team that commits to too much', () => {
    const { lowPoints, highPoints } = range(BOLD);
    expect(highPoints).toBeLessThan(32);
    expect(highPoints).toBeGreaterThan(24);
    expect(lowPoints).toBeLessThanOrEqual(highPoints as number);
  });

  test('its high end is likely to be kept, and its low end unlikely to be followed by too much pulled-in work', () => {
    for (const past of [TIMID, BOLD]) {
      const { lowPoints, highPoints, model } = range(past);
      expect(chanceKept(model, highPoints as number, THRESHOLDS)).toBeGreaterThanOrEqual(0.8);
      expect(chancePulledInTooMuch(model, lowPoints as number, THRESHOLDS)).toBeLessThanOrEqual(0.2);
      // Half a point further and it would not be.
      expect(chancePulledInTooMuch(model, (lowPoints as number) - 0.5, THRESHOLDS)).toBeGreaterThan(0.2);
    }
    const bold = range(BOLD);
    expect(chanceKept(bold.model, (bold.highPoints as number) + 0.5, THRESHOLDS)).toBeLessThan(0.8);
  });

  test('never counts on more than has ever been finished', () => {
    // Ten sprints, each kept with nothing to spare: 20 finished is a floor of 80% of 25.
    const { highPoints } = range(repeated(sprint(20, 0, 20, 20), 10));
    expect(highPoints).toBe(25);
  });

  test('fits into a floor of 100% and a ceiling of 0% as well', () => {
    const strict = { ...THRESHOLDS, keptShareAtLeast: 1, pullInRatioAtMost: 0 };
    const [plain, harder] = [range(BOLD), range(BOLD, ALL_THERE, strict)];
    expect(harder.highPoints).toBeLessThan(plain.highPoints as number);
    expect(harder.lowPoints).toBeGreaterThan(plain.lowPoints as number);
  });

  test('a floor of 0% has no high end, and the reason says so', () => {
    const { highPoints, lowPoints } = range(BOLD, ALL_THERE, { ...THRESHOLDS, keptShareAtLeast: 0 });
    expect(highPoints).toEqual({ undefined: { code: 'floor-is-zero' } });
    expect(lowPoints).toBeGreaterThan(0);
  });

  test('a commitment of nothing has no chances', () => {
    const { model } = range(BOLD);
    expect(chanceKept(model, 0, THRESHOLDS)).toHaveProperty('undefined');
    expect(chancePulledInTooMuch(model, 0, THRESHOLDS)).toHaveProperty('undefined');
  });

  test('counts how often surprise work alone missed the sprint', () => {
    const past = [
      ...BOLD,
      aPastSprint({ surprisePoints: 6 }),
      aPastSprint({ surprisePoints: 6.5 }),
      aPastSprint({ surprisePoints: undefined }),
    ];
    expect(range(past).surpriseAboveCeiling).toEqual({ sprints: 1, of: 8 });
  });
});

describe('the range follows the working time', () => {
  test('half of the members away halves it', () => {
    const full = range(TIMID);
    const half = range(TIMID, { ...ALL_THERE, memberDays: 25 });
    expect((half.highPoints as number) * 2).toBeCloseTo(full.highPoints as number, -0.5);
    expect((half.lowPoints as number) * 2).toBeCloseTo(full.lowPoints as number, -0.5);
  });

  test.each<[string, Partial<SprintEvidence>, number | undefined]>([
    ['absence known before and for the coming sprint', { memberDays: 40 }, 1],
    ['absence known before, away days left blank', { memberDays: 40 }, undefined],
    ['sprints that only know how many members the team had', { memberDays: undefined, membersThen: 4 }, 1],
    ['these, away days left blank', { memberDays: undefined, membersThen: 4 }, undefined],
  ])('twice the members can carry twice as much, half of them half: %s', (_, then, there) => {
    const past = TIMID.map((one) => ({ ...one, ...then }));
    const ends = (members: number): number[] => {
      const allThere = 10 * members;
      const memberDays = there && allThere * there;
      const { lowPoints, highPoints, model } = range(past, {
        workingDays: 10,
        memberDays,
        memberDaysWhenAllThere: allThere,
      });
      expect(model.scaledTo).toEqual({ measuredBy: 'member-days', comingTime: allThere });
      return [lowPoints as number, highPoints as number];
    };
    const [same, twice, half] = [ends(4), ends(8), ends(2)] as [number[], number[], number[]];
    for (const end of [0, 1]) {
      expect((twice[end] as number) / (same[end] as number)).toBeCloseTo(2, 1);
      expect((half[end] as number) / (same[end] as number)).toBeCloseTo(0.5, 1);
    }
  });

  test('a past sprint of half the length counts as what it would have been at full length', () => {
    const short = TIMID.map((one) => ({
      ...sprint(
        one.commitmentPoints / 2,
        (one.pulledInPoints as number) / 2,
        (one.committedFinishedPoints as number) / 2,
        (one.velocityPoints as number) / 2,
      ),
      workingDays: 5,
      memberDays: 25,
    }));
    expect(range(short).highPoints).toBe(range(TIMID).highPoints);
    expect(range(short).lowPoints).toBe(range(TIMID).lowPoints);
  });

  test('with nobody there it says so', () => {
    const none = { undefined: { code: 'nobody-there' } };
    expect(commitmentRange(TIMID, { ...ALL_THERE, memberDays: 0 }, THRESHOLDS)).toEqual(none);
    expect(commitmentRange(TIMID, { ...ALL_THERE, workingDays: 0 }, THRESHOLDS)).toEqual(none);
  });

  test('a sprint in which nobody was there is left out', () => {
    expect(range([...TIMID, aPastSprint({ memberDays: 0 })]).sprints).toBe(TIMID.length);
  });
});

describe('with little history the range says what is missing', () => {
  test.each([0, 1, 2])('with %i sprints there is none yet', (count) => {
    expect(commitmentRange(TIMID.slice(0, count), ALL_THERE, THRESHOLDS)).toEqual({
      undefined: { code: 'few-sprints', needed: 3, known: count, having: 'commitment' },
    });
  });

  test('a sprint without a commitment counts for none', () => {
    const past = [...TIMID.slice(0, 2), aPastSprint({ commitmentPoints: 0, pulledInPoints: 20 })];
    expect(commitmentRange(past, ALL_THERE, THRESHOLDS)).toHaveProperty('undefined');
  });

  test('with three to five it says that it is based partly on belief; with six no more', () => {
    expect(range(TIMID.slice(0, 3)).missing).toEqual([{ code: 'few-sprints', sprints: 3, firmSprints: 6 }]);
    expect(range(TIMID.slice(0, 5)).missing).toHaveLength(1);
    expect(range(TIMID).missing).toEqual([]);
  });

  test('with three to five sprints it is never absurd: between half and twice what the team has finished', () => {
    for (const team of [TIMID, BOLD]) {
      const finished = team.map((one) => one.velocityPoints as number);
      for (const count of [3, 4, 5]) {
        const { lowPoints, highPoints } = range(team.slice(0, count));
        for (const end of [lowPoints, highPoints]) {
          expect(end).toBeGreaterThan(Math.min(...finished) / 2);
          expect(end).toBeLessThan(Math.max(...finished) * 1.5);
        }
      }
    }
  });

  test('each end is undefined on its own when its facts were not recorded', () => {
    const commitmentOnly = BOLD.map((one) => ({
      ...one,
      velocityPoints: undefined,
      committedFinishedPoints: undefined,
    }));
    const { lowPoints, highPoints } = range(commitmentOnly);
    expect(highPoints).toEqual({
      undefined: { code: 'few-sprints', needed: 3, known: 0, having: 'finished-points' },
    });
    expect(lowPoints).toBeGreaterThan(0);
    const noPullIns = BOLD.map((one, i) => ({ ...one, pulledInPoints: i === 0 ? 0 : undefined }));
    expect(range(noPullIns).lowPoints).toEqual({
      undefined: { code: 'few-sprints', needed: 3, known: 1, having: 'pulled-in-points' },
    });
    expect(range(noPullIns).highPoints).toBeGreaterThan(0);
  });

  test('what it does not know of finished cards and of people away is said', () => {
    const unknown = { committedFinishedPoints: undefined, memberDays: undefined };
    const past = TIMID.map((one, i) => (i < 2 ? { ...one, ...unknown } : one));
    expect(range(past).missing).toEqual([
      { code: 'finish-not-recorded', sprints: 2, of: 6 },
      { code: 'past-members-unknown', sprints: 2, of: 6, taken: 'members-around' },
    ]);
    const daysOnly = { workingDays: 10, memberDays: undefined, memberDaysWhenAllThere: undefined };
    expect(range(TIMID, daysOnly).missing).toEqual([{ code: 'coming-absence-unknown' }]);
    const noMembers = TIMID.map((one) => ({ ...one, memberDays: undefined }));
    expect(range(noMembers, daysOnly).missing).toEqual([{ code: 'members-away-unknown' }]);
    expect(range(TIMID, { ...daysOnly, workingDays: undefined }).missing).toEqual([
      { code: 'working-time-unknown' },
    ]);
  });

  test('only the last twelve sprints count', () => {
    const long = [...repeated(sprint(90, 0, 90, 90), 5), ...TIMID, ...TIMID];
    expect(range(long).sprints).toBe(12);
    expect(range(long).highPoints).toBe(range([...TIMID, ...TIMID]).highPoints);
  });
});

describe('when the low end lies above the high end', () => {
  test('a team whose output swings gets a compromise, and its chance', () => {
    const past = [
      sprint(30, 0, 12, 12),
      sprint(30, 20, 30, 50),
      sprint(30, 0, 25, 25),
      sprint(30, 10, 30, 40),
      sprint(30, 0, 16, 16),
      sprint(30, 2, 30, 32),
    ];
    const { lowPoints, highPoints, crossed, model } = range(past);
    expect(lowPoints).toBeGreaterThan(highPoints as number);
    expect(crossed?.why).toEqual({ code: 'varies-too-much' });
    const { points, chance } = (crossed as CrossedRange).compromise as { points: number; chance: number };
    expect(points).toBeGreaterThanOrEqual(highPoints as number);
    expect(points).toBeLessThanOrEqual(lowPoints as number);
    const kept = chanceKept(model, points, THRESHOLDS) as number;
    const spared = 1 - (chancePulledInTooMuch(model, points, THRESHOLDS) as number);
    expect(Math.abs(kept - spared)).toBeLessThan(0.03);
    expect(chance).toBe(Math.min(kept, spared));
  });

  test('a team that pulls work in before it has finished is told so', () => {
    const { crossed } = range(repeated(sprint(30, 15, 18, 30), 6));
    expect(crossed).toEqual({
      why: { code: 'pulled-in-before-finishing', sprints: 6, of: 6 },
      compromise: undefined,
    });
  });

  test('a team that finishes nothing is told so, and not to commit to anything', () => {
    const { highPoints, crossed } = range(repeated(sprint(30, 0, 0, 0), 4));
    expect(highPoints).toBe(0);
    expect(crossed?.why).toEqual({ code: 'too-little-finished' });
  });
});

describe('the chances behind the range', () => {
  test('never rise with the commitment, and lie within 0 to 1', () => {
    fc.assert(
      fc.property(fc.array(anySprint, { minLength: 3, maxLength: 8 }), (past) => {
        const { model } = range(past);
        const commitments = [0.5, 5, 10, 20, 30, 45, 60, 100];
        for (const chanceOf of [chanceKept, chancePulledInTooMuch]) {
          const chances = commitments.map((points) => chanceOf(model, points, THRESHOLDS) as number);
          expect(chances).toEqual(chances.toSorted((a, b) => b - a));
          for (const chance of chances) {
            expect(chance).toBeGreaterThanOrEqual(0);
            expect(chance).toBeLessThanOrEqual(1);
          }
        }
      }),
      { seed: 20261122, numRuns: 25 },
    );
  });

  test('for every history, the ends are halves of points within what the team has handled, or reasons', () => {
    fc.assert(
      fc.property(fc.array(anySprint, { minLength: 3, maxLength: 12 }), (past) => {
        const { lowPoints, highPoints, crossed } = range(past);
        const most = Math.max(...past.map((one) => one.commitmentPoints + (one.pulledInPoints as number)));
        for (const end of [lowPoints, highPoints] as number[]) {
          expect(Number.isInteger(end * 2)).toBe(true);
          expect(end).toBeGreaterThanOrEqual(0);
          expect(end).toBeLessThanOrEqual(2 * most + 1);
        }
        expect(crossed === undefined).toBe((lowPoints as number) <= (highPoints as number));
      }),
      { seed: 20261123, numRuns: 25 },
    );
  });

  test('are the same on every reckoning', () => {
    const [one, other] = [range(TIMID), range(TIMID)];
    expect([one.lowPoints, one.highPoints]).toEqual([other.lowPoints, other.highPoints]);
    expect(chanceKept(one.model, 27, THRESHOLDS)).toBe(chanceKept(other.model, 27, THRESHOLDS));
  });
});
