import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { HistoryAdvice, RatioName } from '../../src/app/advice/advice.ts';
import { historyAltText } from '../../src/charts/history-alt-text.ts';
import { historyLayout } from '../../src/charts/history-layout.ts';
import { historyChart, historyMarks } from '../../src/charts/history-option.ts';
import { historyPng } from '../../src/charts/history-png.ts';
import { historyWindow } from '../../src/charts/history-window.ts';
import { palette } from '../../src/charts/palette.ts';
import { heightOf } from '../../src/charts/panel-marks.ts';
import { type Ratio, undefinedBecause } from '../../src/sprint/undefined-value.ts';
import { drawnPicture } from './drawn-picture.ts';
import * as examples from './history-examples.ts';
import { expectLegible, labelBoxes, labelTexts } from './label-boxes.ts';
import { pastSprint } from './past-examples.ts';

const texts = (advice: HistoryAdvice) => labelTexts(historyMarks(advice).marks);
const none = undefinedBecause('velocity-unknown');

/** One ratio alone, so that its panel is the first. */
function only(ratio: RatioName, values: readonly Ratio[], imported = 0): HistoryAdvice {
  const past = values.map((_, index) => pastSprint(index, { commitment: 20, imported: index < imported }));
  return { ...examples.historyAdvice(past), ratios: [examples.ratioHistory(ratio, values)] };
}

/** Places of the values in the first panel, whose axis runs between these ends. */
function places(advice: HistoryAdvice, low: number, high: number) {
  const layout = historyLayout(1, historyWindow(advice).past.length);
  const plot = layout.plots[0];
  if (plot === undefined) throw new Error('a panel has a plot');
  return {
    xOf: (index: number) => layout.xOf(plot, index),
    yOf: heightOf(plot, { low, high, step: 0.1 }),
    plot,
  };
}

describe('the history picture', () => {
  test('has a panel for each ratio, and one more when values were recorded', () => {
    const names = [
      ...['Kept share', 'Pull-in ratio', 'Surprise ratio', 'Plan share', 'Estimate accuracy'],
      ...['On-scale share', 'Finish share', 'Velocity growth'],
    ];
    expect(texts(examples.ordinaryHistory)).toEqual(expect.arrayContaining(names));
    expect(texts(examples.ordinaryHistory)).not.toContain('Value and velocity');
    expect(texts(examples.withValue)).toEqual(
      expect.arrayContaining([...names, 'Value and velocity', 'value 219%', 'velocity 91%']),
    );
  });

  test('a value that is undefined leaves a gap in the line', async () => {
    const advice = only('keptShare', [0.8, 0.9, none, 1, 0.9]);
    const { xOf, yOf } = places(advice, 0.8, 1);
    const { colourAt, coloursAlong } = await drawnPicture(historyPng(advice));
    const between = (from: number, to: number) =>
      coloursAlong([(xOf(from) + xOf(to)) / 2, yOf(0.99)], [(xOf(from) + xOf(to)) / 2, yOf(0.81)]);
    expect(between(0, 1)).toContain(palette.left);
    expect(between(1, 2)).not.toContain(palette.left);
    expect(between(2, 3)).not.toContain(palette.left);
    expect(between(3, 4)).toContain(palette.left);
    expect(colourAt(xOf(1), yOf(0.9))).toBe(palette.left);
  });

  test('an imported sprint is an open circle, one that Loadline ran a filled one', async () => {
    const advice = only('keptShare', [0.9, 0.9, 0.95, 1], 2);
    const { xOf, yOf } = places(advice, 0.8, 1);
    const { colourAt } = await drawnPicture(historyPng(advice));
    expect([0, 1].map((index) => colourAt(xOf(index), yOf(0.9)))).toEqual([palette.card, palette.card]);
    expect(colourAt(xOf(2), yOf(0.95))).toBe(palette.left);
    expect(texts(advice)).toEqual(expect.arrayContaining(['a sprint', 'an imported sprint']));
    expect(texts(only('keptShare', [0.9, 0.9]))).not.toContain('an imported sprint');
  });

  test('a signal has a ring around it and a crossed threshold a cross beside it; nothing else has', async () => {
    // Seven, for eight in a row below the mean would be a signal as well.
    const values = [0.1, 0.12, 0.1, 0.12, 0.1, 0.12, 0.1, 0.6, 0.1, 0.12];
    const advice = only('pullInRatio', values);
    const { xOf, yOf } = places(advice, 0, 0.6);
    const { coloursAlong } = await drawnPicture(historyPng(advice));
    const beside = (index: number) => {
      const [x, y] = [xOf(index), yOf(values[index] ?? 0)];
      return coloursAlong([x + 4, y], [x + 9, y]);
    };
    expect(values.map((_, index) => beside(index).has(palette.signal))).toEqual(
      values.map((_, index) => index === 7),
    );
    const above = (index: number) => {
      const [x, y] = [xOf(index), yOf(values[index] ?? 0) - 11];
      return coloursAlong([x - 3, y - 3], [x + 3, y + 3]);
    };
    expect(values.map((_, index) => above(index).has(palette.ink))).toEqual(
      values.map((_, index) => index === 7),
    );
    expect(texts(advice)).toEqual(
      expect.arrayContaining(['threshold crossed', 'signal: more than ordinary']),
    );
  });

  test('mean, limits and thresholds are named with their values', () => {
    // NIST/SEMATECH e-Handbook, pmc322, divided by 100: mean .5081, limits .4582 and .5580.
    const nist = [0.496, 0.476, 0.499, 0.513, 0.478, 0.512, 0.526, 0.524, 0.536, 0.521];
    expect(texts(only('estimateAccuracy', nist))).toEqual(
      expect.arrayContaining(['limit 56%', 'mean 51%', 'limit 46%', 'at least 80%', 'at most 95%', '52.1%']),
    );
  });

  test('a value that crosses its threshold never looks as if it lay on it', () => {
    expect(texts(only('keptShare', [0.9, 0.79996]))).toContain('79.996%');
    expect(texts(only('keptShare', [0.9, 0.80004]))).toContain('80%');
  });

  test('what is ordinary is left out below eight values, and said to come', () => {
    expect(texts(examples.shortHistory).some((text) => text.startsWith('mean'))).toBe(false);
    expect(JSON.stringify(historyChart(examples.shortHistory).option.title)).toContain(
      'what is ordinary shows from 8 on',
    );
    expect(JSON.stringify(historyChart(examples.ordinaryHistory).option.title)).not.toContain('from 8 on');
  });

  test('a mark far above every value is named, but does not press the values flat', () => {
    const lines = texts(only('velocityGrowth', [1, 1.1, 1.2]));
    expect(lines).toContain('mark 240%');
    expect(lines).toContain('mark 500% above');
    expect(texts(only('velocityGrowth', [1, 3]))).toContain('mark 500%');
  });

  test('growth says which sprint it is measured by', () => {
    expect(texts(examples.withValue).filter((text) => text.startsWith('100% = sprint to'))).toEqual([
      '100% = sprint to 12 Dec 2025',
      '100% = sprint to 6 Feb 2026',
    ]);
  });

  test('of many sprints the latest 26 are shown, with signals found in all of them', () => {
    const shown = historyWindow(examples.tenYears);
    expect(shown.past).toHaveLength(26);
    expect(shown.earlier).toBe(234);
    expect(shown.past.at(-1)).toBe(examples.tenYears.past.at(-1));
    for (const { values } of shown.ratios) expect(values).toHaveLength(26);
    // Against the mean of ten years the last year lies high, though within itself it is calm.
    const growth = shown.ratios.find(({ ratio }) => ratio === 'velocityGrowth');
    expect(growth?.signalsAt.size).toBe(26);
    expect(historyAltText(examples.tenYears)).toContain(
      '260 closed sprints, to 19 Dec 2025, 250 imported, the latest 26 shown.',
    );
  });

  test('a ratio without any value says why', () => {
    expect(JSON.stringify(historyChart(only('onScaleShare', [none, none])).option)).toContain(
      'It isn’t known how many points were finished in the sprint.',
    );
    expect(historyAltText(only('onScaleShare', [none, none]))).toContain(
      'On-scale share: latest none. It isn’t known how many points were finished in the sprint.',
    );
  });

  test('is told in words: latest value, what is ordinary, thresholds, crossings, signals and all values', () => {
    const values = [0.1, 0.12, 0.1, 0.12, none, 0.1, 0.12, 0.1, 0.6, 0.1, 0.12];
    expect(historyAltText(only('pullInRatio', values, 2))).toBe(
      'History of the team “Harbour team”: 11 closed sprints, to 5 Jun 2026, 2 imported. ' +
        'Those up to 30 Jan were imported. ' +
        'Pull-in ratio: latest 12%; mean 16%; ordinarily up to 49%; at most 20%; ' +
        'crossed in the sprint that ended 8 May; signal in the sprint that ended 8 May. ' +
        'Oldest first: 10, 12, 10, 12, none, 10, 12, 10, 60, 10, 12%.',
    );
  });

  test('counts crossings and signals when they are many', () => {
    expect(historyAltText(only('keptShare', Array(6).fill(0.5)))).toContain(
      'crossed in 6 of these sprints, last 27 Mar',
    );
  });

  test('no label stands on another and the words fit, whatever the values', () => {
    const value: fc.Arbitrary<Ratio> = fc.oneof(
      fc.constant(none),
      fc.double({ min: 0, max: 1.2, noNaN: true }),
      fc.double({ min: -50, max: 9_999, noNaN: true }),
    );
    const names = examples.ordinaryHistory.ratios.map(({ ratio }) => ratio);
    fc.assert(
      fc.property(
        fc.array(value, { maxLength: 40 }),
        fc.nat(names.length - 1),
        fc.nat(40),
        (values, at, imported) => {
          const advice = only(names[at] as RatioName, values, imported);
          const { marks, size } = historyMarks(advice);
          expectLegible(labelBoxes(marks), size);
          expect(historyAltText(advice).length).toBeLessThanOrEqual(2_000);
        },
      ),
      { numRuns: 300 },
    );
  });
});
