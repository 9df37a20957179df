/**
 * Puts the lines of all files together: which sprints and bodies of work would be imported, which are left out and why,
 * and everything that is wrong. Pure but for the ids it makes; nothing is imported here.
 */
import { randomUUID } from 'node:crypto';
import type { Day } from '../../sprint/calendar.ts';
import { RATIO_IDS, RATIOS, type RatioId, type RatioSums, ratioOfSums } from '../../sprint/sprint-ratios.ts';
import { type SprintTotals, sprintTotals } from '../../sprint/totals.ts';
import { type Ratio, type ReasonCode, undefinedBecause } from '../../sprint/undefined-value.ts';
import { statesOf } from '../cards/card-line.ts';
import { instantOf } from '../clock/local-time.ts';
import { sprintDays } from '../clock/sprint-clock.ts';
import type { PastRatios } from '../history/past-sprint.ts';
import { type FromRecords, pastSprintOf } from '../history/past-sprint-at-closing.ts';
import type { Sprint, SprintRecords } from '../team/team.ts';
import { type BodiesToImport, bodiesToImport } from './bodies-to-import.ts';
import { timeThatCame } from './days-elsewhere.ts';
import { ImportProblems, type ImportWarning } from './import-problem.ts';
import { importedRecords, type SprintLines } from './imported-records.ts';
import type { ReadImport } from './read-import.ts';
import { alikeName, type SprintLine, type StatedRatios } from './sprint-line.ts';
import { type LeftOutSprint, type PlanContext, sprintsToImport } from './sprints-to-import.ts';

/** A sprint as it would be recorded. */
export interface PlannedSprint {
  readonly sprint: Sprint;
  /** Empty when only its sums are known. */
  readonly records: SprintRecords;
  readonly past: FromRecords;
  readonly workingDays: number;
  readonly memberDays: number | undefined;
  readonly value: number | undefined;
}

/** As much of a sprint as is shown before it is recorded. */
export interface SprintOutline {
  readonly name: string;
  readonly startsOn: Day;
  readonly endsOn: Day;
  readonly commitmentPoints: number;
  readonly velocityPoints: number | undefined;
  readonly workingDays: number;
  /** 0 when only its sums are known. */
  readonly cards: number;
  readonly answers: number;
}

export interface ImportPlan {
  /** By first day. */
  readonly sprints: readonly SprintOutline[];
  readonly leftOut: readonly LeftOutSprint[];
  readonly bodies: BodiesToImport;
  /** The same sprints with all that would be recorded, each made when its turn comes: all at once would take much memory. */
  readonly whole: () => Iterable<PlannedSprint>;
}

export const NO_PLAN: ImportPlan = {
  sprints: [],
  leftOut: [],
  bodies: { bodies: [], leftOut: [] },
  whole: () => [],
};

/** @param problems what is wrong with the lines already; more is added. The plan holds only when there is none. */
export function importPlan(read: ReadImport, context: PlanContext, problems: ImportProblems): ImportPlan {
  const { toImport, leftOut } = sprintsToImport(read.sprints, context, problems);
  const linesOf = linesBySprint(read, toImport, problems);
  const planned = (line: SprintLine, found: ImportProblems): PlannedSprint => {
    const lines = linesOf.get(line) ?? { sprint: line, cards: [], answers: [], changes: [] };
    return plannedSprint(lines, read, context, found);
  };
  return {
    sprints: toImport.map((line) => outlineOf(planned(line, problems))),
    leftOut,
    bodies: bodiesToImport(read, context, problems),
    *whole() {
      for (const line of toImport) yield planned(line, new ImportProblems());
    },
  };
}

function outlineOf({ sprint, records, past, workingDays }: PlannedSprint): SprintOutline {
  const { name, startsOn, endsOn } = sprint;
  const { commitmentPoints, velocityPoints } = past;
  const answers = records.facts.filter(({ kind }) => kind === 'answer').length;
  return {
    ...{ name, startsOn, endsOn, commitmentPoints, velocityPoints, workingDays },
    ...{ cards: records.cards.length, answers },
  };
}

/** The lines of the other files by the sprint that they name. Those about sprints that are left out are passed over. */
function linesBySprint(
  read: ReadImport,
  toImport: readonly SprintLine[],
  problems: ImportProblems,
): Map<SprintLine, SprintLines> {
  type Building = { sprint: SprintLine; cards: unknown[]; answers: unknown[]; changes: unknown[] };
  const found = new Map<SprintLine, Building>(
    toImport.map((sprint) => [sprint, { sprint, cards: [], answers: [], changes: [] }]),
  );
  const byName = Map.groupBy(read.sprints, ({ name }) => alikeName(name));
  const unread = new Set(read.unreadSprintNames.map(alikeName));
  for (const part of ['cards', 'answers', 'changes'] as const) {
    for (const line of read[part]) {
      const { sprintName, sprintStartsOn } = line;
      const named = byName.get(alikeName(sprintName)) ?? [];
      const meant =
        sprintStartsOn === undefined ? named : named.filter(({ startsOn }) => startsOn === sprintStartsOn);
      const [sprint, another] = meant;
      if (another) {
        problems.tell(line, { code: 'several-sprints', sprint: sprintName });
      } else if (sprint) {
        found.get(sprint)?.[part].push(line);
      } else if (!unread.has(alikeName(sprintName))) {
        problems.tell(
          line,
          sprintStartsOn === undefined
            ? { code: 'no-such-sprint', sprint: sprintName }
            : { code: 'no-such-sprint-then', sprint: sprintName, first: sprintStartsOn },
        );
      }
    }
  }
  return found as unknown as Map<SprintLine, SprintLines>;
}

function plannedSprint(
  lines: SprintLines,
  read: ReadImport,
  context: PlanContext,
  problems: ImportProblems,
): PlannedSprint {
  const { team, now } = context;
  const line = lines.sprint;
  const sprint = closedSprintOf(line, context);
  const days = sprintDays(team, sprint);
  const base = { sprint, workingDays: days.length, memberDays: line.memberDays, value: line.value };
  const isEmpty = line.commitmentPoints === 0 && (line.pulledInPoints ?? 0) === 0;
  const areCardsKnown = read.hasCards && (lines.cards.length > 0 || isEmpty);
  if (!areCardsKnown) {
    for (const orphan of [...lines.answers, ...lines.changes]) {
      problems.tell(orphan, { code: 'no-cards', sprint: line.name });
    }
    return { ...base, records: { cards: [], facts: [] }, past: pastFromColumns(line) };
  }
  const isWatched = line.dailyAnswers ?? lines.answers.length > 0;
  if (!isWatched && lines.answers.length > 0) {
    problems.tell(line, { code: 'answers-denied' });
  }
  const before = problems.count;
  const records = importedRecords(
    lines,
    { sprintId: sprint.id, isWatched, byUserId: context.byUserId, at: now },
    problems,
  );
  if (problems.count === before) checkSums(line, sprintTotals(statesOf(records), team.scale), problems);
  const past = pastSprintOf(team, days, records);
  return { ...base, records, past: isWatched ? past : { ...past, trace: [] } };
}

/** As it will be: closed and never to be opened again. */
function closedSprintOf(line: SprintLine, { team, now }: PlanContext): Sprint {
  const { name, goal, startsOn, endsOn, closedOn } = line;
  const closesAtInstant = instantOf(endsOn, team.closesAt, team.timeZone);
  return {
    id: randomUUID(),
    teamId: team.id,
    name,
    goal,
    startsOn,
    endsOn,
    closesAt: team.closesAt,
    closesAtInstant,
    state: 'closed',
    closedAt: timeThatCame(closedOn ?? endsOn, team.closesAt, team.timeZone, now),
    reopenedAt: undefined,
    nextPromptAt: undefined,
    nextReminderAt: undefined,
    lastCallAt: undefined,
    importedAt: now,
  };
}

/** The sums of a sprint's line must be those of its cards. */
function checkSums(line: SprintLine, totals: SprintTotals, problems: ImportProblems): void {
  const pairs = [
    ['commitment', line.commitmentPoints, totals.commitmentPoints],
    ['pulled in', line.pulledInPoints, totals.pulledInPoints],
    ['surprise', line.surprisePoints, totals.surprisePoints],
    ['finished', line.velocityPoints, totals.velocityPoints],
    ['points worked', line.workedPoints, totals.workedPoints],
    ['finished of commitment', line.committedFinishedPoints, totals.committedFinishedPoints],
    ['drift', line.driftPoints, totals.driftPoints],
  ] as const;
  const differing = pairs.filter(([, said, is]) => said !== undefined && said !== is);
  if (differing.length === 0) return;
  const sums = differing.map(([column, said, is]) => ({ column, said: said ?? 0, is }));
  problems.tell(line, { code: 'sums-differ', sums });
}

type KnownSums = Pick<
  SprintLine,
  | 'commitmentPoints'
  | 'pulledInPoints'
  | 'surprisePoints'
  | 'velocityPoints'
  | 'workedPoints'
  | 'committedFinishedPoints'
  | 'ratios'
>;

type NotImported = Extract<ReasonCode, `${string}-not-imported`>;

/** Why a sum isn't known; any other is one over cards. */
const NOT_IMPORTED: { readonly [Sum in keyof RatioSums]?: NotImported } = {
  committedFinishedPoints: 'finished-commitment-not-imported',
  pulledInPoints: 'pulled-in-work-not-imported',
  surprisePoints: 'surprise-work-not-imported',
  loadPoints: 'load-not-imported',
  velocityPoints: 'work-not-imported',
  workedPoints: 'work-not-imported',
};

/**
 * What a sprint of which only sums are known leaves behind for the statistics. Pure; nothing unknown is made up.
 *
 * @example pastFromColumns({ commitmentPoints: 20, velocityPoints: 10, pulledInPoints: 0, … }).ratios.keptShare === 0.5
 */
function pastFromColumns(sums: KnownSums): FromRecords {
  const { commitmentPoints, pulledInPoints, surprisePoints, velocityPoints, workedPoints } = sums;
  const committedFinishedPoints = committedFinished(sums);
  const loadPoints =
    pulledInPoints === undefined || surprisePoints === undefined
      ? undefined
      : commitmentPoints + pulledInPoints + surprisePoints;
  const known = {
    commitmentPoints,
    pulledInPoints,
    surprisePoints,
    velocityPoints,
    workedPoints,
    committedFinishedPoints,
  };
  return { ...known, ratios: ratiosOf({ ...known, loadPoints }, sums.ratios), trace: [], cards: [] };
}

/** As it is said, or as it follows from the other sums without any doubt. */
function committedFinished(sums: KnownSums): number | undefined {
  const { commitmentPoints, pulledInPoints, velocityPoints, committedFinishedPoints } = sums;
  if (committedFinishedPoints !== undefined) return committedFinishedPoints;
  if (commitmentPoints === 0 || velocityPoints === 0) return 0;
  if (velocityPoints === undefined || pulledInPoints === undefined) return undefined;
  if (pulledInPoints === 0) return velocityPoints;
  return velocityPoints === commitmentPoints + pulledInPoints ? commitmentPoints : undefined;
}

/** The sums that a ratio may be made of, as far as the columns say them. */
type ColumnSums = { readonly [Sum in keyof RatioSums]?: number | undefined };

function ratiosOf(sums: ColumnSums, stated: StatedRatios): PastRatios {
  const ids = RATIO_IDS.filter((id) => id !== 'velocityGrowth');
  return Object.fromEntries(ids.map((id) => [id, ratioFrom(id, sums, stated[id])])) as PastRatios;
}

function ratioFrom(id: RatioId, sums: ColumnSums, stated: number | undefined): Ratio {
  const { part, less, whole, whenZero } = RATIOS[id];
  if (sums[whole] === 0) return undefinedBecause(whenZero);
  if (stated !== undefined) return stated;
  const unknown = [less, part, whole].find((sum) => sum !== undefined && sums[sum] === undefined);
  if (unknown !== undefined) return undefinedBecause(NOT_IMPORTED[unknown] ?? 'cards-not-imported');
  return ratioOfSums(id, sums as RatioSums);
}

/** What may be a slip in an import, or will leave questions open later. Pure. */
export function importWarnings(planned: readonly SprintOutline[]): ImportWarning[] {
  const warning = (code: ImportWarning['code'], some: readonly SprintOutline[]): ImportWarning[] =>
    some.length === 0 ? [] : [{ code, sprints: some.map(({ name }) => name) }];
  const sameName = [...Map.groupBy(planned, ({ name }) => alikeName(name)).values()]
    .filter(({ length }) => length > 1)
    .flatMap(([first]) => (first ? [first] : []));
  return [
    ...warning('same-name', sameName),
    ...warning(
      'no-finished',
      planned.filter(({ velocityPoints }) => velocityPoints === undefined),
    ),
    ...warning(
      'no-working-day',
      planned.filter(({ workingDays }) => workingDays === 0),
    ),
  ];
}
