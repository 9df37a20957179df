/** What the store promises of posts; run by `queries.test.ts`. */
import { sql } from 'drizzle-orm';
import { expect, it } from 'vitest';
import type { NewPost } from '../../src/app/posting/posts.ts';
import type { Database } from '../../src/store/database.ts';
import { aPost, savedSprint } from './store-examples.ts';

const NOT_SENT_YET = {
  state: 'pending',
  postedAt: undefined,
  replaces: undefined,
  wantedVersion: 1,
  sentVersion: 0,
  firstAttemptAt: undefined,
} as const;

export function postQueryCases(database: () => Database): void {
  it('takes the beginning of an attempt from the earlier of two clocks, so that no post is looked for in the future', async () => {
    const { sprint } = await savedSprint(database());
    const post = aPost(sprint.id);
    await database().store.transaction(async (tx) => {
      await tx.write.posts.add([post]);
      await tx.claim.post(post.id, new Date('2999-01-01T00:00:00Z'));
      const { firstAttemptAt } = (await tx.read.postById(post.id)) ?? {};
      expect(firstAttemptAt?.getFullYear()).toBeLessThan(2999);
    });
  });

  it('keeps the newest version that was sent, also when an older delivery ends last', async () => {
    const { sprint } = await savedSprint(database());
    const post = aPost(sprint.id);
    const postedAt = { channelId: 'C-quay', ts: '1793612400.000900' };
    await database().store.transaction(async (tx) => {
      await tx.write.posts.add([post]);
      await tx.write.posts.refresh(post.id);
      await tx.write.posts.update(post.id, { state: 'sent', postedAt, sentVersion: 2 });
      await tx.write.posts.update(post.id, { state: 'sent', postedAt, sentVersion: 1 });
      expect((await tx.read.postById(post.id))?.sentVersion).toBe(2);
    });
  });

  it('gives back every kind of post as it was recorded', async () => {
    const { team, sprint } = await savedSprint(database());
    const byUserId = 'U-ana';
    const about = { sprintId: sprint.id, userId: 'U-bo', day: '2026-11-03' };
    const subjects: NewPost['subject'][] = [
      { kind: 'daily-prompt', ...about },
      { kind: 'reminder', ...about },
      { kind: 'last-call', ...about },
      { kind: 'team-set-up', teamId: team.id, byUserId },
      { kind: 'team-changed', teamId: team.id, byUserId, reason: '[]' },
      { kind: 'team-moved', teamId: team.id, byUserId },
      { kind: 'messages-removed', reason: '3 1' },
      { kind: 'team-ended', teamId: team.id, byUserId },
      { kind: 'team-idle', teamId: team.id },
      { kind: 'team-resumed', teamId: team.id, byUserId },
      { kind: 'import-removed', teamId: team.id, byUserId, reason: 'Harbour 1' },
      { kind: 'plan', sprintId: sprint.id, byUserId },
      { kind: 'verdict', sprintId: sprint.id },
      { kind: 'shared-status', sprintId: sprint.id, byUserId, on: '2026-11-04' },
      { kind: 'cancelled', sprintId: sprint.id, byUserId, reason: 'The yard is flooded' },
    ];
    const posts = subjects.map((subject, i) =>
      aPost(sprint.id, { subject, recipient: i % 2 ? { userId: 'U-bo' } : { channelId: 'C-quay' } }),
    );
    await database().store.transaction((tx) => tx.write.posts.add(posts));
    await database().store.read(async (read) => {
      for (const post of posts) expect(await read.postById(post.id)).toEqual({ ...post, ...NOT_SENT_YET });
      expect(await read.postById('nobody')).toBeUndefined();
    });
  });

  it('finds the posts about a sprint of a kind, the latest first', async () => {
    const { sprint } = await savedSprint(database());
    const [older, newer, other] = [aPost(sprint.id), aPost(sprint.id), aPost(sprint.id)];
    const plan = { kind: 'plan', sprintId: sprint.id, byUserId: 'U-ana' } as const;
    await database().store.transaction(async (tx) => {
      await tx.write.posts.add([older, newer, { ...other, subject: plan }]);
      expect((await tx.read.postAbout(sprint.id, 'verdict'))?.id).toBe(newer.id);
      const all = await tx.read.postsAbout(sprint.id, 'verdict');
      expect(all.map(({ id }) => id)).toEqual([newer.id, older.id]);
      expect(await tx.read.postAbout(sprint.id, 'cancelled')).toBeUndefined();
    });
  });

  it('raises the wanted version with every refresh, and only of a post that exists', async () => {
    const { sprint } = await savedSprint(database());
    const post = aPost(sprint.id);
    await database().store.transaction(async (tx) => {
      await tx.write.posts.add([post]);
      await tx.write.posts.refresh(post.id);
      await tx.write.posts.refresh(post.id);
      expect((await tx.read.postById(post.id))?.wantedVersion).toBe(3);
      await expect(tx.write.posts.refresh('nobody')).rejects.toThrow(RangeError);
      await expect(tx.write.posts.update('nobody', { state: 'dead' })).rejects.toThrow(RangeError);
    });
  });

  it('tries a post again that was refused when it is to be brought up to date, after looking for one that may be there', async () => {
    const { sprint } = await savedSprint(database());
    const [never, tried, posted] = [aPost(sprint.id), aPost(sprint.id), aPost(sprint.id)];
    const postedAt = { channelId: 'C-quay', ts: `${sprint.id}.7` };
    const firstAttemptAt = new Date('2026-11-13T17:00:31Z');
    await database().store.transaction(async (tx) => {
      await tx.write.posts.add([never, tried, posted]);
      await tx.claim.post(tried.id, firstAttemptAt);
      await tx.write.posts.update(posted.id, { state: 'sent', postedAt, sentVersion: 1 });
      const states: unknown[] = [];
      for (const { id } of [never, tried, posted]) {
        await tx.write.posts.update(id, { state: 'dead', lastError: 'is_archived' });
        await tx.write.posts.refresh(id);
        states.push((await tx.read.postById(id))?.state);
      }
      expect(states).toEqual(['pending', 'uncertain', 'sent']);
    });
  });

  it('counts posts that are not sent, or not in the version wanted, until nothing more will come of them', async () => {
    const { sprint } = await savedSprint(database());
    const [first, second] = [aPost(sprint.id), aPost(sprint.id)];
    await database().store.transaction(async (tx) => {
      const before = await tx.read.countUnsentPosts();
      const counts: number[] = [];
      const after = async (step: Promise<void>) => {
        await step;
        counts.push((await tx.read.countUnsentPosts()) - before);
      };
      const standing = { postedAt: { channelId: 'C-quay', ts: `${first.id}.1` }, sentVersion: 1 };
      await after(tx.write.posts.add([first, second]));
      await after(tx.write.posts.update(first.id, { state: 'uncertain' }));
      await after(tx.write.posts.update(first.id, { state: 'sent', ...standing }));
      await after(tx.write.posts.refresh(first.id));
      await after(tx.write.posts.update(first.id, { state: 'dead' }));
      await after(tx.write.posts.update(second.id, { state: 'skipped' }));
      expect(counts).toEqual([2, 2, 1, 2, 1, 0]);
    });
  });

  it('changes what an update names and leaves the rest', async () => {
    const { sprint } = await savedSprint(database());
    const post = aPost(sprint.id);
    const firstAttemptAt = new Date('2026-11-13T17:00:31Z');
    const postedAt = { channelId: 'C-quay', ts: `${sprint.id}.1` };
    await database().store.transaction(async (tx) => {
      await tx.write.posts.add([post]);
      await tx.claim.post(post.id, firstAttemptAt);
      expect(await tx.read.postById(post.id)).toEqual({
        ...post,
        ...NOT_SENT_YET,
        state: 'sending',
        firstAttemptAt,
      });
      await tx.write.posts.update(post.id, { state: 'sent', postedAt, sentVersion: 1, lastError: 'none' });
      const sent = {
        ...post,
        ...NOT_SENT_YET,
        state: 'sent',
        postedAt,
        sentVersion: 1,
        firstAttemptAt,
      };
      expect(await tx.read.postById(post.id)).toEqual(sent);
      await tx.write.posts.update(post.id, { state: 'dead', lastError: 'is_archived' });
      expect(await tx.read.postById(post.id)).toEqual({ ...sent, state: 'dead' });
    });
  });

  it('remembers which message a post is sent again in place of, from a first attempt of its own', async () => {
    const { sprint } = await savedSprint(database());
    const post = aPost(sprint.id);
    const replaces = { channelId: 'C-pier', ts: `${sprint.id}.1` };
    const postedAt = { channelId: 'C-pier', ts: `${sprint.id}.2` };
    await database().store.transaction(async (tx) => {
      await tx.write.posts.add([post]);
      const firstAttemptAt = new Date('2026-11-13T17:00:31Z');
      await tx.claim.post(post.id, firstAttemptAt);
      await tx.write.posts.update(post.id, { state: 'sent', postedAt: replaces, sentVersion: 1 });
      await tx.write.posts.refresh(post.id);
      await tx.write.posts.update(post.id, { state: 'pending', replaces });
      const waiting = { ...post, ...NOT_SENT_YET, replaces, wantedVersion: 2, sentVersion: 1 };
      expect(await tx.read.postById(post.id)).toEqual(waiting);
      await tx.write.posts.update(post.id, { state: 'sent', postedAt, sentVersion: 2 });
      expect(await tx.read.postById(post.id)).toMatchObject({ replaces, postedAt });
      await tx.write.posts.moveChannel(post.workspaceId, 'C-pier', 'C-mole');
      expect((await tx.read.postById(post.id))?.replaces?.channelId).toBe('C-mole');
    });
  });

  it('hands out a post that is being sent only when the attempt is a minute old', async () => {
    const { sprint } = await savedSprint(database());
    const post = aPost(sprint.id);
    const claim = () => database().store.transaction((tx) => tx.claim.post(post.id, new Date()));
    await database().store.transaction((tx) => tx.write.posts.add([post]));
    expect((await claim())?.state).toBe('pending');
    expect(await claim()).toBeUndefined();
    const backdate = (seconds: number) =>
      database().session.execute(
        sql`update loadline.posts set sending_since = now() - make_interval(secs => ${seconds}) where id = ${post.id}`,
      );
    await backdate(50);
    expect(await claim()).toBeUndefined();
    await backdate(61);
    expect((await claim())?.state).toBe('sending');
    expect(await database().store.transaction((tx) => tx.claim.post('nobody', new Date()))).toBeUndefined();
  });

  it.each(['dead', 'skipped', 'sent'] as const)('hands out no post that is %s', async (state) => {
    const { sprint } = await savedSprint(database());
    const post = aPost(sprint.id);
    const postedAt = { channelId: 'C-quay', ts: `${post.id}.1` };
    await database().store.transaction(async (tx) => {
      await tx.write.posts.add([post]);
      await tx.write.posts.update(post.id, { state, ...(state === 'sent' && { postedAt, sentVersion: 1 }) });
      expect(await tx.claim.post(post.id, new Date())).toBeUndefined();
      expect((await tx.read.postById(post.id))?.state).toBe(state);
    });
  });
}
