import { describe, expect, test } from 'vitest';
import type { Advice } from '../../src/app/advice/advice.ts';
import type { Picture } from '../../src/app/ports/charts.ts';
import type { ChartPicture } from '../../src/charts/chart-theme.ts';
import { charts } from '../../src/charts/charts.ts';
import { forecastChart } from '../../src/charts/forecast-chart.ts';
import { historyChart, historyToDraw } from '../../src/charts/history-chart.ts';
import { keptChart } from '../../src/charts/kept-chart.ts';
import { oddsChart } from '../../src/charts/odds-chart.ts';
import { rangeChart, rangeToDraw } from '../../src/charts/range-chart.ts';
import { pixelDensity, renderPng } from '../../src/charts/render-png.ts';
import { ALT_TEXT_MAX_LENGTH } from '../../src/words/charts/chart-text.ts';
import { decodedPng } from './decoded-png.ts';
import * as forecastExamples from './forecast-examples.ts';
import * as historyExamples from './history-examples.ts';
import * as keptExamples from './kept-examples.ts';
import { expectLegible, lookingAt } from './looking-at.ts';
import * as oddsExamples from './odds-examples.ts';
import * as rangeExamples from './range-examples.ts';

const advice = Object.entries<object>({
  ...oddsExamples,
  ...rangeExamples,
  ...forecastExamples,
  ...historyExamples,
  ...keptExamples,
})
  .filter((entry): entry is [string, Advice] => 'question' in entry[1])
  .map(([name, shown]) => [shown.question.about, name, shown] as const);

function picture(shown: Advice): Promise<Picture> {
  switch (shown.question.about) {
    case 'odds':
      return charts.odds(shown as Extract<Advice, { question: { about: 'odds' } }>);
    case 'range':
      return charts.range(shown as Extract<Advice, { question: { about: 'range' } }>);
    case 'forecast':
      return charts.forecast(shown as Extract<Advice, { question: { about: 'forecast' } }>);
    case 'history':
      return charts.history(shown as Extract<Advice, { question: { about: 'history' } }>);
    case 'kept':
      return charts.kept(shown as Extract<Advice, { question: { about: 'kept' } }>);
  }
}

function laidOut(shown: Advice): ChartPicture {
  if ('odds' in shown) return oddsChart(shown);
  if ('coming' in shown) return rangeChart(rangeToDraw(shown));
  if ('bodies' in shown) return keptChart(shown);
  return 'forecast' in shown ? forecastChart(shown) : historyChart(historyToDraw(shown));
}

describe('the pictures of the planning questions', () => {
  test('there are examples of all five', () => {
    expect(new Set(advice.map(([about]) => about))).toEqual(
      new Set(['odds', 'range', 'forecast', 'history', 'kept']),
    );
  });

  test.each(advice)(
    '%s, %s: is 800 wide, opaque and under 700 kB, with a text that fits',
    async (_, __, shown) => {
      const { png, altText } = await picture(shown);
      const { widthPx, heightPx, opaque } = await decodedPng(png);
      const { size } = laidOut(shown);
      expect([widthPx, heightPx]).toEqual([800, size.heightPx * pixelDensity]);
      // A history has a panel below the other for each ratio; longer than this, nobody scrolls.
      expect(heightPx).toBeLessThan(4 * widthPx);
      expect(opaque).toBe(true);
      expect(png.length).toBeLessThan(700_000);
      expect(altText.length).toBeLessThanOrEqual(ALT_TEXT_MAX_LENGTH);
      expect(altText).toContain('“Harbour team”');
      expect(altText).not.toMatch(/undefined|NaN|Infinity|\[object/);
    },
  );

  test.each(advice)('%s, %s: no label overlaps another or leaves the card', async (_, __, shown) => {
    await lookingAt(laidOut(shown), expectLegible);
  });

  test.each(advice.filter(([, name]) => name.startsWith('ordinary')))(
    '%s, %s: the same advice gives the same bytes, also when others are drawn at the same time',
    async (_, __, shown) => {
      const named = <Of extends Advice>(of: Of): Of => ({ ...of, team: { ...of.team, name: 'Flood' } });
      const { option, size } = laidOut(named(shown));
      const alone = await renderPng(option, size);
      const [again] = await Promise.all([
        picture(named(shown)),
        picture(named(historyExamples.shortHistory)),
      ]);
      expect(Buffer.from(alone).equals(again.png)).toBe(true);
      expect((await picture(named(shown))).altText).toBe(again.altText);
    },
  );

  test.each(advice.filter(([, name]) => name.startsWith('ordinary')))(
    '%s, %s: another team name gives another picture and another text; a name the font lacks is left out',
    async (_, __, shown) => {
      const named = async (name: string) => picture({ ...shown, team: { ...shown.team, name } });
      const [first, other, lacking, blank] = await Promise.all(['Ebb', 'Eddy', '港', ' '].map(named));
      expect(Buffer.from(first?.png ?? []).equals(other?.png ?? new Uint8Array())).toBe(false);
      expect(lacking?.altText).toContain('“港”');
      expect(Buffer.from(lacking?.png ?? []).equals(blank?.png ?? new Uint8Array())).toBe(true);
      expect(blank?.altText).not.toContain('“ ');
    },
  );

  test.each(advice.filter(([, name]) => name.startsWith('ordinary')))(
    '%s, %s: a very long team name neither breaks the text nor the picture',
    async (_, __, shown) => {
      const { png, altText } = await picture({
        ...shown,
        team: { ...shown.team, name: 'Ahoy 🌊 '.repeat(400) },
      });
      expect((await decodedPng(png)).widthPx).toBe(800);
      expect(altText.length).toBeLessThanOrEqual(ALT_TEXT_MAX_LENGTH);
      expect(altText.isWellFormed()).toBe(true);
    },
  );
});
