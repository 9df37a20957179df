/** Nothing is kept for ever once nobody uses it: teams that ended, workspaces that removed the bot. On both kinds of database. */
import { sql } from 'drizzle-orm';
import { beforeEach, describe, expect, test } from 'vitest';
import { endForgottenTeams, letGoOfOld } from '../../../src/app/privacy/ended-teams.ts';
import { erasePerson } from '../../../src/app/privacy/erase-person.ts';
import { endTeam, resumeTeam } from '../../../src/app/team/end-team.ts';
import type { Team } from '../../../src/app/team/team.ts';
import { watchChannel } from '../../../src/app/team/watch-channel.ts';
import { anInstallation } from '../../store/store-examples.ts';
import {
  actorOf,
  CHANNEL,
  directMessagesOf,
  Harness,
  PEOPLE,
  refusalOf,
  WORKSPACE,
} from '../../support/app-harness.ts';
import { describeOnPostgresFirst, emptyDatabase } from '../../support/databases.ts';
import { rowsOf } from '../../support/rows-of.ts';
import { wholeDatabase } from '../../support/whole-database.ts';
import { type BusyTeam, busyTeam, NOW } from './busy-team.ts';

const ana = actorOf('ana');
/** Tables that are nobody's. */
const NOT_OF_TEAMS = /^(drizzle|pgboss)\.|^loadline\.(migrations|seen_events) /;

describeOnPostgresFirst('a team that nobody uses any more', (_database, kind) => {
  let h: Harness;
  let busy: BusyTeam;
  beforeEach(async () => {
    h = new Harness(await emptyDatabase(kind), NOW);
    busy = await busyTeam(h);
    await h.drain();
    h.messenger.messages.length = 0;
  });

  /** What the clock does on that day, in all batches. */
  async function letGo(now: string): Promise<void> {
    h.set(now);
    while ((await letGoOfOld(h.deps)) > 0);
  }

  async function everything(): Promise<string[]> {
    return (await wholeDatabase(h.database)).filter((line) => !NOT_OF_TEAMS.test(line));
  }

  const stateOf = async (sprintId: string): Promise<string> => (await h.sprint(sprintId))?.state;
  const team = async (): Promise<Team | undefined> => h.read((read) => read.teamById(busy.team.id));
  const change = async (change: Partial<Team>): Promise<void> => {
    // Read before the writing begins: the embedded database has one connection.
    const before = (await team()) as Team;
    await h.write((tx) => tx.write.teams.save({ ...before, ...change }));
  };
  const months = (retentionMonths: number | undefined): Promise<void> => change({ retentionMonths });

  const remove = (at: string) =>
    h.write(async (tx) => {
      await tx.write.installations.save(
        anInstallation({ workspaceId: WORKSPACE, installedBy: PEOPLE.ana, installedAt: new Date(NOW) }),
      );
      await tx.write.installations.revoke(WORKSPACE, new Date(at));
    });

  describe('because its workspace removed the bot', () => {
    beforeEach(() => remove('2026-11-25T12:00:00Z'));

    test('waits a month, then its open sprint is over, and nobody hears of it', async () => {
      await letGo('2026-12-25T11:00:00Z');
      expect(await stateOf(busy.openId)).toBe('open');
      await letGo('2026-12-25T13:00:00Z');
      // It had been cut short: its numbers are kept and marked, and no statistics read them.
      expect(await stateOf(busy.openId)).toBe('cancelled');
      const past = await h.read((read) => read.pastSprintsOf(busy.team.id));
      expect(past.map(({ sprintId }) => sprintId)).not.toContain(busy.openId);
      expect(await h.owedKinds()).not.toContain('verdict');
    });

    test('goes on as if nothing had happened when the bot is back within that month', async () => {
      h.set('2026-12-20T12:00:00Z');
      await h.write((tx) => tx.write.installations.forget(WORKSPACE));
      await letGo('2026-12-20T12:00:00Z');
      await h.pass('2026-12-20T12:00:00Z');
      expect(await stateOf(busy.openId)).toBe('closed');
      expect(h.kindsTo(CHANNEL)).toContain('verdict');
    });

    test('is reduced by its retention, then erased by it: nothing of the workspace is left', async () => {
      await letGo('2027-12-13T12:00:00Z');
      expect((await everything()).some((line) => line.includes('"reduced_at": "'))).toBe(false);
      await letGo('2027-12-24T12:00:00Z');
      expect((await everything()).filter((line) => line.includes('"reduced_at": "')).length).toBeGreaterThan(
        1,
      );
      expect(await team()).toBeDefined();
      await letGo('2027-12-25T13:00:00Z');
      expect(await team()).toBeUndefined();
      expect(await everything()).toEqual([]);
    });

    test('is erased after 13 months even if it was to keep everything: nobody is there to choose', async () => {
      await months(undefined);
      await letGo('2026-12-20T12:00:00Z');
      await letGo('2027-12-24T12:00:00Z');
      expect(await team()).toBeDefined();
      await letGo('2027-12-25T13:00:00Z');
      expect(await everything()).toEqual([]);
    });
  });

  describe('because a facilitator ended it', () => {
    const end = () => endTeam(h.deps, ana, { teamId: busy.team.id });

    test('is told to the channel, and to nobody else', async () => {
      h.set('2026-11-25T07:00:00Z');
      await end();
      await h.pass('2026-11-25T09:15:00Z');
      await h.pass('2026-11-26T12:15:00Z');
      expect(h.messenger.messages.map(({ to, content }) => ({ to, ...content }))).toMatchObject([
        {
          to: { channelId: CHANNEL.channelId },
          kind: 'team-ended',
          byUserId: PEOPLE.ana,
          erasedOn: '2027-12-25',
        },
      ]);
    });

    test('has its facilitators hear neither of a channel that is closed nor of somebody who is erased', async () => {
      h.directory.channels.set(CHANNEL.channelId, { name: 'tugs', isArchived: true, isShared: false });
      h.messenger.failNext({ on: 'post', kind: 'refused', because: 'place-gone', code: 'is_archived' });
      h.set('2026-11-25T07:00:00Z');
      await end();
      await h.drain();
      await erasePerson(h.deps, actorOf('chi'));
      await h.drain();
      expect(h.messenger.messages).toEqual([]);
    });

    test('takes no answer any more, and says until when it can be taken back', async () => {
      h.set('2026-11-25T07:00:00Z');
      await end();
      const asked = h.answer('ben', busy.openId, '2026-11-24', { 1: { left: '3' } });
      expect(await refusalOf(asked, 'team-ended')).toEqual({ teamName: 'Tugboats', erasedOn: '2027-12-25' });
    });

    test('only a facilitator may, of what is theirs', async () => {
      const byChi = endTeam(h.deps, actorOf('chi'), { teamId: busy.team.id });
      await refusalOf(byChi, 'not-a-facilitator');
      const fromOutside = endTeam(h.deps, actorOf('ana', 'W2'), { teamId: busy.team.id });
      await refusalOf(fromOutside, 'no-team-of-yours');
      expect((await team())?.endedAt).toBeUndefined();
    });

    test.each([
      ['in its channel', CHANNEL],
      ['in direct messages', directMessagesOf('ana')],
    ])(
      'is taken back within the month, %s: its sprint goes on, and everybody is asked again',
      async (_, place) => {
        h.set('2026-11-25T07:00:00Z');
        await end();
        await h.drain();
        await letGo('2026-11-30T07:00:00Z');
        expect(await resumeTeam(h.deps, ana, place)).toMatchObject({ sprintName: 'Quay 3' });
        await h.pass('2026-11-30T09:15:00Z');
        expect(h.kindsTo(CHANNEL)).toEqual(['team-ended', 'team-resumed']);
        expect(h.kindsTo('ben')).toEqual(['daily-prompt']);
        await h.pass('2026-12-04T17:00:00Z');
        expect(await stateOf(busy.openId)).toBe('closed');
      },
    );

    test('is taken back later without its sprint, until everything is erased', async () => {
      await refusalOf(resumeTeam(h.deps, ana, CHANNEL), 'team-not-ended');
      h.set('2026-11-25T12:00:00Z');
      await end();
      await letGo('2027-12-25T11:00:00Z');
      expect(await resumeTeam(h.deps, ana, CHANNEL)).toMatchObject({ sprintName: undefined });
      await letGo('2028-01-30T13:00:00Z');
      expect((await h.read((read) => read.pastSprintsOf(busy.team.id))).length).toBe(1);
      h.set('2028-02-01T12:00:00Z');
      await end();
      await letGo('2029-03-01T13:00:00Z');
      await refusalOf(resumeTeam(h.deps, ana, CHANNEL), 'no-team-here');
      expect(await everything()).toEqual([]);
    });

    test('that ended on the last day of its sprint keeps that sprint as a closed one', async () => {
      h.set('2026-12-04T12:00:00Z');
      await end();
      await letGo('2027-01-03T13:00:00Z');
      expect(await stateOf(busy.openId)).toBe('closed');
    });
  });

  describe('because its channel is closed', () => {
    const close = async () => {
      h.directory.channels.set(CHANNEL.channelId, { name: 'tugs', isArchived: true, isShared: false });
      h.set('2026-11-25T12:00:00Z');
      await watchChannel(h.deps, WORKSPACE, { kind: 'closed', channelId: CHANNEL.channelId });
    };

    test('ends after a month, by what the platform says then', async () => {
      await close();
      await letGo('2026-12-25T11:00:00Z');
      expect((await team())?.endedAt).toBeUndefined();
      await letGo('2026-12-25T13:00:00Z');
      expect((await team())?.endedAt).toEqual(new Date('2026-12-25T13:00:00Z'));
      await letGo('2028-01-26T13:00:00Z');
      expect(await team()).toBeUndefined();
    });

    test('goes on when the channel is open again, or while the platform does not say', async () => {
      await close();
      const { channel } = h.directory;
      h.directory.channel = () => Promise.reject(new Error('no answer'));
      await letGo('2026-12-26T13:00:00Z');
      h.directory.channel = channel;
      h.directory.channels.delete(CHANNEL.channelId);
      await letGo('2026-12-27T13:00:00Z');
      h.directory.channels.set(CHANNEL.channelId, undefined);
      await letGo('2026-12-28T13:00:00Z');
      expect((await team())?.endedAt).toBeUndefined();
    });

    test('goes on in another channel', async () => {
      await close();
      await change({ channelId: 'C2' });
      h.directory.channels.set('C2', { name: 'quay', isArchived: true, isShared: false });
      await letGo('2026-12-28T13:00:00Z');
      expect((await team())?.endedAt).toBeUndefined();
    });
  });

  describe('because it has planned nothing for long', () => {
    beforeEach(async () => {
      await h.pass('2026-12-04T17:00:00Z');
      // Set up when the harness's clock says, not when the test runs.
      await h.database.session.execute(sql`update loadline.teams set created_at = ${NOW}::timestamptz`);
      await h.database.session.execute(sql`update loadline.sprints set created_at = ${NOW}::timestamptz`);
      h.messenger.messages.length = 0;
    });

    test('ends two years after its last sprint; the channel hears of it, and it can be taken back', async () => {
      await letGo('2028-12-03T12:00:00Z');
      expect((await team())?.endedAt).toBeUndefined();
      h.set('2028-12-04T12:00:00Z');
      await endForgottenTeams(h.deps);
      await h.drain();
      expect(h.messagesTo(CHANNEL)).toMatchObject([{ kind: 'team-idle', erasedOn: '2030-01-04' }]);
      await letGo('2030-01-04T13:00:00Z');
      expect(await team()).toBeUndefined();
    });

    test('goes on if it was to keep everything', async () => {
      await months(undefined);
      await letGo('2038-12-04T12:00:00Z');
      expect((await team())?.endedAt).toBeUndefined();
    });
  });

  test('a draft goes after 13 months where everything else is kept', async () => {
    await months(undefined);
    const drafts = async () => (await rowsOf(h.database, sql`select from loadline.plan_drafts`)).length;
    const saved = sql`update loadline.plan_drafts set saved_at = '2026-11-23T08:00:00Z'`;
    await h.database.session.execute(saved);
    await letGo('2027-12-23T07:00:00Z');
    expect(await drafts()).toBe(2);
    await letGo('2027-12-23T09:00:00Z');
    expect(await drafts()).toBe(0);
  });

  test('an attempt to install that nobody finished is forgotten', async () => {
    await h.database.session.execute(sql`insert into loadline.install_attempts (state_hash, browser_hash, expires_at)
      values ('a', 'b', '2026-11-24T10:00:00Z')`);
    await letGo('2026-11-24T10:01:00Z');
    expect(await rowsOf(h.database, sql`select from loadline.install_attempts`)).toEqual([]);
  });
});
