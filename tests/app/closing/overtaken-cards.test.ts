/** A card that was planned again while it was open, and finished then, counts in one sprint only. */
import { describe, expect, test } from 'vitest';
import { editCard } from '../../../src/app/planning/edit-card.ts';
import { actorOf, harnessForEach, problemsOf } from '../../support/app-harness.ts';

// The first sprint ends on Friday 13 November 2026, the next one begins on Monday 16.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');

/** Ben's card is carried into the next sprint while it is open, and finished in the first after that, or before. */
async function carried(finished: 'after planning' | 'before planning') {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team, { cards: 'Tide table, 5, @Ben\nCrane log, 3, @Chi' });
  await h.pass('2026-11-12T12:00:00Z');
  const finish = () => h.answer('ben', sprint.id, '2026-11-12', { 1: { left: '0' } });
  if (finished === 'before planning') await finish();
  await h.pass('2026-11-12T13:00:00Z');
  const next = await h.plan(team, {
    name: 'Harbour 13',
    startsOn: '2026-11-16',
    endsOn: '2026-11-27',
    cards: 'Tide table, 5, @Ben\nBuoys, 2, @Ben',
  });
  await h.pass('2026-11-12T14:00:00Z');
  if (finished === 'after planning') await finish();
  await h.pass('2026-11-18T09:20:00Z');
  const say = (left: string, worked = '') =>
    h.answer('ben', next.sprint.id, '2026-11-18', { 1: { left, worked } });
  const correct = (estimate: string) =>
    editCard(h.deps, ana, { sprintId: next.sprint.id, reference: '1', edit: { estimate } });
  return { h, next: next.sprint, say, correct };
}

describe('a card that the sprint before finished once it was planned again', () => {
  test('is not finished a second time by a bare “done”: whoever says it is told where it counts', async () => {
    const { h, next, say } = await carried('after planning');
    expect(Object.values(await problemsOf(say('0')))).toEqual([
      '1 (Tide table) was finished in Harbour 12 and counts there. If it’s the same work, ask a facilitator to set the card to 0 here with “/loadline edit 1”, then say “done”. If it’s other work, say as well how much you worked on it.',
    ]);
    expect((await h.records(next.id)).facts).toEqual([]);
  });

  test('can be set to 0 on any day until somebody answers for it, and to nothing else; then “done” is taken', async () => {
    const { h, next, say, correct } = await carried('after planning');
    await expect(correct('1')).rejects.toMatchObject({ code: 'estimate-is-fixed' });
    expect((await correct('0')).changes).toMatchObject([{ part: 'estimate', was: '5', became: '0' }]);
    expect(await say('0')).toMatchObject({ kind: 'recorded' });
    expect((await h.records(next.id)).facts).toMatchObject([{ workedPoints: undefined, leftPoints: 0 }]);
  });

  test('is other work where somebody says what they worked on it', async () => {
    const { say, correct } = await carried('after planning');
    expect(await say('0', '5')).toMatchObject({ kind: 'recorded' });
    await expect(correct('0')).rejects.toMatchObject({ code: 'estimate-is-fixed' });
  });
});

test('a card that was finished already when one of its name was planned is new work', async () => {
  const { say, correct } = await carried('before planning');
  await expect(correct('0')).rejects.toMatchObject({ code: 'estimate-is-fixed' });
  expect(await say('0')).toMatchObject({ kind: 'recorded' });
});
