import { afterEach, beforeEach, expect, it } from 'vitest';
import { createLogger } from '../../src/logger.ts';
import { FACILITATOR_ID } from '../../src/rehearsal/cast.ts';
import { openPage } from '../../src/rehearsal/open-page.ts';
import type { Rehearsal } from '../../src/rehearsal/rehearsal.ts';
import { parseScenario } from '../../src/rehearsal/scenario.ts';

const SCENARIO = JSON.stringify({
  team: { name: 'Quayside', timeZone: 'Europe/Lisbon' },
  members: [
    { id: 'ines', name: 'Ines' },
    { id: 'odd', name: 'Odd' },
  ],
  sprints: [
    {
      name: 'Harbour 12',
      startsOn: '2026-11-02',
      endsOn: '2026-11-06',
      cards: [
        { key: 'quay-1', title: 'Berth calendar', estimate: 5, owners: ['ines'] },
        { key: 'quay-2', title: 'Tide table', estimate: 3, owners: ['ines', 'odd'] },
        { key: 'quay-3', title: 'Moon phase', estimate: 2, owners: ['odd'] },
      ],
      events: [
        {
          on: '2026-11-03',
          by: 'ines',
          answer: [
            { card: 'quay-1', left: 3 },
            { card: 'quay-2', left: 2 },
          ],
        },
        { on: '2026-11-03', by: 'odd', answer: [{ card: 'quay-3', left: 1 }] },
        { on: '2026-11-04', by: 'ines', answer: [{ card: 'quay-1', left: 1 }] },
        {
          on: '2026-11-04',
          by: 'odd',
          pull: { key: 'quay-9', title: 'Star map', estimate: 1, owners: ['odd'] },
        },
        { on: '2026-11-05', by: 'odd', answer: [{ card: 'quay-9', left: 0.5 }] },
        { on: '2026-11-05', by: 'ines', answer: [{ card: 'quay-2', left: 1 }] },
      ],
    },
  ],
});

let rehearsal: Rehearsal;
let ines: string;
let odd: string;

beforeEach(async () => {
  const logger = createLogger({ level: 'error', destination: process.stderr });
  rehearsal = await openPage({ scenario: parseScenario(SCENARIO, 'this test'), logger, port: 0 });
  ines = rehearsal.cast.userIdOf('ines');
  odd = rehearsal.cast.userIdOf('odd');
});
afterEach(() => rehearsal.stop());

async function forward(by: string): Promise<{ did: string; place?: string }> {
  const headers = { 'content-type': 'application/json' };
  const address = `${rehearsal.standIn.url}/page/forward`;
  const response = await fetch(address, { method: 'POST', headers, body: JSON.stringify({ by }) });
  return (await response.json()) as { did: string; place?: string };
}

/** What was said in the sprint, in order: the day, the card's number and what is left. */
async function said(): Promise<string[]> {
  const open = await rehearsal.openSprint();
  const numberOf = (id: string) => open?.records.cards.find((card) => card.id === id)?.number;
  return (open?.records.facts ?? []).map(
    (fact) => `${fact.day} ${numberOf(fact.cardId)}: ${fact.kind === 'answer' ? fact.leftPoints : fact.kind}`,
  );
}

it('moving the calendar on plays what the others say until then, and says who wrote and what time it is', async () => {
  expect(await said()).toEqual([]);
  expect(await forward('hour')).toEqual({ did: 'Ines and Odd wrote. It is Tue 3 Nov, 10:15.' });
  expect(await said()).toEqual(['2026-11-03 1: 3', '2026-11-03 2: 2', '2026-11-03 3: 1']);
  expect(await forward('hour')).toEqual({ did: 'It is Tue 3 Nov, 11:15.' });
  expect(await forward('close')).toEqual({
    did: 'Ines and Odd wrote. It is Fri 6 Nov, 17:00.',
    place: 'CTEAM00001',
  });
});

it('what the visitor said about a card on a day is not said again', async () => {
  await rehearsal.conversation.say(ines, '1: 4');
  await forward('day');
  expect(await said()).toEqual(['2026-11-03 1: 4', '2026-11-03 2: 2', '2026-11-03 3: 1']);
  await forward('day');
  expect((await said()).at(-1)).toBe('2026-11-04 1: 1');
});

it('a member whose day the visitor met as a whole says nothing on it', async () => {
  await rehearsal.conversation.say(ines, 'same');
  await rehearsal.conversation.say(odd, 'away');
  await forward('day');
  expect(await said()).toEqual([]);
});

it('a card that the visitor finished stays finished', async () => {
  await rehearsal.conversation.say(odd, 'quay-2: 0');
  await forward('day');
  await forward('day');
  await forward('hour');
  const facts = await said();
  expect(facts).toContain('2026-11-04 1: 1');
  expect(facts.filter((fact) => fact.includes(' 2: '))).toEqual(['2026-11-03 2: 0']);
});

it('a card that the visitor pulled in is not taken for the scenario’s', async () => {
  await rehearsal.conversation.command(ines, 'pull Lamp, 2, @ines');
  await forward('day');
  await forward('day');
  await forward('day');
  const facts = await said();
  expect(facts).toContain('2026-11-05 5: 0.5');
  expect(facts.filter((fact) => fact.includes(' 4: '))).toEqual([]);
});

it('a sprint that the visitor planned in place of the scenario’s is left alone', async () => {
  const { conversation } = rehearsal;
  await conversation.formAfter(FACILITATOR_ID, () => conversation.command(FACILITATOR_ID, 'cancel'));
  await conversation.submit(FACILITATOR_ID, {});
  await conversation.formAfter(FACILITATOR_ID, () => conversation.command(FACILITATOR_ID, 'plan'));
  await conversation.submit(FACILITATOR_ID, { startsOn: '2026-11-03', cards: 'Lamp, 2, @ines' });
  await conversation.submit(FACILITATOR_ID, {});
  await forward('day');
  expect(await said()).toEqual([]);
  expect((await rehearsal.openSprint())?.records.cards.length).toBe(1);
});
