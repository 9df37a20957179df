import { describe, expect, test } from 'vitest';
import { sizesOfMostCards } from '../../src/app/advice/shown-in-chart.ts';
import { palette } from '../../src/charts/chart-theme.ts';
import { oddsChart } from '../../src/charts/odds-chart.ts';
import type { SurpriseOddsBySize } from '../../src/forecast/surprise-odds.ts';
import { ALT_TEXT_MAX_LENGTH } from '../../src/words/charts/chart-text.ts';
import { oddsAltText, oddsHeading } from '../../src/words/charts/odds.ts';
import { lookingAt } from './looking-at.ts';
import { cardsOf, manySizes, noCards, oddsAdvice, ordinaryOdds, thirtySizes } from './odds-examples.ts';

const known = ({ odds }: typeof ordinaryOdds): SurpriseOddsBySize => {
  if ('undefined' in odds) throw new Error(odds.undefined.code);
  return odds;
};
const textsOf = (advice: typeof ordinaryOdds) => lookingAt(oddsChart(advice), ({ texts }) => texts);

describe('the picture of surprise odds', () => {
  test('sets for each size a mark at its share and a line from end to end of its interval', async () => {
    const { sizes } = known(ordinaryOdds);
    await lookingAt(oddsChart(ordinaryOdds), ({ at, colourAt }) => {
      sizes.forEach(({ likelyInterval: { low, high }, likelyShare, borrows }, row) => {
        // Filled with its colour, or open.
        expect(colourAt(...at(likelyShare, row))).toBe(borrows ? palette.card : palette.surprise);
        const [[left, y], [right]] = [at(low, row), at(high, row)];
        for (const x of [left + 3, right - 3]) expect(colourAt(x, y)).toBe(palette.surprise);
        for (const x of [left - 3, right + 3]) expect(colourAt(x, y)).not.toBe(palette.surprise);
      });
    });
    expect(new Set(sizes.map(({ borrows }) => borrows))).toEqual(new Set([true, false]));
  });

  test('writes out the share, the cards and the median surprise of each size; its mark shows interval and borrowing', async () => {
    const texts = await textsOf(oddsAdvice([...cardsOf(3, 24, 4, 1.5), ...cardsOf(8, 10, 2, 4)], [13]));
    for (const text of ['3 points', '25%', '6 of 24', '1.5']) expect(texts).toContain(text);
    for (const text of ['8 points', '5 of 10', '4']) expect(texts).toContain(text);
    for (const text of ['13 points', 'none yet', '–']) expect(texts).toContain(text);
    expect(texts).toContain('all sizes 32%');
  });

  test('explains only the shapes that are there', async () => {
    const borrowing = 'fewer than 12 cards: borrows from the other sizes';
    expect(await textsOf(ordinaryOdds)).toEqual(expect.arrayContaining(['from its own cards', borrowing]));
    expect(await textsOf(oddsAdvice(cardsOf(1, 30, 4, 1)))).not.toContain(borrowing);
    expect(await textsOf(oddsAdvice(cardsOf(1, 3, 4, 1)))).not.toContain('from its own cards');
  });

  test('shows thirty sizes at most, those of most cards, and says so', () => {
    const { sizes } = known(manySizes);
    const shown = sizesOfMostCards(sizes, 30);
    expect(shown).toHaveLength(30);
    const fewestShown = Math.min(...shown.map(({ cards }) => cards));
    const left = sizes.filter((size) => !shown.includes(size));
    expect(left).toHaveLength(12);
    for (const { cards } of left) expect(cards).toBeLessThanOrEqual(fewestShown);
    expect(shown.map(({ estimatePoints }) => estimatePoints)).toEqual(
      shown.map(({ estimatePoints }) => estimatePoints).toSorted((a, b) => a - b),
    );
    expect(oddsHeading(manySizes).subtitle).toContain('The 30 sizes of most cards are shown, of 42.');
    expect(oddsHeading(thirtySizes).subtitle).not.toContain('are shown');
  });

  test('holds the reason instead when there are no odds', async () => {
    expect((await textsOf(noCards)).at(-1)).toContain('No odds yet: no card of a closed sprint is known.');
    expect(oddsAltText(noCards)).toBe(
      'Surprise odds by size, of the team “Harbour team”. No odds yet: no card of a closed sprint is known.',
    );
  });

  test('is described with every number that is drawn', () => {
    expect(oddsAltText(oddsAdvice([...cardsOf(3, 24, 4, 1.5), ...cardsOf(8, 1, 1, 4)], [13]))).toBe(
      'Surprise odds by size, of the team “Harbour team”. Based on 25 cards of 9 closed sprints; 7 of them held surprise work (28%). ' +
        'Sizes of fewer than 12 cards borrow from the others. ' +
        'The chance of surprise work in a card, and where the true chance lies 19 times in 20: ' +
        '3 points: 25% (12% to 45%), 6 of 24 cards, median surprise 1.5 points. ' +
        '8 points: 51% (13% to 88%), 1 of 1 card, borrows, median surprise 4 points. ' +
        '13 points: 52% (9% to 93%), no card yet, borrows.',
    );
  });

  test('is described with the sizes of most cards, by size, when not all of them fit', () => {
    const text = oddsAltText(manySizes);
    expect(text.length).toBeLessThanOrEqual(ALT_TEXT_MAX_LENGTH);
    const said = [...text.matchAll(/([\d.]+) points: [^.]*, \d+ of (\d+) cards/g)].map(([, size, cards]) => ({
      estimatePoints: Number(size),
      cards: Number(cards),
    }));
    const shown = sizesOfMostCards(known(manySizes).sizes, said.length);
    expect(said).toEqual(shown.map(({ estimatePoints, cards }) => ({ estimatePoints, cards })));
    expect(text).toMatch(new RegExp(`\\. ${42 - said.length} sizes of fewer cards are left out here\\.$`));
  });
});
