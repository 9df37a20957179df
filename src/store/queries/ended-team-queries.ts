/**
 * Teams that were ended, by somebody or because their workspace removed the bot: which of them are due for what, and the
 * erasure of a team or of a whole workspace. Decides nothing of how long: `app/privacy` says so.
 */
import {
  and,
  asc,
  eq,
  getTableColumns,
  getTableName,
  inArray,
  is,
  isNotNull,
  isNull,
  lte,
  type SQL,
  sql,
} from 'drizzle-orm';
import { type PgColumn, PgTable } from 'drizzle-orm/pg-core';
import { asidePrefix } from '../../app/ports/imports.ts';
import type { EndedSprint, Portion } from '../../app/ports/locks.ts';
import type { EndedTeamReading, ErasedRows, RetentionWriting, Tenant } from '../../app/ports/teams.ts';
import { DAYS_UNTIL_FINAL, MONTHS_KEPT_AFTER_END } from '../../app/privacy/promised-times.ts';
import type { Team } from '../../app/team/team.ts';
import { QUEUE_SCHEMA } from '../queue/job-sender.ts';
import * as schema from '../schema.ts';
import {
  answers,
  bodiesOfWork,
  cardChanges,
  cardOwners,
  cards,
  installations,
  messageRemovals,
  pastChanges,
  planChanges,
  posts,
  prompts,
  recordedValues,
  seenEvents,
  sprintResults,
  sprints,
  teams,
  toldDates,
  visits,
  watches,
} from '../schema.ts';
import { isNoneOf, sprintOf } from './sprint-queries.ts';
import type { SqlSession } from './sql-session.ts';
import { teamOf } from './team-queries.ts';

/** Since when nobody of the team is asked any more; null while it goes on. LEAST passes over nulls. */
const endOfTeam = sql<Date>`least(${teams.endedAt}, (select ${installations.revokedAt} from ${installations}
  where ${installations.workspaceId} = ${teams.workspaceId}))`.mapWith(teams.endedAt);

function instantOf(at: Date): SQL {
  return sql`${at.toISOString()}::timestamptz`;
}

/** What was ended by mistake is taken back within this time, as if nothing had happened. */
function isFinal(now: Date): SQL {
  return sql`${endOfTeam} <= ${instantOf(now)} - make_interval(days => ${DAYS_UNTIL_FINAL})`;
}

/**
 * For how many months the team keeps details; null: without end. That it does so until a facilitator chooses can't hold for
 * a team of which nobody chooses any more.
 */
export function monthsKept(now: Date): SQL {
  return sql`coalesce(${teams.retentionMonths}, case when ${isFinal(now)} then ${MONTHS_KEPT_AFTER_END}::integer end)`;
}

/** Open sprints of teams that ended some time ago. */
export async function claimedSprintsOfEnded(
  session: SqlSession,
  now: Date,
  { limit, except }: Portion,
): Promise<EndedSprint[]> {
  const rows = await session
    .select({ sprint: sprints, team: teams, endedAt: endOfTeam })
    .from(sprints)
    .innerJoin(teams, eq(teams.id, sprints.teamId))
    .where(and(eq(sprints.state, 'open'), isFinal(now), isNoneOf(sprints.id, except)))
    .orderBy(asc(sprints.id))
    .limit(limit)
    .for('no key update', { skipLocked: true });
  return rows.map(({ sprint, team, endedAt }) => ({ sprint: sprintOf(sprint), team: teamOf(team), endedAt }));
}

/** Teams that ended longer ago than they are kept. */
export async function claimedTeamsToErase(
  session: SqlSession,
  now: Date,
  { limit, except }: Portion,
): Promise<Team[]> {
  const months = sql`coalesce(${teams.retentionMonths}, ${MONTHS_KEPT_AFTER_END}::integer)`;
  const rows = await session
    .select()
    .from(teams)
    .where(
      and(
        isFinal(now),
        sql`${endOfTeam} <= ${instantOf(now)} - make_interval(months => ${months})`,
        isNoneOf(teams.id, except),
      ),
    )
    .orderBy(asc(teams.id))
    .limit(limit)
    .for('update', { skipLocked: true });
  return rows.map(teamOf);
}

async function teamsWithoutChannel(session: SqlSession, closedBefore: Date): Promise<Team[]> {
  const rows = await session
    .select()
    .from(teams)
    .where(and(isNull(teams.endedAt), lte(teams.channelClosedAt, closedBefore), isServedWorkspace))
    .orderBy(asc(teams.id));
  return rows.map(teamOf);
}

async function idleTeams(session: SqlSession, since: Date): Promise<Team[]> {
  const rows = await session
    .select()
    .from(teams)
    .where(
      and(
        isNull(teams.endedAt),
        isNotNull(teams.retentionMonths),
        sql`coalesce(${teams.resumedAt}, ${teams.createdAt}) <= ${instantOf(since)}`,
        isServedWorkspace,
        sql`not exists (select from ${sprints} where ${sprints.teamId} = ${teams.id}
          and (${sprints.state} = 'open' or ${sprints.endsOn} > ${since.toISOString().slice(0, 10)}::date
            or ${sprints.createdAt} > ${instantOf(since)}))`,
      ),
    )
    .orderBy(asc(teams.id));
  return rows.map(teamOf);
}

/** Of a workspace that removed the bot nothing is asked. */
const isServedWorkspace = sql`not exists (select from ${installations}
  where ${installations.workspaceId} = ${teams.workspaceId} and ${installations.revokedAt} is not null)`;

async function tenants(session: SqlSession): Promise<Tenant[]> {
  const result = await session.execute(sql`
    select known.workspace_id, i.workspace_name as name,
      (select count(*)::integer from loadline.teams as t where t.workspace_id = known.workspace_id) as teams
    from (select workspace_id from loadline.teams union select workspace_id from loadline.installations
      union select workspace_id from loadline.posts union select workspace_id from loadline.visits) as known
    left join loadline.installations as i on i.workspace_id = known.workspace_id order by 1`);
  return listed<{ workspace_id: string; name: string | null; teams: number }>(result).map(
    ({ workspace_id, name, teams: teamCount }) => ({
      workspaceId: workspace_id,
      workspaceName: name ?? undefined,
      teamCount,
    }),
  );
}

/** The rows of a raw statement, from either driver. */
function listed<Row>(result: unknown): Row[] {
  return (Array.isArray(result) ? result : (result as { rows: unknown[] }).rows) as Row[];
}

const GOES_BY_ITSELF = new Set<PgTable>([posts, sprints]);

export function endedTeamReading(session: SqlSession): EndedTeamReading {
  return {
    tenants: () => tenants(session),
    teamsWithoutChannel: (closedBefore) => teamsWithoutChannel(session, closedBefore),
    idleTeams: (since) => idleTeams(session, since),
  };
}

/** Tables of rows that belong to a team and to nothing else that goes before it. One that is added later is among them. */
const HANGING_ON_TEAMS = Object.values(schema).flatMap((table) => {
  if (!is(table, PgTable) || GOES_BY_ITSELF.has(table)) return [];
  const { teamId } = getTableColumns(table) as Partial<Record<string, PgColumn>>;
  return teamId ? [{ table, column: teamId }] : [];
});

type TeamErasure = Pick<RetentionWriting, 'eraseTeam' | 'eraseWorkspace' | 'dropEmptyWorkspaces'>;

export function teamErasure(session: SqlSession): TeamErasure {
  /** @returns how many there were */
  async function gone(table: PgTable, which: SQL | undefined): Promise<number> {
    const rows = await session.delete(table).where(which).returning({ one: sql`1` });
    return rows.length;
  }

  /** What became of a delivery, and that it is still to be made. */
  async function goneJobs(ofPosts: SQL): Promise<number> {
    const result = await session.execute(sql`delete from ${sql.identifier(QUEUE_SCHEMA)}.job
      where data ->> 'postId' in (select id from loadline.posts where ${ofPosts}) returning 1 as one`);
    return listed(result).length;
  }

  async function eraseOne(teamId: string): Promise<Record<string, number>> {
    await session.execute(sql`select loadline.begin_forgetting(${teamId})`);
    const ofTeam = session.select({ id: sprints.id }).from(sprints).where(eq(sprints.teamId, teamId));
    const ofSprints = session.select({ id: cards.id }).from(cards).where(inArray(cards.sprintId, ofTeam));
    const erased: Record<string, number> = {};
    erased.prompts = await gone(prompts, inArray(prompts.sprintId, ofTeam));
    // One that also asks about another team's sprint is about that one from now on.
    await session.execute(sql`update ${posts} set sprint_id = other.sprint_id from ${prompts} as other
        where ${inArray(posts.sprintId, ofTeam)}
          and ${posts.id} in (other.post_id, other.reminder_post_id, other.last_call_post_id)`);
    const ofPosts = sql`(team_id = ${teamId} or sprint_id in (select id from loadline.sprints where team_id = ${teamId}))`;
    erased.job = await goneJobs(ofPosts);
    erased.posts = await gone(posts, ofPosts);
    erased.answers = await gone(answers, inArray(answers.cardId, ofSprints));
    erased.card_changes = await gone(cardChanges, inArray(cardChanges.cardId, ofSprints));
    erased.plan_changes = await gone(planChanges, inArray(planChanges.sprintId, ofTeam));
    erased.card_owners = await gone(cardOwners, inArray(cardOwners.cardId, ofSprints));
    erased.cards = await gone(cards, inArray(cards.sprintId, ofTeam));
    erased.watches = await gone(watches, inArray(watches.sprintId, ofTeam));
    erased.recorded_values = await gone(recordedValues, inArray(recordedValues.sprintId, ofTeam));
    erased.sprint_results = await gone(sprintResults, inArray(sprintResults.sprintId, ofTeam));
    const bodies = session
      .select({ id: bodiesOfWork.id })
      .from(bodiesOfWork)
      .where(eq(bodiesOfWork.teamId, teamId));
    erased.told_dates = await gone(toldDates, inArray(toldDates.bodyId, bodies));
    for (const { table, column } of HANGING_ON_TEAMS) {
      erased[getTableName(table)] = await gone(table, eq(column, teamId));
    }
    erased.seen_events = await gone(seenEvents, sql`position(${` ${teamId} `} in ${seenEvents.eventId}) > 0`);
    await session.update(teams).set({ baselineSprintId: null }).where(eq(teams.id, teamId));
    erased.sprints = await gone(sprints, eq(sprints.teamId, teamId));
    erased.teams = await gone(teams, eq(teams.id, teamId));
    return erased;
  }

  return {
    async eraseTeam(teamId) {
      const prepared = await session
        .select({ id: teams.id })
        .from(teams)
        .where(sql`starts_with(${teams.id}, ${asidePrefix(teamId)})`);
      const erased = await eraseOne(teamId);
      for (const { id } of prepared) {
        for (const [table, count] of Object.entries(await eraseOne(id)))
          erased[table] = (erased[table] ?? 0) + count;
      }
      return erased;
    },

    async eraseWorkspace(workspaceId) {
      const jobs = await goneJobs(sql`workspace_id = ${workspaceId}`);
      return {
        job: jobs,
        message_removals: await gone(messageRemovals, eq(messageRemovals.workspaceId, workspaceId)),
        posts: await gone(posts, eq(posts.workspaceId, workspaceId)),
        visits: await gone(visits, eq(visits.workspaceId, workspaceId)),
        past_changes: await gone(pastChanges, eq(pastChanges.workspaceId, workspaceId)),
        installations: await gone(installations, eq(installations.workspaceId, workspaceId)),
      } satisfies ErasedRows;
    },

    async dropEmptyWorkspaces(removedBefore) {
      const withoutTeams = sql`select i.workspace_id from loadline.installations as i
        where i.revoked_at <= ${instantOf(removedBefore)}
          and not exists (select from loadline.teams as t where t.workspace_id = i.workspace_id)`;
      const isEmpty = (workspaceId: SQL) => sql`${workspaceId} in (${withoutTeams})`;
      const visitsGone = await gone(visits, isEmpty(sql`${visits.workspaceId}`));
      const postsGone = await gone(posts, isEmpty(sql`${posts.workspaceId}`));
      const installationsGone = await gone(installations, isEmpty(sql`${installations.workspaceId}`));
      // Marks of a workspace in which no team has a past.
      const marksGone = await gone(
        pastChanges,
        sql`${pastChanges.changedAt} < ${instantOf(removedBefore)} and not exists (select from loadline.teams as t
          where t.workspace_id = ${pastChanges.workspaceId})`,
      );
      return visitsGone + postsGone + installationsGone + marksGone;
    },
  };
}
