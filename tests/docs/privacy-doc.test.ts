/** What docs/privacy.md says is stored about people is what the database can store. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { is } from 'drizzle-orm';
import { getTableConfig, PgTable } from 'drizzle-orm/pg-core';
import { describe, expect, test } from 'vitest';
import {
  DAYS_UNTIL_FINAL,
  DAYS_WITHOUT_CHANNEL,
  MONTHS_IDLE,
  MONTHS_KEPT_AFTER_END,
} from '../../src/app/privacy/promised-times.ts';
import { SETTINGS } from '../../src/app/team/settings.ts';
import * as schema from '../../src/store/schema.ts';
import { say } from '../../src/words/say.ts';
import { tableBelow } from './markdown-tables.ts';

const ROOT = join(import.meta.dirname, '../..');
const page = readFileSync(join(ROOT, 'docs/privacy.md'), 'utf8');

const tables = Object.values(schema).flatMap((part: unknown) => (is(part, PgTable) ? [part] : []));
const columns = tables.flatMap((table) => {
  const { name, columns: own } = getTableConfig(table);
  return own.map((column) => `${name}.${column.name}`);
});
const personal = tableBelow(page, 'Columns with personal data').map((row) => String(row.column));
const others = tableBelow(page, 'Columns without').flatMap((row) =>
  String(row.columns)
    .split(', ')
    .map((column) => `${row.table}.${column}`),
);

/** Columns whose names say that they hold an id of a person, or words that a person typed. */
const TELLING =
  /user|member_id|_by$|owner_id|note|reason|\.draft$|(?:members|teams|sprints)\.name|title|goal|answered_at/;

test('each page and message that says who sees answers says so of a single owner’s numbers', () => {
  const readme = readFileSync(join(ROOT, 'README.md'), 'utf8');
  const said = [say('role-given-stored'), say('privacy-who-sees-it'), say('help-privacy')];
  for (const text of [page, readme, ...said]) expect(text).toMatch(/owns? alone/);
});

describe('docs/privacy.md', () => {
  test('has every column of every table in one of its two lists, once, and no other', () => {
    expect(tables.length).toBeGreaterThan(12);
    expect([...personal, ...others].sort()).toEqual([...columns].sort());
  });

  test('counts none among those without personal data whose name points to a person', () => {
    const bots = ['installations.bot_user_id'];
    expect(others.filter((column) => TELLING.test(column) && !bots.includes(column))).toEqual([]);
    expect(columns.filter((column) => TELLING.test(column)).length).toBeGreaterThan(15);
  });

  test('says of each column with personal data what, why, and what becomes of it', () => {
    for (const row of tableBelow(page, 'Columns with personal data')) {
      for (const cell of Object.values(row)) expect([row.column, cell]).not.toContain('');
    }
  });

  test('names the setting, the default and the commands as they are', () => {
    expect(page).toContain(`A new team has ${SETTINGS.retentionMonths.usual}:`);
    const { scripts } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
      scripts: Record<string, string>;
    };
    const named = [...page.matchAll(/npm run ([\w:-]+)/g)].map(([, name]) => name as string);
    expect(new Set(named)).toEqual(new Set(['erase', 'forget']));
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });

  test('says after how long what nobody uses any more goes, as the program does it', () => {
    const rows = tableBelow(page, 'What goes when');
    const cells = rows.flatMap((row) => Object.values(row)).join('\n');
    expect(cells).toContain(`${DAYS_UNTIL_FINAL} days`);
    expect(cells).toContain(`${DAYS_WITHOUT_CHANNEL} days`);
    expect(cells).toContain(`${MONTHS_IDLE} months`);
    expect(cells).toContain(`${MONTHS_KEPT_AFTER_END} where that is without end`);
  });

  test('defers to local law and works agreements', () => {
    expect(page).toMatch(/local law and\s+works agreements go before it/);
  });
});
