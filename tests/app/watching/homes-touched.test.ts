import { sql } from 'drizzle-orm';
import { describe, expect, test } from 'vitest';
import { closeSprint } from '../../../src/app/closing/end-sprint.ts';
import type { Post } from '../../../src/app/posting/posts.ts';
import { openHomePage } from '../../../src/app/watching/home-page.ts';
import { homesTouchedBy } from '../../../src/app/watching/homes-touched.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach } from '../../support/app-harness.ts';
import { rowsOf } from '../../support/rows-of.ts';

const harness = harnessForEach('2026-10-30T12:00:00Z');
const ben = actorOf('ben');

async function touchedBy(h: Harness, kind: string) {
  const posts = await rowsOf<{ id: string; day: string | null }>(
    h.database,
    sql`select id, subject_day::text as day from loadline.posts where kind = ${kind} order by entry_order`,
  );
  return Promise.all(
    posts.map(async ({ id, day }) => {
      const post = (await h.database.store.read((read) => read.postById(id))) as Post;
      return [day, (await homesTouchedBy(h.deps, post)).map(({ userId }) => userId)];
    }),
  );
}

describe('home pages that a post makes out of date', () => {
  test('are those of members who have opened theirs, when a sprint is planned and when it ends', async () => {
    const h = harness();
    await h.plan(await h.setUpTeam());
    expect(await touchedBy(h, 'plan')).toEqual([[null, []]]);
    await openHomePage(h.deps, ben);
    await openHomePage(h.deps, actorOf('dayo'));
    expect(await touchedBy(h, 'plan')).toEqual([[null, [ben.userId]]]);
    await h.pass('2026-11-03T09:20:00Z');
    await closeSprint(h.deps, actorOf('ana'), { place: CHANNEL });
    expect(await touchedBy(h, 'verdict')).toEqual([[null, [ben.userId]]]);
  });

  test('is that of the person asked on the sprint’s first day, and on no other', async () => {
    const h = harness();
    await h.plan(await h.setUpTeam());
    await openHomePage(h.deps, ben);
    await h.pass('2026-11-02T09:20:00Z');
    await h.pass('2026-11-03T09:20:00Z');
    const touched = (await touchedBy(h, 'daily-prompt')).filter(([, people]) => people?.length !== 0);
    expect(touched).toEqual([['2026-11-02', [ben.userId]]]);
  });
});
