/**
 * What stands in place of an erased person's id. A random mark tells answers on one card and day apart, which the
 * ledger needs; everywhere else the same plain mark stands for all, so that nothing links them.
 */

/** Where the ledger does not have to tell one from another. The platform's ids are upper-case letters and digits. */
export const ERASED = 'erased';

/** What stands in text in place of a name or a mention. */
export const SOMEBODY = 'somebody';

export function isErased(userId: string): boolean {
  return userId === ERASED || userId.startsWith(`${ERASED}-`);
}
