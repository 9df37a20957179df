/**
 * What takes the place of an erased person's id. A random mark keeps answers on one card and day apart, which the
 * ledger needs; everywhere else the same plain mark is used for all, so that nothing links them.
 */

/** Where the ledger needs no difference between them. The platform's ids are upper-case letters and digits. */
export const ERASED = 'erased';

/** What takes the place of a name or a mention in text. */
export const SOMEBODY = 'somebody';

export function isErased(userId: string): boolean {
  return userId === ERASED || userId.startsWith(`${ERASED}-`);
}
