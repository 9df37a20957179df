import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { burndownAltText } from '../../../src/words/charts/burndown.ts';
import { ALT_TEXT_MAX_LENGTH } from '../../../src/words/charts/chart-text.ts';
import {
  allFuture,
  burndown,
  type Evening,
  finishedSprint,
  fortyDays,
  growth,
  midSprint,
  noPlan,
  oneDay,
  unneededSurprise,
} from '../../charts/burndown-examples.ts';

/** Four weeks in which work is pulled in and surprise work comes up each day. */
const busyMonth = (name: string, left = 31.5) =>
  burndown(name, 64, Array<Evening>(20).fill([left, 1.5, 2.5]), { today: '2026-11-27' });

describe('the description of the burndown', () => {
  test('says the state today, each evening and what each day added, latest first', () => {
    expect(burndownAltText(midSprint)).toBe(
      'Burndown of the sprint “Harbour lights”. Mon 2 Nov to Fri 13 Nov 2026, 10 working days. ' +
        'The commitment is 34 points. ' +
        '24.5 points left on Thu 5 Nov, 4.1 more than the ideal of 20.4. Today is Thu 5 Nov. ' +
        'Pulled in: 5 points in all. Surprise work: 5 points in all. ' +
        'Points by day, latest first. Thu 5 Nov: 24.5 left, 3 surprise work. Wed 4 Nov: 27 left, 5 pulled in. ' +
        'Tue 3 Nov: 28.5 left, 2 surprise work. Mon 2 Nov: 31 left.',
    );
  });

  test('names the last evening, and no today, when the sprint is over', () => {
    expect(burndownAltText(finishedSprint)).toContain(
      '2 points left on Fri 13 Nov, 2 more than the ideal of 0.',
    );
    expect(burndownAltText(finishedSprint)).not.toContain('Today');
  });

  test('names the last working evening when today is a day off', () => {
    expect(burndownAltText(growth)).toContain(
      '36.5 points left on Thu 5 Nov, 24.5 more than the ideal of 12. Today is Sat 7 Nov.',
    );
  });

  test('says that there was no commitment instead of comparing with an ideal', () => {
    expect(burndownAltText(noPlan)).toBe(
      'Burndown of the sprint “Planning called off”. Mon 2 Nov to Fri 6 Nov 2026, 5 working days. ' +
        'There was no commitment, so there is no ideal line. 0 points left on Fri 6 Nov. ' +
        'Pulled in: 13 points in all. Surprise work: 0.5 points in all. ' +
        'Points by day, latest first. Fri 6 Nov: 0 left. Thu 5 Nov: 3 left. ' +
        'Wed 4 Nov: 7 left, 0.5 surprise work. Tue 3 Nov: 11.5 left, 5 pulled in. Mon 2 Nov: 8 left, 8 pulled in.',
    );
  });

  test('says so when no day has numbers yet', () => {
    expect(burndownAltText(allFuture)).toMatch(
      /No day has numbers yet\. Nothing was pulled in, and there was no surprise work\.$/,
    );
  });

  test('says that surprise work was taken back', () => {
    expect(burndownAltText(unneededSurprise)).toContain('Surprise work: 0 points in all.');
    expect(burndownAltText(unneededSurprise)).toContain('Wed 4 Nov: 11 left, 4 surprise work taken back.');
  });

  test('uses the singular for one point and one day', () => {
    expect(burndownAltText(oneDay)).toContain('Mon 2 Nov 2026, one working day.');
    expect(burndownAltText(oneDay)).toContain('Nothing was pulled in. Surprise work: 1 point in all.');
    expect(burndownAltText(burndown('Last point', 2, [[1]]))).toContain('1 point left on Mon 2 Nov');
  });

  test('has room for every evening of a sprint of four weeks', () => {
    const evenings = Array.from({ length: 20 }, (_, i): Evening => [60 - 3 * i, 0, i % 3 === 0 ? 1.5 : 0]);
    const text = burndownAltText(burndown('Harbour lights', 60, evenings));
    expect(text.match(/: [\d.]+ left/g)).toHaveLength(20);
    expect(text).not.toContain('left out');
  });

  test.each([
    ['forty days', fortyDays],
    ['four weeks with new work each day', busyMonth('Harbour lights')],
    ['four weeks with new work each day and a long name', busyMonth('Long '.repeat(40), 12_345.5)],
  ])('leaves out the earliest days of %s and says how many, in whole sentences', (_, long) => {
    const text = burndownAltText(long);
    expect(text.length).toBeLessThanOrEqual(ALT_TEXT_MAX_LENGTH);
    // So much that one more day would not have fitted.
    expect(text.length).toBeGreaterThan(ALT_TEXT_MAX_LENGTH - 80);
    const said = text.match(/: [\d,.]+ left/g)?.length ?? 0;
    const known = long.days.filter(({ leftPoints }) => leftPoints !== undefined).length;
    expect(text).toMatch(new RegExp(`\\. ${known - said} earlier days are left out here\\.$`));
  });

  test('never exceeds the 1,000 characters that the platform takes, nor cuts a sign in half', () => {
    const points = fc.integer({ min: -40, max: 1_999 }).map((halves) => halves / 2);
    const evening = fc.tuple(fc.option(points, { nil: undefined }), points, points);
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 400 }),
        fc.array(evening, { maxLength: 120 }),
        (name, evenings) => {
          const text = burndownAltText(burndown(name, 55, evenings));
          expect(text.length).toBeLessThanOrEqual(1_000);
          expect(text.isWellFormed()).toBe(true);
        },
      ),
    );
  });
});
