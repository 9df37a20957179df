import { describe, expect, test } from 'vitest';
import { answerInWords } from '../../../src/app/answering/answer-in-words.ts';
import { recordUnchanged } from '../../../src/app/answering/record-answers.ts';
import { statesOf } from '../../../src/app/cards/card-line.ts';
import type { RecordedFact } from '../../../src/app/team/team.ts';
import {
  actorOf,
  directMessagesOf,
  type Harness,
  harnessForEach,
  problemsOf,
} from '../../support/app-harness.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then. Ben owns cards 1 and 3.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ben = actorOf('ben');
const KEY = 'waiting for the key';

async function running() {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team, { cards: 'Tide table, 5, @Ben\nCrane log, 3, @Chi\nBuoys, 2, @Ben' });
  await h.pass('2026-11-03T09:15:00Z');
  const say = (text: string, who: 'ben' | 'chi' = 'ben') =>
    answerInWords(h.deps, actorOf(who), { text, place: directMessagesOf(who) });
  return { h, sprint, say };
}

/** `[since, until, on]` of the blocks of card 1. */
async function blocksOf(h: Harness, sprintId: string) {
  const [state] = statesOf(await h.records(sprintId));
  return state?.blocks.map(({ since, until, said }) => [since, until, (said as RecordedFact).note]);
}

describe('an answer that says that its card is blocked', () => {
  test('records the number, the block and the note', async () => {
    const { h, sprint, say } = await running();
    const outcome = await say(`1: 4 blocked: ${KEY}, note: ask Bo`);
    expect(outcome).toMatchObject({
      kind: 'recorded',
      prompt: {
        state: 'answered',
        answered: [{ leftPoints: 4, note: 'ask Bo', card: { blocked: { since: '2026-11-03', on: KEY } } }],
      },
    });
    expect(await blocksOf(h, sprint.id)).toEqual([['2026-11-03', undefined, KEY]]);
  });

  test('goes on with the block; one that does not say so ends it, and “nothing changed” leaves it', async () => {
    const { h, sprint, say } = await running();
    await say(`1: 4 blocked: ${KEY}`);
    await h.pass('2026-11-04T09:15:00Z');
    await say(`1: 4 blocked: ${KEY}`);
    expect(await blocksOf(h, sprint.id)).toEqual([['2026-11-03', undefined, KEY]]);
    await recordUnchanged(h.deps, ben, { sprintId: sprint.id, day: '2026-11-04' });
    expect(await blocksOf(h, sprint.id)).toEqual([['2026-11-03', undefined, KEY]]);
    await h.pass('2026-11-05T09:15:00Z');
    await say('1: 4');
    expect(await blocksOf(h, sprint.id)).toEqual([['2026-11-03', '2026-11-05', KEY]]);
  });

  test('needs no number, and is recorded once', async () => {
    const { h, sprint, say } = await running();
    const outcome = await say(`1: blocked ${KEY}`);
    expect(outcome).toMatchObject({ kind: 'recorded', prompt: { state: 'answered', answered: [] } });
    await say(`1: blocked ${KEY}`);
    const { facts } = await h.records(sprint.id);
    expect(facts.map(({ kind, note }) => [kind, note])).toEqual([['blocked', KEY]]);
  });

  test('is refused for a card that is finished with it, and for one that is not the person’s', async () => {
    const { h, sprint, say } = await running();
    expect(Object.values(await problemsOf(say(`1: 0 blocked: ${KEY}`)))).toEqual([
      '1 (Tide table) has nothing left, so it can’t be blocked.',
    ]);
    expect(Object.values(await problemsOf(say(`3: blocked ${KEY}`, 'chi')))).toEqual([
      expect.stringContaining('isn’t one of your cards'),
    ]);
    expect((await h.records(sprint.id)).facts).toEqual([]);
  });

  test('waits with its card until the growth is explained', async () => {
    const { say } = await running();
    expect(await say(`1: 9 blocked: ${KEY}`)).toMatchObject({
      kind: 'growth-to-explain',
      answers: [{ left: '9', blocked: KEY }],
    });
  });
});
