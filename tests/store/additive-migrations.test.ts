/**
 * While an upgrade is under way, processes of the version before work on the new schema. So a migration after
 * the first release only adds: it takes nothing away that the version before reads, and demands nothing that
 * it does not write. (What it forbids can be done in two releases: stop using it, then remove it.)
 */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { MIGRATIONS } from '../../src/store/migrate.ts';
import { FIRST_RELEASE_MIGRATIONS } from './first-release-rows.ts';

const FORBIDDEN: readonly [what: string, pattern: RegExp][] = [
  ['drops a table, a column, a schema or a type', /\bdrop\s+(?:table|column|schema|type|sequence|view)\b/i],
  ['renames something', /\brename\s+(?:to|column|constraint)\b/i],
  ['changes the type of a column', /\balter\s+column\s+\S+\s+(?:set\s+data\s+)?type\b/i],
  ['makes a column required', /\balter\s+column\s+\S+\s+set\s+not\s+null\b/i],
  ['takes a default away', /\balter\s+column\s+\S+\s+drop\s+default\b/i],
  ['empties a table', /^\s*(?:truncate|delete\s+from)\b/i],
];

/** What a migration does that the version before would not survive. */
function harmsIn(sql: string): string[] {
  const statements = sql
    .replace(/--(?!> statement-breakpoint).*$/gm, '')
    .split('--> statement-breakpoint')
    .flatMap((part) => part.split(/;\s*$/m));
  return statements.flatMap((statement) => {
    const harms = FORBIDDEN.filter(([, pattern]) => pattern.test(statement)).map(([what]) => what);
    const addsRequired =
      /\badd\s+column\b/i.test(statement) &&
      /\bnot\s+null\b/i.test(statement) &&
      !/\b(?:default|generated)\b/i.test(statement);
    return addsRequired ? [...harms, 'adds a required column without a default'] : harms;
  });
}

const later = (await readdir(MIGRATIONS.migrationsFolder))
  .filter((file) => file.endsWith('.sql'))
  .toSorted()
  .slice(FIRST_RELEASE_MIGRATIONS);

describe('a migration after the first release', () => {
  it('is looked at: there is one', () => {
    expect(later.length).toBeGreaterThan(0);
  });

  it.each(later)('%s only adds', async (file) => {
    expect(harmsIn(await readFile(join(MIGRATIONS.migrationsFolder, file), 'utf8'))).toEqual([]);
  });

  it.each([
    ['ALTER TABLE "loadline"."posts" DROP COLUMN "reason";', 'drops'],
    ['DROP TABLE "loadline"."plan_drafts";', 'drops'],
    ['ALTER TABLE "loadline"."posts" RENAME COLUMN "kind" TO "sort";', 'renames'],
    ['ALTER TABLE "loadline"."posts" ALTER COLUMN "reason" SET DATA TYPE integer;', 'type'],
    ['ALTER TABLE "loadline"."posts" ALTER COLUMN "reason" SET NOT NULL;', 'required'],
    ['ALTER TABLE "loadline"."posts" ADD COLUMN "x" text NOT NULL;', 'without a default'],
    ['DELETE FROM loadline.posts;', 'empties'],
  ])('is refused when it would break the version before: %s', (sql, what) => {
    expect(harmsIn(`-- a comment\n${sql}--> statement-breakpoint`)).toEqual([expect.stringContaining(what)]);
  });

  it('may add a column that fills itself, and a table with required columns', () => {
    expect(harmsIn('ALTER TABLE "x" ADD COLUMN "y" boolean DEFAULT false NOT NULL;')).toEqual([]);
    expect(harmsIn('CREATE TABLE "x" ("y" text NOT NULL);')).toEqual([]);
  });
});
