/** Invented closed sprints, put straight into a harness's database as an import would. */
import { randomUUID } from 'node:crypto';
import type { NewPastSprint } from '../../src/app/history/past-sprint.ts';
import type { Sprint, Team } from '../../src/app/team/team.ts';
import { dayPlus } from '../../src/sprint/calendar.ts';
import type { Harness } from './app-harness.ts';
import { pastRatios } from './past-ratios.ts';

export interface GivenSprint {
  readonly name: string;
  /** Undefined: not known, as after an import of the first four columns. */
  readonly velocityPoints: number | undefined;
  readonly commitmentPoints?: number;
  readonly memberDays?: number;
  readonly value?: number;
}

/** Two-week sprints one after the other, the first from Monday 6 July 2026 on; in the order given. */
export async function importPast(
  h: Harness,
  team: Team,
  given: readonly GivenSprint[],
  firstDay = '2026-07-06',
): Promise<Sprint[]> {
  const at = new Date('2026-10-30T08:00:00Z');
  const sprints = given.map(({ name }, i): Sprint => {
    const startsOn = dayPlus(firstDay, 14 * i);
    return {
      id: randomUUID(),
      teamId: team.id,
      name,
      goal: '',
      startsOn,
      endsOn: dayPlus(startsOn, 11),
      closesAt: '17:00',
      closesAtInstant: at,
      state: 'closed',
      closedAt: at,
      reopenedAt: undefined,
      nextPromptAt: undefined,
      nextReminderAt: undefined,
      lastCallAt: undefined,
      importedAt: at,
    };
  });
  await h.write(async (tx) => {
    for (const [i, sprint] of sprints.entries()) {
      const { value } = given[i] as GivenSprint;
      await tx.write.sprints.insert(sprint);
      await tx.write.history.savePastSprint(pastOf(team, sprint, given[i] as GivenSprint, at));
      if (value === undefined) continue;
      await tx.write.history.recordValue({ sprintId: sprint.id, value, byUserId: 'UIMPORT', at });
    }
  });
  return sprints;
}

function pastOf(
  team: Team,
  sprint: Sprint,
  { velocityPoints, commitmentPoints = 10, memberDays }: GivenSprint,
  recordedAt: Date,
): NewPastSprint {
  return {
    sprintId: sprint.id,
    teamId: team.id,
    workspaceId: team.workspaceId,
    endsOn: sprint.endsOn,
    workingDays: 10,
    memberDays,
    commitmentPoints,
    pulledInPoints: undefined,
    surprisePoints: undefined,
    velocityPoints,
    workedPoints: undefined,
    committedFinishedPoints: undefined,
    ratios: pastRatios({}),
    trace: [],
    cards: [],
    recordedAt,
  };
}
