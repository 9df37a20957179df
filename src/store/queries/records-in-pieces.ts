/**
 * Counts and reads records of which there may be tens of thousands, a piece at a time: the embedded database holds everybody
 * up through each of its statements, and to sort or to sum up all of them in one takes it a tenth of a second. A cursor gives
 * them as it comes to them, without an order; they are put in order here. Few of them take one statement.
 */
import { type SQL, sql } from 'drizzle-orm';
import type { PersonalRecord, PersonalSum } from '../../app/privacy/personal-data.ts';
import type { SqlSession } from './sql-session.ts';

/** A statement that reads records, not run yet: with the columns `of_team` and `of_day`. */
export interface PersonalSelect {
  /** Where there may be many: their place among those of one day, as `inOrder`. */
  readonly _: { readonly selectedFields: Readonly<Record<string, unknown>> };
  getSQL(): SQL;
}

/** The embedded database takes 10 to 25 ms for as many. */
const MOST_A_PIECE = 1_000;

type Sum = Omit<PersonalSum, 'kind'>;

export async function sumInPieces(session: SqlSession, select: PersonalSelect): Promise<Sum> {
  const [sum] = await rowsOf<{ count: number; first: string | null; last: string | null; teams: string[] }>(
    session,
    sql`select count(*)::integer as count, min(left(of_day, 10)) as first, max(left(of_day, 10)) as last,
        coalesce(array_agg(distinct of_team) filter (where of_team is not null), '{}') as teams
      from (${select.getSQL()} limit ${MOST_A_PIECE + 1}) as records`,
  );
  if (!sum) throw new Error('the database gave no row');
  if (sum.count <= MOST_A_PIECE) {
    return {
      count: sum.count,
      from: sum.first ?? undefined,
      to: sum.last ?? undefined,
      teamNames: sum.teams,
    };
  }
  let [count, from, to]: [number, string | undefined, string | undefined] = [0, undefined, undefined];
  const teams = new Set<string>();
  type Dated = { readonly of_team: string | null; readonly of_day: string | null };
  const dated = sql`select of_team, left(of_day, 10) as of_day from (${select.getSQL()}) as records`;
  await inPieces<Dated>(session, 'personal_days', dated, (some) => {
    count += some.length;
    for (const { of_team: team, of_day: day } of some) {
      if (team !== null) teams.add(team);
      if (day === null) continue;
      if (from === undefined || day < from) from = day;
      if (to === undefined || day > to) to = day;
    }
  });
  return { count, from, to, teamNames: [...teams] };
}

interface AsJson {
  readonly record: PersonalRecord & { readonly inOrder?: number };
}

interface Placed {
  readonly order: number;
  readonly record: PersonalRecord;
}

/** In order of their days, and of `inOrder` within a day; those without either as the statement has them. */
export async function recordsInPieces(
  session: SqlSession,
  select: PersonalSelect,
): Promise<PersonalRecord[]> {
  const names = sql.join(
    Object.keys(select._.selectedFields).map((name) => sql.identifier(name)),
    sql`, `,
  );
  const asJson = (query: SQL) => sql`select to_json(r) as record from (${query}) as r(${names})`;
  const few = await rowsOf<AsJson>(session, asJson(sql`${select.getSQL()} limit ${MOST_A_PIECE + 1}`));
  const placed: Placed[] = [];
  const take = (some: readonly AsJson[]): void => {
    for (const { record } of some) {
      const { inOrder: order = 0, ...rest } = record;
      placed.push({ order, record: rest as PersonalRecord });
    }
  };
  if (few.length <= MOST_A_PIECE) take(few);
  else await inPieces(session, 'personal_records', asJson(select.getSQL()), take);
  return placed.sort(byDay).map(({ record }) => record);
}

function byDay({ order, record: { on } }: Placed, other: Placed): number {
  const otherOn = other.record.on;
  if (on === otherOn) return order - other.order;
  if (on === null || otherOn === null) return on === null ? 1 : -1;
  return on < otherOn ? -1 : 1;
}

/** One after the other: a cursor of a name is there once, and only within a transaction. */
async function inPieces<Row>(
  session: SqlSession,
  name: string,
  query: SQL,
  take: (some: readonly Row[]) => void,
): Promise<void> {
  const cursor = sql.identifier(name);
  await session.transaction(async (tx) => {
    await tx.execute(sql`declare ${cursor} no scroll cursor for ${query}`);
    for (;;) {
      const some = await rowsOf<Row>(tx, sql`fetch ${sql.raw(`${MOST_A_PIECE}`)} from ${cursor}`);
      take(some);
      if (some.length < MOST_A_PIECE) break;
    }
    await tx.execute(sql`close ${cursor}`);
  });
}

/** From either driver. */
async function rowsOf<Row>(session: SqlSession, statement: SQL): Promise<Row[]> {
  const result: unknown = await session.execute(statement);
  return (Array.isArray(result) ? result : (result as { rows: unknown[] }).rows) as Row[];
}
