/**
 * Keeps a spreadsheet from taking text for a formula: text that begins like one gets an apostrophe before it, and
 * reading takes exactly that apostrophe back. For text only; a number that begins with a minus stays as it is.
 */

/**
 * What makes a spreadsheet take a cell for a formula, or may once a white space was trimmed away, with the full-width
 * forms that some spreadsheets read alike. Apostrophes before it count as well, so that none of a person's own is taken
 * away on the way back. Source: OWASP, "CSV Injection" (owasp.org/www-community/attacks/CSV_Injection).
 */
const LIKE_A_FORMULA = /^'*[=+\-@\t\r\n＝＋－＠]/;
const GUARDED = /^'+[=+\-@\t\r\n＝＋－＠]/;

/** @example guarded('=1+1') === "'=1+1" */
export function guarded(text: string): string {
  return LIKE_A_FORMULA.test(text) ? `'${text}` : text;
}

/** Takes back what `guarded` did. @example unguarded("'=1+1") === '=1+1' */
export function unguarded(text: string): string {
  return GUARDED.test(text) ? text.slice(1) : text;
}
