/**
 * Records what several sprints were worth, from a file: first shows each value and every bad line, then records what was
 * shown. A value that is there already is replaced, as when it is typed.
 */
import { createHash } from 'node:crypto';
import type { CsvFile } from '../csv/csv-rows.ts';
import { LineReader } from '../csv/line-reader.ts';
import { readTable, type TableLine } from '../csv/read-table.ts';
import { lockedAudience } from '../history/closed-sprint.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import { requireValueKeeper, type ValuedSprint } from '../history/record-value.ts';
import { pastSprints } from '../history/team-history.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { Refusal } from '../refusal.ts';
import type { Actor, Team } from '../team/team.ts';
import { type ImportProblem, ImportProblems, type LineProblem, placeOf } from './import-problem.ts';
import { alikeName, MOST_NAME_CHARACTERS } from './sprint-line.ts';

export interface ValuesInput {
  readonly teamId: string;
  readonly file: CsvFile;
  /** The fingerprint of the preview that was seen; undefined when none was. */
  readonly seen: string | undefined;
}

/** A sprint with the value that it had before, and the one in the file. */
export interface NewValue {
  readonly sprint: ValuedSprint;
  readonly value: number;
}

export interface ValuesPreview {
  readonly team: Team;
  /** By the sprint's first day, those that are to be recorded only. Empty while a line is bad. */
  readonly values: readonly NewValue[];
  /** Sprints that have the very value of the file. */
  readonly same: number;
  /** Rows without a value. */
  readonly without: number;
  /** By line; while there is one nothing can be recorded. */
  readonly problems: readonly ImportProblem[];
  /** A mark of the values: only what was previewed is recorded. */
  readonly fingerprint: string;
}

export type ValuesOutcome =
  | { readonly kind: 'preview'; readonly preview: ValuesPreview }
  | { readonly kind: 'recorded'; readonly recorded: Pick<ValuesPreview, 'team' | 'values' | 'same'> };

/** @throws Refusal `not-a-value-keeper`, `no-closed-sprint`, and those of finding the team. */
export async function importValues(
  deps: AppDependencies,
  actor: Actor,
  { teamId, file, seen }: ValuesInput,
): Promise<ValuesOutcome> {
  return deps.store.transaction(async (tx) => {
    // Locked, so that nobody records between the last look and the recording.
    const audience = await lockedAudience(tx, actor, { teamId });
    requireValueKeeper(audience);
    const { team } = audience;
    const past = await pastSprints(tx, team);
    if (past.length === 0)
      throw new Refusal('no-closed-sprint', { teamName: team.name, withVelocity: false });
    const preview = previewOf(team, file, past);
    if (preview.values.length === 0 || seen !== preview.fingerprint) return { kind: 'preview', preview };
    const at = deps.clock.now();
    for (const { sprint, value } of preview.values) {
      const { sprintId } = sprint;
      await tx.write.history.recordValue({ sprintId, value, byUserId: actor.userId, at });
      await tx.write.posts.refreshSent(sprintId, 'value-question');
    }
    const { values, same } = preview;
    return { kind: 'recorded', recorded: { team, values, same } };
  });
}

function previewOf(team: Team, file: CsvFile, past: readonly PastSprint[]): ValuesPreview {
  const problems = new ImportProblems();
  const { fileName } = file;
  const table = readTable(file, ['values']);
  if ('code' in table) problems.tell({ fileName, lineNumber: undefined }, table);
  const lines = 'code' in table ? [] : table.lines;
  for (const { lineNumber, problem } of 'code' in table ? [] : table.bad) {
    problems.tell({ fileName, lineNumber }, problem);
  }
  const given = new Map<ValuedSprint, number>();
  const lineOf = new Map<ValuedSprint, number>();
  const named = Map.groupBy(past, ({ name }) => alikeName(name));
  const valued = lines.filter((line) => line.cell('value') !== '');
  for (const line of valued) {
    const read = readValueLine(line, named, lineOf);
    if ('problems' in read) for (const problem of read.problems) problems.tell(placeOf(line), problem);
    else {
      given.set(read.sprint, read.value);
      lineOf.set(read.sprint, line.lineNumber);
    }
  }
  const all = past.flatMap((sprint) => {
    const value = given.get(sprint);
    return value === undefined ? [] : [{ sprint, value }];
  });
  const values = problems.count > 0 ? [] : all.filter(({ sprint, value }) => value !== sprint.recordedValue);
  const mark = JSON.stringify(
    values.map(({ sprint, value }) => [sprint.sprintId, sprint.recordedValue, value]),
  );
  return {
    team,
    values,
    same: problems.count > 0 ? 0 : all.length - values.length,
    without: lines.length - valued.length,
    problems: problems.inOrder([fileName]),
    fingerprint: createHash('sha256').update(mark).digest('base64url'),
  };
}

/**
 * @param named the team's closed sprints by name
 * @param lineOf on which line a sprint was given already
 */
function readValueLine(
  line: TableLine<'values'>,
  named: ReadonlyMap<string, readonly PastSprint[]>,
  lineOf: ReadonlyMap<ValuedSprint, number>,
): { readonly problems: readonly LineProblem[] } | NewValue {
  const read = new LineReader<'values', LineProblem>(line);
  const name = read.requiredText('sprint', MOST_NAME_CHARACTERS);
  const first = read.day('sprint first day');
  const value = read.number('value');
  if (read.problems.length > 0 || value === undefined) return { problems: read.problems };
  const [sprint, another] = (named.get(alikeName(name)) ?? []).filter(
    ({ startsOn }) => first === undefined || startsOn === first,
  );
  if (another) return { problems: [{ code: 'several-sprints', sprint: name }] };
  if (!sprint) {
    return {
      problems: [
        first === undefined
          ? { code: 'not-closed', sprint: name }
          : { code: 'not-closed-then', sprint: name, first },
      ],
    };
  }
  const earlier = lineOf.get(sprint);
  if (earlier === undefined) return { sprint, value };
  const { fileName: file } = line;
  return { problems: [{ code: 'sprint-twice', sprint: sprint.name, line: earlier, where: 'here', file }] };
}
