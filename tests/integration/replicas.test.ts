import { sql } from 'drizzle-orm';
import { PgBoss } from 'pg-boss';
import { afterAll, beforeAll, expect, it, onTestFinished } from 'vitest';
import { waitForAll } from '../../src/app/wait-for-all.ts';
import type { Database } from '../../src/store/database.ts';
import { openQueue } from '../../src/store/queue/delivery-queue.ts';
import { sqlErrorOf } from '../../src/store/sql-error.ts';
import { aCard, aMember, anAnswer, aPost, aSprint, aTeam, savedSprint } from '../store/store-examples.ts';
import type { OwnPostgres } from '../support/databases.ts';
import { withPostgres } from '../support/databases.ts';

let own: OwnPostgres;
let one: Database;
let other: Database;

beforeAll(async () => {
  own = await withPostgres();
  [one, other] = await Promise.all([own.open(), own.open()]);
});

afterAll(async () => {
  await Promise.all([one.close(), other.close()]);
  await own.drop();
});

/** Resolves when the database says that a transaction waits for another. */
async function somebodyWaits(): Promise<void> {
  for (;;) {
    const waiting = await one.session
      .select({ pid: sql`pid` })
      .from(sql`pg_stat_activity`)
      .where(sql`datname = current_database() and wait_event_type = 'Lock'`);
    if (waiting.length > 0) return;
  }
}

const NOTHING_MORE = { nextPromptAt: undefined, nextReminderAt: undefined, lastCallAt: undefined };

it('two replicas that compete for due sprints prompt for each of them once', async () => {
  const due = new Date('2026-11-02T09:15:00Z');
  const wanted: string[] = [];
  for (let i = 0; i < 40; i += 1) wanted.push((await savedSprint(one, { nextPromptAt: due })).sprint.id);

  /** Prompts in small bites until nothing is due. */
  const tick = async (database: Database): Promise<string[]> => {
    const prompted: string[] = [];
    for (;;) {
      const ids = await database.store.transaction(async (tx) => {
        const claimed = await tx.claim.promptsDue(due, { limit: 3 });
        await tx.write.posts.add(claimed.map(({ sprint }) => aPost(sprint.id)));
        await tx.write.sprints.updateClocks(
          claimed.map(({ sprint }) => ({ id: sprint.id, ...NOTHING_MORE })),
        );
        return claimed.map(({ sprint }) => sprint.id);
      });
      if (ids.length === 0) return prompted;
      prompted.push(...ids);
    }
  };
  const prompted = (await Promise.all([tick(one), tick(other), tick(one), tick(other)])).flat();
  expect(prompted.sort()).toEqual(wanted.sort());

  const queues = await Promise.all([openQueue(one), openQueue(other)]);
  const delivered: string[] = [];
  const drained = await Promise.all(
    queues.map((queue) =>
      queue.drain(async (postId) => {
        delivered.push(postId);
        return { done: true };
      }),
    ),
  );
  await Promise.all(queues.map((queue) => queue.stop({ graceful: true })));
  expect((drained[0] as number) + (drained[1] as number)).toBe(40);
  expect(new Set(delivered).size).toBe(40);
});

it('a sprint that one replica holds is passed over by the other, and so is a team that somebody holds', async () => {
  const due = new Date('1990-01-01T09:15:00Z');
  const earlier = new Date('1990-01-01T08:15:00Z');
  const held = await savedSprint(one, { nextPromptAt: earlier });
  const busy = await savedSprint(one, { nextPromptAt: due });
  const free = await savedSprint(one, { nextPromptAt: due });
  await one.store.transaction(async (tx) => {
    expect((await tx.claim.promptsDue(earlier, { limit: 1 })).map(({ sprint }) => sprint.id)).toEqual([
      held.sprint.id,
    ]);
    await one.store.transaction(async (answering) => {
      await answering.lock.team(busy.team.id);
      const seen = await other.store.transaction((ticking) => ticking.claim.promptsDue(due, { limit: 10 }));
      expect(seen.map(({ sprint }) => sprint.id)).toEqual([free.sprint.id]);
    });
  });
  const afterwards = await other.store.transaction((tx) => tx.claim.promptsDue(due, { limit: 10 }));
  expect(afterwards).toHaveLength(3);
});

it('a transaction that locks a team waits until the other one ends', async () => {
  const { team } = await savedSprint(one);
  const events: string[] = [];
  const locked = Promise.withResolvers<void>();
  const release = Promise.withResolvers<void>();
  const first = one.store.transaction(async (tx) => {
    await tx.lock.team(team.id);
    locked.resolve();
    await release.promise;
    events.push('first ends');
  });
  await locked.promise;
  const second = other.store.transaction(async (tx) => {
    await tx.lock.team(team.id);
    events.push('second holds');
  });
  await somebodyWaits();
  release.resolve();
  await Promise.all([first, second]);
  expect(events).toEqual(['first ends', 'second holds']);
});

it('what is asked for beside a lock is read under it', async () => {
  const { team, sprint } = await savedSprint(one);
  const member = aMember();
  const held = Promise.withResolvers<void>();
  const changing = one.store.transaction(async (tx) => {
    await tx.lock.team(team.id);
    held.resolve();
    await somebodyWaits();
    await tx.write.sprints.update({ ...sprint, name: 'Renamed' });
    await tx.write.cards.insert([aCard(sprint.id, 1)]);
    await tx.write.teams.saveMembers(team.id, [member]);
    await tx.write.prompts.setState(
      { sprintId: sprint.id, userId: 'U-ana', day: '2026-11-02', postId: undefined },
      'away',
      new Date(),
    );
  });
  await held.promise;
  const [found, records, prompt] = await other.store.transaction((tx) =>
    waitForAll([
      tx.lock.sprintWithTeam(sprint.id),
      tx.read.recordsOf(sprint.id),
      tx.read.promptOf(sprint.id, 'U-ana', '2026-11-02'),
    ]),
  );
  await changing;
  expect(found).toEqual({ team, sprint: { ...sprint, name: 'Renamed' }, members: [member] });
  expect(records.cards).toHaveLength(1);
  expect(prompt?.state).toBe('away');
});

it('a sprint that would overlap one whose transaction is still open waits for it, and is refused', async () => {
  const team = aTeam();
  await one.store.transaction((tx) => tx.write.teams.save(team));
  let second: Promise<unknown> = Promise.resolve();
  await one.store.transaction(async (tx) => {
    await tx.write.sprints.insert(aSprint(team.id));
    second = other.store
      .transaction((competing) => competing.write.sprints.insert(aSprint(team.id)))
      .catch((refusal: unknown) => refusal);
    await somebodyWaits();
  });
  expect(sqlErrorOf(await second)?.constraint).toBe('sprints_open_no_overlap');
  expect(await one.store.read((read) => read.openSprintsOf(team.id))).toHaveLength(1);
});

it('of two first answers for a card and day given at once, one is refused', async () => {
  const { sprint } = await savedSprint(one);
  const card = aCard(sprint.id, 1);
  await one.store.transaction((tx) => tx.write.cards.insert([card]));
  const outcomes = await Promise.allSettled(
    [one, other].map((database) =>
      database.store.transaction((tx) => tx.write.cards.insertFacts([anAnswer(card.id)])),
    ),
  );
  const refused = outcomes.filter((outcome) => outcome.status === 'rejected');
  expect(refused.map((outcome) => sqlErrorOf(outcome.reason)?.constraint)).toEqual(['answers_first_unique']);
});

it('of two teams set up in a channel at once, one is refused with the name of the other', async () => {
  const first = aTeam({ name: 'Lighters' });
  const outcomes = await Promise.allSettled(
    [one, other].map((database) =>
      database.store.transaction((tx) =>
        tx.write.teams.save(aTeam({ name: 'Lighters', channelId: first.channelId })),
      ),
    ),
  );
  const refused = outcomes.filter((outcome) => outcome.status === 'rejected');
  expect(refused.map((outcome) => outcome.reason)).toMatchObject([
    { code: 'channel-has-a-team', details: { teamName: 'Lighters' } },
  ]);
});

it('transactions that lock each other out both succeed in the end', async () => {
  const [first, second] = [await savedSprint(one), await savedSprint(one)];
  const meeting = [Promise.withResolvers<void>(), Promise.withResolvers<void>()] as const;
  const crossing = (
    database: Database,
    mine: string,
    theirs: string,
    arrive: () => void,
    met: Promise<void>,
  ) =>
    database.store.transaction(async (tx) => {
      await tx.lock.team(mine);
      arrive();
      await met;
      await tx.lock.team(theirs);
    });
  await expect(
    Promise.all([
      crossing(one, first.team.id, second.team.id, meeting[0].resolve, meeting[1].promise),
      crossing(other, second.team.id, first.team.id, meeting[1].resolve, meeting[0].promise),
    ]),
  ).resolves.toHaveLength(2);
});

it('a post is claimed by one deliverer at a time', async () => {
  const { sprint } = await savedSprint(one);
  const post = aPost(sprint.id);
  const now = new Date();
  const claimByOther = () => other.store.transaction((tx) => tx.claim.post(post.id, now));
  await one.store.transaction((tx) => tx.write.posts.add([post]));
  await one.store.transaction(async (tx) => {
    expect((await tx.claim.post(post.id, now))?.id).toBe(post.id);
    expect(await claimByOther()).toBeUndefined();
  });
  expect(await claimByOther()).toBeUndefined();
  await one.store.single.updatePost(post.id, { state: 'pending' });
  expect((await claimByOther())?.id).toBe(post.id);
});

it('a delivery whose process crashed is handed to another when its minute is over', async () => {
  await one.session.execute(sql`delete from pgboss.job`);
  const { sprint } = await savedSprint(one);
  const post = aPost(sprint.id);
  await one.store.transaction((tx) => tx.write.posts.add([post]));
  // Takes the delivery and is never heard of again.
  const crashed = new PgBoss({ ...one.queueConnection, schema: 'pgboss', supervise: false, migrate: false });
  await crashed.start();
  const queue = await openQueue(other);
  onTestFinished(async () => {
    await queue.stop({ graceful: true });
    await crashed.stop({ graceful: false });
  });
  expect(await crashed.fetch('delivery')).toHaveLength(1);

  const delivered: string[] = [];
  /** What the others find after the taker has been gone for so long. */
  const drainAfter = async (seconds: number) => {
    await one.session.execute(
      sql`update pgboss.job set started_on = now() - make_interval(secs => ${seconds}) where state = 'active'`,
    );
    // The upkeep as it runs every 15 seconds, and then the wait before the retry.
    await one.session.execute(sql`update pgboss.queue set monitor_on = null, monitor_claim_on = null`);
    await crashed.supervise('delivery');
    await one.session.execute(sql`update pgboss.job set start_after = now() where state = 'retry'`);
    return queue.drain(async (postId) => {
      delivered.push(postId);
      return { done: true };
    });
  };
  expect(await drainAfter(55)).toBe(0);
  expect(await drainAfter(61)).toBe(1);
  expect(delivered).toEqual([post.id]);
});

it('work that nobody waits for keeps no request waiting, however much of it there is', async () => {
  const release = Promise.withResolvers<void>();
  const busy = Array.from({ length: 40 }, () => one.bulkStore.transaction(() => release.promise));
  const { team } = await savedSprint(other);
  expect((await one.store.read((read) => read.teamById(team.id)))?.id).toBe(team.id);
  release.resolve();
  await Promise.all(busy);
});

it('a transaction whose process has vanished is ended by the server, so that its locks go', async () => {
  const limits = await one.session.execute(
    sql`select current_setting('idle_in_transaction_session_timeout') as idle, current_setting('statement_timeout') as run`,
  );
  expect([...(limits as unknown as Iterable<unknown>)]).toEqual([{ idle: '30s', run: '30s' }]);
});
