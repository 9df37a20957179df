import { codeOf, errorChain } from '../error-chain.ts';

/** What Postgres answers to everything after a failure in the same transaction (in_failed_sql_transaction). */
const AFTER_FAILURE = '25P02';

/**
 * Waits for several queries of one transaction, which then share a way to the database. Unlike `Promise.all` it waits for
 * all of them when one fails: what is still on its way would otherwise be carried out after the transaction has ended.
 *
 * @throws what failed first; what fails after it in the same transaction only says that the transaction has failed, even
 *   where word of it comes first
 */
export async function waitForAll<Works extends readonly unknown[] | []>(
  works: Works,
): Promise<{ -readonly [Place in keyof Works]: Awaited<Works[Place]> }> {
  const failures: unknown[] = [];
  const settled = works.map((work) => Promise.resolve(work).catch((error: unknown) => failures.push(error)));
  await Promise.all(settled);
  if (failures.length > 0) throw failures.find((failure) => !isAfterFailure(failure)) ?? failures[0];
  return Promise.all(works);
}

function isAfterFailure(failure: unknown): boolean {
  return errorChain(failure).some((at) => codeOf(at) === AFTER_FAILURE);
}
