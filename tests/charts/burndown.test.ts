import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { burndownChart } from '../../src/charts/burndown-chart.ts';
import { palette } from '../../src/charts/chart-theme.ts';
import { charts } from '../../src/charts/charts.ts';
import { renderPng } from '../../src/charts/render-png.ts';
import type { Burndown } from '../../src/sprint/burndown.ts';
import { search } from '../support/search-width.ts';
import * as examples from './burndown-examples.ts';
import { burndown, type Evening, midSprint, noPlan, unneededSurprise } from './burndown-examples.ts';
import { expectLegible, lookingAt, type SeenChart } from './looking-at.ts';

const { burndown: _, ...named } = examples;
const burndowns: [string, Burndown][] = Object.entries(named);

const looking = <T>(shown: Burndown, look: (seen: SeenChart) => T) => lookingAt(burndownChart(shown), look);
const texts = (shown: Burndown) => looking(shown, (seen) => seen.texts);
const boxOf = ({ boxes }: SeenChart, text: string) => {
  const box = boxes.find((one) => one.text === text);
  if (box === undefined) throw new Error(`${text} is not in the picture`);
  return box;
};
/** In this thread, which remembers none. */
const drawnHere = async (shown: Burndown) => {
  const { option, size } = burndownChart(shown);
  return Buffer.from(await renderPng(option, size));
};
const png = async (shown: Burndown) => Buffer.from((await charts.burndown(shown)).png);

/** Axes of the tracks. */
const pulledIn = { x: 1, y: 1 };
const surprise = { x: 2, y: 3 };
const lastOf = ({ days }: Burndown) => days.findLastIndex(({ leftPoints }) => leftPoints !== undefined) + 1;

describe('the lines of the burndown', () => {
  test.each(burndowns)('%s: points left run through every evening and no further', async (_name, shown) => {
    await looking(shown, ({ at, colourAt }) => {
      expect(colourAt(...at(0, shown.commitmentPoints))).toBe(palette.left);
      shown.days.forEach(({ leftPoints }, index) => {
        if (leftPoints !== undefined) expect(colourAt(...at(index + 1, leftPoints))).toBe(palette.left);
      });
      const end = lastOf(shown);
      const left = shown.days[end - 1]?.leftPoints ?? shown.commitmentPoints;
      if (end < shown.days.length) expect(colourAt(...at(shown.days.length, left))).not.toBe(palette.left);
    });
  });

  test('the ideal is dashed and falls from the commitment to its value on the last day', async () => {
    const along = await looking(examples.allFuture, ({ at, colourAt }) => {
      const [fromX, fromY] = at(0, 21);
      const [toX, toY] = at(8, 0);
      return Array.from({ length: 400 }, (_, step) => {
        const share = 0.03 + (step / 400) * 0.94;
        return colourAt(fromX + (toX - fromX) * share, fromY + (toY - fromY) * share);
      });
    });
    const shareDrawn = along.filter((colour) => colour === palette.ideal).length / along.length;
    // Six pixels drawn, five not.
    expect(shareDrawn).toBeGreaterThan(0.35);
    expect(shareDrawn).toBeLessThan(0.65);
  });

  test('there is no ideal without a commitment', async () => {
    const stillNothing = burndown('Nothing planned', 0, [[undefined], [undefined], [undefined]]);
    await looking(stillNothing, ({ at, coloursAlong }) => {
      const [[fromX, y], [toX]] = [at(1, 0), at(3, 0)];
      expect(coloursAlong([fromX, y - 1], [toX, y - 1])).not.toContain(palette.ideal);
    });
    expect(await texts(noPlan)).not.toContain('ideal');
  });

  test.each([
    ['on its evening, when it is a working day', '2026-11-05', 4],
    ['between two evenings, when it is a day off', '2026-11-07', 5.5],
  ])('today is an upright line through all plots, %s', async (_where, today, position) => {
    const between = ({ at, colourAt }: SeenChart) => {
      const [[left], [right]] = [at(Math.floor(position), 0), at(Math.ceil(position), 0)];
      const [, top] = at(0, 0, pulledIn);
      return colourAt((left + right) / 2, top + 3);
    };
    expect(await looking({ ...midSprint, today }, between)).toBe(palette.today);
    expect(await looking({ ...midSprint, today: undefined }, between)).toBe(palette.card);
  });

  test.each(['2026-10-30', '2026-11-14'])('today is not marked outside the sprint, on %s', async (today) => {
    const outside = await png({ ...examples.finishedSprint, today });
    expect(outside.equals(await png(examples.finishedSprint))).toBe(true);
  });
});

describe('the tracks of the burndown', () => {
  test('pulled-in work is a filled bar on its day, as high as its points, and nowhere else', async () => {
    await looking(examples.finishedSprint, ({ at, coloursAlong }) => {
      examples.finishedSprint.days.forEach(({ pulledInPoints }, index) => {
        const [x, tip] = at(index + 1, pulledInPoints, pulledIn);
        const bar = coloursAlong([x, tip + 2], [x, at(index + 1, 0, pulledIn)[1] - 2]);
        if (pulledInPoints > 0) expect(bar).toEqual(new Set([palette.pulledIn]));
        expect(coloursAlong([x, tip - 2], [x, tip - 12])).not.toContain(palette.pulledIn);
      });
    });
  });

  test('surprise work is hatched: its bars show its colour and the card', async () => {
    await looking(examples.growth, ({ at, coloursAlong }) => {
      const [x, y] = at(1, 1.5, surprise);
      const colours = coloursAlong([x - 9, y], [x + 9, y]);
      expect(colours).toContain(palette.surprise);
      expect(colours).toContain(palette.card);
    });
  });

  test('a day without surprise work shows no trace of a bar', async () => {
    await looking(examples.growth, ({ at, coloursAlong }) => {
      const bar = (day: number) => {
        const [x, y] = at(day, 0, surprise);
        return coloursAlong([x + 2, y - 20], [x + 2, y + 1]);
      };
      expect(bar(4)).toContain(palette.surprise);
      expect(bar(5)).not.toContain(palette.surprise);
    });
  });

  test('surprise work that was not needed hangs below the line', async () => {
    await looking(unneededSurprise, ({ at, coloursAlong }) => {
      const [[x1, zero], [x3]] = [at(1, 0, surprise), at(3, 0, surprise)];
      const above = (x: number) => coloursAlong([x - 4, zero - 2], [x + 4, zero - 8]);
      const below = (x: number) => coloursAlong([x - 4, zero + 2], [x + 4, zero + 8]);
      // 3 points on Monday, 4 points taken back on Wednesday.
      expect([above(x1), above(x3)].map((colours) => colours.has(palette.surprise))).toEqual([true, false]);
      expect([below(x1), below(x3)].map((colours) => colours.has(palette.surprise))).toEqual([false, true]);
    });
  });

  test('have their amounts at the bars and their sums at the right', async () => {
    const seen = await texts(examples.finishedSprint);
    expect(seen).toEqual(expect.arrayContaining(['+2', '+5', '-1', '+1.5', '8 in all', '5.5 in all']));
    expect(await texts(unneededSurprise)).toEqual(expect.arrayContaining(['none', '0 in all']));
  });
});

describe('the labels of the burndown', () => {
  test('name the lines, the tracks and today', async () => {
    expect(await texts(midSprint)).toEqual(
      expect.arrayContaining([
        'points left',
        'ideal',
        '24.5 left',
        'pulled-in',
        'surprise',
        'work',
        '5 in all',
        'today',
      ]),
    );
  });

  test('are clear of the row of "today" when the line ends at the top of its plot', async () => {
    await looking(burndown('High', 40, [[40], [undefined]], { today: '2026-11-02' }), (seen) => {
      expect(boxOf(seen, 'today').bottom).toBeLessThan(boxOf(seen, '40 left').top);
    });
  });

  test('are clear of the name of the ideal line when nothing is left on the last day but one', async () => {
    const evenings = [...Array<Evening>(38).fill([20]), [0] as const, [undefined] as const];
    await looking(burndown('Early', 40, evenings), (seen) => {
      const [ideal, left] = [boxOf(seen, 'ideal'), boxOf(seen, '0 left')];
      expect(left.right).toBeGreaterThan(ideal.left);
      expect(left.bottom).toBeLessThan(ideal.top);
    });
  });

  test('are clear of the numbers of the axis when the line ends near it, below the ideal', async () => {
    const evenings = [[30] as const, ...Array<Evening>(39).fill([undefined])];
    await looking(burndown('Leap', 99, evenings), (seen) => {
      expect(boxOf(seen, '30 left').left).toBeGreaterThan(boxOf(seen, '100').right);
    });
  });

  test('are to the lower left of a falling line, to the lower right of a rising one, below the ideal', async () => {
    const side = (evenings: Evening[]) =>
      looking(burndown('Side', 40, [...evenings, ...Array<Evening>(6).fill([undefined])]), (seen) => {
        const [x, y] = seen.at(6, 18);
        const box = boxOf(seen, '18 left');
        expect(box.top).toBeGreaterThan(y);
        return box.right < x ? 'left' : box.left > x ? 'right' : 'across';
      });
    expect(await side([[38], [34], [30], [26], [20], [18]])).toBe('left');
    expect(await side([[38], [34], [30], [26], [12], [18]])).toBe('right');
  });

  test('never overlap each other nor leave the card, for all numbers', async () => {
    const halves = (most: number) => fc.integer({ min: 0, max: most * 2 }).map((count) => count / 2);
    const sprint = fc.record({
      commitmentPoints: fc.oneof(fc.constant(0), halves(20), halves(99_950)),
      known: fc.array(fc.oneof(halves(20), halves(99_950)), { maxLength: 25 }),
      yetToCome: fc.integer({ min: 0, max: 25 }),
      todayIndex: fc.integer({ min: 0, max: 60 }),
    });
    await fc.assert(
      fc.asyncProperty(sprint, async ({ commitmentPoints, known, yetToCome, todayIndex }) => {
        const evenings = [
          ...known.map((left): Evening => [left, 2, -0.5]),
          ...Array<Evening>(yetToCome).fill([undefined]),
        ];
        const today = new Date(Date.UTC(2026, 10, 1 + todayIndex)).toISOString().slice(0, 10);
        await looking(burndown('Any', commitmentPoints, evenings, { today }), expectLegible);
      }),
      search(15),
    );
  });
});

describe('blocked cards', () => {
  test('are marked on their evenings with how many there were, and counted in the caption and the description', async () => {
    await looking(examples.blocked, ({ at, colourAt, boxes }) => {
      const marks = boxes.find(({ text }) => text === 'blocked');
      if (marks === undefined) throw new Error('there is no row of blocked cards');
      const colours = [1, 2, 3, 4].map((position) => {
        const [x] = at(position, 0);
        const height = Array.from({ length: 40 }, (_, step) => colourAt(x + 2, marks.top + step - 8));
        return height.includes(palette.ink);
      });
      expect(colours).toEqual([true, true, true, false]);
    });
    const { altText } = await charts.burndown(examples.blocked);
    expect(altText).toContain('Blocked cards: 5 card-days.');
    expect(altText).toContain('2 cards blocked');
    expect(altText).toContain('1 card blocked');
  });

  test('take no room and no words where there were none', async () => {
    expect(await texts(midSprint)).not.toContain('blocked');
    expect((await charts.burndown(midSprint)).altText).not.toContain('locked');
  });
});

describe('the days under the burndown', () => {
  /** Of each position, what is below its place. */
  const days = (shown: Burndown) =>
    looking(shown, ({ at, column }) =>
      [...Array(shown.days.length + 1).keys()].map((position) => {
        const [x, bottom] = at(position, 0, surprise);
        return column(x, bottom + 12).join(' ');
      }),
    );
  const sprint = (count: number, firstDay?: string) =>
    burndown('Days', 20, Array<Evening>(count).fill([undefined]), firstDay ? { firstDay } : {});
  const withDays = (dates: readonly string[]): Burndown => {
    const [day] = sprint(1).days;
    return { ...sprint(1), days: dates.flatMap((date) => (day ? [{ ...day, day: date }] : [])) };
  };
  /** After a week of five days, so that there is no room for every day. */
  const crowded = (dates: readonly string[]) =>
    withDays([...sprint(5, '2026-10-26').days.map(({ day }) => day), ...dates]);

  test('are all written when there is room, with the month where it begins', async () => {
    expect(await days(sprint(3, '2026-11-30'))).toEqual(['start', 'Mon 30 Nov', 'Tue 1 Dec', 'Wed 2']);
    expect((await days(sprint(6))).filter((day) => day === '')).toEqual([]);
  });

  test('are the first of each week and the last when there is not', async () => {
    expect((await days(sprint(20, '2026-09-14'))).filter((day) => day !== '')).toEqual([
      'start',
      'Mon 21 Sept',
      'Mon 28',
      'Mon 5 Oct',
      'Fri 9',
    ]);
  });

  test('skip weeks as well when even these would touch', async () => {
    const long = sprint(160);
    const mondays = (await texts(long)).filter((text) => text === 'Mon');
    expect(mondays.length).toBeGreaterThan(3);
    expect(mondays.length).toBeLessThan(20);
    expect((await days(long)).at(-1)).toBe('Fri 11 Jun');
    await looking(long, expectLegible);
  });

  test('take the next working day as the first of its week when Monday is off', async () => {
    const dates = ['2026-11-05', '2026-11-06', '2026-11-10', '2026-11-11', '2026-11-12', '2026-11-13'];
    expect((await days(crowded(dates))).slice(-6)).toEqual(['Thu 5 Nov', '', 'Tue 10', '', '', 'Fri 13']);
  });

  test('see a new week after a gap even when the weekday is a later one', async () => {
    // Monday and Tuesday, then Wednesday of the week after.
    const dates = ['2026-11-02', '2026-11-03', '2026-11-11', '2026-11-12', '2026-11-13', '2026-11-16'];
    expect((await days(crowded(dates))).slice(-6)).toEqual(['Mon 2 Nov', '', 'Wed 11', '', '', 'Mon 16']);
  });

  test('need only the start when the sprint has no days', async () => {
    expect(await days(withDays([]))).toEqual(['start']);
  });
});

describe('the picture of the burndown', () => {
  test.each(burndowns)('%s: is legible, and its file under 150 kB', async (_name, shown) => {
    await looking(shown, expectLegible);
    expect((await png(shown)).length).toBeLessThan(150_000);
  });

  test('has nothing of the pictures drawn before it, one after the other or at once', async () => {
    const others = burndowns.map(([, shown]) => shown);
    for (const other of others) await png(other);
    expect(await png(examples.allFuture)).toEqual(await drawnHere(examples.allFuture));
    const named = [...others, examples.allFuture].map((shown) => ({ ...shown, sprintName: 'Neap' }));
    const atOnce = await Promise.all(named.map(png));
    expect(atOnce.at(-1)).toEqual(await drawnHere({ ...examples.allFuture, sprintName: 'Neap' }));
  });

  test('that is asked for again is the one that was drawn', async () => {
    const shown = burndown('Ebb', 20, [[14], [8]]);
    const { png: first } = await charts.burndown(shown);
    expect((await charts.burndown(structuredClone(shown))).png).toBe(first);
  });

  test('one point more left, or another name, gives another picture', async () => {
    const first = await png(burndown('Ebb', 20, [[15], [8]]));
    expect(first.equals(await png(burndown('Ebb', 20, [[16], [8]])))).toBe(false);
    expect(first.equals(await png(burndown('Eddy', 20, [[15], [8]])))).toBe(false);
  });

  test('a day that is no date is refused instead of drawn', () => {
    const [day] = examples.oneDay.days;
    if (day === undefined) throw new Error('the example has a day');
    const shown = { ...examples.oneDay, days: [{ ...day, day: 'soon' }] };
    expect(() => charts.burndown(shown)).toThrow(RangeError);
  });
});
