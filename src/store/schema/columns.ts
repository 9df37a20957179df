/** Column kinds and check expressions that several tables share. Defines no table. */
import type { SQL, SQLWrapper } from 'drizzle-orm';
import { sql } from 'drizzle-orm';
import { date, numeric, pgSchema, timestamp } from 'drizzle-orm/pg-core';

/** Everything of ours lives in this database schema, apart from what else the database holds. */
export const loadline = pgSchema('loadline');

/** Points of one statement, −999.5 to 999.5 with one decimal. */
export function points(name: string) {
  return numeric(name, { precision: 4, scale: 1, mode: 'number' });
}

/** Sums of points over a sprint's cards. */
export function pointsSum(name: string) {
  return numeric(name, { precision: 9, scale: 1, mode: 'number' });
}

export function instant(name: string) {
  return timestamp(name, { withTimezone: true, mode: 'date', precision: 3 });
}

export function day(name: string) {
  return date(name, { mode: 'string' });
}

/** Multiples of 0.5 from 0 to 999.5. */
export function isPoints(column: SQLWrapper): SQL {
  return sql`${column} >= 0 and ${column} <= 999.5 and mod(${column} * 2, 1) = 0`;
}

export function isHalves(column: SQLWrapper): SQL {
  return sql`mod(${column} * 2, 1) = 0`;
}

/** A local time of day, `HH:MM`. */
export function isTimeOfDay(column: SQLWrapper): SQL {
  return sql`${column} ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'`;
}

export function isNotBlank(column: SQLWrapper): SQL {
  return sql`btrim(${column}) <> ''`;
}
