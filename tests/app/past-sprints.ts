/** Invented past sprints, to vary in tests: pure ones, and the same as if they had been imported into the store. */
import type { PastSprint } from '../../src/app/history/past-sprint.ts';
import type { Team } from '../../src/app/team/team.ts';
import { dayPlus } from '../../src/sprint/calendar.ts';
import type { Harness } from '../support/app-harness.ts';
import { pastRatios } from '../support/past-ratios.ts';

/** Twenty points committed to and finished over ten working days by three people, nothing pulled in, no surprise. */
export function aPastSprint(change: Partial<PastSprint> = {}): PastSprint {
  return {
    sprintId: 'sprint',
    teamId: 'team',
    name: 'Harbour 1',
    startsOn: '2026-01-05',
    endsOn: '2026-01-16',
    importedAt: undefined,
    workingDays: 10,
    memberDays: 30,
    commitmentPoints: 20,
    pulledInPoints: 0,
    surprisePoints: 0,
    velocityPoints: 20,
    workedPoints: 20,
    committedFinishedPoints: 20,
    ratios: pastRatios({
      keptShare: 1,
      pullInRatio: 0,
      surpriseRatio: 0,
      planShare: 1,
      estimateAccuracy: 0.9,
      onScaleShare: 0.75,
      finishShare: 1,
    }),
    trace: [],
    cards: [],
    recordedValue: undefined,
    ...change,
  };
}

/** One sprint every two weeks from Monday 5 January 2026 on. */
export function pastSprintsOf(changes: readonly Partial<PastSprint>[]): PastSprint[] {
  return changes.map((change, i) =>
    aPastSprint({
      sprintId: `sprint-${i + 1}`,
      name: `Harbour ${i + 1}`,
      startsOn: dayPlus('2026-01-05', 14 * i),
      endsOn: dayPlus('2026-01-16', 14 * i),
      ...change,
    }),
  );
}

/** Each finished all that it took in: commitment and pulled-in work. */
export function finishing(commitmentPoints: number, pulledInPoints: number): Partial<PastSprint> {
  const velocityPoints = commitmentPoints + pulledInPoints;
  return {
    commitmentPoints,
    pulledInPoints,
    velocityPoints,
    workedPoints: velocityPoints,
    committedFinishedPoints: commitmentPoints,
  };
}

/** Each finished some of what it committed to, and pulled nothing in. */
export function missing(commitmentPoints: number, finishedPoints: number): Partial<PastSprint> {
  return {
    commitmentPoints,
    velocityPoints: finishedPoints,
    workedPoints: finishedPoints,
    committedFinishedPoints: finishedPoints,
  };
}

/** Of which little is known, as after an import of few columns. */
export function withVelocity(velocityPoints: number | undefined): Partial<PastSprint> {
  return {
    memberDays: undefined,
    commitmentPoints: 10,
    pulledInPoints: undefined,
    surprisePoints: undefined,
    velocityPoints,
    workedPoints: undefined,
    committedFinishedPoints: undefined,
    ratios: pastRatios({}),
  };
}

/** Writes them into the store as closed sprints of the team that were imported. */
export async function importPast(h: Harness, team: Team, past: readonly PastSprint[]): Promise<PastSprint[]> {
  const importedAt = new Date('2026-10-30T08:00:00Z');
  const written = past.map((sprint) => ({
    ...sprint,
    teamId: team.id,
    sprintId: `${team.id.slice(0, 20)}-${sprint.sprintId}`,
    importedAt,
  }));
  await h.write(async (tx) => {
    for (const sprint of written) {
      const { sprintId: id, name, startsOn, endsOn } = sprint;
      await tx.write.sprints.insert({
        ...{ id, teamId: team.id, name, goal: '', startsOn, endsOn, closesAt: '17:00', importedAt },
        closesAtInstant: new Date(`${endsOn}T17:00:00Z`),
        state: 'closed',
        closedAt: importedAt,
        reopenedAt: undefined,
        nextPromptAt: undefined,
        nextReminderAt: undefined,
        lastCallAt: undefined,
      });
      const { name: _n, startsOn: _s, importedAt: _i, recordedValue, ...left } = sprint;
      await tx.write.history.savePastSprint({
        ...left,
        workspaceId: team.workspaceId,
        recordedAt: importedAt,
      });
      if (recordedValue !== undefined) {
        await tx.write.history.recordValue({
          sprintId: id,
          value: recordedValue,
          byUserId: 'UPO',
          at: importedAt,
        });
      }
    }
  });
  return written;
}
