/** The table of docs/platform.md: complete, and true about the tests that it names. */
import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const ROOT = new URL('../../', import.meta.url);
const BEHAVIOURS = 80;
const STATES = ['reproduced', 'not touched', 'not reproduced', 'not confirmed'];

const rows = readFileSync(new URL('docs/platform.md', ROOT), 'utf8')
  .split('\n')
  .filter((line) => /^\| \d+ \|/.test(line))
  .map((line) => {
    const [number, behaviour, state, proof = ''] = line
      .split('|')
      .slice(1)
      .map((cell) => cell.trim());
    const tests = [...proof.matchAll(/`(tests\/[^:`]+): ([^`]+)`/g)].map(([, path = '', name = '']) => ({
      path,
      name,
    }));
    return { number: Number(number), behaviour, state: state ?? '', proof, tests };
  });

test('every behaviour has its number once, in order, and one of the known states', () => {
  expect(rows.map(({ number }) => number)).toEqual(Array.from({ length: BEHAVIOURS }, (_, i) => i + 1));
  for (const { behaviour, state } of rows) {
    expect(behaviour).not.toBe('');
    expect(STATES).toContain(state);
  }
});

test('what is reproduced names a test, and what is not says why', () => {
  for (const { number, state, proof, tests } of rows)
    if (state === 'reproduced') expect([number, tests.length]).not.toEqual([number, 0]);
    else expect([number, proof]).not.toEqual([number, '']);
});

test('every test that is named exists', () => {
  const named = rows.flatMap(({ tests }) => tests);
  expect(named.length).toBeGreaterThan(0);
  const missing = named.filter(({ path, name }) => {
    const file = new URL(path, ROOT);
    return !existsSync(file) || !readFileSync(file, 'utf8').includes(name);
  });
  expect(missing).toEqual([]);
});
