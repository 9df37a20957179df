/** Somebody who is erased may have the bot's messages to them deleted on the platform; they hear how many went. */
import { sql } from 'drizzle-orm';
import { beforeEach, describe, expect, test } from 'vitest';
import { DeliveryFailure } from '../../../src/app/posting/delivery-failure.ts';
import { letGoOfOld } from '../../../src/app/privacy/ended-teams.ts';
import { erasePerson } from '../../../src/app/privacy/erase-person.ts';
import { removeMessages } from '../../../src/app/privacy/remove-messages.ts';
import { actorOf, Harness, PEOPLE, WORKSPACE } from '../../support/app-harness.ts';
import { emptyDatabase } from '../../support/databases.ts';
import { rowsOf } from '../../support/rows-of.ts';
import { rowsWith, wholeDatabase } from '../../support/whole-database.ts';

const ben = actorOf('ben');
const BENS_MESSAGES = `D-${PEOPLE.ben}`;

describe('the bot’s messages to somebody who is erased', () => {
  let h: Harness;
  beforeEach(async () => {
    h = new Harness(await emptyDatabase('Postgres'), '2026-10-30T12:00:00Z');
    await h.plan(await h.setUpTeam());
    await h.pass('2026-11-02T09:15:00Z');
    h.messenger.messages.length = 0;
  });

  const removals = () =>
    rowsOf<{ before_ts: string }>(h.database, sql`select * from loadline.message_removals`);
  const at = async (now: string) => {
    h.set(now);
    const count = await removeMessages(h.deps);
    await h.drain();
    return count;
  };

  test('stay unless the person asks for it', async () => {
    expect(await erasePerson(h.deps, ben)).toEqual({ records: expect.any(Number), teamNames: ['Tugboats'] });
    expect(await at('2026-11-02T09:20:00Z')).toBe(0);
    expect(h.messenger.removalsAsked).toEqual([]);
  });

  test('go a part at a time, and the person hears how many went and how many could not', async () => {
    expect(await erasePerson(h.deps, ben, { removeMessages: true })).toMatchObject({ removesMessages: true });
    h.messenger.removalSteps.push(
      { removed: 40, left: 1, beforeTs: '50.0', isDone: false },
      new DeliveryFailure('rate-limited', 'ratelimited', { retryAfterMs: 1_000 }),
      { removed: 2, left: 2, beforeTs: '1.0', isDone: true },
    );
    expect(await at('2026-11-02T09:20:00Z')).toBe(1);
    expect(await at('2026-11-02T09:20:30Z')).toBe(0);
    await at('2026-11-02T09:21:00Z');
    expect(h.kindsTo('ben')).toEqual([]);
    await at('2026-11-02T09:22:00Z');
    expect(h.messenger.removalsAsked).toEqual([
      // When it was asked for, 09:15 on 2 November 2026: what comes later stays.
      [WORKSPACE, BENS_MESSAGES, '1793610900.000000'],
      [WORKSPACE, BENS_MESSAGES, '50.0'],
      [WORKSPACE, BENS_MESSAGES, '50.0'],
    ]);
    expect(h.messagesTo('ben')).toMatchObject([{ kind: 'messages-removed', removed: 42, left: 3 }]);
    expect(await removals()).toEqual([]);
  });

  test('are found by nothing that says whose they were, and that is forgotten a day after it was told', async () => {
    await erasePerson(h.deps, ben, { removeMessages: true });
    const withIt = await rowsWith(h.database, [PEOPLE.ben]);
    expect(withIt).toEqual([expect.stringMatching(/^loadline\.message_removals /)]);
    h.messenger.removalSteps.push({ removed: 2, left: 0, beforeTs: '1.0', isDone: true });
    await at('2026-11-02T09:20:00Z');
    await h.database.session.execute(sql`update loadline.posts set created_at = '2026-11-02T09:20:00Z'`);
    h.set('2026-11-03T09:21:00Z');
    while ((await letGoOfOld(h.deps)) > 0);
    expect((await wholeDatabase(h.database)).filter((line) => line.includes(BENS_MESSAGES))).toEqual([]);
  });

  test('are tried for two weeks where the bot was removed, then no more', async () => {
    await erasePerson(h.deps, ben, { removeMessages: true });
    const gone = () => new DeliveryFailure('not-installed', 'not_installed');
    h.messenger.removalSteps.push(gone(), gone());
    expect(await at('2026-11-02T09:20:00Z')).toBe(1);
    expect(await at('2026-11-02T10:20:00Z')).toBe(0);
    expect(await at('2026-11-03T09:20:00Z')).toBe(1);
    h.set('2026-11-16T09:16:00Z');
    while ((await letGoOfOld(h.deps)) > 0);
    expect(await removals()).toEqual([]);
  });

  test('are no two processes’ work at once, and go on after one of them died', async () => {
    await erasePerson(h.deps, ben, { removeMessages: true });
    h.set('2026-11-02T09:20:00Z');
    const died = {
      ...h.deps,
      messenger: { ...h.messenger, removeOwn: () => Promise.reject(new Error('died')) },
    };
    await expect(removeMessages(died as never)).rejects.toThrow('died');
    expect(await at('2026-11-02T09:21:00Z')).toBe(0);
    expect(await at('2026-11-02T09:25:00Z')).toBe(1);
  });

  test('are none that is known of for somebody who got none', async () => {
    const dayo = { workspaceId: WORKSPACE, userId: PEOPLE.dayo };
    await h.write((tx) => tx.visits.homeOpened(dayo, h.deps.clock.now()));
    expect(await erasePerson(h.deps, dayo, { removeMessages: true })).toMatchObject({
      removesMessages: false,
    });
    expect(await removals()).toEqual([]);
  });
});
