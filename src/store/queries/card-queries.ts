/** Reads and adds cards and the facts stated about them. Nothing is derived here: that is the ledger's work. */
import { randomUUID } from 'node:crypto';
import {
  and,
  asc,
  eq,
  getTableColumns,
  inArray,
  isNotNull,
  type SQL,
  type SQLWrapper,
  sql,
} from 'drizzle-orm';
import type { PgColumn, PgTable } from 'drizzle-orm/pg-core';
import type { CardReading, CardWriting, OwnerChange } from '../../app/ports/sprints.ts';
import type { NewFact, RecordedFact, SprintRecords } from '../../app/team/team.ts';
import type { CardChangeFact } from '../../sprint/card.ts';
import { answers, cardChanges, cardOwners, cards } from '../schema.ts';
import { frozenChange, frozenSelect } from './frozen-statement.ts';
import { rowsAsJson, type SqlSession, statementsOf } from './sql-session.ts';

const { kind: changeKind, factOrder: changeOrder } = cardChanges;

const ownerIds = sql<string[]>`array(select ${cardOwners.userId} from ${cardOwners}
  where ${cardOwners.cardId} = ${cards.id} order by ${cardOwners.position}, ${cardOwners.userId})`;

/**
 * A card's answers and changes come with its row, as JSON: a row for each of them, and a value for each of its columns, would
 * cost the driver several times as much. Each is an array of these.
 */
type AnswerCells = [
  id: string,
  memberId: string,
  day: string,
  workedPoints: number | null,
  leftPoints: number,
  surprisePoints: number,
  note: string,
  recordedAtMs: number,
  supersedesId: string | null,
  order: number,
];
type ChangeCells = [
  id: string,
  memberId: string,
  day: string,
  kind: CardChangeFact['kind'],
  note: string,
  recordedAtMs: number,
  order: number,
];

const milliseconds = (instant: PgColumn): SQL => sql`extract(epoch from ${instant}) * 1000`;

/** The driver must leave it as text, which one of the two would not do with JSON. */
function cellsOf<Cells>(table: PgTable, cells: readonly SQLWrapper[], isOfCard: SQL): SQL<Cells[]> {
  return sql`(select json_agg(json_build_array(${sql.join([...cells], sql`, `)}))::text from ${table}
    where ${isOfCard})`.mapWith((text: string) => JSON.parse(text)) as SQL<Cells[]>;
}

const RECORDS = {
  ...getTableColumns(cards),
  ownerIds,
  answers: cellsOf<AnswerCells>(
    answers,
    [
      ...[answers.id, answers.memberId, answers.day, answers.workedPoints, answers.leftPoints],
      ...[answers.surprisePoints, answers.note, milliseconds(answers.recordedAt), answers.supersedesId],
      answers.factOrder,
    ],
    sql`${answers.cardId} = ${cards.id}`,
  ),
  changes: cellsOf<ChangeCells>(
    cardChanges,
    [
      ...[cardChanges.id, cardChanges.memberId, cardChanges.day, changeKind, cardChanges.note],
      ...[milliseconds(cardChanges.recordedAt), changeOrder],
    ],
    sql`${cardChanges.cardId} = ${cards.id} and ${changeKind} not in ('owner-added', 'owner-removed')`,
  ),
};

function recordsSelect(isMeant: SQL) {
  return frozenSelect(
    RECORDS,
    sql`from ${cards} where ${isMeant} order by ${cards.sprintId}, ${cards.number}`,
  );
}

const isOfSprint = sql`${cards.sprintId} = ${sql.placeholder('sprint')}`;
/** One sprint has a statement of its own, for the database plans it better when it knows that it is one. */
const OF_ONE_SPRINT = recordsSelect(isOfSprint);
const OF_MANY_SPRINTS = recordsSelect(
  // As an array, for which it reads an index; for a list that may be of any length it would read all cards that there are.
  sql`${cards.sprintId} = any (array(select json_array_elements_text(${sql.placeholder('sprints')}::json)))`,
);
const ABOUT_PERSON = recordsSelect(sql`${isOfSprint} and (
  not exists (select from ${cardOwners} where ${cardOwners.cardId} = ${cards.id})
  or exists (select from ${cardOwners} where ${cardOwners.cardId} = ${cards.id}
    and ${cardOwners.userId} = ${sql.placeholder('user')})
  or exists (select from ${answers} where ${answers.cardId} = ${cards.id}
    and ${answers.memberId} = ${sql.placeholder('user')})
  or ${cards.id} in (select json_array_elements_text(${sql.placeholder('named')}::json)))`);

type CardRow = Awaited<ReturnType<typeof OF_ONE_SPRINT>>[number];

function recordsFrom(rows: readonly CardRow[]): SprintRecords {
  return {
    cards: rows.map(({ answers: _, changes: __, ...card }) => ({ ...card, link: card.link ?? undefined })),
    facts: rows.flatMap(factsOf).sort((a, b) => a.order - b.order),
  };
}

/** Null: there are none. */
function factsOf({ id: cardId, answers, changes }: CardRow): RecordedFact[] {
  const said = (answers as AnswerCells[] | null) ?? [];
  const changed = (changes as ChangeCells[] | null) ?? [];
  return [
    ...said.map(
      ([
        id,
        memberId,
        day,
        worked,
        leftPoints,
        surprisePoints,
        note,
        atMs,
        supersedes,
        order,
      ]): RecordedFact => ({
        ...{ kind: 'answer', id, cardId, memberId, day, leftPoints, surprisePoints, note, order },
        workedPoints: worked ?? undefined,
        recordedAt: new Date(atMs),
        supersedesId: supersedes ?? undefined,
      }),
    ),
    ...changed.map(
      ([id, memberId, day, kind, note, atMs, order]): RecordedFact => ({
        ...{ kind, id, cardId, memberId, day, note, order },
        recordedAt: new Date(atMs),
        supersedesId: undefined,
      }),
    ),
  ];
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
  return {
    /** One statement, however many sprints there are. */
    async recordsOfMany(sprintIds) {
      if (sprintIds.length === 0) return new Map();
      const rows = await OF_MANY_SPRINTS(session, { sprints: JSON.stringify(sprintIds) });
      const rowsOf = Map.groupBy(rows, (row) => row.sprintId);
      return new Map(sprintIds.map((sprintId) => [sprintId, recordsFrom(rowsOf.get(sprintId) ?? [])]));
    },

    async recordsOf(sprintId) {
      return recordsFrom(await OF_ONE_SPRINT(session, { sprint: sprintId }));
    },

    async recordsAbout(sprintId, userId, cardIds) {
      const given = { sprint: sprintId, user: userId, named: JSON.stringify(cardIds) };
      return recordsFrom(await ABOUT_PERSON(session, given));
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
      if (answerRows.length > 0) keep(await ADD_ANSWERS(session, { answers: rowsAsJson(answerRows) }));
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
