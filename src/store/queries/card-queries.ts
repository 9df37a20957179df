/** Reads and adds cards and the facts stated about them. Nothing is derived here: that is the ledger's work. */
import { randomUUID } from 'node:crypto';
import {
  and,
  asc,
  eq,
  type GetColumnData,
  getTableColumns,
  inArray,
  isNotNull,
  type SQL,
  sql,
} from 'drizzle-orm';
import type { PgColumn, PgTable } from 'drizzle-orm/pg-core';
import type { CardReading, CardWriting, OwnerChange } from '../../app/ports/sprints.ts';
import type { NewFact, RecordedFact, SprintRecords } from '../../app/team/team.ts';
import type { CardFact } from '../../sprint/card.ts';
import { answers, cardChanges, cardOwners, cards } from '../schema.ts';
import { frozenChange, frozenSelect } from './frozen-statement.ts';
import { type SqlSession, statementsOf } from './sql-session.ts';

const { kind: changeKind, factOrder: changeOrder } = cardChanges;

const ownerIds = sql<string[]>`array(select ${cardOwners.userId} from ${cardOwners}
  where ${cardOwners.cardId} = ${cards.id} order by ${cardOwners.position}, ${cardOwners.userId})`;

/** A column of the facts, read as the column of answers is. */
function factColumn<Of extends PgColumn>(column: Of): SQL<GetColumnData<Of>> {
  return sql`facts.${sql.identifier(column.name)}`.mapWith(column) as SQL<GetColumnData<Of>>;
}

const FACT = {
  id: factColumn(answers.id),
  cardId: factColumn(answers.cardId),
  memberId: factColumn(answers.memberId),
  day: factColumn(answers.day),
  workedPoints: factColumn(answers.workedPoints),
  leftPoints: factColumn(answers.leftPoints),
  surprisePoints: factColumn(answers.surprisePoints),
  note: factColumn(answers.note),
  recordedAt: factColumn(answers.recordedAt),
  supersedesId: factColumn(answers.supersedesId),
  order: factColumn(answers.factOrder),
  kind: sql<CardFact['kind']>`facts.kind`,
  sprintId: sql<string>`facts.sprint_id`,
};

/** The statements that read the records of sprints, all at once. Answers and changes of cards are read as one list. */
function recordsSelects(isOfSprint: SQL) {
  const ofCards = (table: PgTable, cardId: PgColumn) =>
    sql`from ${table} join ${cards} on ${cards.id} = ${cardId} where ${isOfSprint}`;
  const { id, cardId, memberId, day, note, recordedAt, factOrder } = answers;
  return {
    cards: frozenSelect(
      { ...getTableColumns(cards), ownerIds },
      sql`from ${cards} where ${isOfSprint} order by ${cards.number}`,
    ),
    facts: frozenSelect(
      FACT,
      sql`from (
        select ${id}, ${cardId}, ${memberId}, ${day}, ${answers.workedPoints}, ${answers.leftPoints},
          ${answers.surprisePoints}, ${note}, ${recordedAt}, ${answers.supersedesId}, ${factOrder}, 'answer' as kind,
          ${cards.sprintId} ${ofCards(answers, cardId)}
        union all
        select ${cardChanges.id}, ${cardChanges.cardId}, ${cardChanges.memberId}, ${cardChanges.day}, null, null,
          null, ${cardChanges.note}, ${cardChanges.recordedAt}, null, ${changeOrder}, ${changeKind},
          ${cards.sprintId} ${ofCards(cardChanges, cardChanges.cardId)}
          and ${changeKind} not in ('owner-added', 'owner-removed')
      ) as facts order by fact_order`,
    ),
  };
}

/** One sprint has statements of its own, for the database plans them better when it knows that it is one. */
const OF_ONE_SPRINT = recordsSelects(sql`${cards.sprintId} = ${sql.placeholder('sprint')}`);
const OF_MANY_SPRINTS = recordsSelects(
  sql`${cards.sprintId} in (select json_array_elements_text(${sql.placeholder('sprints')}::json))`,
);

type FactRow = Awaited<ReturnType<typeof OF_ONE_SPRINT.facts>>[number];

function factOf({ sprintId: _, workedPoints, leftPoints, surprisePoints, ...row }: FactRow): RecordedFact {
  const { kind, supersedesId, ...same } = row;
  if (kind !== 'answer') return { ...same, kind, supersedesId: undefined };
  return {
    ...same,
    kind,
    workedPoints: workedPoints ?? undefined,
    leftPoints,
    surprisePoints,
    supersedesId: supersedesId ?? undefined,
  };
}

/** One parameter, however many answers there are. Without a place of its own, each gets the next one. */
const ADD_ANSWERS = frozenChange(
  { id: answers.id, order: answers.factOrder },
  sql`insert into ${answers} (id, card_id, member_id, day, fact_order, worked_points, left_points, surprise_points,
      note, recorded_at, supersedes_id)
    select id, "cardId", "memberId", day, coalesce("factOrder", nextval('loadline.fact_order')), "workedPoints",
      "leftPoints", "surprisePoints", note, "recordedAt", "supersedesId"
    from json_to_recordset(${sql.placeholder('answers')}::json) as said(id text, "cardId" text, "memberId" text,
      day date, "factOrder" bigint, "workedPoints" numeric, "leftPoints" numeric, "surprisePoints" numeric,
      note text, "recordedAt" timestamptz, "supersedesId" text)`,
);

export function cardReading(session: SqlSession): CardReading {
  /** The same number of statements, however many sprints there are. */
  async function recordsOfMany(sprintIds: readonly string[]): Promise<Map<string, SprintRecords>> {
    if (sprintIds.length === 0) return new Map();
    const [only = '', ...more] = sprintIds;
    const selects = more.length === 0 ? OF_ONE_SPRINT : OF_MANY_SPRINTS;
    const given = more.length === 0 ? { sprint: only } : { sprints: JSON.stringify(sprintIds) };
    const [cardRows, factRows] = await Promise.all([
      selects.cards(session, given),
      selects.facts(session, given),
    ]);
    const cardsOf = Map.groupBy(cardRows, (row) => row.sprintId);
    const factsOf = Map.groupBy(factRows, (row) => row.sprintId);
    return new Map(
      sprintIds.map((sprintId) => [
        sprintId,
        {
          cards: (cardsOf.get(sprintId) ?? []).map((card) => ({ ...card, link: card.link ?? undefined })),
          facts: (factsOf.get(sprintId) ?? []).map(factOf),
        },
      ]),
    );
  }

  return {
    recordsOfMany,

    async recordsOf(sprintId) {
      return (await recordsOfMany([sprintId])).get(sprintId) as SprintRecords;
    },

    async ownerMovesOf(sprintId) {
      const rows = await session
        .select({
          cardId: cardChanges.cardId,
          userId: cardChanges.userId,
          kind: changeKind,
          day: cardChanges.day,
          changedBy: cardChanges.memberId,
          changedAt: cardChanges.recordedAt,
        })
        .from(cardChanges)
        .innerJoin(cards, eq(cards.id, cardChanges.cardId))
        .where(and(eq(cards.sprintId, sprintId), isNotNull(cardChanges.userId)))
        .orderBy(asc(changeOrder));
      return rows.map(({ userId, kind, ...move }) => ({
        ...move,
        userId: userId as string,
        kind: kind === 'owner-added' ? 'added' : 'removed',
      }));
    },
  };
}

export function cardWriting(session: SqlSession): CardWriting {
  /** So many places in the order of facts, rising. */
  async function nextPlaces(count: number): Promise<number[]> {
    const rows = await session
      .select({ place: sql<string>`nextval('loadline.fact_order')`.mapWith(Number) })
      .from(sql`generate_series(1, ${count}::integer)`);
    return rows.map((row) => row.place).sort((a, b) => a - b);
  }

  return {
    async insert(added) {
      for (const rows of statementsOf(added)) {
        await session.insert(cards).values(rows.map(({ ownerIds: _, ...row }) => row));
      }
      const owners = added.flatMap((card) =>
        card.ownerIds.map((userId, position) => ({ cardId: card.id, userId, position })),
      );
      for (const rows of statementsOf(owners)) await session.insert(cardOwners).values(rows);
    },

    async correct({ id, title, link, key, estimatePoints }) {
      await session
        .update(cards)
        .set({ title, link: link ?? null, key, estimatePoints })
        .where(eq(cards.id, id));
    },

    async changeOwners(changes) {
      if (changes.length === 0) return;
      const ids = changes.map(({ card }) => card.id);
      await session.delete(cardOwners).where(inArray(cardOwners.cardId, ids));
      const owners = changes.flatMap(({ card, ownerIds }) =>
        ownerIds.map((userId, position) => ({ cardId: card.id, userId, position })),
      );
      for (const rows of statementsOf(owners)) await session.insert(cardOwners).values(rows);
      for (const rows of statementsOf(changes.flatMap(ownerRowsOf)))
        await session.insert(cardChanges).values(rows);
    },

    async insertFacts(facts) {
      if (facts.length === 0) return [];
      // Rows of one table get their places as they go in, one after the other.
      const isOneTable = new Set(facts.map(({ kind }) => kind === 'answer')).size === 1;
      const places = isOneTable ? [] : await nextPlaces(facts.length);
      const placed = facts.map((fact, i) => ({ fact, factOrder: places[i] }));
      const answerRows = placed.flatMap(({ fact, factOrder }) =>
        fact.kind === 'answer' ? [{ ...fact, factOrder }] : [],
      );
      const changeRows = placed.flatMap(({ fact, factOrder }) => changeRowOf(fact, factOrder));
      const orders = new Map<string, number>();
      const keep = (inserted: readonly { id: string; order: number }[]): void => {
        for (const { id, order } of inserted) orders.set(id, order);
      };
      if (answerRows.length > 0)
        keep(await ADD_ANSWERS(session, { answers: JSON.stringify(answerRows, wellFormed) }));
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

/** Half a character, which only a forged request has, is no text to the database. */
function wellFormed(_name: string, value: unknown): unknown {
  return typeof value === 'string' ? value.toWellFormed() : value;
}

/** Who came, and who went. */
function ownerRowsOf({ card, ownerIds, by }: OwnerChange) {
  if (!by) return [];
  const row = (kind: 'owner-added' | 'owner-removed', userId: string) => ({
    id: randomUUID(),
    cardId: card.id,
    kind,
    memberId: by.userId,
    userId,
    day: by.day,
    factOrder: sql`nextval('loadline.fact_order')`,
    note: '',
    recordedAt: by.at,
  });
  return [
    ...card.ownerIds.filter((id) => !ownerIds.includes(id)).map((id) => row('owner-removed', id)),
    ...ownerIds.filter((id) => !card.ownerIds.includes(id)).map((id) => row('owner-added', id)),
  ];
}

function changeRowOf(fact: NewFact, factOrder: number | undefined) {
  if (fact.kind === 'answer') return [];
  const { supersedesId: _, ...same } = fact;
  return [{ ...same, factOrder: factOrder ?? sql`nextval('loadline.fact_order')` }];
}
