/**
 * Statements whose text is put together once, for what is asked all the time. Drizzle builds the text anew for each run
 * and looks up how to read each cell of each row; of an answer's time that was a sixth.
 */
import type { GetColumnData } from 'drizzle-orm';
import { Column, is, Placeholder, SQL, sql } from 'drizzle-orm';
import type { PgColumn } from 'drizzle-orm/pg-core';
import { PgDialect } from 'drizzle-orm/pg-core';
import type { SqlSession } from './sql-session.ts';

type Columns = Readonly<Record<string, PgColumn | SQL>>;
type RowOf<Of extends Columns> = {
  -readonly [Name in keyof Of]: Of[Name] extends PgColumn
    ? GetColumnData<Of[Name]>
    : Of[Name] extends SQL<infer Value>
      ? Value
      : never;
};
type Given = Readonly<Record<string, string | number | null>>;

export type FrozenStatement<Of extends Columns> = (session: SqlSession, given: Given) => Promise<RowOf<Of>[]>;

/**
 * @param columns by the names that the rows shall have; an expression is read as it says with `mapWith`
 * @param rest from `from` on; what differs from run to run stands in it as `sql.placeholder(name)`
 */
export function frozenSelect<Of extends Columns>(columns: Of, rest: SQL): FrozenStatement<Of> {
  return frozen(columns, (list) => sql`select ${list} ${rest}`);
}

/** @param change an INSERT, UPDATE or DELETE up to its `returning`; else as for a SELECT */
export function frozenChange<Of extends Columns>(columns: Of, change: SQL): FrozenStatement<Of> {
  return frozen(columns, (list) => sql`${change} returning ${list}`);
}

function frozen<Of extends Columns>(columns: Of, statementWith: (list: SQL) => SQL): FrozenStatement<Of> {
  const names = Object.entries(columns).map(([name, column]) => sql`${column} as ${sql.identifier(name)}`);
  const { sql: text, params } = new PgDialect().sqlToQuery(statementWith(sql.join(names, sql`, `)));
  const pieces = text.split(/\$\d+/).map((piece) => sql.raw(piece));
  const wanted = params.map((param) => {
    if (param instanceof Placeholder) return param.name as string;
    throw new TypeError('Only placeholders may differ from run to run.');
  });
  const readers = Object.entries(columns).flatMap(([name, column]) => {
    const read = readerOf(column);
    return read ? [{ name, read }] : [];
  });
  return async (session, given) => {
    const statement = sql.join(
      pieces.flatMap((piece, i) => (i === 0 ? [piece] : [sql`${given[wanted[i - 1] as string]}`, piece])),
    );
    const rows = rowsOf(await session.execute(statement));
    for (const row of rows) {
      for (const { name, read } of readers) {
        if (row[name] !== null) row[name] = read(row[name]);
      }
    }
    return rows as RowOf<Of>[];
  };
}

/** Undefined: the row shall have what the driver gives. */
function readerOf(column: PgColumn | SQL): ((value: unknown) => unknown) | undefined {
  const decoder = is(column, SQL) ? (column as unknown as { decoder: Decoder }).decoder : column;
  if (decoder.mapFromDriverValue === Column.prototype.mapFromDriverValue) return undefined;
  return (value) => decoder.mapFromDriverValue(value);
}

type Decoder = Pick<PgColumn, 'mapFromDriverValue'>;

/** The two drivers give their rows in different wrappings. */
function rowsOf(result: unknown): Record<string, unknown>[] {
  return Array.isArray(result) ? result : (result as { rows: Record<string, unknown>[] }).rows;
}
