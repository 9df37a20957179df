/** The recipes of DEVELOPERS.md: the files that each names for its example are all that name it, and few enough. */
import { readFileSync } from 'node:fs';
import { glob } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');
const GENERATED = ['src/words/message-arguments.ts'];
const recipes = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8').split('\n### ').slice(1);

/** The files of the numbered steps. */
function filesOf(title: string): string[] {
  const recipe = recipes.find((text) => text.startsWith(`${title}\n`)) ?? '';
  return [...recipe.matchAll(/^\d\. `(src\/[^`]+)`/gm)].map(([, file]) => file as string);
}

async function filesNaming(names: RegExp): Promise<string[]> {
  const found: string[] = [];
  for await (const file of glob('src/**/*.{ts,js}', { cwd: ROOT })) {
    if (!GENERATED.includes(file) && names.test(readFileSync(join(ROOT, file), 'utf8'))) found.push(file);
  }
  return found;
}

const EXAMPLES: [title: string, most: number, names: RegExp][] = [
  [
    'A command with a form',
    5,
    /'baseline'|nameBaseline|[bB]aselineForm|[bB]aselineNamed|BASELINE_FIELDS|import \{[^}]*\bbaseline\b/,
  ],
  ['A kind of post', 4, /'owner-needed'|ownerNeeded/],
  ['A team setting', 5, /reminderAfterMinutes|reminder_after_minutes|reminder-minutes/],
  ['A ratio', 4, /on[- ]?scale[- ]?(share|cards)/i],
];

it.each(EXAMPLES)(
  '%s takes no other source files than its recipe names, at most %i',
  async (title, most, names) => {
    const files = filesOf(title);
    expect(files.length).toBeGreaterThan(0);
    expect(files.length).toBeLessThanOrEqual(most);
    expect((await filesNaming(names)).sort()).toEqual(files.sort());
  },
);
