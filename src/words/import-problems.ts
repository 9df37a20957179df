/** What is wrong with a file of an import, one of its lines or a cell, and what may be a slip. */
import type { ImportWarning, LineProblem } from '../app/import/import-problem.ts';
import type { Form } from './language.ts';
import { problemWords, shortTyped, withShortTyped } from './problems.ts';
import { Markup, markup, mrkdwn, say, sayCode } from './say.ts';

const NAMES_SHOWN = 5;

/** Goes on after `sprints.csv, line 7: `. */
export function lineProblemWords(whole: LineProblem, form: Form = 'plain'): string {
  const problem = withShortTyped(whole);
  const speak = form === 'plain' ? say : mrkdwn;
  const inQuotes = (names: readonly string[]): Markup[] =>
    names.map((text) => new Markup(speak('file-quoted', { text })));
  switch (problem.code) {
    case 'no-line': {
      const { line } = problem;
      return speak('file-no-line', { line, problem: new Markup(lineProblemWords(problem.problem, form)) });
    }
    case 'no-number': {
      const { column } = problem;
      return speak('file-no-number', { column, problem: new Markup(problemWords(problem.problem, form)) });
    }
    case 'no-choice': {
      const { typed, column, choices } = problem;
      return speak('file-no-choice', { typed, column, choices: inQuotes(choices) });
    }
    case 'same-columns': {
      const { first, second, column } = problem;
      return speak('file-same-columns', { first: shortTyped(first), second: shortTyped(second), column });
    }
    case 'missing-columns': {
      const { kind, missing, needed } = problem;
      return speak('file-missing-columns', { kind, needed, missing: inQuotes(missing) });
    }
    case 'too-many-cells': {
      const { cells, columns, separator } = problem;
      return cells === undefined
        ? speak('file-far-too-many-cells', { columns, separator })
        : speak('file-too-many-cells', { cells, columns, separator });
    }
    case 'sums-differ': {
      const sums = problem.sums.map((sum) => new Markup(speak('file-sum-differs', { ...sum })));
      return speak('file-sums-differ', { sums });
    }
    default:
      return sayCode('file', problem, form);
  }
}

/** A full sentence, in markup. */
export function importWarning({ code, sprints }: ImportWarning): string {
  const more = sprints.length - NAMES_SHOWN;
  const named: (string | Markup)[] = sprints.slice(0, NAMES_SHOWN);
  if (more > 0) named.push(markup('import-more-items', { count: more }));
  return code === 'same-name'
    ? mrkdwn('import-warning-same-name', { sprints: named })
    : mrkdwn(`import-warning-${code}`, { sprints: named, count: sprints.length });
}
