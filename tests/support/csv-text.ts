/** A file as the export writes it, as text. */
import type { CsvKind } from '../../src/app/csv/csv-columns.ts';
import { CsvBytes, type CsvRow } from '../../src/app/csv/write-csv.ts';

export function csvText<Kind extends CsvKind>(kind: Kind, rows: readonly CsvRow<Kind>[]): string {
  const file = new CsvBytes(kind);
  file.add(rows);
  return Buffer.from(file.bytes).toString();
}
