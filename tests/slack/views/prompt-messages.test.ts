import { describe, expect, it } from 'vitest';
import { answersValue, decodeValue, sprintDayValue } from '../../../src/slack/button-values.ts';
import { ACTIONS } from '../../../src/slack/ids.ts';
import { growthMessage } from '../../../src/slack/views/answering/growth-message.ts';
import {
  dailyPromptMessage,
  lastCallMessage,
  reminderMessage,
} from '../../../src/slack/views/answering/prompt-messages.ts';
import { buttonsOf } from './view-checks.ts';
import { answeredPrompt, growth, promptOf, sprint } from './view-examples.ts';

const closed = { ...sprint, state: 'closed' } as const;

describe('the daily prompt', () => {
  it('asks about each card by the number that an answer in words uses', () => {
    expect(dailyPromptMessage(promptOf()).text).toMatchInlineSnapshot(`
      "Wed 4 Nov: what is left on your cards?
      In Harbour 12 you have 3 cards:
      1. LP-1 Import tide tables: 3 points left
      2. LP-2 Show tides in the berth calendar: 8 points left
      3. LP-5 Repair the tide gauge: 3 points left
      Buttons: Answer, Nothing changed, Away today
      Or write here what is left: “3, 0, 5” in this order, or “2: 3” for card 2 alone. To say what you worked as well: “2: 3 worked 1”. Stuck? “2: 3 blocked reason”. The sprint closes on Fri 13 Nov at 17:00."
    `);
  });

  it('gives an example for one card when there is one', () => {
    const text = dailyPromptMessage(promptOf({ cards: promptOf().cards.slice(0, 1) })).text;
    expect(text).toContain('you have 1 card:');
    expect(text).toContain('for example “3”.');
    expect(text).not.toContain('“2: 3”');
  });

  it.each([
    ['prompt', dailyPromptMessage, 'asked'],
    ['first morning', dailyPromptMessage, 'listed'],
    ['reminder', reminderMessage, 'asked'],
    ['last call', lastCallMessage, 'asked'],
  ] as const)('asks nothing once all cards are given away: %s', (_name, message, state) => {
    const { text, blocks } = message(promptOf({ cards: [], state }));
    expect(text).toContain('You have no open card in Harbour 12 any more, so there is nothing to answer.');
    expect(buttonsOf(blocks)).toEqual([]);
  });

  it('offers three ways to meet it, each with the sprint and the day', () => {
    const buttons = buttonsOf(dailyPromptMessage(promptOf()).blocks);
    expect(buttons.map(({ label, actionId }) => [label, actionId])).toEqual([
      ['Answer', ACTIONS.openAnswerForm],
      ['Nothing changed', ACTIONS.recordUnchanged],
      ['Away today', ACTIONS.recordAway],
    ]);
    for (const { value } of buttons) {
      expect(decodeValue(sprintDayValue, value)).toEqual({ sprintId: 'sprint-12', day: '2026-11-04' });
    }
  });

  it('shows what was recorded, what was not said, and a way to change it', () => {
    expect(dailyPromptMessage(answeredPrompt).text).toMatchInlineSnapshot(`
      "Recorded for Wed 4 Nov in Harbour 12
      • LP-1 Import tide tables: worked 1, 4 points left, surprise work +2 – The tables come in two formats
      Not answered, so as before:
      2. LP-2 Show tides in the berth calendar: 8 points left
      3. LP-5 Repair the tide gauge: 3 points left
      Buttons: Change my answer"
    `);
  });

  it('calls a card with nothing left by those words', () => {
    const answered = answeredPrompt.answered.map((line) => ({ ...line, leftPoints: 0 }));
    expect(dailyPromptMessage({ ...answeredPrompt, answered }).text).toContain('worked 1, nothing left');
  });

  it('shows that nothing changed', () => {
    expect(dailyPromptMessage(promptOf({ state: 'unchanged' })).text).toMatchInlineSnapshot(`
      "Recorded for Wed 4 Nov in Harbour 12: nothing changed
      Still left:
      1. LP-1 Import tide tables: 3 points left
      2. LP-2 Show tides in the berth calendar: 8 points left
      3. LP-5 Repair the tide gauge: 3 points left
      Buttons: Change my answer"
    `);
  });

  it('shows that the member is away', () => {
    expect(dailyPromptMessage(promptOf({ state: 'away' })).text).toMatchInlineSnapshot(`
      "Recorded for Wed 4 Nov in Harbour 12: you are away
      Your cards stay as they are, and you won’t be asked again for this day.
      Buttons: Answer after all"
    `);
  });

  it('shows to somebody away what they answered before', () => {
    const { text } = dailyPromptMessage({ ...answeredPrompt, state: 'away' });
    expect(text).toContain('You had answered:\n• LP-1 Import tide tables: worked 1, 4 points left');
  });

  it('asks nothing any more when the sprint is over', () => {
    const view = dailyPromptMessage(promptOf({ state: 'over', sprint: closed }));
    expect(view.text).toMatchInlineSnapshot(`
      "Harbour 12 is over
      The question for Wed 4 Nov no longer needs an answer."
    `);
    expect(buttonsOf(view.blocks)).toEqual([]);
  });

  it.each(['answered', 'unchanged', 'away'] as const)(
    'offers no change of state %s once the sprint is closed',
    (state) => {
      expect(buttonsOf(dailyPromptMessage(promptOf({ state })).blocks)).toHaveLength(1);
      expect(buttonsOf(dailyPromptMessage(promptOf({ state, sprint: closed })).blocks)).toEqual([]);
    },
  );
});

describe('the first morning', () => {
  it('lists the cards, asks nothing, and offers only to answer', () => {
    expect(dailyPromptMessage({ ...promptOf(), state: 'listed' }).text).toMatchInlineSnapshot(`
      "Wed 4 Nov: Harbour 12 begins
      You have 3 cards:
      1. LP-1 Import tide tables: 3 points left
      2. LP-2 Show tides in the berth calendar: 8 points left
      3. LP-5 Repair the tide gauge: 3 points left
      Buttons: Answer
      Nothing to answer yet: from the next working day on I ask what is left. If you know more already, answer here. The sprint closes on Fri 13 Nov at 17:00."
    `);
  });

  it('speaks of no next day when the sprint has none', () => {
    const day = sprint.endsOn;
    expect(dailyPromptMessage({ ...promptOf(), day, state: 'listed' }).text).not.toContain(
      'next working day',
    );
  });
});

describe('reminder and last call', () => {
  it('reminds once and says so', () => {
    expect(reminderMessage(promptOf()).text).toMatchInlineSnapshot(`
      "Reminder: what is left on your cards in Harbour 12?
      1. LP-1 Import tide tables: 3 points left
      2. LP-2 Show tides in the berth calendar: 8 points left
      3. LP-5 Repair the tide gauge: 3 points left
      Buttons: Answer, Nothing changed, Away today
      Or write here what is left: “3, 0, 5” in this order, or “2: 3” for card 2 alone. To say what you worked as well: “2: 3 worked 1”. Stuck? “2: 3 blocked reason”. There is no second reminder today."
    `);
  });

  it('says when the sprint closes and what counts without an answer', () => {
    const prompt = promptOf({ day: '2026-11-13' });
    const saidBy = [prompt.userId, 'U0INES', undefined];
    const cards = prompt.cards.map((card, i) => {
      const userId = saidBy[i];
      return userId === undefined
        ? card
        : { ...card, saidLast: { userId, day: '2026-11-13', at: new Date('2026-11-13T09:20:00Z') } };
    });
    expect(lastCallMessage({ ...prompt, cards }).text).toMatchInlineSnapshot(`
      "Last call: Harbour 12 closes on Fri 13 Nov at 17:00
      Is this still so? Without an answer your cards count as listed here:
      1. LP-1 Import tide tables: 3 points left, you said on Fri 13 Nov at 09:20
      2. LP-2 Show tides in the berth calendar: 8 points left, <@U0INES> said on Fri 13 Nov at 09:20
      3. LP-5 Repair the tide gauge: 3 points left, as nobody has answered for it yet
      Buttons: Answer, Still so, Away today
      Or write here what is left: “3, 0, 5” in this order, or “2: 3” for card 2 alone. To say what you worked as well: “2: 3 worked 1”. Stuck? “2: 3 blocked reason”."
    `);
  });

  it.each([reminderMessage, lastCallMessage])('show how the prompt was met when it has been (%o)', (view) => {
    expect(view(answeredPrompt)).toEqual(dailyPromptMessage(answeredPrompt));
  });

  it('shows the closing time of a reopened sprint, in the team’s zone', () => {
    // Lisbon is on UTC in November: tz database 2025c.
    const reopened = { ...sprint, closesAtInstant: new Date('2026-11-14T17:30:00Z') };
    expect(dailyPromptMessage(promptOf({ sprint: reopened })).text).toContain(
      'closes on Sat 14 Nov at 17:30',
    );
  });
});

describe('the question why a card grew', () => {
  it('names the card and its growth and explains the two reasons', () => {
    expect(growthMessage(growth).text).toMatchInlineSnapshot(`
      "A card grew. Why?
      • LP-1 Import tide tables: grew by 2 points
      Nothing is recorded yet. Say why, and it will be:
      Buttons: All surprise work, All estimate drift, Some of each…
      Surprise work: nobody foresaw it, and the card can’t be accepted without it. Estimate drift: the same work turned out larger than estimated."
    `);
  });

  it('carries the answers with the explanation filled in for the cards that grew only', () => {
    const [surprise, drift, some] = buttonsOf(growthMessage(growth).blocks);
    const parsed = (value: string | undefined): unknown => JSON.parse(value ?? '');
    const unexplained = ['card-2', '', '6', '', ''];
    const expected = (explanation: string): object => ({
      sprintId: 'sprint-12',
      day: '2026-11-04',
      answers: [['card-1', '1', '4', explanation, ''], unexplained],
    });
    expect(surprise?.actionId).toBe(ACTIONS.growthAllSurprise);
    expect(parsed(surprise?.value)).toEqual(expected('2'));
    expect(drift?.actionId).toBe(ACTIONS.growthAllDrift);
    expect(parsed(drift?.value)).toEqual(expected('0'));
    expect(some?.actionId).toBe(ACTIONS.growthSomeOfEach);
    expect(parsed(some?.value)).toEqual(expected(''));
  });

  it('asks whether a number is later than a co-owner’s, who may keep theirs', () => {
    const at = new Date('2026-11-04T09:20:00Z');
    const grown = growth.grown.map((card) => ({
      ...card,
      saidByOther: { userId: 'U0INES', leftPoints: 4, at },
    }));
    const message = growthMessage({ ...growth, grown, asOf: 7 });
    expect(message.text).toContain('Which number is later?');
    expect(message.text).toContain(
      '<@U0INES> said 4 points left on Wed 4 Nov at 09:20. Is yours after that?',
    );
    const keep = buttonsOf(message.blocks).find(({ actionId }) => actionId === ACTIONS.growthKeepOther);
    const value = decodeValue(answersValue, String(keep?.value));
    expect(value).toMatchObject({ asOf: 7, answers: [{ cardId: 'card-2' }] });
  });

  it('offers the form alone when the answers are too long for a button', () => {
    const answers = growth.answers.map((answer) => ({ ...answer, note: 'x'.repeat(1_500) }));
    const buttons = buttonsOf(growthMessage({ ...growth, answers }).blocks);
    expect(buttons).toHaveLength(1);
    expect(buttons[0]?.label).toBe('Answer in the form…');
    expect(decodeValue(sprintDayValue, buttons[0]?.value)).toEqual({
      sprintId: 'sprint-12',
      day: '2026-11-04',
    });
  });
});
