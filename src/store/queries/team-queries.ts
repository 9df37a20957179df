/** Reads and writes teams and their members. Decides nothing: who may do what is the use cases' business. */
import { and, asc, eq, inArray, isNull, sql } from 'drizzle-orm';
import type { TeamReading, TeamWriting } from '../../app/ports/teams.ts';
import { Refusal } from '../../app/refusal.ts';
import { mapSettings, SETTING_NAMES, type TeamSettings } from '../../app/team/settings.ts';
import type { Member, Team } from '../../app/team/team.ts';
import { THRESHOLD_NAMES, type Thresholds, thresholdsFrom } from '../../sprint/thresholds.ts';
import { members, teams } from '../schema.ts';
import { SQL_STATE, sqlErrorOf } from '../sql-error.ts';
import type { SqlSession } from './sql-session.ts';

export function teamOf(row: typeof teams.$inferSelect): Team {
  return {
    id: row.id,
    workspaceId: row.workspaceId,
    channelId: row.channelId,
    name: row.name,
    timeZone: row.timeZone,
    promptAt: row.promptAt,
    workingDays: row.workingDays,
    daysOff: row.daysOff,
    productOwnerId: row.productOwnerId ?? undefined,
    ownerGetsVerdicts: row.ownerGetsVerdicts,
    sharedChannelId: row.sharedChannelId ?? undefined,
    baselineSprintId: row.baselineSprintId ?? undefined,
    baselineRule: row.baselineRule,
    thresholds: thresholdsFrom((name) => row[name] ?? undefined),
    endedAt: row.endedAt ?? undefined,
    resumedAt: row.resumedAt ?? undefined,
    ...settingsIn(row),
  };
}

/** The columns of settings or thresholds: one that a team may leave open is null then. */
type ColumnsOf<Values> = {
  readonly [Name in keyof Values]: undefined extends Values[Name]
    ? Exclude<Values[Name], undefined> | null
    : Values[Name];
};
type SettingColumns = ColumnsOf<TeamSettings>;

/** A value that is open is null in its column. */
function columnsOf<Values extends object>(
  names: readonly (keyof Values)[],
  values: Values,
): ColumnsOf<Values> {
  return Object.fromEntries(names.map((name) => [name, values[name] ?? null])) as ColumnsOf<Values>;
}

function settingsIn(columns: SettingColumns): TeamSettings {
  return mapSettings((_, name) => columns[name] ?? undefined);
}

/** In order of name. */
export function membersOf(rows: readonly (typeof members.$inferSelect)[]): Member[] {
  return rows
    .map(
      ({
        teamId: _,
        worksOn,
        promptAt,
        promptTimeZone,
        digestAt,
        mayFacilitate,
        joinedOn,
        leftOn,
        ...member
      }): Member => ({
        ...member,
        mayFacilitate: mayFacilitate ? undefined : false,
        worksOn: worksOn ?? undefined,
        ownPrompt:
          promptAt === null || promptTimeZone === null
            ? undefined
            : { at: promptAt, timeZone: promptTimeZone },
        digestAt: digestAt ?? undefined,
        joinedOn: joinedOn ?? undefined,
        leftOn: leftOn ?? undefined,
      }),
    )
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.userId < b.userId ? -1 : 1));
}

function rowOf(team: Team): Omit<typeof teams.$inferInsert, 'createdAt'> {
  const { workingDays, thresholds, productOwnerId, sharedChannelId, baselineSprintId, ...same } = team;
  return {
    ...same,
    ...columnsOf<Thresholds>(THRESHOLD_NAMES, thresholds),
    ...columnsOf<TeamSettings>(SETTING_NAMES, team),
    workingDays: [...workingDays],
    productOwnerId: productOwnerId ?? null,
    sharedChannelId: sharedChannelId ?? null,
    baselineSprintId: baselineSprintId ?? null,
    endedAt: team.endedAt ?? null,
    resumedAt: team.resumedAt ?? null,
  };
}

export function teamReading(session: SqlSession): TeamReading {
  return {
    async teamById(teamId) {
      const [row] = await session.select().from(teams).where(eq(teams.id, teamId));
      return row && teamOf(row);
    },

    async teamByChannel(workspaceId, channelId) {
      const [row] = await session
        .select()
        .from(teams)
        .where(and(eq(teams.workspaceId, workspaceId), eq(teams.channelId, channelId)));
      return row && teamOf(row);
    },

    async teamsOf(actor) {
      const rows = await session
        .select({ team: teams })
        .from(teams)
        .innerJoin(members, eq(members.teamId, teams.id))
        .where(
          and(
            eq(teams.workspaceId, actor.workspaceId),
            eq(members.userId, actor.userId),
            eq(members.isActive, true),
            isNull(teams.endedAt),
          ),
        )
        .orderBy(asc(teams.name), asc(teams.id));
      return rows.map((row) => teamOf(row.team));
    },

    async teamsOwnedBy({ workspaceId, userId }) {
      const rows = await session
        .select()
        .from(teams)
        .where(
          and(eq(teams.workspaceId, workspaceId), eq(teams.productOwnerId, userId), isNull(teams.endedAt)),
        )
        .orderBy(asc(teams.name), asc(teams.id));
      return rows.map(teamOf);
    },

    async teamsOfWorkspace(workspaceId) {
      const rows = await session
        .select()
        .from(teams)
        .where(eq(teams.workspaceId, workspaceId))
        .orderBy(asc(teams.id));
      return rows.map(teamOf);
    },

    async membersOf(teamId) {
      return membersOf(await session.select().from(members).where(eq(members.teamId, teamId)));
    },

    async peopleOf(teamIds) {
      if (teamIds.length === 0) return new Map();
      const rows = await session
        .select()
        .from(members)
        .where(and(inArray(members.teamId, [...teamIds]), eq(members.isActive, true)));
      const byTeam = Map.groupBy(rows, (row) => row.teamId);
      return new Map(teamIds.map((teamId) => [teamId, membersOf(byTeam.get(teamId) ?? [])]));
    },
  };
}

/** Another channel is open, and a team that is taken back has as long to find one as any other. */
const STILL_CLOSED = sql`case when ${teams.channelId} = excluded.channel_id
  and ${teams.endedAt} is not distinct from excluded.ended_at then ${teams.channelClosedAt} end`;

export function teamWriting(session: SqlSession): TeamWriting {
  async function nameOfTeamIn(workspaceId: string, channelId: string): Promise<string> {
    const [row] = await session
      .select({ name: teams.name })
      .from(teams)
      .where(and(eq(teams.workspaceId, workspaceId), eq(teams.channelId, channelId)));
    return row?.name ?? '';
  }

  return {
    async save(team) {
      const row = rowOf(team);
      try {
        // A savepoint, so that the name of the other team can still be read after the refusal.
        await session.transaction((savepoint) =>
          savepoint
            .insert(teams)
            .values(row)
            .onConflictDoUpdate({ target: teams.id, set: { ...row, channelClosedAt: STILL_CLOSED } }),
        );
      } catch (error) {
        const refused = sqlErrorOf(error);
        if (
          refused?.sqlState !== SQL_STATE.uniqueViolation ||
          refused.constraint !== 'teams_channel_unique'
        ) {
          throw error;
        }
        throw new Refusal('channel-has-a-team', {
          teamName: await nameOfTeamIn(team.workspaceId, team.channelId),
        });
      }
    },

    async noteChannelClosed(teamId, at) {
      await session
        .update(teams)
        .set({ channelClosedAt: sql`coalesce(${teams.channelClosedAt}, ${at.toISOString()}::timestamptz)` })
        .where(eq(teams.id, teamId));
    },

    async noteChannelOpen(teamId) {
      await session.update(teams).set({ channelClosedAt: null }).where(eq(teams.id, teamId));
    },

    async saveMembers(teamId, saved) {
      if (saved.length === 0) return;
      await session
        .insert(members)
        .values(
          saved.map(
            ({ worksOn, ownPrompt, digestAt, joinedOn, leftOn, guestIn, worksOnBefore, ...member }) => ({
              ...member,
              guestIn: [...guestIn],
              worksOnBefore: [...worksOnBefore],
              teamId,
              worksOn: worksOn === undefined ? null : [...worksOn],
              promptAt: ownPrompt?.at ?? null,
              promptTimeZone: ownPrompt?.timeZone ?? null,
              digestAt: digestAt ?? null,
              mayFacilitate: member.mayFacilitate ?? true,
              joinedOn: joinedOn ?? null,
              leftOn: leftOn ?? null,
            }),
          ),
        )
        .onConflictDoUpdate({
          target: [members.teamId, members.userId],
          set: {
            name: sql`excluded.name`,
            isFacilitator: sql`excluded.is_facilitator`,
            isMember: sql`excluded.is_member`,
            isActive: sql`excluded.is_active`,
            worksOn: sql`excluded.works_on`,
            daysOff: sql`excluded.days_off`,
            promptAt: sql`excluded.prompt_at`,
            promptTimeZone: sql`excluded.prompt_time_zone`,
            digestAt: sql`excluded.digest_at`,
            mayFacilitate: sql`excluded.may_facilitate`,
            getsVerdicts: sql`excluded.gets_verdicts`,
            joinedOn: sql`excluded.joined_on`,
            leftOn: sql`excluded.left_on`,
            guestIn: sql`excluded.guest_in`,
            worksOnBefore: sql`excluded.works_on_before`,
          },
        });
    },
  };
}
