/** What must hold of the message files, which the running bot does not check. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { glob } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { messageFiles } from '../../src/words/language.ts';
import { messageArguments, messageArgumentsSource } from './message-arguments.ts';

const ROOT = join(import.meta.dirname, '../..');
const files = messageFiles('en-GB');

describe('the English message files', () => {
  test('are in step with the types that were written from them', () => {
    const written = readFileSync(join(ROOT, 'src/words/message-arguments.ts'), 'utf8');
    const biome = join(ROOT, 'node_modules/.bin/biome');
    const fresh = execFileSync(biome, ['format', '--stdin-file-path=message-arguments.ts'], {
      cwd: ROOT,
      input: messageArgumentsSource(files),
      encoding: 'utf8',
    });
    expect(written).toBe(fresh);
  });

  test('hold no message that no code says', async () => {
    let source = '';
    for await (const file of glob('src/**/*.ts', { cwd: ROOT, exclude: ['src/words/message-arguments.ts'] }))
      source += readFileSync(join(ROOT, file), 'utf8');
    const messages = [...files.values()].join('\n');
    // A code is said by a prefix: `sayCode('problem', …)`, or `verdict-${code}`.
    const prefixes = [...source.matchAll(/sayCode\(\s*'([a-z-]+)'|`([a-z-]+-)\$\{/g)].map(
      ([, prefix, start]) => (prefix === undefined ? (start as string) : `${prefix}-`),
    );
    const unsaid = [...messageArguments(files).keys()].filter(
      (id) =>
        !source.includes(`'${id}'`) &&
        !messages.includes(`{ ${id} }`) &&
        !prefixes.some((prefix) => id.startsWith(prefix)),
    );
    expect(unsaid).toEqual([]);
  });
});

describe('reading message files', () => {
  const read = (source: string) =>
    Object.fromEntries(
      [...messageArguments(new Map([['a.ftl', source]]))].map(([id, args]) => [id, Object.fromEntries(args)]),
    );

  test('takes what a message takes from how it uses it', () => {
    expect(
      read(
        'a = { $who } has { $n ->\n    [one] one\n   *[other] { NUMBER($n) }\n }\nb = { $fit ->\n    [over] o\n   *[under] u\n }{ a }',
      ),
    ).toEqual({
      a: { who: 'string', n: 'number' },
      b: { fit: "'over' | 'under'", who: 'string', n: 'number' },
    });
  });

  test.each([
    ['a syntax error', 'a = { $n', /Expected token/],
    ['a line that the running bot would cut off', 'a = one\n    *bold* two', /Expected/],
    ['a line that would become an attribute', 'a = one\n    .x = two', /attribute/],
    ['two messages of one name', 'a = 1\na = 2', /second message a/],
    ['an unknown function', 'a = { NUMBR($n) }', /no function NUMBR/],
    ['an unknown message', 'a = { b }', /refers to b/],
    ['a circle', 'a = { b }\nb = { a }', /itself/],
    ['one argument of two types', 'a = { NUMBER($n) }{ LIST($n) }', /is used as number and as/],
    ['codes that could be plurals', 'a = { $n ->\n    [few] a\n   *[bad] b\n }', /mixes/],
    ['a blank at the end of a line', 'a = one \n', /blank/],
  ])('refuses %s', (_, source, why) => {
    expect(() => read(source)).toThrow(why);
  });
});

test('likely alone is what the date with a chance of 50% is called, and nothing else is', () => {
  const lines = [...files.values()]
    .join('\n')
    .split('\n')
    .filter((line) => !line.startsWith('#') && /\b(?<!how |as )(?:un)?likely\b/i.test(line));
  expect(lines.length).toBeGreaterThan(0);
  for (const line of lines) expect(line).toMatch(/\$likely\b|\[likely\]|likely date/);
});
