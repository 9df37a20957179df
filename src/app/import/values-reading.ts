/** Reads a file of values line by line, and finds the sprint of each. Pure. */
import { createHash } from 'node:crypto';
import { decoded, type GivenFile } from '../csv/given-file.ts';
import { LineReader } from '../csv/line-reader.ts';
import { readTable, type TableLine } from '../csv/read-table.ts';
import type { ValuedSprint } from '../history/past-sprint.ts';
import { type ImportProblem, ImportProblems, type LineProblem, placeOf } from './import-problem.ts';
import { MOST_PROBLEMS_TOLD } from './import-reading.ts';
import { alikeName, MOST_NAME_CHARACTERS } from './sprint-line.ts';

export interface ValuesQuestion {
  readonly file: GivenFile;
  /** The team's closed sprints, oldest first. */
  readonly sprints: readonly ValuedSprint[];
}

/** A sprint with the value that it had before, and the one in the file. */
export interface NewValue {
  readonly sprint: ValuedSprint;
  readonly value: number;
}

export interface ValuesReading {
  /** By the sprint's first day, those that are to be recorded only. Empty while a line is bad. */
  readonly values: readonly NewValue[];
  /** Sprints that have the very value of the file. */
  readonly same: number;
  /** Rows without a value. */
  readonly without: number;
  /** By line; while there is one nothing can be recorded. */
  readonly problems: readonly ImportProblem[];
  /** How many more there are, if there are very many. */
  readonly problemsUntold: number;
  /** A mark of the values: only what was previewed is recorded. */
  readonly fingerprint: string;
}

/** @throws NoText */
export function readValues({ file: toRead, sprints }: ValuesQuestion): ValuesReading {
  const problems = new ImportProblems();
  const file = decoded(toRead);
  const { fileName } = file;
  const table = readTable(file, ['values']);
  if ('code' in table) problems.tell({ fileName, lineNumber: undefined }, table);
  const lines = 'code' in table ? [] : table.lines;
  for (const { lineNumber, problem } of 'code' in table ? [] : table.bad) {
    problems.tell({ fileName, lineNumber }, problem);
  }
  const given = new Map<ValuedSprint, number>();
  const lineOf = new Map<ValuedSprint, number>();
  const named = Map.groupBy(sprints, ({ name }) => alikeName(name));
  const valued = lines.filter((line) => line.cell('value') !== '');
  for (const line of valued) {
    const read = readValueLine(line, named, lineOf);
    if ('problems' in read) for (const problem of read.problems) problems.tell(placeOf(line), problem);
    else {
      given.set(read.sprint, read.value);
      lineOf.set(read.sprint, line.lineNumber);
    }
  }
  const all = sprints.flatMap((sprint) => {
    const value = given.get(sprint);
    return value === undefined ? [] : [{ sprint, value }];
  });
  const values = problems.count > 0 ? [] : all.filter(({ sprint, value }) => value !== sprint.recordedValue);
  const mark = JSON.stringify(
    values.map(({ sprint, value }) => [sprint.sprintId, sprint.recordedValue, value]),
  );
  const told = problems.inOrder([fileName]).slice(0, MOST_PROBLEMS_TOLD);
  return {
    values,
    same: problems.count > 0 ? 0 : all.length - values.length,
    without: lines.length - valued.length,
    problems: told,
    problemsUntold: problems.count - told.length,
    fingerprint: createHash('sha256').update(mark).digest('base64url'),
  };
}

/**
 * @param named the team's closed sprints by name
 * @param lineOf on which line a sprint was given already
 */
function readValueLine(
  line: TableLine<'values'>,
  named: ReadonlyMap<string, readonly ValuedSprint[]>,
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
