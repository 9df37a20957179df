import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { burndownAltText } from '../../src/charts/alt-texts.ts';
import {
  allFuture,
  burndown,
  finishedSprint,
  fortyDays,
  growth,
  midSprint,
  noPlan,
  oneDay,
  unneededSurprise,
} from './burndown-examples.ts';

describe('the text for who cannot see the burndown', () => {
  test('says the state today, each evening and each addition', () => {
    expect(burndownAltText(midSprint)).toBe(
      'Burndown of the sprint “Harbour lights”, Mon 2 to Fri 13 Nov 2026, 10 working days. ' +
        'The commitment is 34 points, from which the ideal line falls to 0. ' +
        'Today is Thursday 5 November. ' +
        'Now 24.5 points are left, 4.1 more than the 20.4 of the ideal line. ' +
        'Points left each evening: Mon 2 Nov 31, Tue 3 Nov 28.5, Wed 4 Nov 27, Thu 5 Nov 24.5. ' +
        'Pulled-in work: 5 points in all: 5 on Wed 4 Nov. ' +
        'Surprise work: 5 points in all: 2 on Tue 3 Nov and 3 on Thu 5 Nov.',
    );
  });

  test('speaks of the last evening once the sprint is over', () => {
    expect(burndownAltText(finishedSprint)).toContain(
      'On the evening of Friday 13 November, 2 points were left, 2 more than the 0 of the ideal line.',
    );
    expect(burndownAltText(finishedSprint)).not.toContain('Today');
  });

  test('names the last working evening when today is a day off', () => {
    expect(burndownAltText(growth)).toContain(
      'Today is Saturday 7 November. On the evening of Thursday 5 November, 36.5 points were left, ' +
        '24.5 more than the 12 of the ideal line.',
    );
  });

  test('says that there was no commitment instead of comparing with an ideal', () => {
    expect(burndownAltText(noPlan)).toBe(
      'Burndown of the sprint “Planning called off”, Mon 2 to Fri 6 Nov 2026, 5 working days. ' +
        'There was no commitment, so there is no ideal line. ' +
        'On the evening of Friday 6 November, 0 points were left. ' +
        'Points left each evening: Mon 2 Nov 8, Tue 3 Nov 11.5, Wed 4 Nov 7, Thu 5 Nov 3, Fri 6 Nov 0. ' +
        'Pulled-in work: 13 points in all: 8 on Mon 2 Nov and 5 on Tue 3 Nov. ' +
        'Surprise work: 0.5 points in all: 0.5 on Wed 4 Nov.',
    );
  });

  test('says so when no day has numbers yet', () => {
    expect(burndownAltText(allFuture)).toContain(
      'No day has numbers yet. Pulled-in work: none. Surprise work: none.',
    );
  });

  test('calls negative surprise work taken back', () => {
    expect(burndownAltText(unneededSurprise)).toContain(
      'Surprise work: 0 points in all: 3 on Mon 2 Nov, 1 on Tue 3 Nov and 4 taken back on Wed 4 Nov.',
    );
  });

  test('uses the singular for one point and one day', () => {
    expect(burndownAltText(oneDay)).toContain('Mon 2 Nov 2026, 1 working day.');
    expect(burndownAltText(oneDay)).toContain('Surprise work: 1 point in all');
    expect(burndownAltText(burndown('Last point', 2, [[1]]))).toContain('1 point was left');
  });

  test('has room for every evening of a sprint of forty days', () => {
    const text = burndownAltText(fortyDays);
    const known = fortyDays.days.filter((day) => day.leftPoints !== undefined);
    expect(known).toHaveLength(31);
    const [, evenings] = /Points left each evening: (.*?)\. Pulled/.exec(text) ?? [];
    expect(evenings?.split(', ')).toHaveLength(31);
  });

  test('shortens a name of more than 150 characters to 149 and an ellipsis', () => {
    const named = (sprintName: string) => burndownAltText({ ...oneDay, sprintName });
    expect(named('🌊'.repeat(150))).toContain(`“${'🌊'.repeat(150)}”`);
    expect(named('🌊'.repeat(151))).toContain(`“${'🌊'.repeat(149)}…”`);
    expect(named(' \n')).toContain('Burndown of the sprint, Mon 2 Nov 2026');
  });

  test('drops the evenings first and the days of additions second when the sprint is too long', () => {
    const withAdditions = (count: number) =>
      burndownAltText(burndown('Long', 100, Array(count).fill([50, 1.5, 0])));
    expect(withAdditions(90)).not.toContain('each evening');
    expect(withAdditions(90)).toContain('1.5 on Mon 2 Nov');
    expect(withAdditions(200)).toContain('Pulled-in work: 300 points in all, on 200 of the days.');
  });

  test('never exceeds the 2,000 characters that the platform takes, nor cuts a sign in half', () => {
    const points = fc.integer({ min: -40, max: 1_999 }).map((halves) => halves / 2);
    const evening = fc.tuple(fc.option(points, { nil: undefined }), points, points);
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 400 }),
        fc.array(evening, { maxLength: 120 }),
        (name, evenings) => {
          const text = burndownAltText(burndown(name, 55, evenings));
          // The limit: docs.slack.dev, image block, alt_text.
          expect(text.length).toBeLessThanOrEqual(2_000);
          expect(text.isWellFormed()).toBe(true);
        },
      ),
    );
  });
});
