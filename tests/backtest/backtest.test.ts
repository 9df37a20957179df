import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { inventedCsv } from './invented-sprints.ts';

let dir: string;

beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'backtest-'));
});

afterEach(() => {
  rmSync(dir, { recursive: true });
});

function backtest(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  const command = join(import.meta.dirname, 'backtest.ts');
  return new Promise((resolve) => {
    execFile(process.execPath, [command, ...args], (error, out, err) => {
      resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, err });
    });
  });
}

function fileWith(name: string, text: string): string {
  const file = join(dir, name);
  writeFileSync(file, text);
  return file;
}

test('--distinct counts a team once that several boards show', async () => {
  const once = fileWith('one.csv', inventedCsv(70));
  const [header = '', ...rows] = inventedCsv(70).trimEnd().split('\n');
  const twin = rows.map((row) => row.replace(/^\d+/, (board) => String(Number(board) + 1_000)));
  const both = rows.flatMap((row, i) => [row, twin[i] as string]);
  const twice = fileWith('two.csv', [header, ...both, ''].join('\n'));
  const [plain, distinct] = [await backtest(once), await backtest(twice, '--distinct')];
  expect(distinct.err).toBe('');
  expect(distinct.out.replaceAll('two.csv', 'one.csv')).toBe(plain.out);
  expect((await backtest(twice)).out.replaceAll('two.csv', 'one.csv')).not.toBe(plain.out);
});

test('--json prints one document with the projection of each file and moment and the release dates of each board', async () => {
  const files = [fileWith('one.csv', inventedCsv(70)), fileWith('two.csv', inventedCsv(60))];
  const { code, out } = await backtest(...files, '--json');
  expect(code).toBe(0);
  const report = JSON.parse(out) as {
    projection: Record<string, unknown>[];
    loneTeam: Record<string, unknown>[];
    chances: Record<string, unknown>[];
    chancesByFile: Record<string, unknown>[];
    firstDays: Record<string, unknown>[];
    planning: Record<string, unknown>[];
    planningByFile: Record<string, unknown>[];
    range: Record<string, unknown>[];
    release: Record<string, unknown>[];
    joint: Record<string, unknown>[];
  };
  expect(Object.keys(report)).toEqual([
    'projection',
    'loneTeam',
    'imported',
    'chances',
    'chancesByFile',
    'firstDays',
    'pulledIn',
    'planning',
    'planningByFile',
    'range',
    'release',
    'joint',
  ]);
  expect(report.range.map(({ file }) => file)).toEqual(files);
  expect(report.range[0]).toMatchObject({ asked: 64, told: expect.any(Number), kept: expect.any(Number) });
  expect(
    report.projection.map(({ file, set, elapsedPercent, scored }) => [file, set, elapsedPercent, scored]),
  ).toEqual(
    files.flatMap((file, i) =>
      ['all', 'with-cards'].flatMap((set) =>
        [0, 30, 50, 80].map((percent) => [file, set, percent, i === 0 ? 30 : 20]),
      ),
    ),
  );
  expect(Object.keys(report.projection[0] as object).sort()).toEqual(
    [
      'file',
      'set',
      'elapsedPercent',
      'scored',
      'meanAbsoluteError',
      'errorShare',
      'errorShareOfFinishShare',
      'coverage50',
      'coverage80',
      'width50',
      'width80',
      'crps',
    ].sort(),
  );
  expect(
    report.loneTeam.map(({ file, history, elapsedPercent }) => `${file} ${history} ${elapsedPercent}`),
  ).toEqual(
    files.flatMap((file) =>
      [0, 30, 50, 80].flatMap((percent) => [`${file} 6-11 ${percent}`, `${file} 12-24 ${percent}`]),
    ),
  );
  expect(Object.keys(report.loneTeam[0] as object).sort()).toEqual(
    ['file', 'history', 'elapsedPercent', 'scored', 'errorShareOfFinishShare', 'coverage80'].sort(),
  );
  expect(new Set(report.chancesByFile.map(({ file }) => file))).toEqual(new Set(files));
  expect(Object.keys(report.chances[0] as object)).toEqual(['told', 'came', 'cases']);
  expect(Object.keys(report.chancesByFile[0] as object)).toEqual(['file', 'told', 'came', 'cases']);
  expect(report.firstDays.map(({ file, elapsedPercent }) => [file, elapsedPercent])).toEqual(
    files.flatMap((file) => [0, 30].map((percent) => [file, percent])),
  );
  expect(Object.keys(report.planning[0] as object)).toEqual(['chance', 'told', 'came', 'cases']);
  expect(new Set(report.planningByFile.map(({ file }) => file))).toEqual(new Set(files));
  expect(new Set(report.release.map(({ file, board }) => `${file} ${board}`)).size).toBe(4);
  expect(Object.keys(report.release[0] as object).sort()).toEqual(
    ['file', 'board', 'backlogSprints', 'cases', 'held15', 'held50', 'held85'].sort(),
  );
  for (const row of [
    ...report.projection,
    ...report.loneTeam,
    ...report.chances,
    ...report.chancesByFile,
    ...report.firstDays,
    ...report.planning,
    ...report.planningByFile,
    ...report.range,
    ...report.release,
    ...report.joint,
  ]) {
    for (const [name, value] of Object.entries(row)) {
      if (typeof value !== 'string') expect(Number.isFinite(value), name).toBe(true);
    }
  }
});

test('without --json it prints tables, with the boards of a file summed up', async () => {
  const { out } = await backtest(fileWith('one.csv', inventedCsv(70)));
  expect(out).toMatch(/one\.csv +with-cards +80% +30 /);
  expect(out).toMatch(/one\.csv +900 +3 /);
  expect(out).toMatch(/one\.csv +all +3 /);
});

test.each<[string, (dir: string) => string[], RegExp]>([
  ['no file', () => [], /Name the files/],
  ['a file that is not there', (at) => [join(at, 'none.csv')], /none\.csv cannot be read/],
  ['an option that does not exist', () => ['--jason'], /--jason/],
])('%s is reported in plain words', async (_, args, words) => {
  const { code, err } = await backtest(...args(dir));
  expect(code).toBe(2);
  expect(err).toMatch(words);
  expect(err).not.toContain('    at ');
});

test('a file that is malformed is reported with its line', async () => {
  const { code, err } = await backtest(fileWith('bad.csv', `${inventedCsv(2)}\n1,2,3`));
  expect(code).toBe(2);
  expect(err).toContain('line 10');
});
