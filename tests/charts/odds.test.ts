import { describe, expect, test } from 'vitest';
import { oddsAltText } from '../../src/charts/odds-alt-text.ts';
import { oddsLayout, shownOdds } from '../../src/charts/odds-layout.ts';
import { oddsChart, oddsMarks } from '../../src/charts/odds-option.ts';
import { oddsPng } from '../../src/charts/odds-png.ts';
import { palette } from '../../src/charts/palette.ts';
import type { SurpriseOddsBySize } from '../../src/forecast/surprise-odds.ts';
import { drawnPicture } from './drawn-picture.ts';
import { labelTexts } from './label-boxes.ts';
import { cardsOf, manySizes, noCards, oddsAdvice, ordinaryOdds, thirtySizes } from './odds-examples.ts';

const known = ({ odds }: typeof ordinaryOdds): SurpriseOddsBySize => {
  if ('undefined' in odds) throw new Error(odds.undefined.code);
  return odds;
};
const textsOf = (advice: typeof ordinaryOdds) => {
  const shown = shownOdds(known(advice).sizes);
  return labelTexts(oddsMarks(known(advice), shown, oddsLayout(shown.length)));
};

describe('the picture of surprise odds', () => {
  test('sets for each size a mark at its share and a line from end to end of its interval', async () => {
    const { sizes } = known(ordinaryOdds);
    const { xOf, yOf } = oddsLayout(sizes.length);
    const { colourAt } = await drawnPicture(oddsPng(ordinaryOdds));
    sizes.forEach(({ likelyInterval: { low, high }, likelyShare, borrows }, row) => {
      // Filled with its colour, or open.
      expect(colourAt(xOf(likelyShare), yOf(row))).toBe(borrows ? palette.card : palette.surprise);
      for (const x of [xOf(low) + 3, xOf(high) - 3]) expect(colourAt(x, yOf(row))).toBe(palette.surprise);
      for (const x of [xOf(low) - 3, xOf(high) + 3]) expect(colourAt(x, yOf(row))).not.toBe(palette.surprise);
    });
    expect(new Set(sizes.map(({ borrows }) => borrows))).toEqual(new Set([true, false]));
  });

  test('writes out the share, its interval, the cards, the borrowing and the median surprise of each size', () => {
    const texts = textsOf(oddsAdvice([...cardsOf(3, 24, 4, 1.5), ...cardsOf(8, 10, 2, 4)], [13]));
    for (const text of ['3 points', '25%', '12 to 45%', '6 of 24 cards', '1.5 points'])
      expect(texts).toContain(text);
    for (const text of ['8 points', '5 of 10 cards, borrows', '4 points']) expect(texts).toContain(text);
    for (const text of ['13 points', 'no card yet, borrows', '–']) expect(texts).toContain(text);
    expect(texts).toContain('all sizes 32%');
  });

  test('explains only the shapes that are there', () => {
    const borrowing = 'fewer than 12 cards: borrows from the other sizes';
    expect(textsOf(ordinaryOdds)).toEqual(expect.arrayContaining(['from its own cards', borrowing]));
    expect(textsOf(oddsAdvice(cardsOf(1, 30, 4, 1)))).not.toContain(borrowing);
    expect(textsOf(oddsAdvice(cardsOf(1, 3, 4, 1)))).not.toContain('from its own cards');
  });

  test('shows thirty sizes at most, those of most cards, and says so', () => {
    const { sizes } = known(manySizes);
    const shown = shownOdds(sizes);
    expect(shown).toHaveLength(30);
    const fewestShown = Math.min(...shown.map(({ cards }) => cards));
    const left = sizes.filter((size) => !shown.includes(size));
    expect(left).toHaveLength(12);
    for (const { cards } of left) expect(cards).toBeLessThanOrEqual(fewestShown);
    expect(shown.map(({ estimatePoints }) => estimatePoints)).toEqual(
      shown.map(({ estimatePoints }) => estimatePoints).toSorted((a, b) => a - b),
    );
    expect(JSON.stringify(oddsChart(manySizes).option.title)).toContain('the 30 sizes of most cards, of 42');
    expect(shownOdds(known(thirtySizes).sizes)).toHaveLength(30);
    expect(oddsAltText(manySizes)).toContain('12 sizes of fewer cards are not shown.');
  });

  test('holds the reason instead when there are no odds', () => {
    expect(JSON.stringify(oddsChart(noCards).option)).toContain('There is no card of a closed sprint yet.');
    expect(oddsAltText(noCards)).toBe(
      'Surprise odds by size of the team “Harbour team”: none. There is no card of a closed sprint yet.',
    );
  });

  test('is told in words with every number that is drawn', () => {
    expect(oddsAltText(oddsAdvice([...cardsOf(3, 24, 4, 1.5), ...cardsOf(8, 1, 1, 4)], [13]))).toBe(
      'Surprise odds by size of the team “Harbour team”. 7 of 25 cards of 9 closed sprints held surprise work (28%). ' +
        'Sizes of fewer than 12 cards borrow from the others. ' +
        'The chance that a card holds surprise work, and where the true chance lies 19 times in 20: ' +
        '3 points: 25% (12 to 45%), 6 of 24 cards, median surprise 1.5 points. ' +
        '8 points: 37% (17 to 59%), 1 of 1 card, borrows, median surprise 4 points. ' +
        '13 points: 33% (14 to 56%), no card yet, borrows.',
    );
  });

  test('tells less about each size when many sizes would not fit', () => {
    expect(oddsAltText(thirtySizes)).not.toContain('median surprise');
    expect(oddsAltText(thirtySizes)).toContain('30 points: 18% (7 to 39%), 4 of 22 cards.');
  });
});
