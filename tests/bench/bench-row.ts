/** One line of the bench's table: a value, its baseline, and how far it may go. */

export interface BenchRow {
  readonly name: string;
  readonly unit: 'ms' | 's' | 'MB' | 'statements' | 'messages' | 'per second';
  readonly value: number;
  /** What the value is compared with, measured in the same run. */
  readonly baseline: string;
  readonly baselineValue: number;
  /** value ÷ baselineValue */
  readonly ratio: number;
  readonly bound: Bound;
}

/** The most, or the least, that the value or its ratio may be. */
export type Bound = { readonly of: 'value' | 'ratio' } & (
  | { readonly atMost: number }
  | { readonly atLeast: number }
);

/** How much of it is run, where a bench has more than fits the run of all. */
export interface BenchSize {
  readonly requests?: number | undefined;
}

/** A bench of one or more rows. What it opens it closes. */
export interface Bench {
  readonly name: string;
  /** Rough time that it takes, for the person who waits. */
  readonly takesSeconds: number;
  run(size?: BenchSize): Promise<BenchRow[]>;
}

export function benchRow(row: Omit<BenchRow, 'ratio'>): BenchRow {
  return { ...row, ratio: row.value / row.baselineValue };
}

export function isWithin({ value, ratio, bound }: BenchRow): boolean {
  const measured = bound.of === 'value' ? value : ratio;
  return 'atMost' in bound ? measured <= bound.atMost : measured >= bound.atLeast;
}
