/** What docs/import-export.md says is what the code does: columns, limits and the example. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { MOST_BODIES, MOST_DONE_BODIES } from '../../src/app/bodies/body-of-work.ts';
import { CSV_COLUMNS, fileNameOf, IMPORTED_KINDS } from '../../src/app/csv/csv-columns.ts';
import { MOST_LINES } from '../../src/app/csv/csv-rows.ts';
import { escapeFormula } from '../../src/app/csv/write-csv.ts';
import { ImportProblems } from '../../src/app/import/import-problem.ts';
import { readImport } from '../../src/app/import/read-import.ts';
import { MOST_SPRINTS } from '../../src/app/import/sprints-to-import.ts';
import { MAX_CARDS } from '../../src/app/planning/card-paste.ts';
import { DOWNLOAD_BYTES_MAX } from '../../src/slack/files/download-file.ts';
import { RATIO_IDS } from '../../src/sprint/sprint-ratios.ts';
import { tableBelow } from './markdown-tables.ts';

const ROOT = join(import.meta.dirname, '../..');
const PAGE = readFileSync(join(ROOT, 'docs/import-export.md'), 'utf8');

describe('the page on import and export', () => {
  test.each([...IMPORTED_KINDS, 'experiments', 'values'] as const)(
    'lists every column of %s in order, with its use and its other names',
    (kind) => {
      const rows = tableBelow(PAGE, fileNameOf(kind));
      expect(rows).toEqual(
        CSV_COLUMNS[kind].map(({ name, use, holds, aliases }) => ({
          column: name,
          use,
          holds: holds.replaceAll('`', ''),
          'also read': aliases.join(', '),
        })),
      );
    },
  );

  test('has a column for every ratio', () => {
    const ratios = CSV_COLUMNS.sprints.flatMap(({ ratio }) => ratio ?? []);
    expect(ratios.toSorted()).toEqual(RATIO_IDS.toSorted());
  });

  test('shows an example that is read without a complaint', () => {
    const text = /```csv\n([\s\S]*?)```/.exec(PAGE)?.[1] as string;
    const problems = new ImportProblems();
    const { sprints } = readImport([{ fileName: 'example', text }], problems);
    expect(problems.inOrder([])).toEqual([]);
    expect(sprints.map(({ name, commitmentPoints }) => [name, commitmentPoints])).toEqual([
      ['Harbour 1', 20],
      ['Harbour 2', 21.5],
    ]);
  });

  test('names the limits that the code keeps', () => {
    const [, sprints, cards, lines, megabytes, toDo, done] =
      /At once: ([\d,]+) sprints, (\d+) cards a sprint, ([\d,]+) lines, files of (\d+) MB\. A team keeps (\d+) bodies of work to do and the (\d+)\s/.exec(
        PAGE,
      ) ?? [];
    const number = (text: string | undefined): number => Number(text?.replaceAll(',', ''));
    expect([sprints, cards, lines, toDo, done].map(number)).toEqual([
      MOST_SPRINTS,
      MAX_CARDS,
      MOST_LINES,
      MOST_BODIES,
      MOST_DONE_BODIES,
    ]);
    expect(number(megabytes) * 1_000_000).toBe(DOWNLOAD_BYTES_MAX);
  });

  test('names what text is escapeFormula', () => {
    const named = /it begins with ([^)]+) gets|begins with ([^)]+)\)/.exec(PAGE)?.[0] ?? '';
    for (const sign of ['=', '+', '-', '@']) {
      expect(named).toContain(sign);
      expect(escapeFormula(`${sign}1`)).toBe(`'${sign}1`);
    }
  });

  test.each(['README.md', 'docs/operating.md'])('is linked from %s', (file) => {
    expect(readFileSync(join(ROOT, file), 'utf8')).toContain('import-export.md');
  });
});
