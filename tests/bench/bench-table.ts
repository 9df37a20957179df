import type { BenchRow } from './bench-row.ts';
import { isWithin } from './bench-row.ts';

/** The rows as a table for reading. */
export function benchTable(rows: readonly BenchRow[]): string {
  const lines = rows.map((row) => [
    row.name,
    `${digits(row.value)} ${row.unit}`,
    `${digits(row.baselineValue)} ${row.unit}: ${row.baseline}`,
    `${digits(row.ratio)} ×`,
    boundWords(row),
    isWithin(row) ? 'within' : 'EXCEEDED',
  ]);
  const all = [['bench', 'value', 'baseline', 'ratio', 'bound', ''], ...lines];
  const widths = all[0]?.map((_, i) => Math.max(...all.map((line) => (line[i] as string).length))) ?? [];
  return all
    .map((line) =>
      line
        .map((cell, i) => cell.padEnd(widths[i] as number))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

function boundWords({ bound, unit }: BenchRow): string {
  const limit = 'atMost' in bound ? `at most ${digits(bound.atMost)}` : `at least ${digits(bound.atLeast)}`;
  return `${bound.of} ${limit} ${bound.of === 'ratio' ? '×' : unit}`;
}

/** Three digits that mean something. */
function digits(value: number): string {
  return value >= 100 ? value.toFixed(0) : value.toPrecision(3);
}
