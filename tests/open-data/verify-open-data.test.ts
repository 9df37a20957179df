import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';

let dir: string;

beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'open-data-'));
});

afterEach(() => {
  rmSync(dir, { recursive: true });
});

function verify(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  const command = join(import.meta.dirname, 'verify-open-data.ts');
  return new Promise((resolve) => {
    execFile(process.execPath, [command, ...args], (error, out, err) => {
      resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, err });
    });
  });
}

/** Invented sprints at the moments that the tables ask about. */
function inventedCsv(): string {
  const header =
    'board,sprint,plannedDays,elapsedPercent,startPoints,addedPoints,removedPoints,todoPoints,inProgressPoints,donePoints,members,deliveredPoints';
  const rows = [1, 2, 3].flatMap((sprint) =>
    [0, 30, 50, 80].map((percent) => `900,${sprint},14,${percent},10,0,0,10,0,0,3,${sprint}`),
  );
  return [header, ...rows].join('\n');
}

test('figures that differ from the published ones are shown and make the command fail', async () => {
  for (const project of ['a', 'b', 'c']) writeFileSync(join(dir, `project-${project}.csv`), inventedCsv());
  const { code, out } = await verify(dir);
  expect(code).toBe(1);
  // Three sprints of 10 points that delivered 1, 2 and 3.
  expect(out).toMatch(/^Table 7 +project a +30% +mean +-8 +-9\.05 +DIFFERS$/m);
  expect(out).toMatch(/\d+ of 27 figures differ from the published ones\./);
});

test('a folder without the data, or none, is reported in plain words', async () => {
  const none = await verify(join(dir, 'nowhere'));
  expect(none.code).toBe(2);
  expect(none.err).toMatch(/The open data is not there\. Missing: .*project-a\.csv/);
  const noArgument = await verify();
  expect(noArgument.code).toBe(2);
  expect(noArgument.err).toContain('Name the folder');
});

test('data that cannot be read is reported with its line, without a stack', async () => {
  for (const project of ['a', 'b', 'c'])
    writeFileSync(join(dir, `project-${project}.csv`), 'board,sprint\n1,2\n');
  const { code, err } = await verify(dir);
  expect(code).toBe(2);
  expect(err).toContain('project-a.csv, line 1: missing columns');
  expect(err).not.toContain(' at ');
});
