/** Reads and adds cards and the facts stated about them. Nothing is derived here: that is the ledger's work. */
import type { SQL } from 'drizzle-orm';
import { asc, eq, inArray, sql } from 'drizzle-orm';
import type { NewFact, SprintRecords, Transaction } from '../app/ports.ts';
import type { RecordedFact, SprintCard } from '../app/team.ts';
import { answers, cardChanges, cardOwners, cards } from './schema.ts';
import type { SqlSession } from './sql-session.ts';
import { statementsOf } from './sql-session.ts';

export type CardQueries = Pick<
  Transaction,
  'recordsOf' | 'recordsOfMany' | 'insertCards' | 'addOwner' | 'insertFacts'
>;

function answerOf(row: typeof answers.$inferSelect): RecordedFact {
  const { factOrder, workedPoints, supersedesId, ...same } = row;
  return {
    ...same,
    kind: 'answer',
    order: factOrder,
    workedPoints: workedPoints ?? undefined,
    supersedesId: supersedesId ?? undefined,
  };
}

function changeOf(row: typeof cardChanges.$inferSelect): RecordedFact {
  const { factOrder, ...same } = row;
  return { ...same, order: factOrder, supersedesId: undefined };
}

function inOrder(a: RecordedFact, b: RecordedFact): number {
  return a.order - b.order;
}

export function cardQueries(session: SqlSession): CardQueries {
  /** Four statements at once, however many sprints there are. */
  async function recordsOfMany(sprintIds: readonly string[]): Promise<Map<string, SprintRecords>> {
    if (sprintIds.length === 0) return new Map();
    const ids = [...sprintIds];
    const ofSprints = inArray(cards.sprintId, ids);
    const [cardRows, ownerRows, answerRows, changeRows] = await Promise.all([
      session.select().from(cards).where(ofSprints).orderBy(asc(cards.number)),
      session
        .select({ cardId: cardOwners.cardId, userId: cardOwners.userId })
        .from(cardOwners)
        .innerJoin(cards, eq(cards.id, cardOwners.cardId))
        .where(ofSprints)
        .orderBy(asc(cardOwners.position), asc(cardOwners.userId)),
      session
        .select({ fact: answers, sprintId: cards.sprintId })
        .from(answers)
        .innerJoin(cards, eq(cards.id, answers.cardId))
        .where(ofSprints),
      session
        .select({ fact: cardChanges, sprintId: cards.sprintId })
        .from(cardChanges)
        .innerJoin(cards, eq(cards.id, cardChanges.cardId))
        .where(ofSprints),
    ]);

    const owners = Map.groupBy(ownerRows, (row) => row.cardId);
    const cardsBySprint = Map.groupBy(cardRows, (row) => row.sprintId);
    const facts = Map.groupBy(
      [
        ...answerRows.map(({ sprintId, fact }) => ({ sprintId, fact: answerOf(fact) })),
        ...changeRows.map(({ sprintId, fact }) => ({ sprintId, fact: changeOf(fact) })),
      ],
      (row) => row.sprintId,
    );
    return new Map(
      ids.map((sprintId) => [
        sprintId,
        {
          cards: (cardsBySprint.get(sprintId) ?? []).map(
            (row): SprintCard => ({
              ...row,
              ownerIds: (owners.get(row.id) ?? []).map((owner) => owner.userId),
            }),
          ),
          facts: (facts.get(sprintId) ?? []).map((row) => row.fact).sort(inOrder),
        },
      ]),
    );
  }

  /** So many places in the order of facts, rising. */
  async function nextPlaces(count: number): Promise<number[]> {
    const rows = await session
      .select({ place: sql<string>`nextval('loadline.fact_order')`.mapWith(Number) })
      .from(sql`generate_series(1, ${count}::integer)`);
    return rows.map((row) => row.place).sort((a, b) => a - b);
  }

  return {
    recordsOfMany,

    async recordsOf(sprintId) {
      return (await recordsOfMany([sprintId])).get(sprintId) as SprintRecords;
    },

    async insertCards(added) {
      for (const rows of statementsOf(added)) {
        await session.insert(cards).values(rows.map(({ ownerIds: _, ...row }) => row));
      }
      const owners = added.flatMap((card) =>
        card.ownerIds.map((userId, position) => ({ cardId: card.id, userId, position })),
      );
      for (const rows of statementsOf(owners)) await session.insert(cardOwners).values(rows);
    },

    async addOwner(cardId, userId) {
      const last = sql`(select coalesce(max(position) + 1, 0) from loadline.card_owners where card_id = ${cardId})`;
      await session.insert(cardOwners).values({ cardId, userId, position: last }).onConflictDoNothing();
    },

    async insertFacts(facts) {
      if (facts.length === 0) return [];
      // Rows of one table get their places as they go in, one after the other.
      const isOneTable = new Set(facts.map(({ kind }) => kind === 'answer')).size === 1;
      const places = isOneTable ? [] : await nextPlaces(facts.length);
      const placed = facts.map((fact, i) => ({ fact, factOrder: places[i] ?? NEXT_PLACE }));
      const answerRows = placed.flatMap(({ fact, factOrder }) => answerRowOf(fact, factOrder));
      const changeRows = placed.flatMap(({ fact, factOrder }) => changeRowOf(fact, factOrder));
      const orders = new Map<string, number>();
      const keep = (inserted: readonly { id: string; order: number }[]): void => {
        for (const { id, order } of inserted) orders.set(id, order);
      };
      for (const rows of statementsOf(answerRows)) {
        keep(
          await session.insert(answers).values(rows).returning({ id: answers.id, order: answers.factOrder }),
        );
      }
      for (const rows of statementsOf(changeRows)) {
        keep(
          await session
            .insert(cardChanges)
            .values(rows)
            .returning({ id: cardChanges.id, order: cardChanges.factOrder }),
        );
      }
      return facts.map((fact) => ({ ...fact, order: orders.get(fact.id) }) as RecordedFact);
    },
  };
}

type Place = number | SQL;
const NEXT_PLACE = sql`nextval('loadline.fact_order')`;

function answerRowOf(fact: NewFact, factOrder: Place) {
  if (fact.kind !== 'answer') return [];
  const { kind: _, workedPoints, supersedesId, ...same } = fact;
  return [{ ...same, factOrder, workedPoints: workedPoints ?? null, supersedesId: supersedesId ?? null }];
}

function changeRowOf(fact: NewFact, factOrder: Place) {
  if (fact.kind === 'answer') return [];
  const { supersedesId: _, ...same } = fact;
  return [{ ...same, factOrder }];
}
