/**
 * Writes one of the four files: RFC 4180 with a header row, and a byte order mark, without which spreadsheets read it
 * in their country's old alphabet. Text that begins like a formula is escaped; numbers are written in digits.
 */
import { stringify } from 'csv-stringify/sync';
import { visibleText } from '../visible-text.ts';
import type { ColumnName, CsvKind } from './csv-columns.ts';
import { CSV_COLUMNS } from './csv-columns.ts';
import { escapeFormula } from './escape-formula.ts';
import { plainDecimal } from './plain-decimal.ts';

/** Undefined: the cell is empty. */
export type CsvCell = string | number | undefined;

/** One line; a column that is left out stays empty. */
export type CsvRow<Kind extends CsvKind> = { readonly [Name in ColumnName<Kind>]?: CsvCell };

export function writeCsv<Kind extends CsvKind>(kind: Kind, rows: readonly CsvRow<Kind>[]): string {
  const names = CSV_COLUMNS[kind].map(({ name }) => name as ColumnName<Kind>);
  return stringify([names, ...rows.map((row) => names.map((name) => cellText(row[name])))], {
    bom: true,
    record_delimiter: '\r\n',
    // Line ends within a cell, and what other settings take for separators.
    quoted_match: /[\r\n;\t]/,
  });
}

function cellText(cell: CsvCell): string {
  if (cell === undefined) return '';
  return typeof cell === 'number' ? plainDecimal(cell) : escapeFormula(visibleText(cell));
}
