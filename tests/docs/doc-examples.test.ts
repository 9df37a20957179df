/** Runs the `@example` lines in the doc comments of the core. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const CORE = join(import.meta.dirname, '../../src/sprint');

const files = readdirSync(CORE, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .toSorted();

const examples = files.flatMap((file) =>
  [...readFileSync(join(CORE, file), 'utf8').matchAll(/^ \* @example (.+)$/gm)].map(([, code]) => ({
    file,
    code: code as string,
  })),
);

/** Everything that the core exports, by name. */
async function coreExports(): Promise<Record<string, unknown>> {
  const modules = await Promise.all(files.map((file) => import(join(CORE, file))));
  return Object.assign({}, ...modules);
}

describe('an example in a doc comment is true', () => {
  test.each(examples)('$file: $code', async ({ code }) => {
    const [expression, value, ...more] = code.split(' === ');
    expect(more).toEqual([]);
    const core = await coreExports();
    const evaluate = (source: string | undefined): unknown =>
      new Function(...Object.keys(core), `return (${source});`)(...Object.values(core));
    expect(evaluate(expression)).toStrictEqual(evaluate(value));
  });
});

test('every ratio has an example', () => {
  const ratios = files.filter((file) => file.startsWith('ratios/'));
  expect(ratios).toHaveLength(8);
  for (const file of ratios)
    expect(
      examples.filter((example) => example.file === file),
      file,
    ).not.toEqual([]);
});
