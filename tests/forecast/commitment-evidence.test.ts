import { describe, expect, test } from 'vitest';
import { finishEvidence, takeInEvidence } from '../../src/forecast/commitment-evidence.ts';
import { aPastSprint } from './past-sprint.ts';

const OPEN = Number.POSITIVE_INFINITY;

describe('how much of a commitment a team would have finished', () => {
  test.each([
    [
      'what was finished of it, where some stayed open',
      { committedFinishedPoints: 22, velocityPoints: 25 },
      [22, 22],
    ],
    [
      'at least the velocity, where all was finished',
      { committedFinishedPoints: 30, velocityPoints: 30 },
      [30, OPEN],
    ],
    [
      'the velocity, where all was finished and work was pulled in',
      { pulledInPoints: 6, committedFinishedPoints: 30, velocityPoints: 36 },
      [36, 36],
    ],
    [
      'the velocity, where all was finished and the pulled-in work was not',
      { pulledInPoints: 6, committedFinishedPoints: 30, velocityPoints: 30 },
      [30, 30],
    ],
    [
      'the velocity, where it is above the commitment although no record of pulled-in work was kept',
      { pulledInPoints: undefined, committedFinishedPoints: 30, velocityPoints: 33 },
      [33, 33],
    ],
    [
      'at least the commitment, where all was finished and the velocity is not known',
      { committedFinishedPoints: 30, velocityPoints: undefined },
      [30, OPEN],
    ],
    [
      'from velocity − pulled-in work to the velocity, where only that is known',
      { pulledInPoints: 4, committedFinishedPoints: undefined, velocityPoints: 25 },
      [21, 25],
    ],
    [
      'the velocity, where only that is known and nothing was pulled in',
      { committedFinishedPoints: undefined, velocityPoints: 25 },
      [25, 25],
    ],
    [
      'at least velocity − pulled-in work, where the rest may have been pulled in',
      { pulledInPoints: 8, committedFinishedPoints: undefined, velocityPoints: 33 },
      [25, OPEN],
    ],
    [
      'the velocity, where it can only be that all was finished and more',
      { pulledInPoints: 2, committedFinishedPoints: undefined, velocityPoints: 32 },
      [32, 32],
    ],
    ['nothing, where nothing of it was finished', { committedFinishedPoints: 0, velocityPoints: 3 }, [0, 0]],
  ])('is %s', (_, sprint, [low, high]) => {
    expect(finishEvidence(aPastSprint(sprint))).toEqual({ low, high });
  });

  test.each([
    [
      'neither velocity nor what was finished is known',
      { committedFinishedPoints: undefined, velocityPoints: undefined },
    ],
    [
      'all that was finished may have been pulled in',
      { pulledInPoints: 40, committedFinishedPoints: undefined, velocityPoints: 35 },
    ],
    [
      'pulled-in work is not known and the velocity above the commitment',
      { pulledInPoints: undefined, committedFinishedPoints: undefined, velocityPoints: 35 },
    ],
  ])('is not known from a sprint where %s', (_, sprint) => {
    expect(finishEvidence(aPastSprint(sprint))).toBeUndefined();
  });
});

describe('how much a team takes in', () => {
  test.each([
    ['commitment + pulled-in work', { pulledInPoints: 5 }, [35, 35]],
    [
      'what it finished, where nothing was pulled in',
      { committedFinishedPoints: 22, velocityPoints: 22 },
      [22, 22],
    ],
    [
      'what it finished of the commitment, where the velocity is not known',
      { committedFinishedPoints: 22, velocityPoints: undefined },
      [22, 22],
    ],
    [
      'at most the commitment, where nothing was pulled in and nothing else is known',
      { committedFinishedPoints: undefined, velocityPoints: undefined },
      [0, 30],
    ],
  ])('is %s', (_, sprint, [low, high]) => {
    expect(takeInEvidence(aPastSprint(sprint))).toEqual({ low, high });
  });

  test('is not known from a sprint without a record of pulled-in work', () => {
    expect(takeInEvidence(aPastSprint({ pulledInPoints: undefined }))).toBeUndefined();
  });
});
