/** Which of the sprints in the file would be imported: not those that are known, unfinished or in another's days. Pure. */
import type { Day } from '../../sprint/calendar.ts';
import type { BodyOfWork } from '../bodies/body-of-work.ts';
import { dayAt, instantOf } from '../clock/local-time.ts';
import type { Sprint, Team } from '../team/team.ts';
import { latestDay } from './days-elsewhere.ts';
import type { ImportProblems } from './import-problem.ts';
import { alikeName, type SprintLine } from './sprint-line.ts';

/** Ten years of one-week sprints are half of it. */
export const MOST_SPRINTS = 1_000;

export interface LeftOutSprint {
  readonly name: string;
  readonly startsOn: Day;
  readonly why: 'known' | 'cancelled' | 'running';
}

export interface PlanContext {
  readonly team: Team;
  /** All sprints of the team, in any state. */
  readonly existing: readonly Sprint[];
  /** All bodies of work that the team keeps, those that are done included. */
  readonly existingBodies: readonly BodyOfWork[];
  readonly today: Day;
  readonly now: Date;
  readonly byUserId: string;
}

/** The days that a sprint really took; `closedEarly`: another may begin on its last one. */
interface TakenDays {
  readonly startsOn: Day;
  readonly endsOn: Day;
  readonly closedEarly: boolean;
}

export function sprintsToImport(
  lines: readonly SprintLine[],
  context: PlanContext,
  problems: ImportProblems,
): { toImport: SprintLine[]; leftOut: LeftOutSprint[] } {
  const leftOut: LeftOutSprint[] = [];
  const toImport: SprintLine[] = [];
  const existing = context.existing
    .filter(({ state }) => state !== 'cancelled')
    .map((sprint) => ({ sprint, days: daysOf(sprint, context.team) }));
  const leaveOut = ({ name, startsOn }: SprintLine, why: LeftOutSprint['why']): void => {
    leftOut.push({ name, startsOn, why });
  };
  const [tooMany] = lines.slice(MOST_SPRINTS);
  if (tooMany) {
    problems.tell(tooMany, { code: 'too-many-sprints', sprints: lines.length, most: MOST_SPRINTS });
    return { toImport, leftOut };
  }
  for (const line of lines) {
    if (line.state !== 'closed') {
      leaveOut(line, line.state);
    } else if (existing.some(({ sprint }) => isSame(sprint, line))) {
      leaveOut(line, 'known');
    } else {
      checkIsOver(line, context, problems);
      const days = daysOfLine(line);
      const inTheWay = existing.find((other) => overlap(other.days, days))?.sprint;
      if (inTheWay) {
        const { name: sprint, startsOn: first, endsOn: last } = inTheWay;
        problems.tell(line, { code: 'days-taken', sprint, first, last });
      }
      const twin = toImport.find((other) => isSame(other, line));
      const other = twin ?? toImport.find((earlier) => overlap(daysOfLine(earlier), days));
      if (other) {
        const code = twin ? 'sprint-twice' : 'days-shared';
        const { name: sprint, lineNumber = 0, fileName: file } = other;
        const where = file === line.fileName ? 'here' : 'elsewhere';
        problems.tell(line, { code, sprint, line: lineNumber, where, file });
      }
      toImport.push(line);
    }
  }
  toImport.sort((a, b) => (a.startsOn < b.startsOn ? -1 : a.startsOn > b.startsOn ? 1 : 0));
  return { toImport, leftOut };
}

type Named = Pick<SprintLine, 'name' | 'startsOn' | 'endsOn'>;

function isSame(a: Named, b: Named): boolean {
  return a.startsOn === b.startsOn && a.endsOn === b.endsOn && alikeName(a.name) === alikeName(b.name);
}

function checkIsOver(line: SprintLine, { team, now }: PlanContext, problems: ImportProblems): void {
  const { startsOn, endsOn, closedOn } = line;
  if (closedOn !== undefined && closedOn < startsOn) {
    problems.tell(line, { code: 'closed-before', day: closedOn });
  } else if (closedOn !== undefined && closedOn > latestDay(now)) {
    problems.tell(line, { code: 'closed-later', day: closedOn });
  } else if (closedOn === undefined && instantOf(endsOn, team.closesAt, team.timeZone) > now) {
    problems.tell(line, { code: 'not-over', last: endsOn });
  }
}

function daysOfLine({ startsOn, endsOn, closedOn }: SprintLine): TakenDays {
  return takenDays(startsOn, endsOn, closedOn);
}

function daysOf({ startsOn, endsOn, state, closedAt }: Sprint, { timeZone }: Team): TakenDays {
  return takenDays(startsOn, endsOn, state === 'closed' && closedAt ? dayAt(closedAt, timeZone) : undefined);
}

function takenDays(startsOn: Day, endsOn: Day, closedOn: Day | undefined): TakenDays {
  const closedEarly = closedOn !== undefined && closedOn < endsOn;
  return { startsOn, endsOn: closedEarly ? closedOn : endsOn, closedEarly };
}

function overlap(a: TakenDays, b: TakenDays): boolean {
  const [first, second] = a.startsOn <= b.startsOn ? [a, b] : [b, a];
  if (second.startsOn > first.endsOn) return false;
  return !(first.closedEarly && second.startsOn === first.endsOn && second.startsOn > first.startsOn);
}
