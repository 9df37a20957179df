/** What the store promises of installations; run by `queries.test.ts`. */
import { randomUUID } from 'node:crypto';
import { expect, it } from 'vitest';
import type { Sprint, Team } from '../../src/app/team/team.ts';
import type { Installation } from '../../src/app/workspaces/installation.ts';
import type { Database } from '../../src/store/database.ts';
import { sqlErrorOf } from '../../src/store/sql-error.ts';
import { anInstallation, aPost, aSprint, aTeam } from './store-examples.ts';

const LATER = new Date('2026-11-03T10:00:00Z');
const PAST_ANY_DUE = new Date('2026-12-01T00:00:00Z');

export function installationQueryCases(database: () => Database): void {
  const inTransaction: Database['store']['transaction'] = (work) => database().store.transaction(work);

  async function sprintOf(team: Team): Promise<Sprint> {
    const sprint = aSprint(team.id);
    await inTransaction(async (tx) => {
      await tx.write.teams.save(team);
      await tx.write.sprints.insert(sprint);
    });
    return sprint;
  }

  it('gives back what was saved, and its replacement', async () => {
    const first = anInstallation();
    const second = { ...first, enterpriseId: 'E-port', installedBy: undefined, scopes: ['commands'] };
    for (const one of [first, second]) {
      await inTransaction((tx) => tx.write.installations.save(one));
      expect(await inTransaction((tx) => tx.read.installationOf(first.workspaceId))).toEqual(one);
    }
    expect(await inTransaction((tx) => tx.read.installationOf('T-nowhere'))).toBeUndefined();
  });

  it('erases the token of a revoked one, once', async () => {
    const one = anInstallation();
    await inTransaction((tx) => tx.write.installations.save(one));
    expect(await inTransaction((tx) => tx.write.installations.revoke(one.workspaceId, LATER))).toBe(true);
    expect(await inTransaction((tx) => tx.write.installations.revoke(one.workspaceId, new Date()))).toBe(
      false,
    );
    expect(await inTransaction((tx) => tx.read.installationOf(one.workspaceId))).toEqual({
      ...one,
      token: undefined,
      revokedAt: LATER,
    });
  });

  it('revokes no other token than the one that is meant', async () => {
    const one = anInstallation();
    await inTransaction((tx) => tx.write.installations.save(one));
    const former = { sealed: 'v1.former', keyName: 'spring' };
    expect(await inTransaction((tx) => tx.write.installations.revoke(one.workspaceId, LATER, former))).toBe(
      false,
    );
    expect(await inTransaction((tx) => tx.read.installationOf(one.workspaceId))).toEqual(one);
  });

  it('replaces a token by the same one under another key only while nobody has changed it', async () => {
    const one = anInstallation();
    const from = one.token as NonNullable<Installation['token']>;
    const to = { sealed: 'v1.moved', keyName: 'autumn' };
    await inTransaction((tx) => tx.write.installations.save(one));
    expect(await inTransaction((tx) => tx.write.installations.replaceToken('T-nowhere', from, to))).toBe(
      false,
    );
    expect(await inTransaction((tx) => tx.write.installations.replaceToken(one.workspaceId, from, to))).toBe(
      true,
    );
    expect(
      await inTransaction((tx) => tx.write.installations.replaceToken(one.workspaceId, from, from)),
    ).toBe(false);
    expect((await inTransaction((tx) => tx.read.installationOf(one.workspaceId)))?.token).toEqual(to);
  });

  it('lists those that hold a token page by page, without the ones under a key', async () => {
    const prefix = `T-${randomUUID()}`;
    const all = [1, 2, 3, 4].map((n) =>
      anInstallation({
        workspaceId: `${prefix}-${n}`,
        token: { sealed: 'v1.x', keyName: n === 2 ? 'autumn' : 'spring' },
      }),
    );
    await inTransaction(async (tx) => {
      for (const one of all) await tx.write.installations.save(one);
      await tx.write.installations.revoke(`${prefix}-3`, LATER);
    });
    const page = (exceptKey: string | undefined, after: string, limit: number) =>
      inTransaction((tx) => tx.read.sealedInstallations({ exceptKey, after, limit })).then((found) =>
        found.map(({ workspaceId }) => workspaceId).filter((id) => id.startsWith(prefix)),
      );
    expect(await page(undefined, prefix, 2)).toEqual([`${prefix}-1`, `${prefix}-2`]);
    expect(await page(undefined, `${prefix}-2`, 1)).toEqual([`${prefix}-4`]);
    expect(await page('spring', prefix, 1)).toEqual([`${prefix}-2`]);
  });

  it.each([
    ['a revoked one with a token', { revokedAt: LATER }],
    ['one that is neither revoked nor has a token', { token: undefined }],
    ['one without a bot', { botUserId: ' ' }],
  ])('refuses %s', async (_what, given) => {
    const saving = inTransaction((tx) => tx.write.installations.save(anInstallation(given)));
    const refused = sqlErrorOf(await saving.catch((error: unknown) => error));
    expect(refused?.constraint).toMatch(/^installations_/);
  });

  it('passes over what is due in a workspace that removed the bot, until it is installed again', async () => {
    const team = aTeam({ workspaceId: `T-${randomUUID()}` });
    const sprint = await sprintOf(team);
    const { workspaceId } = team;
    const due = () =>
      inTransaction(async (tx) =>
        [
          await tx.claim.promptsDue(PAST_ANY_DUE, { limit: 10_000 }),
          await tx.claim.lastCallsDue(PAST_ANY_DUE, { limit: 10_000 }),
          await tx.claim.closingsDue(PAST_ANY_DUE, { limit: 10_000 }),
        ].map((claimed) => claimed.some((one) => one.sprint.id === sprint.id)),
      );
    expect(await due()).toEqual([true, true, true]);
    await inTransaction((tx) => tx.write.installations.save(anInstallation({ workspaceId })));
    expect(await due()).toEqual([true, true, true]);
    await inTransaction((tx) => tx.write.installations.revoke(workspaceId, LATER));
    expect(await due()).toEqual([false, false, false]);
    await inTransaction((tx) => tx.write.installations.forget(workspaceId));
    expect(await due()).toEqual([true, true, true]);
  });

  it('queues what a workspace is still owed, and nothing of another', async () => {
    const workspaceId = `T-${randomUUID()}`;
    const sprint = await sprintOf(aTeam({ workspaceId }));
    const [owed, sent, skipped, foreign] = [1, 2, 3, 4].map(() => ({ ...aPost(sprint.id), workspaceId })) as [
      ReturnType<typeof aPost>,
      ReturnType<typeof aPost>,
      ReturnType<typeof aPost>,
      ReturnType<typeof aPost>,
    ];
    await inTransaction(async (tx) => {
      await tx.write.posts.add([owed, sent, skipped, { ...foreign, workspaceId: `T-${randomUUID()}` }]);
      const postedAt = { channelId: 'C-quay', ts: `${randomUUID()}` };
      await tx.write.posts.update(sent.id, { state: 'sent', postedAt, sentVersion: 1 });
      await tx.write.posts.update(skipped.id, { state: 'skipped' });
      expect(await tx.write.posts.queueAllOf(workspaceId)).toBe(1);
    });
  });
}
