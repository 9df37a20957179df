/**
 * Reckons who must be asked on a day, from the tables alone and by rules of its own: owners of cards that are neither
 * finished nor dropped. Reads past the broken wire, straight from the server.
 */
import { setTimeout as wait } from 'node:timers/promises';
import postgres from 'postgres';
import type { InTurn } from './in-turn.ts';

export interface DuePrompt {
  readonly sprintId: string;
  readonly userId: string;
  readonly day: string;
}

/** A card with points left, of a member who must be asked about it. */
interface OpenCard extends DuePrompt {
  readonly cardId: string;
}

const LOOK_EVERY_MS = 150;
/** A restart of the database and a few deaths of bots fit in between. */
const DUE_PATIENCE_MS = 20_000;

export class Expectations {
  readonly #databaseUrl: string;
  readonly #now: () => Date;
  readonly #inTurn: InTurn;
  readonly #noted: DuePrompt[] = [];
  #unserved = 0;

  constructor(databaseUrl: string, now: () => Date, inTurn: InTurn) {
    this.#inTurn = inTurn;
    this.#databaseUrl = databaseUrl;
    this.#now = now;
  }

  /** Prompts that must have been asked, each once. */
  get noted(): readonly DuePrompt[] {
    return this.#noted;
  }

  /** Moments at which the bots did not get round to what was due in time, so that nothing is expected of them. */
  get unserved(): number {
    return this.#unserved;
  }

  /** The cards about which somebody must be asked on the day, as of now; undefined when the database can't be read. */
  async openOn(day: string): Promise<OpenCard[] | undefined> {
    return this.#read(async (sql) => {
      const rows = await sql`
        with placed as (
          -- A correction takes the place of what it corrects; days come before the order of telling.
          select *, min(fact_order) over (partition by card_id, member_id, day) as place from loadline.answers),
        left_now as (
          select distinct on (card_id) card_id, left_points from placed a
          where not exists (select from loadline.answers b where b.supersedes_id = a.id)
          order by card_id, day desc, place desc)
        select s.id as sprint, o.user_id as member, c.id as card
        from loadline.sprints s
        join loadline.cards c on c.sprint_id = s.id
        join loadline.card_owners o on o.card_id = c.id
        left join left_now l on l.card_id = c.id
        where s.state = 'open' and s.closed_at is null
          and s.starts_on <= ${day} and s.ends_on >= ${day} and c.entered_on <= ${day}
          and coalesce(l.left_points, c.estimate_points) > 0
          and not exists (select from loadline.card_changes d where d.card_id = c.id and d.kind = 'drop')`;
      return rows.map(({ sprint, member, card }) => ({
        sprintId: sprint,
        userId: member,
        day,
        cardId: card,
      }));
    });
  }

  /** Waits until the clock of the bots has nothing left to do. @returns false when that took too long */
  async nothingDue(): Promise<boolean> {
    for (let waitedMs = 0; waitedMs < DUE_PATIENCE_MS; waitedMs += LOOK_EVERY_MS) {
      const due = await this.#read(async (sql) => {
        const [row] = await sql`select count(*)::integer as due from loadline.sprints where state = 'open'
          and least(next_prompt_at, next_reminder_at, last_call_at, closes_at) <= ${this.#now()}`;
        return (row?.due as number) === 0;
      });
      if (due === true) return true;
      await wait(LOOK_EVERY_MS);
    }
    this.#unserved += 1;
    return false;
  }

  /**
   * Holds on to those of whom a card was open before the prompt's moment and still was after it. Of others a card may
   * have been finished before that moment, and another one pulled in after it.
   */
  async note(day: string, before: readonly OpenCard[]): Promise<void> {
    const keyOf = ({ userId, cardId }: OpenCard) => `${userId} ${cardId}`;
    const after = new Set((await this.openOn(day))?.map(keyOf));
    const due = before.filter((card) => after.has(keyOf(card)));
    const byMember = new Map(
      due.map(({ sprintId, userId }) => [`${sprintId} ${userId}`, { sprintId, userId, day }]),
    );
    this.#noted.push(...byMember.values());
  }

  #read<T>(query: (sql: postgres.Sql) => Promise<T>): Promise<T | undefined> {
    return this.#inTurn(() => this.#readNow(query));
  }

  async #readNow<T>(query: (sql: postgres.Sql) => Promise<T>): Promise<T | undefined> {
    const sql = postgres(this.#databaseUrl, { max: 1, connect_timeout: 2, onnotice: () => undefined });
    try {
      return await query(sql);
    } catch {
      return undefined;
    } finally {
      await sql.end({ timeout: 1 }).catch(() => undefined);
    }
  }
}
