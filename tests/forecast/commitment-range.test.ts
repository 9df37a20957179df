import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ComingTime } from '../../src/forecast/availability.ts';
import type { SprintEvidence } from '../../src/forecast/commitment-evidence.ts';
import type {
  AdvisedCommitment,
  CommitmentRange,
  RangeThresholds,
} from '../../src/forecast/commitment-range.ts';
import { commitmentChances, commitmentRange } from '../../src/forecast/commitment-range.ts';
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

/** The advised number. */
function advised(range: CommitmentRange): AdvisedCommitment {
  if ('undefined' in range.advised) throw new Error(range.advised.undefined.code);
  return range.advised;
}

/** The three chances of a commitment, which must be known. */
function chances(
  { model }: CommitmentRange,
  points: number,
): Record<'kept' | 'finishedWhole' | 'ranOut', number> {
  return commitmentChances(model, points, THRESHOLDS) as ReturnType<typeof chances>;
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
    const found = range(TIMID);
    const { lowPoints, highPoints } = found;
    expect(lowPoints).toBeGreaterThanOrEqual(25);
    expect(lowPoints).toBeLessThanOrEqual(29);
    expect(highPoints).toBeGreaterThanOrEqual(lowPoints as number);
    expect(advised(found).unserved).toBeUndefined();
    // About what it finishes, a third more than it commits to.
    expect(advised(found).points).toBeGreaterThanOrEqual(28);
    expect(advised(found).points).toBeLessThanOrEqual(31);
  });

  test('lowers those of a team that commits to too much', () => {
    const { lowPoints, highPoints } = range(BOLD);
    expect(highPoints).toBeLessThan(32);
    expect(highPoints).toBeGreaterThan(24);
    expect(lowPoints).toBeLessThanOrEqual(highPoints as number);
  });

  test('its ends are whole points: at the high one it is likely to be kept, at the low one unlikely to run out', () => {
    for (const past of [TIMID, BOLD]) {
      const found = range(past);
      const [low, high] = [found.lowPoints as number, found.highPoints as number];
      expect(Number.isInteger(low) && Number.isInteger(high)).toBe(true);
      expect(chances(found, high).kept).toBeGreaterThanOrEqual(0.8);
      expect(chances(found, low).ranOut).toBeLessThanOrEqual(0.2);
      // A point further and it would not be.
      expect(chances(found, low - 1).ranOut).toBeGreaterThan(0.2);
    }
    const bold = range(BOLD);
    expect(chances(bold, (bold.highPoints as number) + 1).kept).toBeLessThan(0.8);
  });

  test('a team that always finishes 30 of 40 is advised about 30, which it finishes whole, not what it merely keeps', () => {
    const found = range(repeated(sprint(40, 0, 30, 30), 8));
    expect(found.highPoints).toBeGreaterThan(33);
    const { points, chances: told } = advised(found);
    expect(points).toBe(30);
    expect(told.kept).toBeGreaterThan(0.85);
    expect(told.finishedWhole).toBeGreaterThan(0.5);
    expect(told.ranOut).toBeLessThan(0.2);
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

  test('with a floor of 0% every commitment is kept, and the advice is what is finished whole as often as not', () => {
    const found = range(BOLD, ALL_THERE, { ...THRESHOLDS, keptShareAtLeast: 0 });
    expect(advised(found).chances.kept).toBe(1);
    expect(advised(found).points).toBe(25);
  });

  test('a commitment of nothing has no chances', () => {
    const none = { undefined: { code: 'nothing-committed' } };
    const found = commitmentChances(range(BOLD).model, 0, THRESHOLDS);
    expect(found).toEqual({ kept: none, finishedWhole: none, ranOut: none });
  });

  test.each([
    ['steady', [28, 33, 30, 29, 31, 32, 27, 30, 33, 28, 31, 30]],
    ['unsteady', [28, 40, 22, 29, 35, 18, 27, 30, 43, 25, 31, 33]],
    ['constant', Array.from({ length: 12 }, () => 30)],
  ])('one sprint of 0 or of 300 among twelve %s ones moves no end by more than a sixth', (_, velocities) => {
    const with_ = (points: readonly number[]) =>
      range(points.map((velocity) => sprint(40, 0, velocity, velocity)));
    const odd = (velocity: number) =>
      range([
        ...velocities.slice(1).map((points) => sprint(40, 0, points, points)),
        velocity > 40 ? sprint(40, velocity - 40, 40, velocity) : sprint(40, 0, velocity, velocity),
      ]);
    const plain = with_(velocities);
    for (const velocity of [0, 300]) {
      const bent = odd(velocity);
      for (const end of ['lowPoints', 'highPoints'] as const) {
        const moved = Math.abs((bent[end] as number) / (plain[end] as number) - 1);
        expect(moved, `${end} with ${velocity}`).toBeLessThan(1 / 6);
      }
      expect(Math.abs(advised(bent).points / advised(plain).points - 1)).toBeLessThan(1 / 6);
    }
  });

  // Recomputed from the formulas of docs/forecasts.md on a dense grid, with numpy and scipy.
  test.each([
    ['one of 300 among them', [sprint(30, 270, 30, 300)], 27, 30, 32],
    ['none', [], 27, 30, 30],
  ])('whole points have chances of their own, with %s', (_, odd, usual, high, low) => {
    const past = [...repeated(sprint(30, 0, 25, 25), 5), ...odd, ...repeated(sprint(31, 3, 28, 30), 6)];
    const found = range(past);
    expect([found.highPoints, found.lowPoints]).toEqual([high, low]);
    const whole = [usual, usual + 1].map((points) => chances(found, points).finishedWhole);
    expect(whole[0]).toBeGreaterThanOrEqual(0.5);
    expect(whole[1]).toBeLessThan(0.5);
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
    // Whole points: up to two of the doubled ones are rounding.
    for (const end of ['highPoints', 'lowPoints'] as const) {
      expect(Math.abs((half[end] as number) * 2 - (full[end] as number))).toBeLessThanOrEqual(2);
    }
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
      // In whole points.
      expect(Math.abs((twice[end] as number) - 2 * (same[end] as number))).toBeLessThanOrEqual(2);
      expect(Math.abs(2 * (half[end] as number) - (same[end] as number))).toBeLessThanOrEqual(2);
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

describe('when no commitment serves both', () => {
  const WAVERING = [
    sprint(30, 0, 12, 12),
    sprint(30, 20, 30, 50),
    sprint(30, 0, 25, 25),
    sprint(30, 10, 30, 40),
    sprint(30, 0, 16, 16),
    sprint(30, 2, 30, 32),
  ];

  test('a team whose output swings gets the number at which the worse of both chances is best', () => {
    const found = range(WAVERING);
    expect(found.lowPoints).toBeGreaterThan(found.highPoints as number);
    const { points, unserved } = advised(found);
    expect(unserved?.why).toEqual({ code: 'varies-too-much' });
    const worst = (at: number): number => Math.min(chances(found, at).kept, 1 - chances(found, at).ranOut);
    // Brute force over all commitments.
    const best = Math.max(...Array.from({ length: 100 }, (_, i) => worst(i + 1)));
    expect(worst(points)).toBe(best);
  });

  test('its sprints say what would help: surprise work above the ceiling, or a single card that stayed open', () => {
    const remedies = (change: Partial<SprintEvidence>) =>
      advised(range(WAVERING.map((one) => ({ ...one, ...change })))).unserved?.remedies;
    expect(remedies({ surprisePoints: 9 })).toEqual([{ code: 'less-surprise', sprints: 6, of: 6 }]);
    // Of 24 needed, 12 and 16 were finished: 8 more would have kept the second, not the first.
    expect(remedies({ largestOpenPoints: 8 })).toEqual([
      { code: 'ask-what-differed', lowPoints: 12, highPoints: 50 },
    ]);
    expect(remedies({ largestOpenPoints: 13 })).toEqual([{ code: 'smaller-cards', sprints: 2, of: 6 }]);
    expect(remedies({ surprisePoints: 9, largestOpenPoints: 13 })).toHaveLength(2);
    const few = advised(range(WAVERING.slice(0, 4))).unserved?.remedies;
    expect(few).toEqual([{ code: 'more-sprints', firmSprints: 6 }]);
  });

  test('a team that pulls work in before it has finished is told so, and to commit to what it finishes', () => {
    const { points, unserved } = advised(range(repeated(sprint(30, 15, 18, 30), 6)));
    const why = { code: 'pulled-in-before-finishing', sprints: 6, of: 6 };
    expect(unserved).toEqual({ why, remedies: [] });
    expect(points).toBe(18);
  });

  test('a team that finishes nothing is not told to commit to anything', () => {
    const { highPoints, advised: none } = range(repeated(sprint(30, 0, 0, 0), 4));
    expect(highPoints).toBe(0);
    expect(none).toEqual({ undefined: { code: 'too-little-finished' } });
  });
});

describe('the chances behind the range', () => {
  test('never rise with the commitment, and lie within 0 to 1', () => {
    fc.assert(
      fc.property(fc.array(anySprint, { minLength: 3, maxLength: 8 }), (past) => {
        const found = range(past);
        const all = [0.5, 5, 10, 20, 30, 45, 60, 100].map((points) => chances(found, points));
        for (const id of ['kept', 'finishedWhole', 'ranOut'] as const) {
          const falling = all.map((one) => one[id]);
          expect(falling).toEqual(falling.toSorted((a, b) => b - a));
          for (const chance of falling) {
            expect(chance).toBeGreaterThanOrEqual(0);
            expect(chance).toBeLessThanOrEqual(1);
          }
        }
        for (const { kept, finishedWhole } of all) expect(kept).toBeGreaterThanOrEqual(finishedWhole);
      }),
      { seed: 20261122, numRuns: 25 },
    );
  });

  test('for every history, the ends are whole points within what the team has handled, as counting finds them', () => {
    fc.assert(
      fc.property(fc.array(anySprint, { minLength: 3, maxLength: 12 }), (past) => {
        const found = range(past);
        const { lowPoints, highPoints } = found;
        const most = Math.max(...past.map((one) => one.commitmentPoints + (one.pulledInPoints as number)));
        expect(highPoints).toBeLessThanOrEqual(2 * most + 1);
        let low = 1;
        while (chances(found, low).ranOut > 0.2) low += 1;
        expect(lowPoints).toBe(low);
        const seen = Math.max(...past.map((one) => one.velocityPoints as number));
        let high = 0;
        while (0.8 * (high + 1) <= seen + 1e-9 && chances(found, high + 1).kept >= 0.8) high += 1;
        expect(highPoints).toBe(high);
        if ('undefined' in found.advised) expect(chances(found, 1).finishedWhole).toBeLessThan(0.5);
        else expect(found.advised.unserved === undefined).toBe(low <= high);
      }),
      { seed: 20261123, numRuns: 25 },
    );
  });

  test('are the same on every reckoning', () => {
    const [one, other] = [range(TIMID), range(TIMID)];
    expect([one.lowPoints, one.highPoints]).toEqual([other.lowPoints, other.highPoints]);
    expect(chances(one, 27)).toEqual(chances(other, 27));
  });
});
