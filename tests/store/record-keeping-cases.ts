/** That what was recorded stays as it was; run by `queries.test.ts`. */
import type { SQL } from 'drizzle-orm';
import { sql } from 'drizzle-orm';
import { beforeAll, expect, it } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { sqlErrorOf } from '../../src/store/sql-error.ts';
import { aCard, aChange, anAnswer, aResult, savedSprint } from './store-examples.ts';

/** https://www.postgresql.org/docs/current/errcodes-appendix.html */
const RESTRICT_VIOLATION = '23001';

const CHANGE = {
  cardId: undefined,
  part: 'title',
  was: 'Tide tabel',
  became: 'Tide table',
  changedBy: 'U-ana',
  changedAt: new Date('2026-11-02T10:00:00Z'),
} as const;

export function recordKeepingCases(database: () => Database): void {
  let sprintId = '';
  let cardId = '';

  beforeAll(async () => {
    const { sprint } = await savedSprint(database());
    const card = aCard(sprint.id, 1);
    const answer = anAnswer(card.id);
    await database().store.transaction(async (tx) => {
      await tx.write.cards.insert([card]);
      await tx.write.cards.insertFacts([
        answer,
        anAnswer(card.id, { supersedesId: answer.id, leftPoints: 2 }),
        aChange(card.id, 'drop'),
      ]);
      await tx.write.results.insert(aResult(sprint.id, 3));
    });
    sprintId = sprint.id;
    cardId = card.id;
    await database().store.transaction((tx) =>
      tx.write.sprints.recordPlanChanges([
        { ...CHANGE, id: `${sprintId}-1`, sprintId, cardId },
        { ...CHANGE, id: `${sprintId}-2`, sprintId, part: 'goal' },
      ]),
    );
  });

  const refusals: [string, string, () => SQL][] = [
    [
      'a change of an answer',
      'answers_append_only',
      () => sql`update loadline.answers set left_points = 0 where card_id = ${cardId}`,
    ],
    [
      'a change of when it was given',
      'answers_append_only',
      () => sql`update loadline.answers set member_id = 'U-x', recorded_at = now() where card_id = ${cardId}`,
    ],
    [
      'the removal of an answer',
      'answers_append_only',
      () => sql`delete from loadline.answers where card_id = ${cardId}`,
    ],
    ['the removal of all answers', 'answers_no_truncate', () => sql`truncate loadline.answers`],
    [
      'a change of a drop',
      'card_changes_append_only',
      () => sql`update loadline.card_changes set note = '' where card_id = ${cardId}`,
    ],
    [
      'the removal of a drop',
      'card_changes_append_only',
      () => sql`delete from loadline.card_changes where card_id = ${cardId}`,
    ],
    ['the removal of all drops', 'card_changes_no_truncate', () => sql`truncate loadline.card_changes`],
    [
      'a change of a result',
      'sprint_results_append_only',
      () => sql`update loadline.sprint_results set cancelled = true where sprint_id = ${sprintId}`,
    ],
    [
      'the removal of a result',
      'sprint_results_append_only',
      () => sql`delete from loadline.sprint_results where sprint_id = ${sprintId}`,
    ],
    ['the removal of all results', 'sprint_results_no_truncate', () => sql`truncate loadline.sprint_results`],
    [
      'a change of an estimate after an answer',
      'cards_estimate_until_answered',
      () => sql`update loadline.cards set estimate_points = 8 where id = ${cardId}`,
    ],
    [
      'a change of when a card came in',
      'cards_as_entered',
      () => sql`update loadline.cards set entered_on = '2026-12-01' where id = ${cardId}`,
    ],
    [
      'a change of what was corrected in a plan',
      'plan_changes_append_only',
      () => sql`update loadline.plan_changes set was = 'Another' where sprint_id = ${sprintId}`,
    ],
    [
      'the removal of what was corrected in a plan',
      'plan_changes_append_only',
      () => sql`delete from loadline.plan_changes where sprint_id = ${sprintId}`,
    ],
    ['the removal of all corrections', 'plan_changes_no_truncate', () => sql`truncate loadline.plan_changes`],
    [
      'the removal of a sprint that was not imported',
      'sprints_removed_when_imported',
      () => sql`select loadline.begin_removal(${sprintId})`,
    ],
    ['the removal of a card', 'cards_as_entered', () => sql`delete from loadline.cards where id = ${cardId}`],
  ];

  it.each(refusals)('refuses %s', async (_what, constraint, statement) => {
    const before = await database().store.read((read) => read.recordsOf(sprintId));
    const error: unknown = await database()
      .session.execute(statement())
      .catch((refusal: unknown) => refusal);
    expect(sqlErrorOf(error)).toEqual({ sqlState: RESTRICT_VIOLATION, constraint });
    expect(await database().store.read((read) => read.recordsOf(sprintId))).toEqual(before);
  });

  it('allows another estimate while nobody has answered, and other names for a card', async () => {
    const card = aCard(sprintId, 7, { title: 'Tide tabel', estimatePoints: 50 });
    await database().store.transaction(async (tx) => {
      await tx.write.cards.insert([card]);
      await tx.write.cards.correct({ ...card, title: 'Tide table', key: 'quay-7', estimatePoints: 5 });
    });
    const { cards } = await database().store.read((read) => read.recordsOf(sprintId));
    expect(cards.find(({ id }) => id === card.id)).toMatchObject({
      title: 'Tide table',
      key: 'quay-7',
      estimatePoints: 5,
    });
  });

  it('gives back what was corrected in a plan, in order', async () => {
    const changes = await database().store.read((read) => read.planChangesOf(sprintId));
    expect(changes).toEqual([
      { ...CHANGE, id: `${sprintId}-1`, sprintId, cardId },
      { ...CHANGE, id: `${sprintId}-2`, sprintId, cardId: undefined, part: 'goal' },
    ]);
  });

  it('allows the replacement of the member, corrected answers included', async () => {
    const replace = (table: string) =>
      database().session.execute(
        sql`update ${sql.raw(table)} set member_id = 'erased-1' where card_id = ${cardId}`,
      );
    await replace('loadline.answers');
    await replace('loadline.card_changes');
    const { facts } = await database().store.read((read) => read.recordsOf(sprintId));
    expect(facts.map((fact) => fact.memberId)).toEqual(['erased-1', 'erased-1', 'erased-1']);
  });
}
