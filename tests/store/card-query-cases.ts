/** What the store promises of cards and facts; run by `queries.test.ts`. */
import { sql } from 'drizzle-orm';
import { expect, it } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { rowsOf } from '../support/rows-of.ts';
import { aCard, aChange, anAnswer, savedSprint } from './store-examples.ts';

export function cardQueryCases(database: () => Database): void {
  it('gives cards back by number with their owners in order, and facts in the order recorded', async () => {
    const { sprint } = await savedSprint(database());
    const first = aCard(sprint.id, 1, { estimatePoints: 999.5, ownerIds: ['U-zoe', 'U-ana'] });
    const second = aCard(sprint.id, 2, { estimatePoints: 0, ownerIds: [], origin: 'pulled-in' });
    const facts = [
      aChange(second.id, 'drop', { note: 'sold the boat' }),
      anAnswer(first.id, { workedPoints: undefined, leftPoints: 0, surprisePoints: -0.5 }),
      aChange(first.id, 'reopen'),
      anAnswer(first.id, { memberId: 'U-zoe', workedPoints: 0.5, leftPoints: 12, surprisePoints: 3 }),
    ];
    await database().store.transaction(async (tx) => {
      await tx.write.cards.insert([second, first]);
      await tx.write.cards.insertFacts(facts);
      const records = await tx.read.recordsOf(sprint.id);
      expect(records.cards).toEqual([first, second]);
      expect(records.facts.map(({ order: _, ...fact }) => fact)).toEqual(facts);
      const orders = records.facts.map((fact) => fact.order);
      expect(orders).toEqual([...new Set(orders)].sort((a, b) => a - b));
    });
  });

  it('gives what is about somebody: cards that they own or answered for, that nobody owns, and that are named', async () => {
    const { sprint } = await savedSprint(database());
    const card = (number: number, ownerIds: string[]) => aCard(sprint.id, number, { ownerIds });
    const own = card(1, ['U-zoe', 'U-ana']);
    const nobodys = card(2, []);
    const handedOver = card(3, ['U-bo']);
    const named = card(4, ['U-bo']);
    const others = card(5, ['U-bo']);
    const facts = [
      anAnswer(handedOver.id, { memberId: 'U-ana' }),
      anAnswer(own.id, { memberId: 'U-zoe' }),
      aChange(nobodys.id, 'drop'),
      anAnswer(others.id, { memberId: 'U-bo' }),
    ];
    await database().store.transaction(async (tx) => {
      await tx.write.cards.insert([own, nobodys, handedOver, named, others]);
      await tx.write.cards.insertFacts(facts);
    });
    const about = await database().store.read((read) => read.recordsAbout(sprint.id, 'U-ana', [named.id]));
    expect(about.cards).toEqual([own, nobodys, handedOver, named]);
    expect(about.facts.map(({ order: _, ...fact }) => fact)).toEqual(facts.slice(0, 3));
  });

  it('puts later facts after earlier ones', async () => {
    const { sprint } = await savedSprint(database());
    const card = aCard(sprint.id, 1);
    const original = anAnswer(card.id);
    const correction = anAnswer(card.id, { leftPoints: 2, supersedesId: original.id });
    await database().store.transaction(async (tx) => {
      await tx.write.cards.insert([card]);
      await tx.write.cards.insertFacts([original]);
    });
    await database().store.transaction((tx) => tx.write.cards.insertFacts([correction]));
    const { facts } = await database().store.read((read) => read.recordsOf(sprint.id));
    expect(facts.map((fact) => [fact.id, fact.supersedesId])).toEqual([
      [original.id, undefined],
      [correction.id, original.id],
    ]);
  });

  it('changes owners, in order, and keeps who came and went, by whom and when', async () => {
    const { sprint } = await savedSprint(database());
    const card = aCard(sprint.id, 1, { ownerIds: ['U-zoe'] });
    await database().store.transaction(async (tx) => {
      await tx.write.cards.insert([card]);
      const by = { userId: 'U-cy', day: '2026-11-03', at: new Date('2026-11-03T09:15:00Z') };
      await tx.write.cards.changeOwners([{ card, ownerIds: ['U-bo', 'U-ana'], by }]);
      const records = await tx.read.recordsOf(sprint.id);
      expect(records.cards[0]?.ownerIds).toEqual(['U-bo', 'U-ana']);
      expect(records.facts).toEqual([]);
      await tx.write.cards.changeOwners([
        { card: { ...card, ownerIds: ['U-bo', 'U-ana'] }, ownerIds: ['U-ana'], by: undefined },
      ]);
    });
    const kept = await rowsOf(
      database(),
      sql`select kind, user_id, member_id, day::text from loadline.card_changes where card_id = ${card.id} order by fact_order`,
    );
    expect(kept).toEqual([
      { kind: 'owner-removed', user_id: 'U-zoe', member_id: 'U-cy', day: '2026-11-03' },
      { kind: 'owner-added', user_id: 'U-bo', member_id: 'U-cy', day: '2026-11-03' },
      { kind: 'owner-added', user_id: 'U-ana', member_id: 'U-cy', day: '2026-11-03' },
    ]);
    const moves = await database().store.read((read) => read.ownerMovesOf(sprint.id));
    const changedAt = new Date('2026-11-03T09:15:00Z');
    const moved = { day: '2026-11-03', changedBy: 'U-cy', changedAt };
    expect(moves).toEqual([
      { cardId: card.id, userId: 'U-zoe', kind: 'removed', ...moved },
      { cardId: card.id, userId: 'U-bo', kind: 'added', ...moved },
      { cardId: card.id, userId: 'U-ana', kind: 'added', ...moved },
    ]);
  });

  it('reads many sprints at once, those without cards included, and keeps them apart', async () => {
    const { sprint: first } = await savedSprint(database());
    const { sprint: second } = await savedSprint(database());
    const { sprint: empty } = await savedSprint(database());
    const [one, two] = [aCard(first.id, 1), aCard(second.id, 1)];
    await database().store.transaction(async (tx) => {
      await tx.write.cards.insert([one, two]);
      await tx.write.cards.insert([]);
      await tx.write.cards.insertFacts([anAnswer(one.id), anAnswer(two.id)]);
      await tx.write.cards.insertFacts([]);
      const many = await tx.read.recordsOfMany([first.id, second.id, empty.id]);
      expect([...many.keys()]).toEqual([first.id, second.id, empty.id]);
      expect(many.get(first.id)).toEqual(await tx.read.recordsOf(first.id));
      expect(many.get(second.id)?.facts.map((fact) => fact.cardId)).toEqual([two.id]);
      expect(many.get(empty.id)).toEqual({ cards: [], facts: [] });
      expect(await tx.read.recordsOfMany([])).toEqual(new Map());
    });
  });

  it('takes more rows than one statement could', async () => {
    const { sprint } = await savedSprint(database());
    const cards = Array.from({ length: 2_001 }, (_, i) => aCard(sprint.id, i + 1));
    await database().store.transaction((tx) => tx.write.cards.insert(cards));
    const records = await database().store.read((read) => read.recordsOf(sprint.id));
    expect(records.cards).toEqual(cards);
  });
}
