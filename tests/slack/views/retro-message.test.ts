import { describe, expect, it } from 'vitest';
import type { RetroContent } from '../../../src/app/retro/retro-content.ts';
import { postMessage } from '../../../src/slack/views/post-message.ts';
import { retroMessage } from '../../../src/slack/views/retro-message.ts';
import { ANA, BEN, card, fact, retroOf, sprint, sprintCards, sprintFacts } from './view-examples.ts';

const missed = retroOf(sprintCards, sprintFacts);
const text = (retro: RetroContent): string => retroMessage(retro).text;

describe('the retrospective sheet', () => {
  it('shows the verdict, the days, the cards, and two questions from the evidence', () => {
    expect(text(missed)).toMatchInlineSnapshot(`
      "Retrospective of Harbour 12
      Harbour 12: missed. Finished 13 of 18 points committed (72.2%).
      Goal: Skippers see tides before they book a berth.
      What happened, day by day
      Wed 4 Nov – pulled in: LP-5 Repair the tide gauge (3 points); grew: LP-1 Import tide tables (surprise work +2, “The tables come in two formats”)
      Thu 5 Nov – finished: LP-1 Import tide tables
      Fri 6 Nov – dropped: LP-3 Print the harbour map (“The printer has left the quay”)
      Tue 10 Nov – grew: LP-2 Show tides in the berth calendar (estimate drift +1)
      Wed 11 Nov – finished: LP-2 Show tides in the berth calendar and LP-5 Repair the tide gauge
      Cards that taught something
      • LP-1 Import tide tables: grew most (surprise work +2), furthest off its estimate (5, true size 7)
      • LP-5 Repair the tide gauge: pulled in and worked on (3 points) while a committed card stayed unfinished
      To talk about
      1. 3 points of work went into cards pulled in from Wed 4 Nov on, while 5 points of the commitment stayed unfinished. Could the pulled-in work have waited?
      2. All of the surprise work came in one card, LP-1 Import tide tables. Which question at planning would have shown it?
      Only you see this. It names cards, and no people: share it when the team meets.
      Buttons: Share in the channel, Printable page"
    `);
  });

  it('asks after a sprint that went well what to keep', () => {
    const kept = retroOf(sprintCards.slice(0, 2), [
      fact(1, { cardId: 'card-1', day: '2026-11-05' }),
      fact(2, { cardId: 'card-2', day: '2026-11-11' }),
    ]);
    expect(text(kept)).toContain(
      '1. Both committed cards were finished by Wed 11 Nov, 2 working days before the end. What made that work, and how does the team keep it?',
    );
    expect(text(kept)).toContain('2. No card grew. What made these estimates hold?');
  });

  it('asks after a sprint without a plan why there was none, and nothing about what came after it', () => {
    const noPlan = retroOf(
      [card(1, { origin: 'pulled-in', estimatePoints: 3 })],
      [fact(1, { cardId: 'card-1', day: '2026-11-05' })],
    );
    expect(noPlan.questions).toEqual([{ code: 'no-plan' }]);
    expect(text(noPlan)).toContain(
      '1. There was no commitment, so there was nothing to keep. What kept the team from planning?',
    );
  });

  it('says what it is when there is no verdict', () => {
    const without = (state: 'open' | 'cancelled' | 'closed') =>
      text({ ...missed, verdict: undefined, sprint: { ...sprint, state } });
    expect(without('open')).toContain('Harbour 12 runs until Fri 13 Nov. This is the sprint so far.');
    expect(without('cancelled')).toContain('Harbour 12 was cancelled, so there is no verdict.');
    expect(without('closed')).toContain('Harbour 12 was imported, so there is no verdict.');
  });

  it('says that nothing happened where nothing is recorded', () => {
    expect(text({ ...missed, timeline: [], telling: [], questions: [] })).toContain(
      'Nothing was recorded after planning.',
    );
  });

  it('says of an imported sprint what is known, and not that nothing happened', () => {
    const of = { ...missed, verdict: undefined, timeline: [], telling: [], experiments: [], questions: [] };
    const said = text({ ...of, sprint: { ...sprint, state: 'closed' } });
    expect(said).toContain(
      'Harbour 12 was imported: its dates and totals are known, but not what happened on which day.',
    );
    expect(said).not.toContain('What happened');
  });

  it('fits one screen even when every card grew every day', () => {
    const cards = Array.from({ length: 30 }, (_, i) =>
      card(i + 1, { title: 'A card with a long name indeed' }),
    );
    const days = [2, 3, 4, 5, 6, 9, 10, 11, 12, 13].map((day) => `2026-11-${String(day).padStart(2, '0')}`);
    const facts = days.flatMap((day, d) =>
      cards.map(({ id }, i) =>
        fact(d * cards.length + i, { cardId: id, day, workedPoints: 1, leftPoints: 5, surprisePoints: 1 }),
      ),
    );
    const busy = retroMessage(retroOf(cards, facts)).text.split('\n');
    expect(busy.length).toBeLessThanOrEqual(20);
    expect(busy).toContain('… and 2 more days.');
    expect(busy.join('\n')).toContain('28 more');
  });

  it('names nobody, shared or not, but for the person who shared it', () => {
    expect(text(missed)).not.toMatch(/U0|@/);
    const shared = postMessage({ kind: 'shared-retro', retro: missed, byUserId: BEN });
    expect(shared.text).toContain(`Shared by <@${BEN}>.`);
    expect(shared.text).not.toContain(ANA);
    expect(shared.blocks.some(({ type }) => type === 'actions')).toBe(false);
  });

  it('escapes what people typed', () => {
    const hostile = retroOf(
      [card(1, { title: '<!channel> *bold*' })],
      [
        fact(1, {
          cardId: 'card-1',
          day: '2026-11-03',
          leftPoints: 9,
          surprisePoints: 4,
          note: '<@U0EVE> _hi_',
        }),
      ],
    );
    expect(JSON.stringify(retroMessage(hostile).blocks)).not.toMatch(/<!channel>|<@U0EVE>|\*bold\*|_hi_/);
  });
});
