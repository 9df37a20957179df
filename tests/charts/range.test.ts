import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RangeAdvice } from '../../src/app/advice/advice.ts';
import { hasChart } from '../../src/app/advice/advice-chart.ts';
import { commitmentCurve } from '../../src/app/advice/shown-in-chart.ts';
import { palette } from '../../src/charts/chart-theme.ts';
import { rangeChart, rangeToDraw } from '../../src/charts/range-chart.ts';
import { ALT_TEXT_MAX_LENGTH } from '../../src/words/charts/chart-text.ts';
import { rangeAltText, rangeHeading } from '../../src/words/charts/range.ts';
import { search } from '../support/search-width.ts';
import { expectLegible, lookingAt, type SeenChart } from './looking-at.ts';
import { pastSprint } from './past-examples.ts';
import * as examples from './range-examples.ts';

const looking = <T>(advice: RangeAdvice, look: (seen: SeenChart) => T) =>
  lookingAt(rangeChart(rangeToDraw(advice)), look);
const texts = (advice: RangeAdvice) => looking(advice, (seen) => seen.texts);
const drawn = Object.entries(examples).filter(
  (entry): entry is [string, RangeAdvice] => typeof entry[1] !== 'function',
);

function curveOf(advice: RangeAdvice) {
  const curve = commitmentCurve(advice);
  if (!curve) throw new Error('there is a curve');
  return curve;
}

describe('the picture of the commitment range', () => {
  test('draws each chance as a line of its own over possible commitments', async () => {
    const { steps } = curveOf(examples.ordinaryRange);
    await looking(examples.ordinaryRange, ({ at, coloursAlong }) => {
      for (const { points, chances } of steps.filter(({ points }) => points > 15 && points % 7 === 3)) {
        const passes = (chance: number) => {
          const [x, y] = at(points, chance);
          return coloursAlong([x, y - 4], [x, y + 4]);
        };
        // The others are dashed and may have a gap here.
        expect(passes(chances.kept as number)).toContain(palette.left);
      }
      for (const { color, id } of [
        { color: palette.pulledIn, id: 'finishedWhole' as const },
        { color: palette.surprise, id: 'ranOut' as const },
      ]) {
        const along = steps.flatMap(({ points, chances }) => {
          const [x, y] = at(points, chances[id] as number);
          return [...coloursAlong([x, y - 3], [x, y + 3])];
        });
        expect(along).toContain(color);
      }
    });
  });

  test('tells the lines apart without colour: by dashes, and by a mark of each that its words repeat', () => {
    const { option } = rangeChart(rangeToDraw(examples.ordinaryRange));
    const series = option.series as { type: string; symbol?: string; lineStyle?: { type: unknown } }[];
    const dashes = series.filter(({ type }) => type === 'line').map((line) => String(line.lineStyle?.type));
    const symbols = series.flatMap(({ symbol }) => symbol ?? []);
    expect(new Set(dashes).size).toBe(3);
    expect(new Set(symbols).size).toBe(3);
  });

  test('marks the advised number and fills what serves beside it, and nothing where no number serves both', async () => {
    const { advised, span } = curveOf(examples.steadyRange);
    await looking(examples.steadyRange, ({ at, colourAt, texts }) => {
      expect(texts).toContain(`${advised.points} points`);
      expect(colourAt(...at(advised.points, 0.3))).toBe(palette.advice);
      const { low, high } = span ?? { low: Number.NaN, high: Number.NaN };
      expect(low).toBeLessThan(high);
      expect(colourAt(...at((low + high) / 2 - 0.4, 0.07))).toBe(palette.adviceFill);
      expect(colourAt(...at(low - 1, 0.07))).toBe(palette.card);
    });
    for (const advice of [examples.waveringRange, examples.withoutPulledIn, examples.pullsInEarly]) {
      expect(curveOf(advice).span).toBeUndefined();
      await looking(advice, ({ at, coloursAlong }) => {
        const [left, y] = at(1, 0.03);
        expect(coloursAlong([left, y], [at(curveOf(advice).advised.points - 1, 0)[0], y])).not.toContain(
          palette.adviceFill,
        );
      });
    }
  });

  test('says each chance at the advised number beside its line', async () => {
    expect(await texts(examples.ordinaryRange)).toEqual(
      expect.arrayContaining(['keep it:', 'finish everything:', 'run out of work:']),
    );
    expect(await texts(examples.withoutPulledIn)).not.toContain('run out of work:');
  });

  test('is not there where there is no number to advise, and its heading says why', () => {
    expect(drawn.filter(([, advice]) => !hasChart(advice)).map(([name]) => name)).toEqual([
      'oneSprintRange',
      'noSprintRange',
      'withoutFinished',
      'nothingKept',
    ]);
    expect(rangeHeading(examples.oneSprintRange).subtitle).toBe(
      'No range yet. This needs 3 closed sprints with a commitment; there is 1.',
    );
    expect(rangeAltText(examples.nothingKept)).toContain('No range. No commitment would be kept');
  });

  test('is described with the advice first, then the numbers that the lines show', () => {
    expect(rangeAltText(examples.ordinaryRange)).toMatchInlineSnapshot(
      `"Commitment range of the team “Harbour team” for the sprint Mon 11 May to Fri 22 May 2026. At 25 points: 8 in 10 to keep it, 5 in 10 to finish everything, 1 in 10 to run out of work. With more you’d finish it less often, with less you’d run out of work in more than 2 of 10 sprints. Based on 9 sprints with a commitment, scaled to 50 member-days. 3 were imported. The chances by commitment, in points. 5: 94% to keep it, 94% to finish everything, 93% to run out of work. 10: 93% to keep it, 93% to finish everything, 93% to run out of work. 15: 93% to keep it, 92% to finish everything, 92% to run out of work. 20: 92% to keep it, 82% to finish everything, 70% to run out of work. 25: 81% to keep it, 50% to finish everything, 15% to run out of work. 30: 56% to keep it, 14% to finish everything, 7% to run out of work. 35: 25% to keep it, 8% to finish everything, 6% to run out of work. 40: 10% to keep it, 7% to finish everything, 6% to run out of work."`,
    );
  });

  test('is described with what is known of running out of work', () => {
    expect(rangeAltText(examples.waveringRange)).toContain('No commitment serves both');
    expect(rangeAltText(examples.withoutPulledIn)).toContain(
      'How likely you are to run out of work isn’t known.',
    );
  });

  test('is described in short where names are long', () => {
    const advice = examples.ordinaryRange;
    const text = rangeAltText({ ...advice, team: { ...advice.team, name: 'long '.repeat(300) } });
    expect(text.length).toBeLessThanOrEqual(ALT_TEXT_MAX_LENGTH);
  });

  test('no label overlaps another, for all histories', async () => {
    const points = fc.oneof(fc.integer({ min: 1, max: 80 }), fc.integer({ min: 1, max: 200_000 }));
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const amounts = fc.record({
      commitment: points,
      share,
      pulledIn: fc.option(share, { nil: undefined }),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(amounts, { minLength: 3, maxLength: 14 }), async (past) => {
        const advice = examples.rangeAdvice(
          past.map(({ commitment, share: part, pulledIn }, index) => {
            const committedFinished = Math.round(commitment * part);
            const more = pulledIn === undefined ? undefined : Math.round(commitment * pulledIn);
            const velocity = committedFinished + (more ?? 0);
            return pastSprint(index, { commitment, pulledIn: more, velocity, committedFinished });
          }),
        );
        await looking(advice, expectLegible);
      }),
      search(12),
    );
  });
});
