/** What the store promises of teams; run by `queries.test.ts`. */
import { expect, it } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { aMember, aSprint, aTeam, WORKSPACE } from './store-examples.ts';

export function teamQueryCases(database: () => Database): void {
  it('gives a team back as it was saved, by id and by channel', async () => {
    const team = aTeam({ productOwnerId: 'U-ola', scale: [0.5, 1, 2.5, 40] });
    await database().store.transaction(async (tx) => {
      await tx.write.teams.save(team);
      expect(await tx.read.teamById(team.id)).toEqual(team);
      expect(await tx.read.teamByChannel(WORKSPACE, team.channelId)).toEqual(team);
      expect(await tx.read.teamByChannel('W-elsewhere', team.channelId)).toBeUndefined();
      expect(await tx.read.teamById('nobody')).toBeUndefined();
    });
  });

  it('replaces the settings of a team that exists', async () => {
    const team = aTeam();
    const sprint = aSprint(team.id);
    const changed = {
      ...team,
      name: 'Pilots',
      workingDays: [7],
      closesAt: '23:59',
      baselineSprintId: sprint.id,
    };
    await database().store.transaction(async (tx) => {
      await tx.write.teams.save(team);
      await tx.write.sprints.insert(sprint);
      await tx.write.teams.save(changed);
    });
    expect(await database().store.read((read) => read.teamById(team.id))).toEqual(changed);
  });

  it('refuses a second team in a channel by name, and the transaction goes on', async () => {
    const team = aTeam({ name: 'First here' });
    await database().store.transaction(async (tx) => {
      await tx.write.teams.save(team);
      await expect(tx.write.teams.save(aTeam({ channelId: team.channelId }))).rejects.toMatchObject({
        code: 'channel-has-a-team',
        details: { teamName: 'First here' },
      });
      expect(await tx.read.teamById(team.id)).toEqual(team);
    });
  });

  it('allows the same channel id in another workspace', async () => {
    const team = aTeam();
    const elsewhere = aTeam({ channelId: team.channelId, workspaceId: 'W-elsewhere' });
    await database().store.transaction(async (tx) => {
      await tx.write.teams.save(team);
      await tx.write.teams.save(elsewhere);
      expect(await tx.read.teamByChannel('W-elsewhere', team.channelId)).toEqual(elsewhere);
    });
  });

  it('lists members by name, updates those saved again and leaves the others alone', async () => {
    const team = aTeam();
    const [zoe, ana, bo] = [
      aMember({ userId: 'U-1', name: 'Zoë' }),
      aMember({ userId: 'U-2', name: 'ana' }),
      aMember({ userId: 'U-3', name: 'Bo' }),
    ] as const;
    const left = { ...zoe, isActive: false, isFacilitator: true };
    await database().store.transaction(async (tx) => {
      await tx.write.teams.save(team);
      await tx.write.teams.saveMembers(team.id, [zoe, ana, bo]);
      await tx.write.teams.saveMembers(team.id, [left]);
      await tx.write.teams.saveMembers(team.id, []);
      expect(await tx.read.membersOf(team.id)).toEqual([ana, bo, left]);
      expect(await tx.read.peopleOf([team.id, 'nobody'])).toEqual(
        new Map([
          [team.id, [ana, bo]],
          ['nobody', []],
        ]),
      );
    });
  });

  it('lists the teams of an active member in their own workspace only', async () => {
    const [b, a, left, elsewhere] = [
      aTeam({ name: 'B' }),
      aTeam({ name: 'A' }),
      aTeam(),
      aTeam({ workspaceId: 'W-elsewhere' }),
    ] as const;
    const member = aMember({ userId: 'U-many' });
    await database().store.transaction(async (tx) => {
      for (const team of [b, a, left, elsewhere]) await tx.write.teams.save(team);
      for (const team of [b, a, elsewhere]) await tx.write.teams.saveMembers(team.id, [member]);
      await tx.write.teams.saveMembers(left.id, [{ ...member, isActive: false }]);
      expect(await tx.read.teamsOf({ workspaceId: WORKSPACE, userId: 'U-many' })).toEqual([a, b]);
    });
  });

  it('keeps one draft a team and person, until it is deleted', async () => {
    const team = aTeam();
    const draft = {
      teamId: team.id,
      name: 'Neap',
      goal: '',
      startsOn: '2026-11-02',
      endsOn: 'soon',
      closesAt: '17:00',
      awayDays: '2.5',
      cards: 'Rope, ½\n"Buoy, red"\t3',
    };
    await database().store.transaction(async (tx) => {
      await tx.write.teams.save(team);
      await tx.drafts.save(team.id, 'U-ana', { ...draft, name: 'first try' });
      await tx.drafts.save(team.id, 'U-ana', draft);
      expect(await tx.read.draftOf(team.id, 'U-ana')).toEqual(draft);
      expect(await tx.read.draftOf(team.id, 'U-bo')).toBeUndefined();
      await tx.drafts.delete(team.id, 'U-ana');
      expect(await tx.read.draftOf(team.id, 'U-ana')).toBeUndefined();
    });
  });
}
