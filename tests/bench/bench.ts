/**
 * Measures and prints one table: `npm run bench -- [NAME…] [--json] [--requests N]`. Every value is shown beside a baseline from the
 * same run. Exits with 1 when a bound is exceeded, with 2 when it is not told what to do.
 */
import { parseArgs } from 'node:util';
import { answersBench } from './answers-bench.ts';
import type { Bench, BenchRow, BenchSize } from './bench-row.ts';
import { isWithin } from './bench-row.ts';
import { benchTable } from './bench-table.ts';
import { capacityBench } from './capacity-bench.ts';
import { forecastBench } from './forecast-bench.ts';
import { largeMorningBench } from './large-morning-bench.ts';
import { longHistoryBench } from './long-history-bench.ts';
import { loopBench } from './loop-bench.ts';
import { messagesBench } from './messages-bench.ts';
import { mixedBench } from './mixed-bench.ts';
import { morningBench } from './morning-bench.ts';
import { ratiosBench } from './ratios-bench.ts';
import { startBench } from './start-bench.ts';
import { statusBench } from './status-bench.ts';
import { statusStatisticsBench } from './status-statistics-bench.ts';

const BENCHES: readonly Bench[] = [
  forecastBench,
  statusStatisticsBench,
  ratiosBench,
  startBench,
  answersBench,
  capacityBench,
  statusBench,
  loopBench,
  longHistoryBench,
  mixedBench,
  messagesBench,
  morningBench,
  largeMorningBench,
];

function readArguments(): { chosen: readonly Bench[]; json: boolean; size: BenchSize } {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { json: { type: 'boolean', default: false }, requests: { type: 'string' } },
  });
  const names = BENCHES.map(({ name }) => name);
  const unknown = positionals.filter((name) => !names.includes(name));
  if (unknown.length > 0)
    throw new Error(`There is no bench ${unknown.join(', ')}; there are ${names.join(', ')}.`);
  const chosen =
    positionals.length === 0 ? BENCHES : BENCHES.filter(({ name }) => positionals.includes(name));
  const requests = values.requests === undefined ? undefined : Number(values.requests);
  if (requests !== undefined && !(requests > 0)) throw new Error('How many requests is a number above 0.');
  return { chosen, json: values.json, size: { requests } };
}

async function main(): Promise<void> {
  const { chosen, json, size } = readArguments();
  const rows: BenchRow[] = [];
  for (const bench of chosen) {
    console.error(`${bench.name}: about ${bench.takesSeconds} s`);
    rows.push(...(await bench.run(size)));
  }
  console.log(
    json
      ? JSON.stringify({ rows: rows.map((row) => ({ ...row, within: isWithin(row) })) }, undefined, 2)
      : benchTable(rows),
  );
  if (!rows.every(isWithin)) process.exitCode = 1;
}

await main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 2;
});
