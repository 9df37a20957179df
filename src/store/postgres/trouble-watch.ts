/** What keeps a Postgres server from taking anything in: remembers what others ran into, and looks for itself. */
import { sql } from 'drizzle-orm';
import type { StoreTroubleCode } from '../../app/ports/store-trouble.ts';
import type { DatabaseState } from '../database.ts';
import { troubleOfServer, troubleOfState } from '../database-trouble.ts';
import type { SqlSession } from '../queries/sql-session.ts';
import { SQL_STATE } from '../sql-error.ts';
import { writeRefusal } from '../write-probe.ts';

/** Where one write found no room, the next may still find some: so long it counts as full. */
const FULL_FOR_MS = 60_000;
/** A server that is read-only may stay so: its connections are not renewed more often than this. */
const RENEWED_EVERY_MS = 5_000;

export class TroubleWatch {
  readonly #renew: () => void;
  readonly #nowMs: () => number;
  #fullUntilMs = Number.NEGATIVE_INFINITY;
  #renewedMs = Number.NEGATIVE_INFINITY;

  /**
   * @param renew replaces all connections, which may lead to a primary of yesterday
   * @param nowMs a clock that is not set back
   */
  constructor(renew: () => void, nowMs: () => number = () => performance.now()) {
    this.#renew = renew;
    this.#nowMs = nowMs;
  }

  /** Hears of every refusal. */
  readonly note = (code: StoreTroubleCode | undefined): void => {
    const nowMs = this.#nowMs();
    if (code === 'database-full') this.#fullUntilMs = nowMs + FULL_FOR_MS;
    if (code !== 'database-read-only' || nowMs - this.#renewedMs < RENEWED_EVERY_MS) return;
    this.#renewedMs = nowMs;
    this.#renew();
  };

  async look(session: SqlSession, how: 'reading' | 'writing'): Promise<DatabaseState> {
    const beganMs = Date.now();
    try {
      const [row] = await session
        .select({
          isReadOnly: sql<boolean>`current_setting('transaction_read_only') = 'on'`,
          nowMs: sql<number>`(extract(epoch from clock_timestamp()) * 1000)::float8`,
        })
        .from(sql`(select 1) as one`);
      const clockAheadMs = row ? (beganMs + Date.now()) / 2 - row.nowMs : 0;
      const refusal = row?.isReadOnly
        ? SQL_STATE.readOnly
        : how === 'writing'
          ? await writeRefusal(session, true)
          : undefined;
      const found = troubleOfState(refusal);
      this.note(found);
      const isFull = this.#nowMs() < this.#fullUntilMs;
      return { trouble: found ?? (isFull ? 'database-full' : undefined), clockAheadMs };
    } catch (error) {
      const trouble = troubleOfServer(error);
      if (trouble === undefined) throw error;
      this.note(trouble);
      return { trouble, clockAheadMs: 0 };
    }
  }
}
