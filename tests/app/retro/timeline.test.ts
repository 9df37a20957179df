import { describe, expect, it } from 'vitest';
import { statesOf } from '../../../src/app/cards/card-line.ts';
import type { PlanChange } from '../../../src/app/planning/plan-change.ts';
import { timelineOf } from '../../../src/app/retro/timeline.ts';
import type { RecordedFact } from '../../../src/app/team/team.ts';
import { ANA, BEN, card, fact, team } from '../../slack/views/view-examples.ts';

const on = (november: number): string => `2026-11-${String(november).padStart(2, '0')}`;
const CARD = card(1, { title: 'Tide gauge', ownerIds: [ANA, BEN] });

type Said = Partial<RecordedFact & { kind: 'answer' }>;
let order = 0;
function answer(day: number, leftPoints: number, more: Said = {}): RecordedFact {
  order += 1;
  return fact(order, { cardId: CARD.id, day: on(day), leftPoints, ...more });
}
function change(kind: Exclude<RecordedFact['kind'], 'answer'>, day: number, note = ''): RecordedFact {
  const { workedPoints, leftPoints, surprisePoints, ...rest } = answer(day, 0, { note }) as RecordedFact & {
    kind: 'answer';
  };
  return { ...rest, kind };
}

/** `3: grew; 5: finished`, by day of November. */
function told(facts: readonly RecordedFact[], of = CARD): string {
  return timelineOf(team, statesOf({ cards: [of], facts }), facts, [])
    .map(({ day, events }) => `${Number(day.slice(-2))}: ${events.map(({ kind }) => kind).join(', ')}`)
    .join('; ');
}

function notes(facts: readonly RecordedFact[]): string[] {
  return timelineOf(team, statesOf({ cards: [CARD], facts }), facts, []).flatMap(({ events }) =>
    events.flatMap((event) => (event.kind === 'plan' ? [] : [event.note])),
  );
}

const correction: PlanChange = {
  id: 'change-1',
  sprintId: CARD.sprintId,
  cardId: CARD.id,
  part: 'title',
  was: 'Gauge',
  became: 'Tide gauge',
  changedBy: BEN,
  changedAt: new Date('2026-11-04T23:30:00Z'),
};

describe('the days of a sprint', () => {
  it.each<[what: string, facts: () => RecordedFact[], expected: string]>([
    ['nothing where nothing was said', () => [], ''],
    ['nothing of plain progress', () => [answer(3, 4), answer(4, 2)], ''],
    ['growth on its day', () => [answer(3, 7, { surprisePoints: 2 })], '3: grew'],
    ['a card that turned out smaller', () => [answer(3, 3, { workedPoints: 0 })], '3: shrank'],
    ['a finished card on its last day', () => [answer(3, 2), answer(5, 0)], '5: finished'],
    [
      'growth before finishing on one day',
      () => [answer(5, 0, { workedPoints: 7, surprisePoints: 2 })],
      '5: grew, finished',
    ],
    ['a drop', () => [change('drop', 6)], '6: dropped'],
    [
      'a drop that was taken back',
      () => [change('drop', 6), change('undrop', 9)],
      '6: dropped; 9: undropped',
    ],
    ['a block that goes on', () => [change('blocked', 4)], '4: blocked'],
    [
      'a block that somebody ended',
      () => [change('blocked', 4), change('moving', 6)],
      '4: blocked; 6: moving',
    ],
    ['a block that an answer ended', () => [change('blocked', 4), answer(6, 3)], '4: blocked; 6: moving'],
    [
      'a block that ended with the card, without saying it twice',
      () => [change('blocked', 4), answer(6, 0)],
      '4: blocked; 6: finished',
    ],
    [
      'a blocked card that was dropped, without saying it twice',
      () => [change('blocked', 4), change('drop', 6)],
      '4: blocked; 6: dropped',
    ],
    [
      'a reopened card, and that it had been finished',
      () => [answer(4, 2), answer(5, 0), change('reopen', 6), answer(6, 3), answer(9, 0)],
      '5: finished; 6: reopened, grew; 9: finished',
    ],
    [
      'a card that is still open again',
      () => [answer(5, 0), change('reopen', 6)],
      '5: finished; 6: reopened',
    ],
    ['of a slip on one day the reopening only', () => [answer(5, 0), change('reopen', 5)], '5: reopened'],
    [
      'a block that a card had when it was finished and reopened',
      () => [change('blocked', 4), answer(5, 0), change('reopen', 6)],
      '4: blocked; 5: finished; 6: reopened',
    ],
  ])('say %s', (_, facts, expected) => {
    expect(told(facts())).toBe(expected);
  });

  it('say on which day a card was pulled in, and nothing of one that was planned', () => {
    expect(told([], { ...CARD, origin: 'pulled-in', enteredOn: on(6) })).toBe('6: pulled-in');
    expect(told([])).toBe('');
  });

  it('put a correction of the plan first, on the day that it was for the team', () => {
    // Half past eleven at night on UTC is the next day one hour further east.
    const east = { ...team, timeZone: 'Europe/Oslo' };
    const facts = [answer(5, 0)];
    const [day] = timelineOf(east, statesOf({ cards: [CARD], facts }), facts, [correction]);
    expect(day?.day).toBe(on(5));
    expect(day?.events.map(({ kind }) => kind)).toEqual(['plan', 'finished']);
  });

  it('take a corrected answer for what it became', () => {
    const wrong = answer(3, 9, { surprisePoints: 4 });
    expect(told([wrong, answer(3, 5, { supersedesId: wrong.id })])).toBe('');
  });

  it('have the words of growth, blocks and drops, but no private ones', () => {
    const growth = { surprisePoints: 2, workedPoints: 0 };
    expect(notes([answer(3, 7, { ...growth, note: 'Two formats' })])).toEqual(['Two formats']);
    expect(notes([change('blocked', 4, 'The key')])).toEqual(['The key']);
    expect(notes([change('drop', 6, 'No printer')])).toEqual(['No printer']);
    expect(notes([answer(3, 7, { ...growth, note: ' Private: I was ill' })])).toEqual(['']);
    expect(notes([change('blocked', 4, 'private: my back')])).toEqual(['']);
    expect(notes([change('drop', 6, 'PRIVATE : a quarrel')])).toEqual(['']);
  });
});
