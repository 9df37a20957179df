/**
 * Reduces sprints that ended long ago to their totals. The database lets cards go only after `begin_reduction`, which
 * checks that the sprint is over and that its totals are kept; see the migration of that name.
 */
import { subDays } from 'date-fns/subDays';
import { subHours } from 'date-fns/subHours';
import { subMonths } from 'date-fns/subMonths';
import { and, eq, inArray, isNull, lt, ne, or, type SQL, sql } from 'drizzle-orm';
import type { PgColumn, PgTable } from 'drizzle-orm/pg-core';
import type { Portion } from '../../app/ports/locks.ts';
import type { RetentionWriting } from '../../app/ports/teams.ts';
import { ERASED } from '../../app/privacy/without-person.ts';
import type { Team } from '../../app/team/team.ts';
import {
  answers,
  bodiesOfWork,
  cardChanges,
  cardOwners,
  cards,
  experiments,
  installAttempts,
  members,
  messageRemovals,
  pastChanges,
  pastSprints,
  planChanges,
  planDrafts,
  posts,
  prompts,
  recordedValues,
  seenEvents,
  sprintResults,
  sprints,
  teams,
  visits,
} from '../schema.ts';
import { monthsKept, teamErasure } from './ended-team-queries.ts';
import { isNoneOf } from './sprint-queries.ts';
import type { SqlSession } from './sql-session.ts';
import { teamOf } from './team-queries.ts';

/** A sprint that closed late may still be reopened for a day; its details wait for that. */
const AFTER_CLOSING_DAYS = 2;

/** What comes twice comes within minutes; a day is ample, and the table stays small. */
const EVENTS_REMEMBERED_HOURS = 24;

/** That somebody who is on no team once looked in. */
const VISITS_KEPT_MONTHS = 12;

/** Where a team keeps everything, or for longer. */
const DRAFTS_KEPT_MONTHS = 13;

/** The bot may be back in a workspace by then; a failed delivery is kept as long. */
const REMOVALS_TRIED_DAYS = 14;
/** It is about somebody who was erased. */
const REMOVALS_TOLD_DAYS = 1;

/** Each that goes makes everybody read that workspace's past once more. */
const CHANGES_KEPT_HOURS = 24;

/** Before this instant nothing of the team's is kept in detail. */
function cutoff(now: Date) {
  return sql`(${now.toISOString()}::timestamptz at time zone 'UTC') - make_interval(months => ${monthsKept(now)})`;
}

export async function claimedSprintsToReduce(
  session: SqlSession,
  now: Date,
  { limit, except }: Portion,
): Promise<{ team: Team; sprintId: string }[]> {
  const closedBefore = new Date(now.getTime() - AFTER_CLOSING_DAYS * 86_400_000);
  const rows = await session
    .select({ team: teams, sprintId: sprints.id })
    .from(sprints)
    .innerJoin(teams, eq(teams.id, sprints.teamId))
    .where(
      and(
        isNull(sprints.reducedAt),
        ne(sprints.state, 'open'),
        sql`${sprints.endsOn} < (${cutoff(now)})::date`,
        sql`${sprints.closedAt} < ${closedBefore.toISOString()}::timestamptz`,
        isNoneOf(sprints.id, except),
      ),
    )
    .orderBy(sprints.endsOn, sprints.id)
    .limit(limit)
    .for('no key update', { skipLocked: true });
  return rows.map((row) => ({ team: teamOf(row.team), sprintId: row.sprintId }));
}

/** Before this day the team keeps nothing in detail; null, and so before no day, where it keeps everything. */
function firstKeptDay(now: Date) {
  return sql`to_char((${cutoff(now)})::date, 'YYYY-MM-DD')`;
}

function hasPast(daysOff: PgColumn, now: Date) {
  return sql`jsonb_path_exists(${daysOff}, '$.*[*] ? (@ < $first)', jsonb_build_object('first', ${firstKeptDay(now)}))`;
}

/** The days off from the first kept day on. */
function withoutPast(daysOff: PgColumn, now: Date) {
  const kept = (of: 'full' | 'half') =>
    sql`(select coalesce(jsonb_agg(day order by day), '[]')
      from jsonb_array_elements_text(${daysOff} -> ${sql.raw(`'${of}'`)}) as day where day >= ${firstKeptDay(now)})`;
  return sql`jsonb_build_object('full', ${kept('full')}, 'half', ${kept('half')})`;
}

export function retentionWriting(session: SqlSession): RetentionWriting {
  return {
    ...teamErasure(session),

    async reduceSprint(sprintId, at) {
      await session.execute(sql`select loadline.begin_reduction(${sprintId})`);
      await deleteDetails(session, sprintId);
      await session
        .update(recordedValues)
        .set({ recordedBy: ERASED })
        .where(eq(recordedValues.sprintId, sprintId));
      await session.update(pastSprints).set({ cardEvenings: null }).where(eq(pastSprints.sprintId, sprintId));
      await session
        .update(sprints)
        .set({
          reducedAt: at,
          goal: '',
          goalNote: '',
          goalSaidBy: sql`case when ${sprints.goalSaidBy} is null then null else ${ERASED} end`,
        })
        .where(eq(sprints.id, sprintId));
    },

    async removeImport(sprintId) {
      await session.execute(sql`select loadline.begin_removal(${sprintId})`);
      await deleteDetails(session, sprintId);
      await session.delete(recordedValues).where(eq(recordedValues.sprintId, sprintId));
      await session.delete(sprintResults).where(eq(sprintResults.sprintId, sprintId));
      // What was agreed on after it came after the one before it then.
      await session.execute(sql`update loadline.experiments as e set after_sprint_id = (
          select before.sprint_id from loadline.past_sprints as before
          where before.team_id = gone.team_id and before.ends_on < gone.ends_on
          order by before.ends_on desc limit 1)
        from loadline.past_sprints as gone
        where gone.sprint_id = ${sprintId} and e.after_sprint_id = ${sprintId}`);
      await session.delete(pastSprints).where(eq(pastSprints.sprintId, sprintId));
      await session.delete(sprints).where(eq(sprints.id, sprintId));
    },

    async dropOldRecords(now, limit) {
      const isOld = (teamId: PgColumn, at: PgColumn) =>
        sql`exists (select from ${teams}
          where ${teams.id} = ${teamId} and ${at} < (${cutoff(now)}) at time zone 'UTC')`;
      /** Deletes so many of them at most. */
      const deleteSome = (table: PgTable, id: PgColumn, which: SQL | undefined): Promise<unknown[]> => {
        const some = session.select({ id }).from(table).where(which).limit(limit);
        return session.delete(table).where(inArray(id, some)).returning({ id });
      };
      // What was never planned is no detail of a sprint that a team could want to keep without end.
      const isOldDraft = sql`${planDrafts.savedAt} < ${subMonths(now, DRAFTS_KEPT_MONTHS).toISOString()}::timestamptz`;
      const isOfNoTeam = and(isNull(posts.sprintId), isNull(posts.teamId));
      const gone = [
        await session
          .delete(planDrafts)
          .where(or(isOld(planDrafts.teamId, planDrafts.savedAt), isOldDraft))
          .returning({ id: planDrafts.userId }),
        await deleteSome(experiments, experiments.id, isOld(experiments.teamId, experiments.endedAt)),
        await deleteSome(bodiesOfWork, bodiesOfWork.id, isOld(bodiesOfWork.teamId, bodiesOfWork.doneAt)),
        await deleteSome(posts, posts.id, and(isNull(posts.sprintId), isOld(posts.teamId, posts.createdAt))),
        await session
          .delete(members)
          .where(sql`(${members.teamId}, ${members.userId}) in (${membersOfWhomNothingIsLeft(limit)})`)
          .returning({ id: members.userId }),
        await session
          .update(members)
          .set({ daysOff: withoutPast(members.daysOff, now) })
          .from(teams)
          .where(and(eq(teams.id, members.teamId), hasPast(members.daysOff, now)))
          .returning({ id: members.userId }),
        await session
          .update(members)
          .set({
            worksOnBefore: sql`(select coalesce(jsonb_agg(weekdays order by weekdays -> 'until'), '[]')
              from jsonb_array_elements(${members.worksOnBefore}) as weekdays
              where weekdays ->> 'until' >= ${firstKeptDay(now)})`,
          })
          .from(teams)
          .where(
            and(
              eq(teams.id, members.teamId),
              sql`jsonb_path_exists(${members.worksOnBefore}, '$[*].until ? (@ < $first)', jsonb_build_object('first', ${firstKeptDay(now)}))`,
            ),
          )
          .returning({ id: members.userId }),
        await session
          .update(teams)
          .set({ daysOff: withoutPast(teams.daysOff, now) })
          .where(hasPast(teams.daysOff, now))
          .returning({ id: teams.id }),
        await deleteSome(
          seenEvents,
          seenEvents.eventId,
          lt(seenEvents.seenAt, subHours(now, EVENTS_REMEMBERED_HOURS)),
        ),
        await session
          .delete(messageRemovals)
          .where(lt(messageRemovals.createdAt, subDays(now, REMOVALS_TRIED_DAYS)))
          .returning({ id: messageRemovals.id }),
        await session
          .delete(posts)
          .where(and(isOfNoTeam, lt(posts.createdAt, subDays(now, REMOVALS_TOLD_DAYS))))
          .returning({ id: posts.id }),
        await session
          .delete(installAttempts)
          .where(lt(installAttempts.expiresAt, now))
          .returning({ id: installAttempts.stateHash }),
        await session
          .delete(pastChanges)
          .where(sql`(${pastChanges.workspaceId}, ${pastChanges.mark}) in (${overtakenChanges(now, limit)})`)
          .returning({ id: pastChanges.mark }),
        await session
          .delete(visits)
          .where(sql`(${visits.workspaceId}, ${visits.userId}) in (${oldVisitsOfStrangers(now, limit)})`)
          .returning({ id: visits.userId }),
      ];
      return gone.reduce((sum, { length }) => sum + length, 0);
    },
  };
}

/** Everything of a sprint but its totals. */
async function deleteDetails(session: SqlSession, sprintId: string): Promise<void> {
  const ofSprint = session.select({ id: cards.id }).from(cards).where(eq(cards.sprintId, sprintId));
  await session.delete(prompts).where(eq(prompts.sprintId, sprintId));
  await session.execute(sql`update ${posts} set sprint_id = other.sprint_id from ${prompts} as other
    where ${posts.sprintId} = ${sprintId}
      and ${posts.id} in (other.post_id, other.reminder_post_id, other.last_call_post_id)`);
  await session.delete(posts).where(eq(posts.sprintId, sprintId));
  await session.delete(answers).where(inArray(answers.cardId, ofSprint));
  await session.delete(cardChanges).where(inArray(cardChanges.cardId, ofSprint));
  await session.delete(planChanges).where(eq(planChanges.sprintId, sprintId));
  await session.delete(cardOwners).where(inArray(cardOwners.cardId, ofSprint));
  await session.delete(cards).where(eq(cards.sprintId, sprintId));
  const isOfSprint = sql`jsonb_build_array(jsonb_build_object('sprintId', ${sprintId}::text))`;
  await session
    .update(members)
    .set({
      guestIn: sql`(select coalesce(jsonb_agg(stay), '[]') from jsonb_array_elements(${members.guestIn}) as stay
        where stay ->> 'sprintId' <> ${sprintId})`,
    })
    .where(sql`${members.guestIn} @> ${isOfSprint}`);
}

/** The latest of a workspace stays, for it is what its version is made of; of several in one millisecond, one. */
function overtakenChanges(now: Date, limit: number) {
  return sql`select old.workspace_id, old.mark from loadline.past_changes as old
    where old.changed_at < ${subHours(now, CHANGES_KEPT_HOURS).toISOString()}::timestamptz and exists (
      select from loadline.past_changes as later
      where later.workspace_id = old.workspace_id
        and (later.changed_at, later.mark) > (old.changed_at, old.mark))
    limit ${limit}`;
}

function oldVisitsOfStrangers(now: Date, limit: number) {
  return sql`select v.workspace_id, v.user_id from loadline.visits as v
    where greatest(v.home_opened_at, v.welcomed_at) < ${subMonths(now, VISITS_KEPT_MONTHS).toISOString()}::timestamptz
      and not exists (select from loadline.teams as t left join loadline.members as m on m.team_id = t.id
        where t.workspace_id = v.workspace_id
          and (t.product_owner_id = v.user_id or (m.user_id = v.user_id and m.is_active)))
    limit ${limit}`;
}

/** People who left a team that keeps details for a time only, and of whom none are left. */
function membersOfWhomNothingIsLeft(limit: number) {
  const onCards = (table: string, column: string) =>
    sql.raw(`exists (select from loadline.${table} as said join loadline.cards as c on c.id = said.card_id
      join loadline.sprints as s on s.id = c.sprint_id where s.team_id = m.team_id and said.${column} = m.user_id)`);
  return sql`select m.team_id, m.user_id from loadline.members as m join loadline.teams as t on t.id = m.team_id
    where not m.is_active and t.retention_months is not null and t.product_owner_id is distinct from m.user_id
      and m.guest_in = '[]'
      and not ${onCards('answers', 'member_id')} and not ${onCards('card_changes', 'member_id')}
      and not ${onCards('card_changes', 'user_id')}
      and not ${onCards('card_owners', 'user_id')}
      and not exists (select from loadline.cards as c join loadline.sprints as s on s.id = c.sprint_id
        where s.team_id = m.team_id and c.added_by = m.user_id)
      and not exists (select from loadline.plan_changes as c join loadline.sprints as s on s.id = c.sprint_id
        where s.team_id = m.team_id and c.changed_by = m.user_id)
      and not exists (select from loadline.sprints as s
        where s.team_id = m.team_id and s.goal_said_by = m.user_id)
      and not exists (select from loadline.experiments as e
        where e.team_id = m.team_id and (e.begun_by = m.user_id or e.ended_by = m.user_id))
      and not exists (select from loadline.prompts as p join loadline.sprints as s on s.id = p.sprint_id
        where s.team_id = m.team_id and p.user_id = m.user_id)
      and not exists (select from loadline.plan_drafts as d
        where d.team_id = m.team_id and d.user_id = m.user_id)
    limit ${limit}`;
}
