/**
 * Recomputes the published tables from the open data with the project's own ledger:
 * `npm run verify:open-data -- DIR`. Exits with 1 when a figure differs, with 2 when there is no data.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Comparison } from './compare-with-published.ts';
import { compareWithPublished } from './compare-with-published.ts';
import { PUBLISHED } from './published-table-7.ts';
import { OpenDataError, readOpenData } from './read-open-data.ts';

function giveUp(message: string): never {
  console.error(message);
  process.exit(2);
}

function printTable(comparisons: readonly Comparison[]): void {
  const rows = comparisons.map((each) => [
    each.table,
    `project ${each.project}`,
    `${each.elapsedPercent}%`,
    each.statistic,
    String(Math.round(each.computed * 10_000) / 10_000),
    each.published,
    each.agrees ? 'agrees' : 'DIFFERS',
  ]);
  const titles = ['table', 'data', 'moment', 'figure', 'computed', 'published', ''];
  const widths = titles.map((title, i) =>
    Math.max(title.length, ...rows.map((row) => (row[i] as string).length)),
  );
  for (const row of [titles, ...rows]) {
    console.log(
      row
        .map((cell, i) => cell.padEnd(widths[i] as number))
        .join('  ')
        .trimEnd(),
    );
  }
}

const dir = process.argv[2];
if (dir === undefined) {
  giveUp(
    'Name the folder that holds project-a.csv, project-b.csv and project-c.csv: npm run verify:open-data -- DIR',
  );
}
const projects = [...new Set(PUBLISHED.map(({ project }) => project))];
const files = new Map(projects.map((project) => [project, join(dir, `project-${project}.csv`)]));
const missing = [...files.values()].filter((file) => !existsSync(file));
if (missing.length > 0) giveUp(`The open data is not there. Missing: ${missing.join(', ')}`);

try {
  const rows = new Map(
    [...files].map(([project, file]) => [project, readOpenData(readFileSync(file, 'utf8'), file)]),
  );
  const comparisons = PUBLISHED.flatMap((published) =>
    compareWithPublished(rows.get(published.project) ?? [], published),
  );
  printTable(comparisons);
  const differing = comparisons.filter((each) => !each.agrees).length;
  console.log(
    differing === 0
      ? `All ${comparisons.length} figures agree with the published ones.`
      : `${differing} of ${comparisons.length} figures differ from the published ones.`,
  );
  process.exitCode = differing === 0 ? 0 : 1;
} catch (error) {
  if (!(error instanceof OpenDataError)) throw error;
  giveUp(error.message);
}
