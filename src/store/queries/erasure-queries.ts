/**
 * Takes a person out of every table. What they said about cards stays, for the team's numbers are made of it; who said
 * it, and in what words, goes. Must leave every number as it is.
 */
import { and, eq, inArray, isNotNull, or, type SQL, sql } from 'drizzle-orm';
import type { PgColumn, PgTable } from 'drizzle-orm/pg-core';
import type { PeopleWriting } from '../../app/ports/teams.ts';
import { ERASED, mayTell, withoutPerson } from '../../app/privacy/without-person.ts';
import type { Actor } from '../../app/team/team.ts';
import {
  answers,
  bodiesOfWork,
  cardChanges,
  cardOwners,
  cards,
  experiments,
  installations,
  members,
  planChanges,
  planDrafts,
  posts,
  prompts,
  recordedValues,
  sprints,
  teams,
  visits,
} from '../schema.ts';
import type { SqlSession } from './sql-session.ts';

export function peopleWriting(session: SqlSession): PeopleWriting {
  const teamIds = ({ workspaceId }: Actor) =>
    session.select({ id: teams.id }).from(teams).where(eq(teams.workspaceId, workspaceId));
  const sprintIds = (actor: Actor) =>
    session
      .select({ id: sprints.id })
      .from(sprints)
      .where(inArray(sprints.teamId, teamIds(actor)));
  const cardIds = (actor: Actor) =>
    session
      .select({ id: cards.id })
      .from(cards)
      .where(inArray(cards.sprintId, sprintIds(actor)));

  /**
   * All answers of one card and day keep one mark, because it links corrections and lets the ledger tell the day's
   * answers apart by it. Each card and day gets a mark of its own, so that nobody can be followed further than that.
   */
  async function disownAnswers(actor: Actor): Promise<void> {
    await session.execute(sql`
      with slots as materialized (
        select card_id, day, ${`${ERASED}-`} || gen_random_uuid() as mark
        from (select distinct card_id, day from loadline.answers
          where member_id = ${actor.userId} and card_id in ${cardIds(actor)}) as said)
      update loadline.answers as a set member_id = slots.mark, note = '' from slots
      where a.member_id = ${actor.userId} and a.card_id = slots.card_id and a.day = slots.day`);
  }

  async function disownRest(actor: Actor): Promise<void> {
    const { userId, workspaceId } = actor;
    await session
      .update(cardChanges)
      .set({ memberId: ERASED, note: '' })
      .where(and(eq(cardChanges.memberId, userId), inArray(cardChanges.cardId, cardIds(actor))));
    await session
      .update(cardChanges)
      .set({ userId: ERASED })
      .where(and(eq(cardChanges.userId, userId), inArray(cardChanges.cardId, cardIds(actor))));
    await session
      .update(cards)
      .set({ addedBy: ERASED })
      .where(and(eq(cards.addedBy, userId), inArray(cards.sprintId, sprintIds(actor))));
    await session
      .update(planChanges)
      .set({ changedBy: ERASED })
      .where(and(eq(planChanges.changedBy, userId), inArray(planChanges.sprintId, sprintIds(actor))));
    await session
      .update(sprints)
      .set({ goalSaidBy: ERASED, goalNote: '' })
      .where(and(eq(sprints.goalSaidBy, userId), inArray(sprints.teamId, teamIds(actor))));
    for (const by of ['begunBy', 'endedBy'] as const) {
      await session
        .update(experiments)
        .set({ [by]: ERASED })
        .where(and(eq(experiments[by], userId), inArray(experiments.teamId, teamIds(actor))));
    }
    await session
      .update(recordedValues)
      .set({ recordedBy: ERASED })
      .where(and(eq(recordedValues.recordedBy, userId), inArray(recordedValues.sprintId, sprintIds(actor))));
    await session
      .update(posts)
      .set({ byUserId: ERASED, reason: sql`case when ${posts.reason} is null then null else '' end` })
      .where(and(eq(posts.workspaceId, workspaceId), eq(posts.byUserId, userId)));
    await session
      .update(teams)
      .set({ productOwnerId: null, ownerGetsVerdicts: false })
      .where(and(eq(teams.workspaceId, workspaceId), eq(teams.productOwnerId, userId)));
    await session
      .update(installations)
      .set({ installedBy: null })
      .where(and(eq(installations.workspaceId, workspaceId), eq(installations.installedBy, userId)));
  }

  async function deleteRest(actor: Actor): Promise<void> {
    const { userId, workspaceId } = actor;
    await session
      .delete(prompts)
      .where(and(eq(prompts.userId, userId), inArray(prompts.sprintId, sprintIds(actor))));
    const isTo = or(eq(posts.userId, userId), eq(posts.subjectUserId, userId));
    await session.delete(posts).where(and(eq(posts.workspaceId, workspaceId), isTo));
    await session
      .delete(cardOwners)
      .where(and(eq(cardOwners.userId, userId), inArray(cardOwners.cardId, cardIds(actor))));
    await session
      .delete(planDrafts)
      .where(and(eq(planDrafts.userId, userId), inArray(planDrafts.teamId, teamIds(actor))));
    await session
      .delete(members)
      .where(and(eq(members.userId, userId), inArray(members.teamId, teamIds(actor))));
    await session.delete(visits).where(and(eq(visits.workspaceId, workspaceId), eq(visits.userId, userId)));
  }

  /** Takes the person out of one column of what others typed. */
  async function rewrite(
    table: PgTable & { readonly id: PgColumn },
    text: PgColumn,
    isInWorkspace: SQL,
    person: Parameters<typeof withoutPerson>[1],
  ): Promise<void> {
    const rows = await session
      .select({ id: table.id, text })
      .from(table)
      .where(and(isInWorkspace, isNotNull(text), mayHold(text, person)));
    for (const row of rows) {
      const after = withoutPerson(row.text as string, person);
      if (after === row.text) continue;
      const column = sql.identifier(text.name);
      await session.execute(sql`update ${table} set ${column} = ${after} where ${eq(table.id, row.id)}`);
    }
  }

  async function forgetInTexts(actor: Actor, names: readonly string[]): Promise<void> {
    const person = { userId: actor.userId, names };
    const [ofTeams, ofSprints, ofCards] = [teamIds(actor), sprintIds(actor), cardIds(actor)];
    const inTeams = (teamId: PgColumn) => inArray(teamId, ofTeams);
    const inSprints = (sprintId: PgColumn) => inArray(sprintId, ofSprints);
    const inCards = (cardId: PgColumn) => inArray(cardId, ofCards);
    const typed: [table: PgTable & { readonly id: PgColumn }, texts: PgColumn[], isInWorkspace: SQL][] = [
      [teams, [teams.name], inTeams(teams.id)],
      [sprints, [sprints.name, sprints.goal, sprints.goalNote], inSprints(sprints.id)],
      [experiments, [experiments.text], inTeams(experiments.teamId)],
      [bodiesOfWork, [bodiesOfWork.name], inTeams(bodiesOfWork.teamId)],
      [planChanges, [planChanges.was, planChanges.became], inSprints(planChanges.sprintId)],
      [cards, [cards.title, cards.link], inSprints(cards.sprintId)],
      [answers, [answers.note], inCards(answers.cardId)],
      [cardChanges, [cardChanges.note], inCards(cardChanges.cardId)],
      [posts, [posts.reason], eq(posts.workspaceId, actor.workspaceId)],
    ];
    for (const [table, texts, isInWorkspace] of typed)
      for (const text of texts) await rewrite(table, text, isInWorkspace, person);
    const drafts = await session.select().from(planDrafts).where(inArray(planDrafts.teamId, ofTeams));
    for (const { teamId, userId, draft } of drafts) {
      const fields = Object.entries(draft).map(([field, text]) => [
        field,
        field === 'teamId' ? text : withoutPerson(text, person),
      ]);
      await session
        .update(planDrafts)
        .set({ draft: Object.fromEntries(fields) })
        .where(and(eq(planDrafts.teamId, teamId), eq(planDrafts.userId, userId)));
    }
    // What became of a failed delivery is kept with its job for a while, and may quote what was in hand.
    const quoted = mayTell(person).map((words) => sql`position(${words} in lower(output::text)) > 0`);
    await session.execute(
      sql`update pgboss.job set output = null where output is not null and (${sql.join(quoted, sql` or `)})`,
    );
  }

  return {
    async erase(actor, names) {
      await session.execute(sql`select set_config('loadline.erasing', 'on', true)`);
      await disownAnswers(actor);
      await disownRest(actor);
      await deleteRest(actor);
      await forgetInTexts(actor, names);
      await session.execute(sql`select set_config('loadline.erasing', '', true)`);
    },
  };
}

function mayHold(text: PgColumn, person: Parameters<typeof withoutPerson>[1]) {
  return or(
    ...mayTell(person).map(
      (words) => sql`position(${words} in lower(regexp_replace(${text}, '\\s+', ' ', 'g'))) > 0`,
    ),
  );
}
