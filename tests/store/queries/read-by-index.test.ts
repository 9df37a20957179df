/** What is asked all the time must not take longer because much else is stored: no statement reads a whole table for it. */
import { randomUUID } from 'node:crypto';
import { sql } from 'drizzle-orm';
import { expect, it } from 'vitest';
import type { Reading } from '../../../src/app/ports/store.ts';
import type { Database } from '../../../src/store/database.ts';
import type { SqlSession } from '../../../src/store/queries/sql-session.ts';
import { readingOver } from '../../../src/store/queries/transaction.ts';
import { describeOnBoth } from '../../support/databases.ts';
import { rowsOf } from '../../support/rows-of.ts';
import { savedSprint, WORKSPACE } from '../store-examples.ts';

const OTHERS = 6_000;
const SPRINTS = 500;
/** By now the server has made up its mind how it will carry out a prepared statement from then on. */
const TIMES = 7;

/** Rows of others, and the sprint that is asked about. */
async function amongOthers(database: Database): Promise<string> {
  const { session } = database;
  const [asked, other] = [await savedSprint(database), await savedSprint(database)];
  const run = randomUUID();
  const others = sql`from generate_series(1, ${OTHERS}::integer) as i`;
  await session.execute(sql`insert into loadline.prompts (sprint_id, user_id, day, state)
    select ${other.sprint.id}, 'U-' || i, date '2020-01-01' + i / 8, 'asked' ${others}`);
  const closed = sql`jsonb_build_object('id', ${run}::text || i, 'state', 'closed', 'closed_at', now(),
    'next_prompt_at', null, 'last_call_at', null)`;
  await session.execute(sql`insert into loadline.sprints select (jsonb_populate_record(one, ${closed})).*
    from loadline.sprints as one, generate_series(0, ${SPRINTS - 1}::integer) as i where one.id = ${other.sprint.id}`);
  await session.execute(sql`insert into loadline.cards
      (id, sprint_id, number, key, title, estimate_points, origin, entered_on, added_by)
    select ${run}::text || i, ${run}::text || i % ${SPRINTS}::integer, i, 'KEY-' || i, 'Berth', 1, 'planned', '2026-11-02', 'U-ana' ${others}`);
  await session.execute(sql`insert into loadline.visits (workspace_id, user_id, home_opened_at)
    select ${WORKSPACE}::text, ${run}::text || i, now() ${others}`);
  for (const table of ['prompts', 'cards', 'visits'])
    await session.execute(sql.raw(`analyze loadline.${table}`));
  return asked.sprint.id;
}

type Ask = (read: Reading, sprintId: string) => Promise<unknown>;
const QUESTIONS: readonly [what: string, table: string, ask: Ask][] = [
  ['the prompts of a day', 'prompts', (read, sprintId) => read.promptsOf([{ sprintId, day: '2026-11-04' }])],
  ['the cards of some sprints', 'cards', (read, sprintId) => read.recordsOfMany([sprintId])],
  ['who has opened their home page', 'visits', (read) => read.homeOpenedBy(WORKSPACE, ['U-ana', 'U-bo'])],
];

describeOnBoth('is looked up by an index, whatever else there is:', (database) => {
  it.each(QUESTIONS)('%s', async (_what, table, ask) => {
    const sprintId = await amongOthers(database());
    const wholeReads = await database().session.transaction(async (tx) => {
      const session = tx as unknown as SqlSession;
      const soFar = async () => {
        const counted = sql`select seq_scan::integer as count from pg_stat_xact_user_tables
          where schemaname = 'loadline' and relname = ${table}`;
        return (await rowsOf<{ count: number }>({ session }, counted))[0]?.count ?? Number.NaN;
      };
      const before = await soFar();
      for (let i = 0; i < TIMES; i += 1) await ask(readingOver(session), sprintId);
      return (await soFar()) - before;
    });
    expect(wholeReads).toBe(0);
  });
});
