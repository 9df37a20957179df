import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { growthOf, placeInLedger, whyNotAnswer } from '../../src/sprint/check-answer.ts';
import { cardState } from '../../src/sprint/ledger.ts';
import { anyCardWithFacts, anyPoints, DAYS, halves, OWNERS } from './random-sprint.ts';

const seed = 20261103;
const numRuns = 1000;

describe('for any facts, legal or not, in any order of days', () => {
  test('estimate + surprise + drift = worked + left after every prefix', () => {
    fc.assert(
      fc.property(anyCardWithFacts, ({ card, facts }) => {
        for (let length = 0; length <= facts.length; length += 1) {
          const state = cardState(card, facts.slice(0, length));
          expect(card.estimatePoints + state.surprisePoints + state.driftPoints).toBe(
            state.workedPoints + state.leftPoints,
          );
          expect(state.trueSizePoints).toBe(state.workedPoints + state.leftPoints);
        }
      }),
      { seed, numRuns },
    );
  });

  test('the growth of every answer is explained exactly, within what may be surprise', () => {
    fc.assert(
      fc.property(anyCardWithFacts, ({ card, facts }) => {
        let left = card.estimatePoints;
        let surpriseSoFar = 0;
        for (const entry of cardState(card, facts).entries) {
          expect(entry.previousLeftPoints).toBe(left);
          expect(entry.growthPoints).toBe(entry.workedPoints + entry.leftPoints - left);
          expect(entry.surprisePoints + entry.driftPoints).toBe(entry.growthPoints);
          if (entry.growthPoints >= 0) {
            expect(entry.surprisePoints).toBeGreaterThanOrEqual(0);
            expect(entry.surprisePoints).toBeLessThanOrEqual(entry.growthPoints);
          } else {
            expect(entry.surprisePoints).toBeLessThanOrEqual(0);
            expect(entry.surprisePoints).toBeGreaterThanOrEqual(Math.max(entry.growthPoints, -surpriseSoFar));
          }
          left = entry.leftPoints;
          surpriseSoFar += entry.surprisePoints;
        }
        expect(surpriseSoFar).toBeGreaterThanOrEqual(0);
      }),
      { seed, numRuns },
    );
  });

  test('each member has one answer in force for a day, and days never go back', () => {
    fc.assert(
      fc.property(anyCardWithFacts, ({ card, facts }) => {
        const answers = cardState(card, facts).entries.map((entry) => entry.answer);
        const slots = answers.map((answer) => `${answer.memberId} ${answer.day}`);
        expect(new Set(slots).size).toBe(slots.length);
        const days = answers.map((answer) => answer.day);
        expect(days).toEqual(days.toSorted());
        const said = facts.filter((fact) => fact.kind === 'answer');
        expect(new Set(said.map((answer) => `${answer.memberId} ${answer.day}`)).size).toBe(slots.length);
      }),
      { seed, numRuns },
    );
  });

  test('a finished card has nothing left and is not dropped, and only it has a day of finishing', () => {
    fc.assert(
      fc.property(anyCardWithFacts, ({ card, facts }) => {
        const state = cardState(card, facts);
        expect(state.finishedOn !== undefined).toBe(state.finished);
        expect(state.droppedOn !== undefined).toBe(
          facts.findLast((fact) => fact.kind === 'drop' || fact.kind === 'undrop')?.kind === 'drop',
        );
        if (state.finished) expect([state.leftPoints, state.droppedOn]).toEqual([0, undefined]);
      }),
      { seed, numRuns },
    );
  });
});

describe('an answer that is let through', () => {
  const anyAnswer = fc.record({
    memberId: fc.constantFrom(...OWNERS),
    day: fc.constantFrom(...DAYS),
    workedPoints: fc.option(anyPoints, { nil: undefined }),
    leftPoints: anyPoints,
    surprisePoints: fc.option(halves(-4, 6), { nil: undefined }),
  });

  test('is folded with every word of it intact, where the context said it would go', () => {
    let letThrough = 0;
    let corrections = 0;
    fc.assert(
      fc.property(anyCardWithFacts, anyAnswer, ({ card, facts }, { memberId, day, ...input }) => {
        if (whyNotAnswer(card, facts, memberId, day, input)) return;
        letThrough += 1;
        const context = placeInLedger(card, facts, memberId, day);
        if (context.corrects) corrections += 1;
        const surprisePoints = input.surprisePoints ?? 0;
        const fact = {
          kind: 'answer' as const,
          cardId: card.id,
          memberId,
          day,
          order: 999,
          ...input,
          surprisePoints,
        };
        const entries = cardState(card, [...facts, fact]).entries;
        const entry = entries.find((each) => each.answer.order === 999);
        expect(entry).toMatchObject({
          previousLeftPoints: context.previousLeftPoints,
          leftPoints: input.leftPoints,
          surprisePoints,
          growthPoints: growthOf(input, context.previousLeftPoints),
        });
        if (input.workedPoints !== undefined) expect(entry?.workedPoints).toBe(input.workedPoints);
      }),
      { seed, numRuns: 4000 },
    );
    // The property would hold trivially if hardly anything came through.
    expect(letThrough).toBeGreaterThan(400);
    expect(corrections).toBeGreaterThan(40);
  });
});
