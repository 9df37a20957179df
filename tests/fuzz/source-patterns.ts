/** Every regular expression of the product, collected from its source by a parser: none is listed by hand. */
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'oxc-parser';

const SRC = join(import.meta.dirname, '../../src');

export interface SourcePattern {
  /** `app/planning/card-paste.ts /pattern/flags`: it stays the same when lines move. */
  readonly name: string;
  /** Below `src/`. */
  readonly file: string;
  readonly source: string;
  readonly flags: string;
}

interface SourcePatterns {
  readonly literals: readonly SourcePattern[];
  /** Where one is put together from parts, as `app/planning/card-paste.ts`; a file as often as it does so. */
  readonly composed: readonly string[];
}

interface Node {
  readonly type?: string;
  readonly regex?: { readonly pattern: string; readonly flags: string };
  readonly callee?: { readonly name?: string };
}

export function sourcePatterns(): SourcePatterns {
  const files = globSync('**/*.ts', { cwd: SRC }).sort();
  const found = files.map((file) => patternsIn(file, readFileSync(join(SRC, file), 'utf8')));
  return {
    literals: found.flatMap(({ literals }) => literals),
    composed: found.flatMap(({ composed }) => composed),
  };
}

export function patternsIn(file: string, text: string): SourcePatterns {
  const literals: SourcePattern[] = [];
  const composed: string[] = [];
  const { program } = parseSync(file, text);
  JSON.stringify(program, (_key, value: unknown) => {
    const node = (value ?? {}) as Node;
    if (node.regex) {
      const { pattern, flags } = node.regex;
      literals.push({ name: `${file} /${pattern}/${flags}`, file, source: pattern, flags });
    }
    const isCall = node.type === 'NewExpression' || node.type === 'CallExpression';
    if (isCall && node.callee?.name === 'RegExp') composed.push(file);
    // Literals of regular expressions and big numbers are values that JSON has no words for.
    return typeof value === 'bigint' || value instanceof RegExp ? undefined : value;
  });
  return { literals, composed };
}
