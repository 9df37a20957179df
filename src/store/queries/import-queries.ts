/** Prepares imports aside and brings them in. */
import { and, asc, eq, inArray, lt, sql } from 'drizzle-orm';
import type { ImportsAside, ImportWriting } from '../../app/ports/imports.ts';
import { bodiesOfWork, sprints, teams } from '../schema.ts';
import { bodyWriting } from './body-queries.ts';
import { cardWriting } from './card-queries.ts';
import { historyWriting } from './history-queries.ts';
import { retentionWriting } from './retention-queries.ts';
import { sprintWriting } from './sprint-queries.ts';
import type { SqlSession } from './sql-session.ts';
import { teamWriting } from './team-queries.ts';

/** No id of the platform's has a space. */
const NO_WORKSPACE = 'prepared imports';
/** Sprints that change teams in one statement. The embedded database holds everybody up through each. */
const SPRINTS_A_STATEMENT = 10;

export function importsAside(session: SqlSession): ImportsAside {
  return {
    async begin(asideId, team) {
      await teamWriting(session).save({
        ...team,
        id: asideId,
        workspaceId: NO_WORKSPACE,
        channelId: asideId,
        productOwnerId: undefined,
        baselineSprintId: undefined,
        // Nothing of it may be reduced meanwhile.
        retentionMonths: undefined,
      });
    },

    async put(asideId, { sprints, past, values, cards, facts, bodies, told }, byUserId, at) {
      const history = historyWriting(session);
      const cardsWriting = cardWriting(session);
      for (const sprint of sprints) await sprintWriting(session).insert({ ...sprint, teamId: asideId });
      if (cards.length > 0) await cardsWriting.insert(cards);
      await cardsWriting.insertFacts(facts);
      for (const one of past) {
        await history.savePastSprint({ ...one, teamId: asideId, workspaceId: NO_WORKSPACE });
      }
      for (const { sprintId, value } of values) {
        await history.recordValue({ sprintId, value, byUserId, at });
      }
      for (const body of bodies) await bodyWriting(session).save({ ...body, teamId: asideId });
      await bodyWriting(session).tell(told);
    },

    async takeOut(asideId) {
      const [sprint] = await session
        .select({ id: sprints.id })
        .from(sprints)
        .innerJoin(teams, eq(teams.id, sprints.teamId))
        .where(and(eq(teams.id, asideId), eq(teams.workspaceId, NO_WORKSPACE)))
        .limit(1);
      if (sprint) {
        await retentionWriting(session).removeImport(sprint.id);
        return true;
      }
      const [body] = await session
        .select({ id: bodiesOfWork.id })
        .from(bodiesOfWork)
        .innerJoin(teams, eq(teams.id, bodiesOfWork.teamId))
        .where(and(eq(teams.id, asideId), eq(teams.workspaceId, NO_WORKSPACE)))
        .limit(1);
      if (body) {
        await bodyWriting(session).remove(body.id);
        return true;
      }
      await session.delete(teams).where(and(eq(teams.id, asideId), eq(teams.workspaceId, NO_WORKSPACE)));
      return false;
    },

    async leftBefore(before) {
      const rows = await session
        .select({ id: teams.id })
        .from(teams)
        .where(and(eq(teams.workspaceId, NO_WORKSPACE), lt(teams.createdAt, before)))
        .orderBy(asc(teams.id));
      return rows.map(({ id }) => id);
    },
  };
}

export function importWriting(session: SqlSession): ImportWriting {
  return {
    async bringIn(asideId, { id: teamId, workspaceId }) {
      const rows = await session.select({ id: sprints.id }).from(sprints).where(eq(sprints.teamId, asideId));
      for (let i = 0; i < rows.length; i += SPRINTS_A_STATEMENT) {
        const ids = rows.slice(i, i + SPRINTS_A_STATEMENT).map(({ id }) => id);
        // In one statement, for each of the two refers to the other's team.
        await session.execute(sql`with moved as (
            update loadline.past_sprints set team_id = ${teamId}, workspace_id = ${workspaceId}
            where ${inArray(sql`sprint_id`, ids)})
          update loadline.sprints set team_id = ${teamId} where ${inArray(sql`id`, ids)}`);
      }
      await session.update(bodiesOfWork).set({ teamId }).where(eq(bodiesOfWork.teamId, asideId));
      await session.delete(teams).where(eq(teams.id, asideId));
      return rows.length;
    },
  };
}
