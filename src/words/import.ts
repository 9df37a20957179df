/** What an import would bring in or brought in, and what an export holds, as people read it. Markup of the platform. */
import { MOST_DONE_BODIES } from '../app/bodies/body-of-work.ts';
import type { TeamExport } from '../app/export/export-sprints.ts';
import type { ImportPreview, PreviewedBody, PreviewedSprint } from '../app/import/import-reading.ts';
import type { SprintsImported } from '../app/import/import-sprints.ts';
import { lineProblemWords } from './import-problems.ts';
import { Markup, markup, mrkdwn, say } from './say.ts';
import { plainTyped, shortened } from './typed-text.ts';

const UNUSED_NAMED = 8;
const FILE_NAME_MAX_LENGTH = 60;
const COLUMN_NAME_MAX_LENGTH = 40;
/** More are not looked up one by one. */
const RUNS_NAMED = 12;

/** The same thing that is wrong with many lines is said once. */
export function badLines({ problems }: Pick<ImportPreview, 'problems'>): string[] {
  const groups = Map.groupBy(problems, ({ fileName, problem }) => JSON.stringify([fileName, problem]));
  return [...groups.values()].map((group) => {
    const [first] = group as [ImportPreview['problems'][number]];
    const file = shortened(first.fileName, FILE_NAME_MAX_LENGTH);
    const problem = new Markup(lineProblemWords(first.problem, 'mrkdwn'));
    const numbers = group.flatMap(({ lineNumber }) => (lineNumber === undefined ? [] : [lineNumber]));
    return numbers.length === 0
      ? mrkdwn('import-bad-file', { file, problem })
      : mrkdwn('import-bad-places', { file, places: lineNumberWords(numbers), problem });
  });
}

/** `line 7`, `lines 3, 5 to 9 and 12`. @param numbers at least one, rising */
export function lineNumberWords(numbers: readonly number[]): string {
  const unique = [...new Set(numbers)];
  const runs: [number, number][] = [];
  for (const number of unique) {
    const last = runs.at(-1);
    if (last && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  const named = runs.slice(0, RUNS_NAMED).flatMap(([first, last]) => {
    if (last <= first + 1) return last === first ? [`${first}`] : [`${first}`, `${last}`];
    return [say('import-places-run', { first: `${first}`, last: `${last}` })];
  });
  const more = runs.slice(RUNS_NAMED).reduce((sum, [first, last]) => sum + last - first + 1, 0);
  const lines = more > 0 ? [...named, say('import-more-items', { count: more })] : named;
  return say('import-places', { count: unique.length, lines });
}

/** What the preview leads with. Plain text. */
export function previewLead(preview: ImportPreview): string {
  const { sprints, leftOut, bodies, bodiesLeftOut, badLines: lines } = preview;
  if (lines > 0) return say('import-bad-lines', { lines });
  const span = spanOf(sprints);
  if (span) return say('import-to-import', { sprints: sprints.length, ...span });
  if (bodies.length > 0) return say('import-bodies-to-import', { bodies: bodies.length });
  return say(leftOut.length + bodiesLeftOut.length > 0 ? 'import-nothing-new' : 'import-nothing');
}

function spanOf(
  sprints: readonly Pick<PreviewedSprint, 'startsOn' | 'endsOn'>[],
): { first: string; last: string } | undefined {
  const [first, last] = [sprints[0], sprints.at(-1)];
  return first && last && { first: first.startsOn, last: last.endsOn };
}

/** How much is known of the sprints. */
export function knownOf({ sprints, cards, answers }: ImportPreview): string {
  if (cards === 0) return mrkdwn('import-only-sums');
  const known = mrkdwn('import-with-cards', { cards, answers });
  const given = sprints.filter((sprint) => sprint.cards > 0).length;
  if (given === sprints.length) return known;
  return `${known} ${mrkdwn('import-cards-of-some', { given, sprints: sprints.length })}`;
}

export function previewedSprint(sprint: PreviewedSprint): string {
  const { name, startsOn, endsOn, commitmentPoints, velocityPoints, cards } = sprint;
  const facts = [
    say('import-committed', { points: commitmentPoints }),
    velocityPoints === undefined
      ? say('import-finished-unknown')
      : say('import-finished', { points: velocityPoints }),
    ...(cards === 0 ? [] : [say('import-cards', { cards })]),
  ];
  return mrkdwn('import-sprint', { sprint: name, first: startsOn, last: endsOn, facts });
}

export function leftOutSprint({ name, startsOn, why }: ImportPreview['leftOut'][number]): string {
  return mrkdwn('import-left-out', { sprint: name, first: startsOn, why });
}

export function leftOutBody({ name: body, why }: ImportPreview['bodiesLeftOut'][number]): string {
  return mrkdwn('import-body-left-out', { body, why, most: MOST_DONE_BODIES });
}

export function previewedBody({ name, leftPoints, isDone }: PreviewedBody): string {
  return mrkdwn('import-body', { body: name, points: leftPoints, state: isDone ? 'done' : 'to-do' });
}

/** Columns that mean nothing here, a line for each file that has some. */
export function unusedColumns({ files }: ImportPreview): string[] {
  return files.flatMap(({ fileName, kind, unused }) => {
    if (kind === 'experiments') {
      return [mrkdwn('import-unused-experiments', { file: shortened(fileName, FILE_NAME_MAX_LENGTH) })];
    }
    if (unused.length === 0) return [];
    const columns: Markup[] = unused
      .slice(0, UNUSED_NAMED)
      .map((column) =>
        markup('import-unused-column', { column: shortened(plainTyped(column), COLUMN_NAME_MAX_LENGTH) }),
      );
    const more = unused.length - columns.length;
    if (more > 0) columns.push(markup('import-more-items', { count: more }));
    const file = shortened(fileName, FILE_NAME_MAX_LENGTH);
    return [mrkdwn('import-unused-columns', { file, count: unused.length, columns })];
  });
}

export function importDone(imported: SprintsImported): string {
  const { team, sprints, cards, answers, leftOut, bodies, knownSprints } = imported;
  const span = spanOf(sprints);
  return [
    ...(span ? [mrkdwn('import-done', { sprints: sprints.length, team: team.name, ...span })] : []),
    ...(cards > 0 ? [mrkdwn('import-done-cards', { cards, answers })] : []),
    ...(bodies.length > 0 ? [mrkdwn('import-done-bodies', { bodies: bodies.length, team: team.name })] : []),
    ...(leftOut.length > 0 ? [mrkdwn('import-done-left-out', { sprints: leftOut.length })] : []),
    ...(sprints.length > 0 ? [mrkdwn('import-done-known', { sprints: knownSprints })] : []),
  ].join(' ');
}

export function exportDone({ team, files, parts, lines, running, cancelled }: TeamExport): string {
  const held = [
    say('export-sprints', { count: lines.sprints }),
    say('export-cards', { count: lines.cards }),
    say('export-answers', { count: lines.answers }),
    say('export-changes', { count: lines.changes }),
    ...(lines.bodies === 0 ? [] : [say('export-bodies', { count: lines.bodies })]),
    ...(lines.experiments === 0 ? [] : [say('export-experiments', { count: lines.experiments })]),
  ];
  const marked = [
    ...(running > 0 ? [say('export-running', { count: running })] : []),
    ...(cancelled > 0 ? [say('export-cancelled', { count: cancelled })] : []),
  ];
  const done = mrkdwn('export-done', { team: team.name, files: files.length, held });
  return [
    done,
    ...(parts > 1 ? [mrkdwn('export-parts', { parts })] : []),
    ...(marked.length > 0 ? [mrkdwn('export-marked', { marked })] : []),
  ].join(' ');
}
