/**
 * Says what is wrong with a block or view in the platform's manner: a sentence and a JSON pointer.
 * Must not decide what is wrong: the shapes do.
 */
import type { z } from 'zod';

/** `no more than 25 items allowed [json-pointer:/blocks/1/elements]` */
export function problem(sentence: string, path: readonly PropertyKey[]): string {
  return `${sentence} [json-pointer:/${path.map(String).join('/')}]`;
}

/** One problem for each thing that a shape refused, under the given root. */
export function problemsOf(error: z.ZodError, root: readonly PropertyKey[]): string[] {
  return error.issues.map((issue) => problemOf(issue, root));
}

function problemOf(issue: z.core.$ZodIssue, root: readonly PropertyKey[]): string {
  const path = [...root, ...issue.path];
  switch (issue.code) {
    case 'too_big':
      return problem(
        issue.origin === 'string'
          ? `must be less than ${Number(issue.maximum) + 1} characters`
          : issue.origin === 'array'
            ? `no more than ${issue.maximum} items allowed`
            : `must be at most ${issue.maximum}`,
        path,
      );
    case 'too_small':
      return problem(
        issue.origin === 'string'
          ? `must be more than ${Number(issue.minimum) - 1} characters`
          : issue.origin === 'array'
            ? `must provide at least ${issue.minimum} items`
            : `must be at least ${issue.minimum}`,
        path,
      );
    case 'unrecognized_keys':
      return problem(`invalid additional property: ${issue.keys.join(', ')}`, path);
    case 'invalid_union':
      return problem(unsupported(issue), path);
    case 'invalid_type':
      // The shapes are parsed from JSON, so what is undefined there is absent.
      return issue.input === undefined && issue.message.endsWith('received undefined')
        ? problem(`missing required field: ${String(path.at(-1))}`, path.slice(0, -1))
        : problem(`must provide a value of type ${issue.expected}`, path);
    case 'invalid_value':
      return problem(`must be one of: ${issue.values.map(String).join(', ')}`, path);
    default:
      return problem(issue.message, path);
  }
}

function unsupported(issue: z.core.$ZodIssue & { code: 'invalid_union' }): string {
  return issue.path.at(-1) === 'type' ? 'unsupported or missing type' : 'failed to match all allowed schemas';
}
