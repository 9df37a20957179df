import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Card, CardFact } from '../../src/sprint/card.ts';
import { whyNotAnswer } from '../../src/sprint/check-answer.ts';
import { ledgerOf } from '../../src/sprint/ledger.ts';
import { DEFAULT_SCALE, snap } from '../../src/sprint/scale.ts';
import { closingSummary } from '../../src/sprint/summary.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import { isDefined } from '../../src/sprint/undefined-value.ts';
import { anyScale, DAYS, halves } from './random-sprint.ts';
import { aCard } from './sprint-facts.ts';
import type { SheetAnswer, SheetSprint } from './sprint-sheet.ts';
import { computeInSheet } from './sprint-sheet.ts';

const SPRINTS = 120;
/** A slow machine shared with other tests took 12 s. */
const TIMEOUT_MS = 120_000;

interface GeneratedSprint {
  readonly cards: readonly Card[];
  readonly facts: readonly CardFact[];
  readonly sheet: SheetSprint;
}

const anyAnswer = fc.record({
  worked: fc.option(halves(0, 6), { nil: undefined }),
  left: fc.oneof({ weight: 2, arbitrary: fc.constant(0) }, { weight: 3, arbitrary: halves(0, 9) }),
  surprise: fc.oneof(fc.constant(0), halves(-3, 6)),
});

const anySprint: fc.Arbitrary<GeneratedSprint> = fc
  .record({
    scale: anyScale,
    allPulledIn: fc.nat(5).map((n) => n === 0),
    baselineVelocity: fc.option(halves(0.5, 40), { nil: undefined }),
    cards: fc.array(
      fc.record({
        estimate: fc.oneof(fc.constantFrom(1, 2, 3, 5, 8), halves(0, 34)),
        planned: fc.nat(3).map((n) => n > 0),
        dropped: fc.nat(5).map((n) => n === 0),
        answers: fc.array(anyAnswer, { maxLength: DAYS.length }),
      }),
      { maxLength: 10 },
    ),
  })
  .map(({ scale, allPulledIn, baselineVelocity, cards }) => {
    const made = cards.map((card, i) => {
      const planned = card.planned && !allPulledIn;
      return aCard({
        id: String(i),
        estimatePoints: card.estimate,
        origin: planned ? 'planned' : 'pulled-in',
      });
    });
    const facts: CardFact[] = [];
    const answers: SheetAnswer[] = [];
    for (const [i, card] of made.entries()) {
      const given = cards[i] as (typeof cards)[number];
      for (const [d, said] of given.answers.entries()) {
        const input = { workedPoints: said.worked, leftPoints: said.left, surprisePoints: said.surprise };
        const day = DAYS[d] as string;
        const own = facts.filter((fact) => fact.cardId === card.id);
        // Only what the bot would let through; the sheet knows no refusals.
        if (whyNotAnswer(card, own, 'ana', day, input)) continue;
        facts.push({ kind: 'answer', cardId: card.id, day, memberId: 'ana', order: facts.length, ...input });
        answers.push({ card: i, ...said });
      }
      if (given.dropped) {
        facts.push({
          kind: 'drop',
          cardId: card.id,
          day: '2026-11-06',
          memberId: 'fay',
          order: facts.length,
        });
      }
    }
    const sheet: SheetSprint = {
      cards: made.map((card, i) => ({
        estimate: card.estimatePoints,
        planned: card.origin === 'planned',
        dropped: (cards[i] as (typeof cards)[number]).dropped,
      })),
      answers,
      scale,
      goesOn: scale.join() === DEFAULT_SCALE.join(),
      baselineVelocity,
    };
    return { cards: made, facts, sheet };
  });

describe('a spreadsheet with the formulas of the documentation', () => {
  test(`agrees on every total, ratio and verdict of ${SPRINTS} generated sprints`, {
    timeout: TIMEOUT_MS,
  }, () => {
    const met = { answers: 0, dropped: 0, custom: 0, noCommitment: 0, kept: 0, missed: 0, negative: 0 };
    fc.assert(
      fc.property(anySprint, ({ cards, facts, sheet }) => {
        const expected = computeInSheet(sheet);
        const { totals, ratios, verdict } = closingSummary(ledgerOf(cards, facts), {
          scale: sheet.scale,
          thresholds: DEFAULT_THRESHOLDS,
          baseline:
            sheet.baselineVelocity === undefined
              ? undefined
              : { name: 'the first', velocityPoints: sheet.baselineVelocity },
        });
        // Sums of halves are exact, so they must be equal and not just near.
        for (const [name, value] of Object.entries(totals)) expect(value, name).toBe(expected[name]);
        for (const [name, ratio] of Object.entries(ratios)) {
          // Without an earlier baseline a closed sprint is its own, which the sheet doesn't know.
          if (name === 'velocityGrowth' && sheet.baselineVelocity === undefined) continue;
          if (isDefined(ratio)) expect(ratio, name).toBeCloseTo(expected[name] as number, 12);
          else expect(expected[name], name).toBe('undefined');
        }
        expect(verdict.verdict).toBe(expected.verdict);

        met.answers += sheet.answers.length;
        met.dropped += sheet.cards.filter((card) => card.dropped).length;
        met.custom += sheet.goesOn ? 0 : 1;
        met.noCommitment += totals.commitmentPoints === 0 ? 1 : 0;
        met.kept += verdict.verdict === 'kept' ? 1 : 0;
        met.missed += verdict.verdict === 'missed' ? 1 : 0;
        met.negative += totals.driftPoints < 0 ? 1 : 0;
      }),
      { seed: 20261107, numRuns: SPRINTS },
    );
    // The sprints were of every kind that matters.
    for (const [kind, count] of Object.entries(met)) expect(count, kind).toBeGreaterThan(5);
  });

  test('agrees on the snap of every size on the default scale up to 100 points', {
    timeout: TIMEOUT_MS,
  }, () => {
    const sizes = Array.from({ length: 201 }, (_, i) => i / 2);
    for (const some of [sizes.slice(0, 67), sizes.slice(67, 134), sizes.slice(134)]) {
      const { onScaleCards } = computeInSheet({
        // The sheet counts a card whose size snaps to its estimate: all of them, when it snaps as we do.
        cards: some.map((size) => ({
          estimate: snap(size, DEFAULT_SCALE) as number,
          planned: true,
          dropped: false,
        })),
        answers: some.map((size, card) => ({ card, worked: size, left: 0, surprise: 0 })),
        scale: DEFAULT_SCALE,
        goesOn: true,
        baselineVelocity: undefined,
      });
      expect(onScaleCards).toBe(some.length);
    }
  });
});
