import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RangeAdvice } from '../../src/app/advice/advice.ts';
import { palette } from '../../src/charts/palette.ts';
import { rangeAltText } from '../../src/charts/range-alt-text.ts';
import { rangeLayout, rangeSize, shownSprints } from '../../src/charts/range-layout.ts';
import { rangeMarks, rangeOption } from '../../src/charts/range-option.ts';
import { rangePng } from '../../src/charts/range-png.ts';
import { reason, undefinedBecause } from '../../src/sprint/undefined-value.ts';
import { drawnPicture } from './drawn-picture.ts';
import { expectLegible, labelBoxes, labelTexts } from './label-boxes.ts';
import { ordinaryPast, pastSprint } from './past-examples.ts';
import * as examples from './range-examples.ts';

const wideRange = examples.rangeAdvice(ordinaryPast, { lowPoints: 18, highPoints: 26 });
const texts = (advice: RangeAdvice) => labelTexts(rangeMarks(advice));
const middleOf = ({ left, right }: { left: number; right: number }) => (left + right) / 2;

describe('the picture of the commitment range', () => {
  test('draws each past sprint as high as its points: commitment, pulled-in work upon it, velocity beside', async () => {
    const layout = rangeLayout(wideRange);
    const { colourAt, coloursAlong } = await drawnPicture(rangePng(wideRange));
    const half = layout.barPx / 2;
    ordinaryPast.forEach(({ commitmentPoints, pulledInPoints = 0, velocityPoints = 0 }, index) => {
      const [left, right] = [layout.xOf(index) - 1 - half, layout.xOf(index) + 1 + half];
      expect(colourAt(left, layout.plot.bottom - 4)).toBe(palette.commitmentFill);
      expect(colourAt(right, layout.yOf(velocityPoints) + 2)).toBe(palette.velocity);
      expect(colourAt(right, layout.yOf(velocityPoints) - 3)).not.toBe(palette.velocity);
      const upon = coloursAlong(
        [left, layout.yOf(commitmentPoints) - 2],
        [left, layout.yOf(commitmentPoints + Math.max(1, pulledInPoints)) + 1],
      );
      expect(upon.has(palette.pulledIn)).toBe(pulledInPoints > 0);
    });
  });

  test('stripes the pulled-in work, so that it is told by more than its colour', async () => {
    const layout = rangeLayout(wideRange);
    const { coloursAlong } = await drawnPicture(rangePng(wideRange));
    const x = layout.xOf(3) - 1 - layout.barPx / 2;
    const colours = coloursAlong([x, layout.yOf(29.5)], [x, layout.yOf(26.5)]);
    expect(colours).toContain(palette.pulledIn);
    expect(colours).toContain(palette.card);
  });

  test('fills the coming sprint between the two ends and nowhere else', async () => {
    const { coming, yOf } = rangeLayout(wideRange);
    const { colourAt } = await drawnPicture(rangePng(wideRange));
    const x = middleOf(coming) + 7;
    expect(colourAt(x, yOf(22))).toBe(palette.adviceFill);
    for (const end of [18, 26]) expect(colourAt(x, yOf(end))).toBe(palette.advice);
    for (const points of [16.5, 27.5]) expect(colourAt(x, yOf(points))).not.toBe(palette.adviceFill);
  });

  test('fills nothing where only one end is known or the ends cross', async () => {
    for (const advice of [examples.onlyHigh, examples.onlyLow, examples.middleWay, examples.crossedRange]) {
      const { coming, plot } = rangeLayout(advice);
      const { coloursAlong } = await drawnPicture(rangePng(advice));
      const x = coming.left + 6;
      expect(coloursAlong([x, plot.top], [x, plot.bottom - 2])).not.toContain(palette.adviceFill);
    }
  });

  test.each([
    ['both ends', wideRange, ['at most 26', 'at least 18', '18 to 26']],
    ['one size when the ends meet', examples.equalEnds, ['24 points', '24']],
    ['the high end alone', examples.onlyHigh, ['at most 24', 'low end unknown']],
    ['the low end alone', examples.onlyLow, ['at least 21.5', 'high end unknown']],
    [
      'the compromise between crossed ends',
      examples.middleWay,
      ['low end: 27', 'about 24', 'high end: 21', 'kept: 60%'],
    ],
    ['the high end below a low one', examples.crossedRange, ['at most 20', 'low end: 27.5']],
    ['that there is none', examples.nothingKept, ['no range']],
  ])('names %s', (_, advice, expected) => {
    expect(texts(advice)).toEqual(expect.arrayContaining(expected));
  });

  test('says why when there is no range', () => {
    expect(JSON.stringify(rangeOption(examples.oneSprintRange))).toContain(
      'This needs 3 closed sprints with a commitment; there is 1.',
    );
    expect(rangeAltText(examples.nothingKept)).toContain(
      'There is no range. No commitment is likely to be kept',
    );
  });

  test('tells kept and missed by shape and word, and only those that are there', () => {
    expect(texts(examples.ordinaryRange)).toEqual(expect.arrayContaining(['kept', 'missed']));
    expect(texts(examples.ordinaryRange)).not.toContain('no plan');
    expect(texts(examples.patchyRange)).toContain('no plan');
    expect(texts(examples.threeSprintRange)).not.toContain('missed');
  });

  test('writes a dash for what was not recorded, never a 0', () => {
    const recorded = [
      pastSprint(0, { commitment: 20, pulledIn: 0, velocity: 0, committedFinished: 0, surprise: 0 }),
    ];
    expect(texts(examples.rangeAdvice(recorded))).not.toContain('–');
    // Pulled-in work, velocity and verdict.
    const bare = texts(examples.rangeAdvice([pastSprint(0, { commitment: 20 })]));
    expect(bare.filter((text) => text === '–')).toHaveLength(3);
    expect(rangeAltText(examples.rangeAdvice([pastSprint(0, { commitment: 20 })]))).toContain(
      'commitment 20, pulled in not known, velocity not known, verdict not known.',
    );
  });

  test('shows the latest twelve sprints', () => {
    const shown = shownSprints(examples.hugeRange);
    expect(shown).toHaveLength(12);
    expect(shown.at(-1)).toBe(examples.hugeRange.past.at(-1));
  });

  test('is told in words with the numbers of each sprint', () => {
    expect(rangeAltText({ ...wideRange, past: ordinaryPast.slice(2, 5) })).toBe(
      'Commitment range of the team “Harbour team” for the sprint Mon 11 to Fri 22 May 2026. ' +
        'Commit to 18 to 26 points. Made from 9 sprints with a commitment. ' +
        'Past sprints, oldest first, in points: ' +
        '“Sprint 3” to 13 Feb 2026: commitment 21, pulled in 5, velocity 26, kept, imported. ' +
        '“Sprint 4” to 27 Feb 2026: commitment 22, pulled in 8, velocity 27, kept. ' +
        '“Sprint 5” to 13 Mar 2026: commitment 28, pulled in 0, velocity 21, missed.',
    );
  });

  test('drops the names of sprints from its words when they do not fit', () => {
    const past = Array.from({ length: 12 }, (_, index) =>
      pastSprint(index, { commitment: 20, name: `${index} ${'long '.repeat(40)}` }),
    );
    const text = rangeAltText(examples.rangeAdvice(past));
    expect(text).not.toContain('long');
    expect(text).toContain('to 16 Jan 2026: commitment 20');
  });

  test('no label stands on another, whatever the numbers', () => {
    const points = fc
      .oneof(fc.integer({ min: 0, max: 80 }), fc.integer({ min: 0, max: 200_000 }))
      .map((n) => n / 2);
    const amounts = fc.record({
      commitment: points,
      pulledIn: fc.option(points, { nil: undefined }),
      velocity: fc.option(points, { nil: undefined }),
    });
    const end = fc.oneof(
      points,
      fc.constant(undefinedBecause('few-sprints', { needed: 3, known: 2, having: 'finished-points' })),
    );
    fc.assert(
      fc.property(
        fc.array(amounts, { maxLength: 14 }),
        end,
        end,
        points,
        (past, lowPoints, highPoints, at) => {
          const isCrossed =
            typeof lowPoints === 'number' && typeof highPoints === 'number' && lowPoints > highPoints;
          const compromise = { points: at, chance: 0.5 };
          const crossed = { why: reason('varies-too-much'), compromise };
          const advice = examples.rangeAdvice(
            past.map((one, index) => pastSprint(index, one)),
            { lowPoints, highPoints, crossed: isCrossed ? crossed : undefined },
          );
          expectLegible(labelBoxes(rangeMarks(advice)), rangeSize);
        },
      ),
      { numRuns: 300 },
    );
  });
});
