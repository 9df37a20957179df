import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RangeAdvice } from '../../src/app/advice/advice.ts';
import { shownSprints } from '../../src/app/advice/shown-in-chart.ts';
import { palette } from '../../src/charts/chart-theme.ts';
import { rangeChart } from '../../src/charts/range-chart.ts';
import { reason, undefinedBecause } from '../../src/sprint/undefined-value.ts';
import { ALT_TEXT_MAX_LENGTH } from '../../src/words/charts/chart-text.ts';
import { rangeAltText, rangeHeading } from '../../src/words/charts/range.ts';
import { search } from '../support/search-width.ts';
import { expectLegible, lookingAt, type SeenChart } from './looking-at.ts';
import { ordinaryPast, pastSprint } from './past-examples.ts';
import * as examples from './range-examples.ts';

const wideRange = examples.rangeAdvice(ordinaryPast, { lowPoints: 18, highPoints: 26 });
const looking = <T>(advice: RangeAdvice, look: (seen: SeenChart) => T) => lookingAt(rangeChart(advice), look);
const texts = (advice: RangeAdvice) => looking(advice, (seen) => seen.texts);
/** Of nine past sprints: their places, and that of the coming one. */
const comingPlace = 11;

describe('the picture of the commitment range', () => {
  test('draws each past sprint as an open hull as high as its commitment, with pulled-in work on top', async () => {
    await looking(wideRange, ({ at, coloursAlong }) => {
      ordinaryPast.forEach(({ commitmentPoints, pulledInPoints = 0, velocityPoints = 0 }, index) => {
        const [x, deck] = at(index, commitmentPoints);
        const inside = coloursAlong([x, at(index, 8)[1]], [x, at(index, 3)[1]]);
        expect(inside).toEqual(new Set([palette.card]));
        const across = coloursAlong([x - 8, at(index, 6)[1]], [x + 8, at(index, 6)[1]]);
        expect(across).toContain(palette.commitment);
        // The line of finished points may cover the edge of the hull.
        if (Math.abs(velocityPoints - commitmentPoints) > 1) {
          expect(coloursAlong([x + 2, deck - 4], [x + 2, deck + 4])).toContain(palette.commitment);
        }
        const onTop = coloursAlong(
          [x, deck - 2],
          [x, at(index, commitmentPoints + Math.max(1, pulledInPoints))[1]],
        );
        expect(onTop.has(palette.pulledIn)).toBe(pulledInPoints > 0);
        const top = at(index, commitmentPoints + pulledInPoints)[1];
        expect(coloursAlong([x + 2, top - 3], [x + 2, top - 30])).not.toContain(palette.pulledIn);
      });
    });
  });

  test('crosses each with a thick line, wider than the hull, at the points that were finished', async () => {
    await looking(wideRange, ({ at, coloursAlong, colourAt }) => {
      ordinaryPast.forEach(({ velocityPoints = 0 }, index) => {
        const [x, y] = at(index, velocityPoints);
        expect(coloursAlong([x - 6, y], [x + 6, y])).toEqual(new Set([palette.velocity]));
        for (const away of [-5, 5]) expect(colourAt(x, y + away)).not.toBe(palette.velocity);
      });
    });
  });

  test('stripes the pulled-in work, so that it differs by more than its colour', async () => {
    await looking(wideRange, ({ at, coloursAlong }) => {
      const [x, y] = at(3, 29.5);
      const colours = coloursAlong([x, y], [x, at(3, 27.5)[1]]);
      expect(colours).toContain(palette.pulledIn);
      expect(colours).toContain(palette.card);
    });
  });

  test('fills the coming sprint between the two ends and nowhere else', async () => {
    await looking(wideRange, ({ at, colourAt }) => {
      const seen = (points: number) => colourAt(...at(comingPlace, points));
      expect(seen(22)).toBe(palette.adviceFill);
      for (const end of [18, 26]) expect(seen(end)).toBe(palette.advice);
      for (const points of [16.5, 27.5]) expect(seen(points)).not.toBe(palette.adviceFill);
    });
  });

  test('fills nothing where only one end is known or the ends cross', async () => {
    for (const advice of [examples.onlyHigh, examples.onlyLow, examples.middleWay, examples.crossedRange]) {
      await looking(advice, ({ at, coloursAlong }) => {
        const [x, bottom] = at(comingPlace, 0);
        expect(coloursAlong([x - 10, at(0, 29)[1]], [x - 10, bottom - 2])).not.toContain(palette.adviceFill);
      });
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
  ])('names %s', async (_, advice, expected) => {
    expect(await texts(advice)).toEqual(expect.arrayContaining(expected));
  });

  test('says why when there is no range', () => {
    expect(rangeHeading(examples.oneSprintRange).subtitle).toContain(
      'No range yet. This needs 3 closed sprints with a commitment; there is 1.',
    );
    expect(rangeAltText(examples.nothingKept)).toContain(
      'No range. No commitment would be kept in 8 of 10 sprints',
    );
  });

  test('shows kept and missed by shape and word, and only those that are there', async () => {
    expect(await texts(examples.ordinaryRange)).toEqual(expect.arrayContaining(['kept', 'missed']));
    expect(await texts(examples.ordinaryRange)).not.toContain('no plan');
    expect(await texts(examples.patchyRange)).toContain('no plan');
    expect(await texts(examples.threeSprintRange)).not.toContain('missed');
  });

  test('writes a dash for what was not recorded, never a 0', async () => {
    const recorded = [
      pastSprint(0, { commitment: 20, pulledIn: 0, velocity: 0, committedFinished: 0, surprise: 0 }),
    ];
    expect(await texts(examples.rangeAdvice(recorded))).not.toContain('–');
    // Pulled-in work, velocity and verdict.
    const bare = await texts(examples.rangeAdvice([pastSprint(0, { commitment: 20 })]));
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

  test('is described with the numbers of each sprint, latest first', () => {
    expect(rangeAltText({ ...wideRange, past: ordinaryPast.slice(2, 5) })).toBe(
      'Commitment range of the team “Harbour team” for the sprint Mon 11 May to Fri 22 May 2026. ' +
        'Commit to 18 to 26 points. Based on 9 sprints with a commitment. ' +
        'Past sprints in points, latest first. ' +
        '“Sprint 5”, to 13 Mar 2026: commitment 28, pulled in 0, velocity 21, missed. ' +
        '“Sprint 4”, to 27 Feb 2026: commitment 22, pulled in 8, velocity 27, kept. ' +
        '“Sprint 3”, to 13 Feb 2026: commitment 21, pulled in 5, velocity 26, kept, imported.',
    );
  });

  test.each([
    [examples.onlyHigh, 'Commit to at most 24 points. The low end isn’t known. This needs 3 closed sprints'],
    [
      examples.onlyLow,
      'Commit to at least 21.5 points. The high end isn’t known. This needs 3 closed sprints',
    ],
    [examples.equalEnds, 'Commit to 24 points. Based on'],
    [
      examples.crossedRange,
      'Commit to at most 20 points. The low end, 27.5, is above that. No commitment is both kept in 8 of 10 sprints',
    ],
    [
      examples.middleWay,
      'Commit to about 24 points as a compromise. The low end, 27, is above the high end, 21. ' +
        'At the compromise, the chance to keep it and the chance not to pull in too much are 60% each. ' +
        'No commitment is both kept in 8 of 10 sprints',
    ],
  ])('is described with what is known of the ends (example %#)', (advice, sentences) => {
    expect(rangeAltText(advice)).toContain(sentences);
  });

  test('is described without the names of sprints when these do not fit', () => {
    const past = Array.from({ length: 9 }, (_, index) =>
      pastSprint(index, {
        commitment: 20,
        pulledIn: 0,
        velocity: 20,
        name: `${index} ${'long '.repeat(40)}`,
      }),
    );
    const text = rangeAltText(examples.rangeAdvice(past));
    expect(text).not.toContain('long');
    expect(text).toContain('To 16 Jan 2026: commitment 20');
    expect(text).not.toContain('left out');
  });

  test('is described without the earliest sprints when even then not all fit, and says how many', () => {
    const past = Array.from({ length: 12 }, (_, index) =>
      pastSprint(index, { commitment: 12_345.5, pulledIn: 1_234.5, velocity: 23_456.5, imported: true }),
    );
    const advice = { ...examples.middleWay, past };
    const text = rangeAltText({ ...advice, team: { ...advice.team, name: 'long '.repeat(40) } });
    expect(text.length).toBeLessThanOrEqual(ALT_TEXT_MAX_LENGTH);
    const said = text.match(/: commitment/g)?.length ?? 0;
    expect(said).toBeGreaterThan(2);
    expect(text).toMatch(new RegExp(`\\. ${12 - said} earlier sprints are left out here\\.$`));
  });

  test('no label overlaps another, for all numbers', async () => {
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
    await fc.assert(
      fc.asyncProperty(
        fc.array(amounts, { maxLength: 14 }),
        end,
        end,
        points,
        async (past, lowPoints, highPoints, at) => {
          const isCrossed =
            typeof lowPoints === 'number' && typeof highPoints === 'number' && lowPoints > highPoints;
          const compromise = { points: at, chance: 0.5 };
          const crossed =
            highPoints === 0
              ? { why: reason('too-little-finished'), compromise: undefined }
              : { why: reason('varies-too-much'), compromise };
          const advice = examples.rangeAdvice(
            past.map((one, index) => pastSprint(index, one)),
            { lowPoints, highPoints, crossed: isCrossed ? crossed : undefined },
          );
          await looking(advice, expectLegible);
        },
      ),
      // The widest words that there are: a hundred cards, each of the most points.
      { ...search(10), examples: [[[], 88_888.5, 99_950, 0]] },
    );
  });
});
