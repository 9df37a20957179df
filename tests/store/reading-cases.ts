/** What the store promises of its reading port; run by `queries.test.ts`. */
import { sql } from 'drizzle-orm';
import { expect, it } from 'vitest';
import type { Reading } from '../../src/app/ports/store.ts';
import type { Database } from '../../src/store/database.ts';
import { locks } from '../../src/store/queries/lock-queries.ts';
import type { SqlSession } from '../../src/store/queries/sql-session.ts';
import { readingOver } from '../../src/store/queries/transaction.ts';
import { sqlErrorOf } from '../../src/store/sql-error.ts';
import { savedSprint } from './store-examples.ts';

/** In Postgres's own words; see its Appendix A. */
const READ_ONLY_TRANSACTION = '25006';

export function readingCases(database: () => Database): void {
  const readOnly = <T>(work: (session: SqlSession) => Promise<T>): Promise<T> =>
    database().session.transaction(async (tx) => {
      await tx.execute(sql`set transaction read only`);
      return work(tx as unknown as SqlSession);
    });

  it('changes nothing and holds nothing, for every question', async () => {
    const { team, sprint } = await savedSprint(database());
    const actor = { workspaceId: team.workspaceId, userId: 'U-ana' };
    const day = sprint.startsOn;
    // By type, none can be forgotten.
    const given: { readonly [Name in keyof Reading]: Parameters<Reading[Name]> } = {
      teamById: [team.id],
      teamsOfWorkspace: [team.workspaceId],
      tenants: [],
      teamsWithoutChannel: [new Date()],
      idleTeams: [new Date()],
      teamByChannel: [team.workspaceId, team.channelId],
      teamInChannel: [team.workspaceId, team.channelId],
      teamsOf: [actor],
      teamsOwnedBy: [actor],
      membersOf: [team.id],
      peopleOf: [[team.id]],
      sprintWithTeam: [sprint.id],
      sprintById: [sprint.id],
      sprintsOf: [team.id],
      openSprintsOf: [team.id],
      planChangesOf: [sprint.id],
      latestSpans: [team.id, 7],
      recordsAbout: [sprint.id, actor.userId, []],
      latestFinishedSprint: [team.id],
      nextDueAt: [],
      latestResult: [sprint.id],
      closedSprintsOf: [team.id],
      baselineOf: [team, 'none'],
      firstSprintsOf: [team.id, 'none'],
      pastSprintsOf: [team.id],
      sprintsWithoutPast: [team.id, 3],
      pastTracesOf: [team, { own: 3, others: 3 }, 0.5],
      pastTimesOfOthers: [team, 3],
      watchedSprintsOf: [team.id, 3],
      bodiesOf: [team.id],
      toldDatesOf: [team.id],
      teamIdOfBody: ['none'],
      experimentsOf: [team.id],
      teamIdOfExperiment: ['none'],
      pastVersion: [team.workspaceId],
      recordsOf: [sprint.id],
      recordsOfMany: [[sprint.id, 'another']],
      ownerMovesOf: [sprint.id],
      promptOf: [sprint.id, actor.userId, day],
      promptsOfPerson: [sprint.id, actor.userId],
      promptsOf: [[{ sprintId: sprint.id, day }]],
      promptsByPost: [team.workspaceId, { channelId: team.channelId, ts: '1.0' }],
      promptsOfPost: ['post'],
      countUnsentPosts: [],
      countHeldBack: [team.workspaceId, team.channelId],
      postById: ['nothing'],
      postAbout: [sprint.id, 'verdict'],
      postsAbout: [sprint.id, 'verdict'],
      personalSums: [actor],
      personalRecords: [actor, 'answers'],
      teamsOfPerson: [actor],
      installationOf: [team.workspaceId],
      sealedInstallations: [{ limit: 10 }],
      draftOf: [team.id, actor.userId],
      knowsEvent: ['nothing'],
      homeOpenedBy: [team.workspaceId, [actor.userId]],
    };
    await readOnly(async (session) => {
      const read = readingOver(session) as unknown as Record<
        string,
        (...given: unknown[]) => Promise<unknown>
      >;
      expect(Object.keys(read).sort()).toEqual(Object.keys(given).sort());
      for (const [name, parameters] of Object.entries(given)) {
        const outcome = read[name]?.(...parameters).then(
          () => 'only read',
          (error: unknown) => error,
        );
        expect(await outcome, name).toBe('only read');
      }
    });
  });

  it('would be found out if it held anything', async () => {
    const { team } = await savedSprint(database());
    const held = readOnly((session) => locks(session).team(team.id));
    await expect(held.catch((error: unknown) => sqlErrorOf(error)?.sqlState)).resolves.toBe(
      READ_ONLY_TRANSACTION,
    );
  });

  it('is all that work gets which only reads', async () => {
    const { sprint } = await savedSprint(database());
    const { store } = database();
    expect(await store.read((read) => read.sprintById(sprint.id))).toEqual(sprint);
    expect(await store.read(async (read) => Object.keys(read))).not.toContain('write');
  });
}
