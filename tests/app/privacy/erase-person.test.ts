/** Erasure: nothing of the person is left anywhere, and every number is as it was. On both kinds of database. */
import { sql } from 'drizzle-orm';
import { beforeEach, describe, expect, test } from 'vitest';
import { statesOf } from '../../../src/app/cards/card-line.ts';
import { recordGoal } from '../../../src/app/closing/record-goal.ts';
import { pastSprints } from '../../../src/app/history/team-history.ts';
import { erasePerson } from '../../../src/app/privacy/erase-person.ts';
import { personalCopy, privacyOverview } from '../../../src/app/privacy/privacy-overview.ts';
import type { RecordedFact } from '../../../src/app/team/team.ts';
import { sprintStatus } from '../../../src/app/watching/sprint-status.ts';
import { actorOf, CHANNEL, Harness, PEOPLE, refusalOf } from '../../support/app-harness.ts';
import { describeOnPostgresFirst, emptyDatabase } from '../../support/databases.ts';
import { rowsOf } from '../../support/rows-of.ts';
import { rowsWith } from '../../support/whole-database.ts';
import { BENS_WORDS, busyTeam, NOW } from './busy-team.ts';
import { numbersOfCards } from './numbers-of-cards.ts';

const ben = actorOf('ben');

/** All numbers of the team's sprints: as posted, as kept for the statistics, and as the ledger makes them again. */
async function numbersOf(h: Harness, team: Parameters<typeof pastSprints>[1]): Promise<unknown> {
  return h.write(async (tx) => {
    const sprints = await tx.read.sprintsOf(team.id);
    const all = [];
    for (const { id } of sprints) {
      const states = statesOf(await tx.read.recordsOf(id));
      all.push({
        result: await tx.read.latestResult(id),
        cards: numbersOfCards(states),
      });
    }
    return { past: await pastSprints(tx, team), all };
  });
}

function answersIn(facts: readonly RecordedFact[]) {
  return facts.filter((fact) => fact.kind === 'answer');
}

describeOnPostgresFirst('erasing a member', (_database, kind) => {
  let h: Harness;
  beforeEach(async () => {
    h = new Harness(await emptyDatabase(kind), NOW);
  });

  test('leaves neither id nor name nor a word of theirs in any table, the queue’s included', async () => {
    const { team } = await busyTeam(h);
    const before = await rowsWith(h.database, BENS_WORDS);
    const tables = new Set(before.map((line) => line.split(' ')[0]));
    expect([...tables].sort()).toEqual([
      'loadline.answers',
      'loadline.bodies_of_work',
      'loadline.card_changes',
      'loadline.card_owners',
      'loadline.cards',
      'loadline.experiments',
      'loadline.members',
      'loadline.plan_changes',
      'loadline.plan_drafts',
      'loadline.posts',
      'loadline.prompts',
      'loadline.recorded_values',
      'loadline.sprints',
      'loadline.teams',
      'loadline.visits',
      'pgboss.job',
      'pgboss.job_common',
    ]);
    const erased = await erasePerson(h.deps, ben);
    expect(erased.teamNames).toEqual([team.name]);
    expect(await rowsWith(h.database, BENS_WORDS)).toEqual([]);
    await refusalOf(erasePerson(h.deps, ben), 'nothing-stored');
    expect((await privacyOverview(h.deps, ben)).kinds).toEqual([]);
  });

  test('changes no number: results, history and the ledger of every sprint are as before', async () => {
    const { team, openId } = await busyTeam(h);
    const before = await numbersOf(h, team);
    const status = await sprintStatus(h.deps, actorOf('ana'), CHANNEL);
    await erasePerson(h.deps, ben);
    expect(await numbersOf(h, team)).toEqual(before);
    const after = await sprintStatus(h.deps, actorOf('ana'), CHANNEL);
    expect([after.summary, after.cards.length]).toEqual([status.summary, 3]);
    expect(after.growth.map(({ note: _, card: _card, ...growth }) => growth)).toEqual(
      status.growth.map(({ note: _, card: _card, ...growth }) => growth),
    );
    expect((await h.sprint(openId)).state).toBe('open');
  });

  test('keeps corrections together, and gives each card and day a mark of its own that says nothing', async () => {
    const { closedId, openId } = await busyTeam(h);
    await erasePerson(h.deps, ben);
    const { facts } = await h.records(closedId);
    const marks = answersIn(facts).map(({ memberId }) => memberId);
    // Card 1 and its correction, card 3, and Chi's card 3.
    expect(marks.filter((mark) => mark === PEOPLE.chi)).toHaveLength(1);
    const erased = marks.filter((mark) => mark !== PEOPLE.chi);
    expect(erased).toHaveLength(3);
    expect(new Set(erased).size).toBe(2);
    for (const mark of erased) expect(mark).toMatch(/^erased-[0-9a-f-]{36}$/);
    const others = answersIn((await h.records(openId)).facts).map(({ memberId }) => memberId);
    expect(others.filter((mark) => erased.includes(mark))).toEqual([]);
    const changes = facts.filter(({ kind }) => kind !== 'answer');
    expect(changes.map(({ memberId, note }) => [memberId, note])).toEqual([
      ['erased', ''],
      ['erased', ''],
    ]);
  });

  test('keeps what others said, without naming the person', async () => {
    const { closedId } = await busyTeam(h);
    await recordGoal(h.deps, actorOf('ana'), { sprintId: closedId, met: 'yes', note: 'thanks to Ben Ode' });
    await erasePerson(h.deps, ben);
    expect((await h.sprint(closedId)).goalOutcome?.note).toBe('thanks to somebody');
    const { facts, cards } = await h.records(closedId);
    const chis = answersIn(facts).find(({ memberId }) => memberId === PEOPLE.chi);
    expect(chis?.note).toBe('with somebody and somebody');
    expect(cards.map(({ title }) => title)).toContain('Fog horn for somebody');
    const draft = await h.read(async (read) => {
      const [team] = await read.teamsOf(actorOf('ana'));
      return read.draftOf(team?.id ?? '', PEOPLE.ana);
    });
    expect(draft?.cards).toContain('Tide table, 5, somebody');
  });

  test('leaves their open cards without an owner, tells the other facilitator once, and sends them nothing more', async () => {
    const { openId } = await busyTeam(h);
    await h.drain();
    h.messenger.messages.length = 0;
    await erasePerson(h.deps, ben);
    await h.drain();
    await h.pass('2026-11-25T09:15:00Z');
    expect(h.messagesTo('ben')).toEqual([]);
    const told = h.messagesTo('ana').filter(({ kind }) => kind === 'owner-needed');
    expect(told).toHaveLength(1);
    expect(told[0]).toMatchObject({ cards: [{ number: 1, ownerIds: [] }] });
    const { cards } = await h.records(openId);
    expect(cards.map(({ ownerIds }) => ownerIds)).toEqual([[], [PEOPLE.chi], [PEOPLE.chi]]);
  });

  test('of the last facilitator tells those who stay that each of them may facilitate, but not who went', async () => {
    await h.setUpTeam({ facilitatorIds: [PEOPLE.ben] }, ben);
    await h.drain();
    h.messenger.messages.length = 0;
    await erasePerson(h.deps, ben);
    await h.drain();
    const told = h.messenger.messages.filter(({ content }) => content.kind === 'no-facilitator');
    expect(told.map(({ to }) => to)).toEqual(
      expect.arrayContaining([{ userId: PEOPLE.ana }, { userId: PEOPLE.chi }]),
    );
    expect(told.map(({ to }) => to)).not.toContainEqual({ userId: PEOPLE.ben });
    expect(await rowsWith(h.database, [PEOPLE.ben])).toEqual([]);
  });

  test('of the only member there is leaves nothing', async () => {
    await h.setUpTeam({ memberIds: [PEOPLE.ana], facilitatorIds: [PEOPLE.ana] });
    await erasePerson(h.deps, actorOf('ana'));
    expect(await rowsWith(h.database, [PEOPLE.ana, 'Ana Lima'])).toEqual([]);
  });

  test('touches nobody with the same id in another workspace', async () => {
    await busyTeam(h);
    const elsewhere = actorOf('ben', 'W2');
    await h.setUpTeam({ memberIds: [PEOPLE.ben], facilitatorIds: [PEOPLE.ben], channelId: 'C9' }, elsewhere);
    const copyElsewhere = async () => {
      const { bytes } = await personalCopy(h.deps, elsewhere);
      return JSON.parse(Buffer.from(bytes).toString());
    };
    const before = await copyElsewhere();
    await erasePerson(h.deps, ben);
    expect(await copyElsewhere()).toEqual(before);
    expect(before.memberships).toHaveLength(1);
  });

  test('undoes nothing when it fails half-way', async () => {
    await busyTeam(h);
    const before = await rowsWith(h.database, BENS_WORDS);
    const failing = {
      transaction: <T>(work: (tx: never) => Promise<T>) =>
        h.deps.store.transaction(async (tx) => {
          await work(tx as never);
          throw new Error('the disk is full');
        }),
    };
    await expect(erasePerson({ ...h.deps, store: failing as never }, ben)).rejects.toThrow(
      'the disk is full',
    );
    expect((await rowsWith(h.database, BENS_WORDS)).sort()).toEqual(before.sort());
  });

  describe('in the database', () => {
    test.each([
      ['a note', sql`update loadline.answers set note = ''`],
      ['a reason', sql`update loadline.card_changes set note = ''`],
    ])('lets %s go only to a transaction that says it erases', async (_what, statement) => {
      await busyTeam(h);
      await expect(h.database.session.execute(statement)).rejects.toThrow();
      await h.database.session.transaction(async (tx) => {
        await tx.execute(sql`select set_config('loadline.erasing', 'on', true)`);
        await tx.execute(statement);
      });
      // The permission ended with its transaction.
      await expect(h.database.session.execute(sql`update loadline.answers set note = 'x'`)).rejects.toThrow();
    });

    test('lets no number change even then', async () => {
      await busyTeam(h);
      const attempt = h.database.session.transaction(async (tx) => {
        await tx.execute(sql`select set_config('loadline.erasing', 'on', true)`);
        await tx.execute(sql`update loadline.answers set note = '', left_points = 0`);
      });
      await expect(attempt).rejects.toThrow();
      const [row] = await rowsOf<{ left: string }>(
        h.database,
        sql`select sum(left_points) as left from loadline.answers`,
      );
      expect(Number(row?.left)).toBeGreaterThan(0);
    });
  });
});
