/** What is wrong with what somebody typed, as they read it. */
import type { Unclear } from '../app/answering/understand-part.ts';
import type { InputProblem, Problem } from '../app/input-problem.ts';
import type { BadLine } from '../app/planning/card-paste.ts';
import type { Form } from './language.ts';
import { Markup, markup, mrkdwn, say, sayCode } from './say.ts';
import { plainTyped, shortened } from './typed-text.ts';

/** Bad lines that are said in full; of the others only the numbers are given. */
const BAD_LINES_SAID = 8;
/** Longest text of a person, in characters, that is repeated in full. */
const TYPED_MAX_LENGTH = 40;

/** What is wrong with a field, in plain text. */
export interface FieldProblem {
  readonly field: string;
  readonly message: string;
}

export function fieldProblem({ field, problem }: InputProblem): FieldProblem {
  return { field, message: problemWords(problem) };
}

/** On one line, and not too much of it. */
export function shortTyped(text: string): string {
  return shortened(plainTyped(text), TYPED_MAX_LENGTH);
}

/** The same of what was typed among a problem's details. */
export function withShortTyped<Coded extends object>(coded: Coded): Coded {
  return 'typed' in coded ? { ...coded, typed: shortTyped(String(coded.typed)) } : coded;
}

export function problemWords(whole: Problem, form: Form = 'plain'): string {
  const problem = withShortTyped(whole);
  if (problem.code === 'bad-lines') return badLines(problem.lines, form);
  if (problem.code === 'several-people') {
    const name = form === 'plain' ? say : markup;
    const people = problem.people.map((person) => name('problem-person-and-id', person));
    return (form === 'plain' ? say : mrkdwn)('problem-several-people', { typed: problem.typed, people });
  }
  return sayCode('problem', problem, form);
}

function badLines(lines: readonly BadLine[], form: Form): string {
  const speak = form === 'plain' ? say : mrkdwn;
  const shown = lines
    .slice(0, BAD_LINES_SAID)
    .map(({ lineNumber, problem }) =>
      speak('problem-bad-line', { line: lineNumber, problem: new Markup(problemWords(problem, form)) }),
    );
  const more = lines.slice(BAD_LINES_SAID).map(({ lineNumber }) => String(lineNumber));
  const rest =
    more.length === 0 ? [] : [speak('problem-more-bad-lines', { count: more.length, lines: more })];
  return [...shown, ...rest].join('\n');
}

/** Why an answer in words could not be understood. */
export function unclearWords(unclear: Unclear, form: Form = 'plain'): string {
  return sayCode('unclear', withShortTyped(unclear), form);
}
