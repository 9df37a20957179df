/** Runs the `@example` lines in the doc comments of the core and of the statistics. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { RATIO_IDS } from '../../src/sprint/sprint-ratios.ts';

const SRC = join(import.meta.dirname, '../../src');

const files = ['sprint', 'forecast']
  .flatMap((room) =>
    readdirSync(join(SRC, room), { recursive: true, encoding: 'utf8' }).map((name) => `${room}/${name}`),
  )
  .filter((name) => name.endsWith('.ts'))
  .toSorted();

const examples = files.flatMap((file) =>
  [...readFileSync(join(SRC, file), 'utf8').matchAll(/^ +\* @example (.+)$/gm)].map(([, code]) => ({
    file,
    code: code as string,
  })),
);

/** Everything that these files export, by name. */
async function allExports(): Promise<Record<string, unknown>> {
  const modules = await Promise.all(files.map((file) => import(join(SRC, file))));
  const names = modules.flatMap((module) => Object.keys(module));
  const twice = names.filter((name, i) => names.indexOf(name) !== i);
  if (twice.length > 0) throw new Error(`An example could mean two things by ${twice.join(', ')}.`);
  return Object.assign({}, ...modules);
}

describe('an example in a doc comment is true', () => {
  test.each(examples)('$file: $code', async ({ code }) => {
    const [expression, value, ...more] = code.split(' === ');
    expect(more).toEqual([]);
    const known = await allExports();
    const evaluate = (source: string | undefined): unknown =>
      new Function(...Object.keys(known), `return (${source});`)(...Object.values(known));
    expect(evaluate(expression)).toStrictEqual(evaluate(value));
  });
});

test('every ratio has an example', () => {
  for (const id of RATIO_IDS) {
    expect(
      examples.filter(({ code }) => code.startsWith(`ratioOfSums('${id}'`)),
      id,
    ).toHaveLength(1);
  }
});
