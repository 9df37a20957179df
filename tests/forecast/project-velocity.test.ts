import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { EndedSprint, ProjectionHistory } from '../../src/forecast/project-velocity.ts';
import { NO_HISTORY, projectVelocity, withEndedSprints } from '../../src/forecast/project-velocity.ts';
import { seededRandom } from './seeded-random.ts';
import { anySoFar, soFar } from './sprints-so-far.ts';

const anySprint = fc
  .tuple(fc.constantFrom('ours', 'theirs'), anySoFar, fc.integer({ min: 0, max: 110 }))
  .map(([team, sprint, half]): EndedSprint => ({ team, soFar: sprint, velocityPoints: half / 2 }));
const anyHistory = fc.array(anySprint, { maxLength: 40 });

function learnt(sprints: readonly EndedSprint[]): ProjectionHistory {
  return sprints.reduce((history, sprint) => withEndedSprints(history, [sprint]), NO_HISTORY);
}

/** So many sprints of a team that finishes about this share of what is open. */
function steadyTeam(team: string, sprints: number, share: number, finishedShare = 0): EndedSprint[] {
  const random = seededRandom(sprints);
  return Array.from({ length: sprints }, () => {
    const cardPoints = 16 + Math.round(random.uniform() * 8);
    const finishedPoints = Math.round(cardPoints * finishedShare);
    const opened = share + 0.1 * random.normal();
    return {
      team,
      soFar: soFar(cardPoints, finishedPoints),
      velocityPoints: Math.round(
        finishedPoints + Math.min(1, Math.max(0, opened)) * (cardPoints - finishedPoints),
      ),
    };
  });
}

describe('for every history', () => {
  test('the chances add up to 1 and no amount is below 0', () => {
    fc.assert(
      fc.property(anyHistory, anySoFar, (sprints, now) => {
        const { distribution, meanPoints } = projectVelocity(learnt(sprints), 'ours', now);
        expect(distribution.chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 12);
        expect(distribution.points[0]).toBeGreaterThanOrEqual(0);
        expect(meanPoints).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test('the narrow interval holds the median, and the wide one the narrow one', () => {
    fc.assert(
      fc.property(anyHistory, anySoFar, (sprints, now) => {
        const { medianPoints, narrow, wide } = projectVelocity(learnt(sprints), 'ours', now);
        const ends = [wide.low, narrow.low, medianPoints, narrow.high, wide.high];
        expect(ends).toEqual(ends.toSorted((a, b) => a - b));
      }),
    );
  });

  test('the same history and sprint give the same projection', () => {
    fc.assert(
      fc.property(anyHistory, anySoFar, (sprints, now) => {
        const again = (): unknown => {
          const { distribution, ...rest } = projectVelocity(learnt(sprints), 'ours', now);
          return { ...rest, points: [...distribution.points], chances: [...distribution.chances] };
        };
        expect(again()).toEqual(again());
      }),
    );
  });
});

test('without any history every share of the open work is as likely, and both intervals span it', () => {
  const projection = projectVelocity(NO_HISTORY, 'ours', soFar(20, 10));
  expect(projection.meanPoints).toBeCloseTo(15, 12);
  expect(projection.wide).toEqual({ low: 10.5, high: 19.5 });
  expect(projection.narrow).toEqual(projection.wide);
  expect([projection.ownSprints, projection.alikeSprints]).toEqual([0, 0]);
});

test('a team that always finishes seven tenths is projected to do so again', () => {
  const { medianPoints, ownSprints } = projectVelocity(
    learnt(steadyTeam('ours', 30, 0.7)),
    'ours',
    soFar(20, 0),
  );
  expect(Math.abs(medianPoints - 14)).toBeLessThanOrEqual(1);
  expect(ownSprints).toBe(30);
});

test('the more of the sprint is over and done, the narrower the wide interval', () => {
  const widths = [0, 0.3, 0.5, 0.8].map((finishedShare) => {
    const history = learnt(steadyTeam('ours', 60, 0.7, finishedShare));
    const { wide } = projectVelocity(history, 'ours', soFar(20, 20 * finishedShare));
    return wide.high - wide.low;
  });
  expect(widths).toEqual(widths.toSorted((a, b) => b - a));
  expect(widths.at(-1)).toBeLessThan(widths[0] as number);
});

test('a team that changed is projected by what it did of late', () => {
  const { medianPoints } = projectVelocity(
    learnt([...steadyTeam('ours', 80, 0.4), ...steadyTeam('ours', 60, 0.8)]),
    'ours',
    soFar(20, 0),
  );
  expect(medianPoints).toBeGreaterThan(13);
});

test('where no sprint is alike the team’s own still say what share it finishes', () => {
  const history = learnt(steadyTeam('ours', 30, 0.7));
  const { medianPoints, alikeSprints } = projectVelocity(history, 'ours', soFar(200, 0));
  expect(alikeSprints).toBeLessThan(1);
  expect(Math.abs(medianPoints - 140)).toBeLessThanOrEqual(20);
});

test('chances that came true less often than told are told lower', () => {
  // Half of the sprints finish all, and the forecast has seen as much; then ten times nothing does.
  const sprint = (velocityPoints: number): EndedSprint => ({
    team: 'ours',
    soFar: soFar(20, 0),
    velocityPoints,
  });
  const history = learnt(Array.from({ length: 60 }, (_, i) => sprint(i % 2 === 0 ? 20 : 10)));
  const told = (past: ProjectionHistory): number =>
    1 - projectVelocity(past, 'ours', soFar(20, 0)).distribution.cdf(19.5);
  const low = { lessChance: 0, atMostChance: 0.1 };
  const missed = { ...history, places: [...history.places, ...Array.from({ length: 40 }, () => low)] };
  expect(told(history)).toBeCloseTo(0.5, 1);
  expect(told(missed)).toBeLessThan(told(history) - 0.05);
});

describe('the team’s own sprints speak first', () => {
  const strangers = steadyTeam('theirs', 100, 0.2);

  test('a team without sprints is projected after the others', () => {
    expect(projectVelocity(learnt(strangers), 'ours', soFar(20, 0)).medianPoints).toBeLessThan(8);
  });

  test('some ten own sprints outweigh a hundred of others', () => {
    const history = learnt([...strangers, ...steadyTeam('ours', 10, 0.9)]);
    expect(projectVelocity(history, 'ours', soFar(20, 0)).medianPoints).toBeGreaterThan(15);
  });
});

test('a team that is known is not taken for the others, even at a size that only they have had', () => {
  const larger = steadyTeam('theirs', 100, 0.2).map(({ team, soFar: { cardPoints }, velocityPoints }) => ({
    team,
    soFar: soFar(12 * cardPoints, 0),
    velocityPoints: 12 * velocityPoints,
  }));
  const median = (own: number): number =>
    projectVelocity(learnt([...larger, ...steadyTeam('ours', own, 0.9)]), 'ours', soFar(240, 0)).medianPoints;
  expect(median(4)).toBeLessThan(120);
  expect(median(20)).toBeGreaterThan(180);
});

describe('a sprint of which only the start is known', () => {
  const importedAt = (elapsedShare: number) =>
    steadyTeam('ours', 12, 0.8).map((sprint) => ({
      ...sprint,
      soFar: { cardPoints: sprint.soFar.cardPoints, elapsedShare },
    }));
  const imported = importedAt(0);

  test('teaches what share gets finished', () => {
    const { medianPoints } = projectVelocity(learnt(imported), 'ours', soFar(20, 0));
    expect(Math.abs(medianPoints - 16)).toBeLessThanOrEqual(1.5);
  });

  test('teaches how much the rest of the time brings', () => {
    const chanceOf = (points: number, elapsedShare: number): number => {
      const { distribution } = projectVelocity(learnt(importedAt(elapsedShare)), 'ours', soFar(20, 6));
      return distribution.points.reduce(
        (sum, at, i) => sum + (at >= points ? (distribution.chances[i] as number) : 0),
        0,
      );
    };
    // With as many points finished, keeping 80% becomes less likely as the time goes by.
    const told = [0.3, 0.5, 0.8].map((elapsedShare) => chanceOf(16, elapsedShare));
    expect(told[0]).toBeGreaterThan(0.7);
    expect(told[2]).toBeLessThan(0.5);
    expect(told).toEqual([...told].sort((a, b) => b - a));
  });

  test('teaches nothing about intervals, for it was never projected', () => {
    expect(learnt(imported).keeper).toEqual(NO_HISTORY.keeper);
  });
});

test('sprints that ended together are not projected from each other', () => {
  const twin: EndedSprint = { team: 'ours', soFar: soFar(20, 5), velocityPoints: 19 };
  const together = withEndedSprints(NO_HISTORY, [twin, { ...twin, team: 'theirs' }]);
  const depth = together.keeper.scores[0] as number;
  expect(depth).toBeGreaterThan(0.5);
  expect(together.keeper.scores).toEqual([depth, depth]);
  const oneByOne = withEndedSprints(withEndedSprints(NO_HISTORY, [twin]), [{ ...twin, team: 'theirs' }]);
  expect(oneByOne.keeper.scores[1]).toBeLessThan(depth);
});

test('sprints that ended together move the intervals only once all of them have been compared with them', () => {
  const sprint = (velocityPoints: number) => ({
    team: 'a',
    soFar: { cardPoints: 20, finishedPoints: 4, underwayPoints: 2 },
    velocityPoints,
  });
  const before = [12, 13, 14, 15, 16, 12, 13, 14].reduce(
    (history, velocity) => withEndedSprints(history, [sprint(velocity)]),
    NO_HISTORY,
  );
  const { wide } = projectVelocity(before, 'a', sprint(0).soFar);
  const levelAfter = (...velocities: number[]): number =>
    withEndedSprints(before, velocities.map(sprint)).keeper.wideLevel;
  const change = (velocity: number): number => levelAfter(velocity) - before.keeper.wideLevel;
  // Were the far miss learnt at once, the interval would hold the near one.
  const [far, near, inside] = [wide.high + 2, wide.high + 0.5, wide.high];
  expect(far).toBeLessThan(19);
  expect(change(far)).toBeCloseTo(0.16, 12);
  expect(change(near)).toBeCloseTo(0.16, 12);
  expect(change(inside)).toBeCloseTo(-0.04, 12);
  expect(levelAfter(far, near) - before.keeper.wideLevel).toBeCloseTo(0.32, 12);
  expect(levelAfter(far, inside) - before.keeper.wideLevel).toBeCloseTo(0.12, 12);
});

describe('where no other team lends', () => {
  /** Sprints in which nothing more was ever finished at this moment. */
  const never = Array.from(
    { length: 3 },
    (_, i): EndedSprint => ({
      team: 'ours',
      soFar: soFar(4 + (i % 3), 0),
      velocityPoints: 0,
    }),
  );

  test('a team that never finishes anything more is not guessed to at a size that it hasn’t had', () => {
    expect(projectVelocity(learnt(never), 'ours', soFar(40, 0)).medianPoints).toBeLessThanOrEqual(1);
  });

  test('what others lend takes the place of that', () => {
    const others = steadyTeam('theirs', 40, 0.9).map((sprint) => ({
      ...sprint,
      soFar: soFar(40, 0),
      velocityPoints: 36,
    }));
    const lent = projectVelocity(learnt([...others, ...never]), 'ours', soFar(40, 0));
    const alone = projectVelocity(learnt(never), 'ours', soFar(40, 0));
    expect(lent.distribution.cdf(35.5)).toBeLessThan(alone.distribution.cdf(35.5) - 0.2);
  });

  test('one past sprint still makes no certainty', () => {
    const { distribution } = projectVelocity(learnt(never.slice(0, 1)), 'ours', soFar(40, 0));
    expect(1 - distribution.cdf(0)).toBeGreaterThan(0.3);
  });
});
