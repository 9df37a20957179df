/**
 * Keeps a spreadsheet from taking text for a formula: text that begins like one gets an apostrophe before it, and
 * reading takes exactly that apostrophe back. For text only; a number that begins with a minus stays as it is.
 */

/**
 * What makes a spreadsheet take a cell for a formula, or may once a white space was trimmed away, with the full-width
 * forms that some spreadsheets read in the same way. Apostrophes before it count as well, so that none of a person's own is taken
 * away on the way back. Source: OWASP, "CSV Injection" (owasp.org/www-community/attacks/CSV_Injection).
 */
const LIKE_A_FORMULA = /^'*[=+\-@\t\r\n＝＋－＠]/;
const ESCAPED = /^'+[=+\-@\t\r\n＝＋－＠]/;

/** @example escapeFormula('=1+1') === "'=1+1" */
export function escapeFormula(text: string): string {
  return LIKE_A_FORMULA.test(text) ? `'${text}` : text;
}

/** Takes back what `escapeFormula` did. @example unescapeFormula("'=1+1") === '=1+1' */
export function unescapeFormula(text: string): string {
  return ESCAPED.test(text) ? text.slice(1) : text;
}
