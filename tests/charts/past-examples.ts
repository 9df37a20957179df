/** Invented past sprints for the charts of the planning questions, two weeks each. */

import type { PastRatios, PastSprint } from '../../src/app/history/past-sprint.ts';
import { dayPlus } from '../../src/sprint/calendar.ts';
import { ratioOf, undefinedBecause } from '../../src/sprint/undefined-value.ts';
import { pastRatios } from '../support/past-ratios.ts';

export const exampleTeam = { id: 'team', name: 'Harbour team', channelId: 'C1', timeZone: 'Europe/Lisbon' };

/** Points; what is left out was not recorded. */
export interface Amounts {
  readonly name?: string;
  readonly commitment: number;
  readonly pulledIn?: number | undefined;
  readonly surprise?: number | undefined;
  readonly velocity?: number | undefined;
  readonly committedFinished?: number | undefined;
  readonly imported?: boolean;
  readonly ratios?: Partial<PastRatios>;
}

/** The n-th (from 0) starts n fortnights after the first. */
export function pastSprint(index: number, amounts: Amounts, firstDay = '2026-01-05'): PastSprint {
  const { commitment, pulledIn, surprise, velocity, committedFinished, imported = false } = amounts;
  const notRecorded = undefinedBecause('velocity-unknown');
  const share = (points: number | undefined, of: number | undefined) =>
    points === undefined || of === undefined ? notRecorded : ratioOf(points, of, 'no-commitment');
  const load =
    pulledIn === undefined || surprise === undefined ? undefined : commitment + pulledIn + surprise;
  return {
    sprintId: `sprint-${index}`,
    teamId: exampleTeam.id,
    name: amounts.name ?? `Sprint ${index + 1}`,
    startsOn: dayPlus(firstDay, index * 14),
    endsOn: dayPlus(firstDay, index * 14 + 11),
    importedAt: imported ? new Date('2026-12-01T09:00:00Z') : undefined,
    workingDays: 10,
    memberDays: undefined,
    commitmentPoints: commitment,
    pulledInPoints: pulledIn,
    surprisePoints: surprise,
    velocityPoints: velocity,
    workedPoints: undefined,
    committedFinishedPoints: committedFinished,
    ratios: pastRatios({
      keptShare: share(committedFinished, commitment),
      pullInRatio: share(pulledIn, commitment),
      surpriseRatio: share(surprise, commitment),
      planShare: share(commitment, load),
      ...amounts.ratios,
    }),
    trace: [],
    cards: [],
    recordedValue: undefined,
  };
}

/** A team that commits to somewhat less than it does. */
export const ordinaryPast: readonly PastSprint[] = (
  [
    [24, 0, 2, 24, 24],
    [25, 3, 1, 23, 20],
    [21, 5, 0, 26, 21],
    [22, 8, 3, 27, 22],
    [28, 0, 6, 21, 21],
    [23, 5, 2, 28, 23],
    [21, 3, 1, 24, 21],
    [26, 2, 8, 22, 20],
    [21, 6, 2, 27, 21],
  ] as const
).map(([commitment, pulledIn, surprise, velocity, committedFinished], index) =>
  pastSprint(index, { commitment, pulledIn, surprise, velocity, committedFinished, imported: index < 3 }),
);
