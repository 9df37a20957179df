/** What the store promises of prompts; run by `queries.test.ts`. */
import { expect, it } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { aPost, savedSprint, WORKSPACE } from './store-examples.ts';

const DAY = '2026-11-03';
const AT = new Date('2026-11-03T09:30:00Z');

export function promptQueryCases(database: () => Database): void {
  it('inserts only prompts that did not exist, and says which', async () => {
    const { sprint } = await savedSprint(database());
    const prompt = (userId: string) => ({ sprintId: sprint.id, userId, day: DAY, postId: undefined });
    await database().store.transaction(async (tx) => {
      await tx.write.prompts.setState(prompt('U-early'), 'away', AT);
      expect(await tx.write.prompts.insert([prompt('U-ana'), prompt('U-early')])).toEqual([prompt('U-ana')]);
      expect(await tx.write.prompts.insert([prompt('U-ana')])).toEqual([]);
      expect(await tx.write.prompts.insert([])).toEqual([]);
      expect(await tx.read.promptOf(sprint.id, 'U-ana', DAY)).toEqual({
        ...prompt('U-ana'),
        state: 'asked',
        answeredAt: undefined,
      });
      expect((await tx.read.promptOf(sprint.id, 'U-early', DAY))?.state).toBe('away');
      expect(await tx.read.promptOf(sprint.id, 'U-ana', '2026-11-04')).toBeUndefined();
    });
  });

  it('sets the state of a prompt, keeps the post that asked it, and wants that brought up to date', async () => {
    const { sprint } = await savedSprint(database());
    const post = aPost(sprint.id, {
      recipient: { userId: 'U-ana' },
      subject: { kind: 'daily-prompt', sprintId: sprint.id, userId: 'U-ana', day: DAY },
    });
    const key = { sprintId: sprint.id, userId: 'U-ana', day: DAY };
    await database().store.transaction(async (tx) => {
      // The prompt first: its post is recorded later in the same transaction.
      const asked = { ...key, postId: post.id };
      await tx.write.prompts.insert([asked]);
      await tx.write.posts.add([post]);
      expect(await tx.write.prompts.setState(asked, 'unchanged', AT)).toBe(1);
      const unasked = { ...key, day: '2026-11-04', postId: undefined };
      expect(await tx.write.prompts.setState(unasked, 'unchanged', AT)).toBe(0);
      expect((await tx.read.postById(post.id))?.wantedVersion).toBe(2);
    });
    const prompt = await database().store.read((read) => read.promptOf(sprint.id, 'U-ana', DAY));
    expect(prompt).toEqual({ ...key, postId: post.id, state: 'unchanged', answeredAt: AT });
  });

  it('reads the prompts of several days of several sprints, and no others', async () => {
    const { sprint: first } = await savedSprint(database());
    const { sprint: second } = await savedSprint(database());
    const prompt = (sprintId: string, day: string) => ({ sprintId, userId: 'U-ana', day, postId: undefined });
    const all = [
      prompt(first.id, '2026-11-03'),
      prompt(first.id, '2026-11-04'),
      prompt(second.id, '2026-11-03'),
      prompt(second.id, '2026-11-05'),
    ];
    await database().store.transaction(async (tx) => {
      await tx.write.prompts.insert(all);
      const read = await tx.read.promptsOf([
        { sprintId: first.id, day: '2026-11-04' },
        { sprintId: second.id, day: '2026-11-03' },
      ]);
      expect(new Set(read.map(({ sprintId, day }) => `${sprintId} ${day}`))).toEqual(
        new Set([`${first.id} 2026-11-04`, `${second.id} 2026-11-03`]),
      );
      expect(await tx.read.promptsOf([])).toEqual([]);
    });
  });

  it('finds the prompt by the post that asked, reminded or called last, in every place', async () => {
    const { sprint } = await savedSprint(database());
    const about = { sprintId: sprint.id, userId: 'U-ana', day: DAY };
    const asked = aPost(sprint.id, { subject: { kind: 'daily-prompt', ...about } });
    const reminded = aPost(sprint.id, { subject: { kind: 'reminder', ...about } });
    const verdict = aPost(sprint.id);
    await database().store.transaction(async (tx) => {
      await tx.write.prompts.insert([{ ...about, postId: asked.id }]);
      await tx.write.posts.add([asked, reminded, verdict]);
      for (const [i, post] of [asked, reminded, verdict].entries()) {
        const postedAt = { channelId: `D-${sprint.id}`, ts: `${i}.000` };
        await tx.write.posts.update(post.id, { state: 'sent', postedAt, sentVersion: 1 });
      }
      const found = (workspaceId: string, ts: string) =>
        tx.read.promptsByPost(workspaceId, { channelId: `D-${sprint.id}`, ts });
      expect(await found(WORKSPACE, '0.000')).toMatchObject([{ ...about, state: 'asked' }]);
      expect(await found(WORKSPACE, '1.000')).toMatchObject([about]);
      expect(await found(WORKSPACE, '2.000')).toEqual([]);
      expect(await found('W-elsewhere', '0.000')).toEqual([]);
    });
  });

  it('remembers an event, and knows it when it comes again', async () => {
    const { store } = database();
    const [almostADay, aDay] = [23.9, 24.1].map((hours) => new Date(AT.getTime() + hours * 3_600_000));
    const forget = (at: Date | undefined) =>
      store.transaction((tx) => tx.write.retention.dropOldRecords(at as Date, 10));
    expect(await store.single.rememberEvent('Ev-1', AT)).toBe(true);
    expect(await store.single.rememberEvent('Ev-1', AT)).toBe(false);
    expect(await store.single.rememberEvent('Ev-2', AT)).toBe(true);
    const known = (id: string) => store.read((read) => read.knowsEvent(id));
    expect([await known('Ev-1'), await known('Ev-3')]).toEqual([true, false]);
    await forget(almostADay);
    expect(await store.transaction((tx) => tx.events.remember('Ev-1', AT))).toBe(false);
    await forget(aDay);
    expect(await store.transaction((tx) => tx.events.remember('Ev-1', AT))).toBe(true);
  });
}
