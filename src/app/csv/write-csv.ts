/**
 * Writes one of the files: RFC 4180 with a header row, and a byte order mark, without which spreadsheets read it
 * in their country's old alphabet. Text that begins like a formula is escaped; numbers are written in digits.
 */
import { stringify } from 'csv-stringify/sync';
import { visibleText } from '../visible-text.ts';
import { type ColumnName, CSV_COLUMNS, type CsvKind } from './csv-columns.ts';

/** Undefined: the cell is empty. */
type CsvCell = string | number | undefined;

/** One line; a column that is left out stays empty. */
export type CsvRow<Kind extends CsvKind> = { readonly [Name in ColumnName<Kind>]?: CsvCell };

/** A file that is written bit by bit, so that a large one holds nobody up. UTF-8. */
export class CsvBytes<Kind extends CsvKind> {
  readonly #kind: Kind;
  readonly #parts: Uint8Array[] = [];
  #byteLength = 0;
  #lines = 0;

  constructor(kind: Kind) {
    this.#kind = kind;
    this.#push(headerOf(kind));
  }

  #push(text: string): void {
    const part = new TextEncoder().encode(text);
    this.#parts.push(part);
    this.#byteLength += part.byteLength;
  }

  /** Those below the header. */
  get lines(): number {
    return this.#lines;
  }

  add(rows: readonly CsvRow<Kind>[]): void {
    this.#push(linesOf(this.#kind, rows));
    this.#lines += rows.length;
  }

  get byteLength(): number {
    return this.#byteLength;
  }

  get bytes(): Uint8Array {
    const whole = new Uint8Array(this.#byteLength);
    let place = 0;
    for (const part of this.#parts) {
      whole.set(part, place);
      place += part.byteLength;
    }
    return whole;
  }
}

function headerOf(kind: CsvKind): string {
  return `\uFEFF${textOf([CSV_COLUMNS[kind].map(({ name }) => name)])}`;
}

function linesOf<Kind extends CsvKind>(kind: Kind, rows: readonly CsvRow<Kind>[]): string {
  const names = CSV_COLUMNS[kind].map(({ name }) => name as ColumnName<Kind>);
  return textOf(rows.map((row) => names.map((name) => cellText(row[name]))));
}

/** RFC 4180. */
function textOf(lines: readonly (readonly string[])[]): string {
  return stringify(
    lines.map((cells) => [...cells]),
    {
      record_delimiter: '\r\n',
      // Line ends within a cell, and what other settings take for separators.
      quoted_match: /[\r\n;\t]/,
    },
  );
}

function cellText(cell: CsvCell): string {
  if (cell === undefined) return '';
  return typeof cell === 'number' ? plainDecimal(cell) : escapeFormula(visibleText(cell));
}

/**
 * What makes a spreadsheet take a cell for a formula, or may once a white space was trimmed away, with the full-width
 * forms that some spreadsheets read in the same way. Apostrophes before it count as well, so that none of a person's own is taken
 * away on the way back. Source: OWASP, "CSV Injection" (owasp.org/www-community/attacks/CSV_Injection).
 */
const LIKE_A_FORMULA = /^'*[=+\-@\t\r\n＝＋－＠]/;
const ESCAPED = /^'+[=+\-@\t\r\n＝＋－＠]/;

/**
 * Keeps a spreadsheet from taking text for a formula: text that begins like one gets an apostrophe before it, and
 * reading takes exactly that apostrophe back. For text only; a number that begins with a minus stays as it is.
 *
 * @example escapeFormula('=1+1') === "'=1+1"
 */
export function escapeFormula(text: string): string {
  return LIKE_A_FORMULA.test(text) ? `'${text}` : text;
}

/** Takes back what `escapeFormula` did. @example unescapeFormula("'=1+1") === '=1+1' */
export function unescapeFormula(text: string): string {
  return ESCAPED.test(text) ? text.slice(1) : text;
}

/**
 * Writes a number in digits only, as a spreadsheet in any country reads it when the point is the decimal mark.
 *
 * The shortest decimal that reads back as the same number, without an exponent.
 *
 * @throws RangeError for what is no finite number.
 * @example plainDecimal(2.5) === '2.5'
 * @example plainDecimal(1e-7) === '0.0000001'
 */
export function plainDecimal(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} has no decimal form`);
  const text = String(value === 0 ? 0 : value);
  const [, sign = '', digits = '', decimals = '', exponent] =
    /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(text) ?? [];
  if (exponent === undefined) return text;
  const point = digits.length + Number(exponent);
  const all = `${digits}${decimals}`;
  if (point <= 0) return `${sign}0.${'0'.repeat(-point)}${all}`;
  if (point >= all.length) return `${sign}${all}${'0'.repeat(point - all.length)}`;
  return `${sign}${all.slice(0, point)}.${all.slice(point)}`;
}
