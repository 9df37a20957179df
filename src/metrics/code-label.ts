/** Makes an error's code fit to be the value of a label: short, plain, and of a bounded number of values. */

/** More kinds of error than this in one process: the rest is summed up, lest each makes a series of its own. */
const MOST_CODES = 200;
const OTHER = 'other';

const CODE = /^[A-Za-z0-9][A-Za-z0-9_.-]{0,59}$/;

export type CodeLabel = (code: string) => string;

/** One for each metric: it remembers the codes that it has let through. */
export function boundedCodes(most = MOST_CODES): CodeLabel {
  const known = new Set<string>();
  return (code) => {
    if (known.has(code)) return code;
    if (!CODE.test(code) || known.size >= most) return OTHER;
    known.add(code);
    return code;
  };
}

/** Beyond this, a chain of causes is a loop. */
const DEEPEST_CAUSE = 8;

/** The first code in the chain of causes; undefined when there is none. */
export function codeOf(error: unknown): string | undefined {
  let at = error;
  for (let depth = 0; at instanceof Error && depth < DEEPEST_CAUSE; depth += 1) {
    const { code } = at as { code?: unknown };
    if (typeof code === 'string' && code !== '') return code;
    at = at.cause;
  }
  return undefined;
}
