import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ForecastAdvice } from '../../src/app/advice/advice.ts';
import { forecastAltText } from '../../src/charts/forecast-alt-text.ts';
import { forecastLayout, forecastSize, sprintEnd } from '../../src/charts/forecast-layout.ts';
import { forecastMarks, forecastOption } from '../../src/charts/forecast-option.ts';
import { forecastPng } from '../../src/charts/forecast-png.ts';
import { palette } from '../../src/charts/palette.ts';
import type { ReleaseForecast } from '../../src/forecast/release-forecast.ts';
import { drawnPicture } from './drawn-picture.ts';
import * as examples from './forecast-examples.ts';
import { expectLegible, labelBoxes, labelTexts } from './label-boxes.ts';

const known = ({ forecast }: ForecastAdvice): ReleaseForecast => {
  if ('undefined' in forecast) throw new Error(forecast.undefined.code);
  return forecast;
};
const texts = (advice: ForecastAdvice) => labelTexts(forecastMarks(advice, known(advice)));

describe('the forecast picture', () => {
  test.each([
    ['ordinary', examples.ordinaryForecast],
    ['growing', examples.growingScope],
    ['one sprint', examples.oneSprintForecast],
  ])('%s: the line rises through the chance at the end of each sprint', async (_, advice) => {
    const { chanceBySprint } = known(advice);
    const { xOf, yOf, bandPx } = forecastLayout(advice, chanceBySprint.length - 1);
    const { colourAt } = await drawnPicture(forecastPng(advice));
    const marked = known(advice).dates.flatMap((date) => ('undefined' in date ? [] : [date.sprints]));
    chanceBySprint.forEach((chance, sprint) => {
      // A date's own symbol may lie on the end of a sprint.
      if (sprint === 0 || marked.some((at) => Math.abs(at - sprint) * bandPx < 10)) return;
      expect(colourAt(xOf(sprint), yOf(chance))).toBe(palette.left);
    });
  });

  test('each date has a symbol of its own on the line, and a dashed line down to its place', async () => {
    const { dates, chanceBySprint } = known(examples.ordinaryForecast);
    const { xOf, yOf, plot } = forecastLayout(examples.ordinaryForecast, chanceBySprint.length - 1);
    const { colourAt, coloursAlong } = await drawnPicture(forecastPng(examples.ordinaryForecast));
    expect(dates).toHaveLength(3);
    for (const date of dates) {
      if ('undefined' in date) throw new Error(date.undefined.code);
      const [x, y] = [xOf(date.sprints), yOf(date.chance)];
      expect(colourAt(x, y)).toBe(palette.card);
      expect(coloursAlong([x - 9, y], [x + 9, y])).toContain(palette.today);
      const down = coloursAlong([x, y + 12], [x, plot.bottom - 2]);
      expect(down).toContain(palette.ideal);
      expect(down).toContain(palette.card);
    }
  });

  test('names the three dates, how sure each is, and the sprint that holds it', () => {
    expect(texts(examples.ordinaryForecast)).toEqual(
      expect.arrayContaining([
        ...['optimistic: 15% by', '24 Dec 2026', 'in sprint 3, to 27 Dec 2026'],
        ...['likely: 50% by', '21 Jan 2027', 'in sprint 5, to 24 Jan 2027'],
        ...['cautious: 85% by', '8 Mar 2027', 'in sprint 9, to 21 Mar 2027'],
      ]),
    );
  });

  test('a sprint ends on the day before the next one starts', () => {
    expect(sprintEnd('2026-11-16', 14, 1)).toBe('2026-11-29');
    expect(sprintEnd('2026-11-16', 14, 3)).toBe('2026-12-27');
    expect(sprintEnd('2026-11-16', 1, 1)).toBe('2026-11-16');
  });

  test('says that a date lies beyond 130 sprints instead of drawing it at the edge', () => {
    const lines = texts(examples.beyondAll);
    expect(lines.filter((text) => text === 'no date')).toHaveLength(2);
    expect(lines).toContain('10 Sep 2029');
    expect(texts(examples.neverFinished).filter((text) => text === 'not within 130 sprints')).toHaveLength(3);
  });

  test('holds the reason instead when there is no forecast', () => {
    expect(JSON.stringify(forecastOption(examples.tooFew))).toContain(
      'This needs 3 closed sprints; there are 2.',
    );
    expect(forecastAltText(examples.tooFew)).toBe(
      'Forecast of the team “Harbour team” for 80 points of work: none. This needs 3 closed sprints; there are 2.',
    );
  });

  test('says in its subtitle what it is made from and how the work grows', () => {
    expect(JSON.stringify(forecastOption(examples.growingScope).title)).toContain(
      'from the latest 5 sprints: 25.2 points each on average · work starts 16 Nov 2026 · the work grows by 8 points a sprint',
    );
    expect(JSON.stringify(forecastOption(examples.ordinaryForecast).title)).not.toContain('grows');
  });

  test('is told in words with the chance at the end of each sprint', () => {
    expect(forecastAltText(examples.ordinaryForecast)).toBe(
      'Forecast of the team “Harbour team” for 120 points of work. ' +
        'Optimistic, with a chance of 15%: by 24 Dec 2026, in sprint 3, which runs to 27 Dec 2026. ' +
        'Likely, with a chance of 50%: by 21 Jan 2027, in sprint 5, which runs to 24 Jan 2027. ' +
        'Cautious, with a chance of 85%: by 8 Mar 2027, in sprint 9, which runs to 21 Mar 2027. ' +
        'Made from the latest 5 sprints, 25.2 points each on average; work starts on 16 Nov 2026; the work is taken not to grow. ' +
        'Chance to be finished by the end of sprint 2 (13 Dec 2026) 4%, 3 (27 Dec 2026) 18%, 4 (10 Jan 2027) 36%, ' +
        '5 (24 Jan 2027) 54%, 6 (7 Feb 2027) 68%, 7 (21 Feb 2027) 78%, 8 (7 Mar 2027) 85% and 9 (21 Mar 2027) 90%.',
    );
  });

  test('tells every n-th sprint of a long forecast, and always the last', () => {
    expect(forecastAltText(examples.longForecast)).toMatch(
      /sprint 20 \(4 Apr 2027\) 9%, 30 .* 60 \(9 Jan 2028\) 79% and 67 \(27 Feb 2028\) 85%\.$/,
    );
  });

  test('no label stands on another, whatever the work and the pace', () => {
    const velocity = fc.integer({ min: 0, max: 200 }).map((halves) => halves / 2);
    const velocities = fc
      .array(velocity, { minLength: 3, maxLength: 6 })
      .filter((all) => all.slice(-5).some((one) => one > 0));
    const backlog = fc.integer({ min: 1, max: 4_000 }).map((halves) => halves / 2);
    const growth = fc.integer({ min: 0, max: 40 });
    const days = fc.integer({ min: 1, max: 42 });
    fc.assert(
      fc.property(backlog, velocities, growth, days, (points, all, growthPoints, sprintLengthDays) => {
        const advice = examples.forecastAdvice(points, all, { growthPoints, sprintLengthDays });
        expectLegible(labelBoxes(forecastMarks(advice, known(advice))), forecastSize);
        expect(forecastAltText(advice).length).toBeLessThanOrEqual(2_000);
      }),
      { numRuns: 60 },
    );
  });
});
