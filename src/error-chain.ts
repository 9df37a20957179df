/** An error and what caused it: the one place that follows `cause`. A chain of causes may be a loop. */

/** Beyond this, a chain of causes is a loop. */
const LONGEST_CHAIN = 8;

/** What was thrown, then its cause, and so on. The last need not be an error, since anything can be thrown. */
export function errorChain(thrown: unknown): unknown[] {
  const chain = [thrown];
  for (let at = thrown; at instanceof Error && chain.length < LONGEST_CHAIN; at = at.cause) {
    if (at.cause !== undefined) chain.push(at.cause);
  }
  return chain;
}

/** The error's own code, as Node.js, the database's drivers and our own errors have one; undefined when it has none. */
export function codeOf(error: unknown): string | undefined {
  if (!(error instanceof Error)) return undefined;
  const { code } = error as { code?: unknown };
  return typeof code === 'string' && code !== '' ? code : undefined;
}

/** The code nearest to the surface. */
export function firstCodeOf(thrown: unknown): string | undefined {
  return errorChain(thrown)
    .map(codeOf)
    .find((code) => code !== undefined);
}
