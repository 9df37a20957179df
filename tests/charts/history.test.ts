import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { HistoryAdvice } from '../../src/app/advice/advice.ts';
import { historyWindow } from '../../src/app/advice/shown-in-chart.ts';
import { palette } from '../../src/charts/chart-theme.ts';
import { historyChart, historyToDraw } from '../../src/charts/history-chart.ts';
import type { RatioId } from '../../src/sprint/sprint-ratios.ts';
import { type Ratio, undefinedBecause } from '../../src/sprint/undefined-value.ts';
import { ALT_TEXT_MAX_LENGTH } from '../../src/words/charts/chart-text.ts';
import { historyAltText, historyHeading, shortShare } from '../../src/words/charts/history.ts';
import { search } from '../support/search-width.ts';
import * as examples from './history-examples.ts';
import { expectLegible, lookingAt, type SeenChart } from './looking-at.ts';
import { pastSprint } from './past-examples.ts';

const looking = <T>(advice: HistoryAdvice, look: (seen: SeenChart) => T) =>
  lookingAt(historyChart(historyToDraw(advice)), look);
const texts = (advice: HistoryAdvice) => looking(advice, (seen) => seen.texts);
const none = undefinedBecause('velocity-unknown');

/** One ratio alone, so that its panel is the first. */
function only(ratio: RatioId, values: readonly Ratio[], imported = 0): HistoryAdvice {
  const past = values.map((_, index) => pastSprint(index, { commitment: 20, imported: index < imported }));
  return { ...examples.historyAdvice(past), ratios: [examples.ratioHistory(ratio, values)] };
}

describe('the history picture', () => {
  test('has a panel for each ratio, and one more when values were recorded', async () => {
    const names = [
      ...['Kept share', 'Pull-in ratio', 'Surprise ratio', 'Plan share', 'Estimate accuracy'],
      ...['On-scale share', 'Finish share', 'Velocity growth'],
    ];
    expect(await texts(examples.ordinaryHistory)).toEqual(expect.arrayContaining(names));
    expect(await texts(examples.ordinaryHistory)).not.toContain('Value and velocity');
    expect(await texts(examples.withValue)).toEqual(
      expect.arrayContaining([...names, 'Value and velocity', 'value 219%', 'velocity 91%']),
    );
  });

  test('a value that is undefined leaves a gap in the line', async () => {
    const advice = only('keptShare', [0.8, 0.9, none, 1, 0.9]);
    await looking(advice, ({ at, colourAt, coloursAlong }) => {
      const between = (from: number, to: number) => {
        const x = (at(from, 0)[0] + at(to, 0)[0]) / 2;
        return coloursAlong([x, at(0, 0.99)[1]], [x, at(0, 0.81)[1]]);
      };
      expect(between(0, 1)).toContain(palette.left);
      expect(between(1, 2)).not.toContain(palette.left);
      expect(between(2, 3)).not.toContain(palette.left);
      expect(between(3, 4)).toContain(palette.left);
      expect(colourAt(...at(1, 0.9))).toBe(palette.left);
    });
  });

  test('an imported sprint is an open circle, one that Loadline ran a filled one', async () => {
    const advice = only('keptShare', [0.9, 0.9, 0.95, 1], 2);
    await looking(advice, ({ at, colourAt, texts: seen }) => {
      expect([0, 1].map((index) => colourAt(...at(index, 0.9)))).toEqual([palette.card, palette.card]);
      expect(colourAt(...at(2, 0.95))).toBe(palette.left);
      expect(seen).toEqual(expect.arrayContaining(['a sprint', 'an imported sprint']));
    });
    expect(await texts(only('keptShare', [0.9, 0.9]))).not.toContain('an imported sprint');
  });

  test('a signal has a ring around it and a crossed threshold a cross beside it; nothing else has', async () => {
    // Seven, for eight in a row below the mean would be a signal as well.
    const values = [0.05, 0.06, 0.05, 0.06, 0.05, 0.06, 0.05, 0.6, 0.05, 0.06];
    await looking(only('pullInRatio', values), ({ at, coloursAlong, texts: seen }) => {
      const rings = values.map((value, index) => {
        const [x, y] = at(index, value);
        return coloursAlong([x + 4, y], [x + 9, y]).has(palette.signal);
      });
      const crosses = values.map((value, index) => {
        const [x, y] = at(index, value);
        return coloursAlong([x - 2, y - 13], [x + 2, y - 9]).has(palette.ink);
      });
      expect(rings).toEqual(values.map((_, index) => index === 7));
      expect(crosses).toEqual(values.map((_, index) => index === 7));
      expect(seen).toEqual(expect.arrayContaining(['threshold crossed', 'signal: more than ordinary']));
    });
  });

  test('what is ordinary is a band between the limits, with a line at the mean', async () => {
    const values = [0.5, 0.52, 0.5, 0.52, 0.5, 0.52, 0.5, 0.52];
    await looking(only('onScaleShare', values), ({ at, colourAt, coloursAlong }) => {
      // Mean .51, mean moving range .02, limits .51 ± 3 · .02 / 1.128: .4568 and .5632.
      for (const inside of [0.47, 0.55])
        expect(colourAt(at(3, 0)[0], at(3, inside)[1])).toBe(palette.ordinaryFill);
      for (const outside of [0.44, 0.58]) expect(colourAt(at(3, 0)[0], at(3, outside)[1])).toBe(palette.card);
      const [x, y] = at(0, 0.51);
      expect(coloursAlong([x - 6, y - 1], [x - 6, y + 1])).toContain(palette.axis);
    });
  });

  test('mean, limits and thresholds are named with their values', async () => {
    // NIST/SEMATECH e-Handbook, pmc322, divided by 100: mean .5081, limits .4582 and .5580.
    const nist = [0.496, 0.476, 0.499, 0.513, 0.478, 0.512, 0.526, 0.524, 0.536, 0.521];
    expect(await texts(only('estimateAccuracy', nist))).toEqual(
      expect.arrayContaining(['limit 56%', 'mean 51%', 'limit 46%', 'at least 80%', 'at most 95%', '52.1%']),
    );
  });

  test('a value that crosses its threshold never looks as if it lay on it', async () => {
    expect(await texts(only('keptShare', [0.9, 0.79996]))).toContain('79.996%');
    expect(await texts(only('keptShare', [0.9, 0.80004]))).toContain('80%');
  });

  test('what is ordinary is left out below eight values, and said to come', async () => {
    expect((await texts(examples.shortHistory)).some((text) => text.startsWith('mean'))).toBe(false);
    expect(historyHeading(examples.shortHistory).subtitle).toContain(
      'What is ordinary shows from 8 sprints on.',
    );
    expect(historyHeading(examples.ordinaryHistory).subtitle).not.toContain('from 8');
  });

  test('shares become so many times from 10,000% on, where room is scarce', () => {
    expect([0.5, 99.99, 100, 2_400.4, -150].map(shortShare)).toEqual([
      '50%',
      '9,999%',
      '100×',
      '2,400×',
      '-150×',
    ]);
  });

  test('a mark far above every value is named, but does not press the values flat', async () => {
    const lines = await texts(only('velocityGrowth', [1, 1.1, 1.2]));
    expect(lines).toContain('mark 240%');
    expect(lines).toContain('mark 500% above');
    expect(await texts(only('velocityGrowth', [1, 3]))).toContain('mark 500%');
  });

  test('growth says which sprint it is measured by', async () => {
    const lines = await texts(examples.withValue);
    expect(lines.filter((text) => text.startsWith('100% = sprint to'))).toEqual([
      '100% = sprint to 12 Dec 2025',
      '100% = sprint to 6 Feb 2026',
    ]);
  });

  test('of many sprints the latest 26 are shown, with signals found in all of them', () => {
    const shown = historyWindow(examples.tenYears);
    expect(shown.past).toHaveLength(26);
    expect(shown.earlier).toBe(234);
    const latest = examples.tenYears.past.at(-1);
    expect(shown.past.at(-1)).toEqual({ endsOn: latest?.endsOn, importedAt: latest?.importedAt });
    for (const { values } of shown.ratios) expect(values).toHaveLength(26);
    const growth = shown.ratios.find(({ ratio }) => ratio === 'velocityGrowth');
    expect(growth?.signalsAt).toEqual(new Set([3, 24]));
    expect(growth?.chart).toHaveProperty('signals.length', 11);
    expect(historyAltText(examples.tenYears)).toContain(
      '260 closed sprints, to 19 Dec 2025. 250 were imported: all up to 1 Aug. The latest 26 are shown.',
    );
  });

  test('a ratio without any value says why', async () => {
    expect((await texts(only('onScaleShare', [none, none]))).join(' ').replace(/\s+/g, ' ')).toContain(
      'It isn’t known how many points were finished in the sprint.',
    );
    expect(historyAltText(only('onScaleShare', [none, none]))).toContain(
      'On-scale share: latest none. It isn’t known how many points were finished in the sprint.',
    );
  });

  test('is described: latest value, what is ordinary, thresholds, crossings, signals and all values', () => {
    const values = [0.1, 0.12, 0.1, 0.12, none, 0.1, 0.12, 0.1, 0.6, 0.1, 0.12];
    expect(historyAltText(only('pullInRatio', values, 2))).toBe(
      'History of the team “Harbour team”. 11 closed sprints, to 5 Jun 2026. ' +
        '2 were imported: all up to 30 Jan. ' +
        'Pull-in ratio: latest 12%, mean 16%, ordinarily up to 49%, at most 20%, ' +
        'crossed in the sprint to 8 May, signal in the sprint to 8 May. ' +
        'Oldest first, in percent: 10, 12, 10, 12, none, 10, 12, 10, 60, 10, 12.',
    );
  });

  test('counts crossings and signals when they are many', () => {
    expect(historyAltText(only('keptShare', Array(6).fill(0.5)))).toContain(
      'crossed in 6 of these sprints, last in that to 27 Mar',
    );
  });

  test('is described with fewer values when not all fit, and says how many are left out', () => {
    const many = only('keptShare', Array(26).fill(0.905));
    const ratios = Array.from({ length: 6 }, () => many.ratios[0] as (typeof many.ratios)[number]);
    const text = historyAltText({ ...many, ratios });
    expect(text.length).toBeLessThanOrEqual(ALT_TEXT_MAX_LENGTH);
    const [, said] = /The latest (\d+), in percent: 9[01]/.exec(text) ?? [];
    expect(text).toMatch(
      new RegExp(`\\. Of each, ${26 - Number(said)} earlier values are left out here\\.$`),
    );
  });

  test('is described with the latest value of each ratio at least, the most of them in full', () => {
    const named = (name: string) => ({ ...examples.tenYears, team: { ...examples.tenYears.team, name } });
    const text = historyAltText(named('long '.repeat(40)));
    expect(text.length).toBeLessThanOrEqual(ALT_TEXT_MAX_LENGTH);
    expect(text.match(/: latest/g)).toHaveLength(8);
    const said = text.match(/, mean/g)?.length ?? 0;
    expect(said).toBeGreaterThan(2);
    expect(text).toMatch(
      new RegExp(
        `What is ordinary for ${8 - said} of these ratios is left out here, and so are the earlier values of all\\.$`,
      ),
    );
  });

  test('no label overlaps another and the words fit, for all values', async () => {
    const value: fc.Arbitrary<Ratio> = fc.oneof(
      fc.constant(none),
      fc.double({ min: 0, max: 1.2, noNaN: true }),
      fc.double({ min: -50, max: 9_999, noNaN: true }),
    );
    const names = examples.ordinaryHistory.ratios.map(({ ratio }) => ratio);
    await fc.assert(
      fc.asyncProperty(
        fc.array(value, { maxLength: 40 }),
        fc.nat(names.length - 1),
        fc.nat(40),
        async (values, at, imported) => {
          const advice = only(names[at] as RatioId, values, imported);
          await looking(advice, expectLegible);
          await looking(examples.grownHistory, expectLegible);
          expect(await texts(examples.grownHistory)).toContainEqual(
            expect.stringMatching(/^member-day 1\d\d%$/),
          );
          expect(historyAltText(advice).length).toBeLessThanOrEqual(ALT_TEXT_MAX_LENGTH);
        },
      ),
      search(10),
    );
  });
});

describe('a team that grew', () => {
  /** Velocity 20 of four people, then 40 of eight: twice as much, and for each member-day the same. */
  const grown = (memberDays: readonly (number | undefined)[], velocities: readonly number[]) => {
    const past = velocities.map((velocity, index) => ({
      ...pastSprint(index, { commitment: 40, velocity }),
      memberDays: memberDays[index],
    }));
    const advice = examples.historyAdvice(past);
    return { ...advice, ratios: advice.ratios.filter(({ ratio }) => ratio === 'velocityGrowth') };
  };

  test('has its growth for each member-day as a line of its own beside that of the velocity', async () => {
    const advice = grown([40, 40, 80, 80, 60], [20, 21, 40, 38, 30]);
    expect(historyWindow(advice).ratios[0]?.perMemberDay).toEqual([1, 1.05, 1, 0.95, 1]);
    await looking(advice, ({ at, colourAt, texts: seen }) => {
      expect(seen).toEqual(expect.arrayContaining(['150%', 'member-day 100%', 'growth for each member-day']));
      // Open squares, as of the value beside the velocity; the velocity's own points stay.
      expect(colourAt(...at(2, 1))).toBe(palette.card);
      expect(colourAt(...at(2, 2))).toBe(palette.left);
    });
    expect(historyAltText(advice)).toContain('latest 150%, for each member-day 100%');
    await looking(advice, expectLegible);
  });

  test('has a gap where the member-days are not known', () => {
    const advice = grown([40, undefined, 80], [20, 30, 40]);
    expect(historyWindow(advice).ratios[0]?.perMemberDay).toEqual([1, undefined, 1]);
  });

  test.each([
    ['length and size are about the same', [40, 41, 39]],
    ['they are not known of the sprint that counts as 100%', [undefined, 80, 80]],
  ])('has none while %s', async (_why, memberDays) => {
    const advice = grown(memberDays, [20, 30, 40]);
    expect(historyWindow(advice).ratios[0]?.perMemberDay).toBeUndefined();
    expect((await texts(advice)).join()).not.toContain('member-day');
    expect(historyAltText(advice)).not.toContain('member-day');
  });
});
