import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Growth } from '../../src/forecast/value-growth.ts';
import { valueGrowth } from '../../src/forecast/value-growth.ts';
import type { Card, CardFact, CardOrigin } from '../../src/sprint/card.ts';
import { whyNotAnswer } from '../../src/sprint/check-answer.ts';
import { estimateErrorPoints, plainEstimateErrorPoints } from '../../src/sprint/estimate-error.ts';
import { cardState, ledgerOf } from '../../src/sprint/ledger.ts';
import { DEFAULT_SCALE, snap } from '../../src/sprint/scale.ts';
import { closingSummary } from '../../src/sprint/summary.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import type { Ratio, Reason } from '../../src/sprint/undefined-value.ts';
import { percent } from '../../src/words/amounts.ts';
import { reasonSentence } from '../../src/words/undefined.ts';
import { numberIn, tableBelow } from './markdown-tables.ts';

const PAGE = readFileSync(join(import.meta.dirname, '../../docs/ratios.md'), 'utf8');

const said = tableBelow(PAGE, 'What was said');

const cards: Card[] = tableBelow(PAGE, 'Cards').map((row) => ({
  id: row.card as string,
  key: row.card as string,
  title: row.card as string,
  estimatePoints: numberIn(row.estimate) as number,
  origin: row['came in'] as CardOrigin,
  enteredOn: '2026-11-02',
  ownerIds: (row.owners as string).split(', '),
}));

const facts = said.map((row, order): CardFact => {
  const about = { cardId: row.card as string, day: row.day as string, memberId: row.who as string, order };
  if (row.what === 'drop') return { ...about, kind: 'drop' };
  return {
    ...about,
    kind: 'answer',
    workedPoints: numberIn(row.worked),
    leftPoints: numberIn(row.left) as number,
    surprisePoints: numberIn(row.surprise) as number,
  };
});

const baseline = {
  name: 'Harbour 1',
  velocityPoints: Number(/baseline sprint was ([\d.]+) points/.exec(PAGE)?.[1]),
};
const states = ledgerOf(cards, facts);
const summary = closingSummary(states, {
  scale: DEFAULT_SCALE,
  thresholds: DEFAULT_THRESHOLDS,
  baseline,
});

describe('the example sprint of the page', () => {
  test.each(said.map((row, i) => ({ row, i })).filter(({ row }) => row.what !== 'drop'))(
    'what was said in row $i is let through, and leaves what the row says',
    ({ row, i }) => {
      const fact = facts[i] as CardFact & { kind: 'answer' };
      const card = cards.find((each) => each.id === row.card) as Card;
      const before = facts.slice(0, i).filter((each) => each.cardId === card.id);
      expect(whyNotAnswer(card, before, fact.memberId, fact.day, fact)).toBeUndefined();
      const { entries } = cardState(card, [...before, fact]);
      expect(entries.find((entry) => entry.answer === fact)).toMatchObject({
        previousLeftPoints: numberIn(row['left before']),
        growthPoints: numberIn(row.growth),
        surprisePoints: numberIn(row.surprise),
        driftPoints: numberIn(row.drift),
      });
      const corrected = before.some((each) => each.memberId === fact.memberId && each.day === fact.day);
      expect(row.what).toBe(corrected ? 'correction' : 'answer');
    },
  );

  test('the cards end where the page says', () => {
    const rows = tableBelow(PAGE, 'Where the cards ended');
    expect(rows).toHaveLength(states.length);
    for (const [i, state] of states.entries()) {
      const row = rows[i] as (typeof rows)[number];
      expect(row.card).toBe(state.card.id);
      const outcome = state.droppedOn ? 'dropped' : state.finished ? 'finished' : 'open';
      expect(row.ended).toBe(outcome);
      expect({
        worked: numberIn(row.worked),
        left: numberIn(row.left),
        surprise: numberIn(row.surprise),
        drift: numberIn(row.drift),
        size: numberIn(row['true size']),
        snapped: numberIn(row['snaps to']),
        error: numberIn(row['estimate error']),
        plain: numberIn(row['plain error']),
      }).toEqual({
        worked: state.workedPoints,
        left: state.leftPoints,
        surprise: state.surprisePoints,
        drift: state.driftPoints,
        size: state.trueSizePoints,
        snapped: snap(state.trueSizePoints, DEFAULT_SCALE),
        error: estimateErrorPoints(state, DEFAULT_SCALE),
        plain: plainEstimateErrorPoints(state),
      });
    }
  });

  test('every sum of the core is on the page, with the value that the core computes', () => {
    const onPage = tableBelow(PAGE, 'Sums').map((row) => [row['in code'], numberIn(row.example)]);
    expect(Object.fromEntries(onPage)).toEqual(summary.totals);
  });

  test('every ratio of the core is on the page, with the division and the percentage', () => {
    const rows = tableBelow(PAGE, 'Ratios');
    expect(rows.map((row) => row['in code'])).toEqual(Object.keys(summary.ratios));
    for (const row of rows) {
      const [, above, below, text] = /^([\d.]+) ÷ ([\d.]+) = (.+)$/.exec(
        row.example as string,
      ) as RegExpExecArray;
      const ratio = summary.ratios[row['in code'] as keyof typeof summary.ratios];
      expect(Number(above) / Number(below), row.ratio).toBe(ratio);
      expect(text, row.ratio).toBe(percent(ratio as number));
    }
  });

  test('every undefined case is given the reason that the core gives', () => {
    const nothing = closingSummary([], {
      scale: DEFAULT_SCALE,
      thresholds: DEFAULT_THRESHOLDS,
      baseline: undefined,
    });
    const reasons = nothing.ratios as unknown as Record<string, Exclude<Ratio, number>>;
    for (const row of tableBelow(PAGE, 'Ratios')) {
      const sentence = reasonSentence(reasons[row['in code'] as string]?.undefined as Reason);
      const words = `${sentence.charAt(0).toLowerCase()}${sentence.slice(1, -1)}`;
      expect(row['undefined when'], row.ratio).toContain(words);
    }
  });

  test('verdict and notes are those of the core', () => {
    const outcome = Object.fromEntries(
      tableBelow(PAGE, "The example's outcome").map((row) => [row.outcome, row.value]),
    );
    expect(outcome).toEqual({
      verdict: summary.verdict.verdict,
      notes: summary.notes.map((note) => note.id).join(', '),
    });
  });
});

test('the thresholds of the page are the defaults under their JSON names', () => {
  const rows = tableBelow(PAGE, 'Thresholds, verdict and notes');
  const defaultOf = (text = '') => (text === 'off' ? undefined : numberIn(text));
  expect(Object.fromEntries(rows.map((row) => [row['JSON name'], defaultOf(row.default)]))).toEqual(
    DEFAULT_THRESHOLDS,
  );
});

test('the page says how each ratio misleads', () => {
  for (const row of tableBelow(PAGE, 'Ratios')) {
    const name = row.ratio as string;
    expect(PAGE).toContain(`- **${name.charAt(0).toUpperCase()}${name.slice(1)}.** `);
  }
});

test('the page gives the caution against appraising people and comparing teams', () => {
  expect(PAGE).toMatch(/not use them to appraise/i);
  expect(PAGE).toMatch(/not compare teams/i);
  expect(PAGE).toMatch(/local law/i);
  expect(PAGE).toMatch(/works agreements/i);
});

test('the example of value growth is what the code makes of its numbers', () => {
  const told =
    /worth (\d+) with (\d+) points finished, and later one worth (\d+) with (\d+) points: the value is at (\d+%), velocity at (\d+%), and a point brings (\d+%)/.exec(
      PAGE,
    );
  const [value, velocity, laterValue, laterVelocity] = (told ?? []).slice(1, 5).map(Number) as [
    number,
    number,
    number,
    number,
  ];
  const { sprints } = valueGrowth([
    { velocityPoints: velocity, recordedValue: value },
    { velocityPoints: laterVelocity, recordedValue: laterValue },
  ]);
  const { valueGrowth: ofValue, velocityGrowth, valuePerPointGrowth } = sprints[1] as Growth;
  expect([ofValue, velocityGrowth, valuePerPointGrowth].map((share) => percent(share as number))).toEqual(
    told?.slice(5),
  );
});
