import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ForecastAdvice } from '../../src/app/advice/advice.ts';
import { palette } from '../../src/charts/chart-theme.ts';
import { forecastChart } from '../../src/charts/forecast-chart.ts';
import { type ReleaseForecast, sprintEnd } from '../../src/forecast/release-forecast.ts';
import { ALT_TEXT_MAX_LENGTH } from '../../src/words/charts/chart-text.ts';
import { forecastAltText, forecastHeading } from '../../src/words/charts/forecast.ts';
import { search } from '../support/search-width.ts';
import * as examples from './forecast-examples.ts';
import { expectLegible, lookingAt, type SeenChart } from './looking-at.ts';

const known = ({ forecast }: ForecastAdvice): ReleaseForecast => {
  if ('undefined' in forecast) throw new Error(forecast.undefined.code);
  return forecast;
};
const looking = <T>(advice: ForecastAdvice, look: (seen: SeenChart) => T) =>
  lookingAt(forecastChart(advice), look);
const texts = (advice: ForecastAdvice) => looking(advice, (seen) => seen.texts);

describe('the forecast picture', () => {
  test.each([
    ['ordinary', examples.ordinaryForecast],
    ['growing', examples.growingScope],
    ['one sprint', examples.oneSprintForecast],
  ])('%s: the line rises through the chance at the end of each sprint', async (_, advice) => {
    const { chanceBySprint, dates } = known(advice);
    const marked = dates.flatMap((date) => ('undefined' in date ? [] : [date.sprints]));
    await looking(advice, ({ at, colourAt }) => {
      chanceBySprint.forEach((chance, sprint) => {
        const [x, y] = at(sprint, chance);
        // A date's own symbol may lie on the end of a sprint.
        if (sprint === 0 || marked.some((place) => Math.abs(at(place, 0)[0] - x) < 10)) return;
        expect(colourAt(x, y)).toBe(palette.left);
      });
    });
  });

  test('each date has a symbol of its own on the line, and a dashed line down to its place', async () => {
    const { dates } = known(examples.ordinaryForecast);
    expect(dates).toHaveLength(3);
    await looking(examples.ordinaryForecast, ({ at, colourAt, coloursAlong }) => {
      const looks = dates.map((date) => {
        if ('undefined' in date) throw new Error(date.undefined.code);
        const [x, y] = at(date.sprints, date.chance);
        expect(colourAt(x, y)).toBe(palette.card);
        expect(coloursAlong([x - 9, y], [x + 9, y])).toContain(palette.today);
        const down = coloursAlong([x, y + 12], [x, at(0, 0)[1] - 2]);
        expect(down).toContain(palette.ideal);
        expect(down).toContain(palette.card);
        // Of a triangle, a circle and a square: what lies at its upper corner and at its upper edge.
        const corner = coloursAlong([x - 7, y - 7], [x - 5.5, y - 5.5]).has(palette.today);
        const edge = coloursAlong([x - 5, y - 5], [x - 3.5, y - 3.5]).has(palette.today);
        return `${corner} ${edge}`;
      });
      expect(new Set(looks).size).toBe(3);
    });
  });

  test('reaches the day that was asked about, and says so within three lines above the picture', async () => {
    const advice = examples.forecastAdvice(12_000, [240, 230, 260, 270, 210, 280, 240], {
      byDay: '2029-11-30',
      growthPoints: 12.5,
    });
    const { byDay } = advice;
    if (byDay === undefined || 'undefined' in byDay) throw new Error('no chance by the day');
    expect(byDay.sprints).toBeLessThanOrEqual(known(advice).chanceBySprint.length - 1);
    await looking(advice, expectLegible);
    expect((forecastHeading(advice).subtitle ?? '').length).toBeLessThan(3 * 55);
  });

  test('marks the day that was asked about, in the picture and in words', async () => {
    const advice = examples.forecastAdvice(120, [24, 23, 26, 27, 21, 28, 24], { byDay: '2027-02-05' });
    const { byDay } = advice;
    if (byDay === undefined || 'undefined' in byDay) throw new Error('no chance by the day');
    const { sprints, chance = Number.NaN } = byDay;
    await looking(advice, ({ at, colourAt }) => {
      expect(colourAt(...at(sprints, chance))).toBe(palette.today);
    });
    const said = `By 5 Feb 2027: ${Math.round(100 * chance)}% (the diamond).`;
    expect(forecastHeading(advice).subtitle).toContain(said);
    expect(forecastAltText(advice)).toContain(said);
  });

  test('names the three dates, how sure each is, and the sprint that holds it', async () => {
    expect(await texts(examples.ordinaryForecast)).toEqual(
      expect.arrayContaining([
        ...['optimistic: 15% by', '25 Dec 2026', 'in sprint 3,', 'to 27 Dec 2026'],
        ...['likely: 50% by', '22 Jan 2027', 'in sprint 5,', 'to 24 Jan 2027'],
        ...['pessimistic: 85% by', '10 Mar 2027', 'in sprint 9,', 'to 21 Mar 2027'],
      ]),
    );
  });

  test('a sprint ends on the day before the next one starts', () => {
    const startsOn = '2026-11-16';
    expect(sprintEnd({ startsOn, sprintLengthDays: 14 }, 1)).toBe('2026-11-29');
    expect(sprintEnd({ startsOn, sprintLengthDays: 14 }, 3)).toBe('2026-12-27');
    expect(sprintEnd({ startsOn, sprintLengthDays: 1 }, 1)).toBe('2026-11-16');
  });

  test('says that a date lies beyond 130 sprints instead of drawing it at the edge', async () => {
    const lines = await texts(examples.beyondAll);
    expect(lines.filter((text) => text === 'no date')).toHaveLength(2);
    expect(lines).toContain('26 Sept 2029');
    const never = await texts(examples.neverFinished);
    expect(never.filter((text) => text === 'not within 130 sprints')).toHaveLength(3);
  });

  test('writes below the ends of sprints their numbers and days, the last always', async () => {
    await looking(examples.ordinaryForecast, ({ at, column }) => {
      const below = (sprint: number) => column(at(sprint, 0)[0], at(sprint, 0)[1]).join(' ');
      expect([1, 2, 3, 9].map(below)).toEqual(['1 29 Nov 2026', '', '3 27 Dec', '9 21 Mar']);
    });
    await looking(examples.longForecast, ({ at, column }) => {
      expect(column(at(68, 0)[0], at(68, 0)[1]).join(' ')).toBe('68 5 Mar 2028');
    });
  });

  test('holds the reason instead when there is no forecast', async () => {
    expect((await texts(examples.tooFew)).at(-1)).toContain('This needs 3 closed sprints; there are 2.');
    expect(forecastAltText(examples.tooFew)).toBe(
      'Forecast of the team “Harbour team” for 80 points of work. No forecast yet. This needs 3 closed sprints; there are 2.',
    );
  });

  test('says in its subtitle what it is made from and how the work grows', () => {
    expect(forecastHeading(examples.growingScope).subtitle).toContain(
      'From your latest 7 sprints. Work starts on 16 Nov 2026 and grows by 8 points a sprint.',
    );
    expect(forecastHeading(examples.ordinaryForecast).subtitle).not.toContain('grows');
  });

  test('is described with the chance at the end of each sprint', () => {
    expect(forecastAltText(examples.ordinaryForecast)).toBe(
      'Forecast of the team “Harbour team” for 120 points of work. ' +
        'Optimistic, with a chance of 15%: by 25 Dec 2026, in sprint 3, which runs to 27 Dec 2026. ' +
        'Likely, with a chance of 50%: by 22 Jan 2027, in sprint 5, which runs to 24 Jan 2027. ' +
        'Pessimistic, with a chance of 85%: by 10 Mar 2027, in sprint 9, which runs to 21 Mar 2027. ' +
        'From your latest 7 sprints. ' +
        'Work starts on 16 Nov 2026 and is assumed not to grow. ' +
        'Chance to be finished by the end of sprint 2 (13 Dec 2026) 4%, 3 (27 Dec 2026) 17%, 4 (10 Jan 2027) 35%, ' +
        '5 (24 Jan 2027) 53%, 6 (7 Feb 2027) 67%, 7 (21 Feb 2027) 77%, 8 (7 Mar 2027) 84% and 9 (21 Mar 2027) 89%.',
    );
  });

  test('is described with every n-th sprint when it is long, always with the last, and says how many are left out', () => {
    expect(forecastAltText(examples.longForecast)).toMatch(
      /sprint 20 \(4 Apr 2027\) 8%, 30 .* 60 \(9 Jan 2028\) 79% and 68 \(5 Mar 2028\) 85%\. 50 sprints in between are left out here\.$/,
    );
  });

  test('no label overlaps another, for every amount of work and pace', async () => {
    const velocity = fc.integer({ min: 0, max: 200 }).map((halves) => halves / 2);
    const velocities = fc
      .array(velocity, { minLength: 3, maxLength: 6 })
      .filter((all) => all.slice(-5).some((one) => one > 0));
    const backlog = fc.integer({ min: 1, max: 4_000 }).map((halves) => halves / 2);
    const growth = fc.integer({ min: 0, max: 40 });
    const days = fc.integer({ min: 1, max: 42 });
    await fc.assert(
      fc.asyncProperty(
        backlog,
        velocities,
        growth,
        days,
        async (points, all, growthPoints, sprintLengthDays) => {
          const advice = examples.forecastAdvice(points, all, { growthPoints, sprintLengthDays });
          await looking(advice, expectLegible);
          expect(forecastAltText(advice).length).toBeLessThanOrEqual(ALT_TEXT_MAX_LENGTH);
        },
      ),
      search(10),
    );
  });
});
