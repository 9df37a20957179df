import { describe, expect, test } from 'vitest';
import { readDaysOff, readWeekdays, whyNotSpan } from '../../../src/app/days-off/read-days-off.ts';

/** A Wednesday. */
const TODAY = '2026-11-18';

function spansIn(words: string, earliest = TODAY): string[] {
  const reading = readDaysOff(words, TODAY, earliest);
  if ('problem' in reading) throw new Error(reading.problem.code);
  const { whose, spans, share } = reading.read;
  const said = spans.map(({ from, to }) => (from === to ? from : `${from}/${to}`));
  return [
    ...(whose === 'team' ? ['team'] : []),
    ...said,
    ...(share === 0.5 ? ['half'] : share === 1 ? ['back'] : []),
  ];
}

describe('days off in words', () => {
  test.each([
    ['2026-12-24', ['2026-12-24']],
    ['24 Dec', ['2026-12-24']],
    ['on 24th December', ['2026-12-24']],
    ['Dec 24', ['2026-12-24']],
    ['24. Dec 2027', ['2027-12-24']],
    ['today', ['2026-11-18']],
    ['this afternoon', ['2026-11-18', 'half']],
    ['this week', ['2026-11-18/2026-11-22']],
    ['next week', ['2026-11-23/2026-11-29']],
    ['24.12. - 2.1.', ['2026-12-24/2027-01-02']],
    ['24.12.-31.12.', ['2026-12-24/2026-12-31']],
    ['24.12.2027', ['2027-12-24']],
    ['tomorrow half', ['2026-11-19', 'half']],
    ['Friday morning', ['2026-11-20', 'half']],
    ['wed', ['2026-11-18']],
    ['2026-12-24 to 2027-01-02', ['2026-12-24/2027-01-02']],
    ['from 24 Dec until 2 Jan', ['2026-12-24/2027-01-02']],
    ['from 24-31 Dec', ['2026-12-24/2026-12-31']],
    ['24 Dec - 2 Jan', ['2026-12-24/2027-01-02']],
    ['24 Dec–2 Jan', ['2026-12-24/2027-01-02']],
    ['24-31 Dec', ['2026-12-24/2026-12-31']],
    ['24 Dec, 28 Dec to 30 Dec and 4 Jan', ['2026-12-24', '2026-12-28/2026-12-30', '2027-01-04']],
    ['team 1 May', ['team', '2027-05-01']],
    ['the whole team 24 Dec half day', ['team', '2026-12-24', 'half']],
    ['not Friday', ['2026-11-20', 'back']],
    ['cancel 24-31 Dec', ['2026-12-24/2026-12-31', 'back']],
    ['not off tomorrow half', ['2026-11-19', 'back']],
    ['team not 1 May', ['team', '2027-05-01', 'back']],
    ['no longer the team 1 May', ['team', '2027-05-01', 'back']],
  ])('“%s”', (words, expected) => expect(spansIn(words)).toEqual(expected));

  test('a day without a year is the next one from today on', () => {
    expect(spansIn('18 Nov')).toEqual(['2026-11-18']);
    expect(spansIn('17 Nov')).toEqual(['2027-11-17']);
    expect(spansIn('29 Feb')).toEqual(['2028-02-29']);
  });

  test('a day without a year may lie in the running sprint, where a weekday is still to come', () => {
    const sprintBegan = '2026-11-16';
    expect(spansIn('17 Nov', sprintBegan)).toEqual(['2026-11-17']);
    expect(spansIn('16 Nov to 20 Nov', sprintBegan)).toEqual(['2026-11-16/2026-11-20']);
    expect(spansIn('13 Nov', sprintBegan)).toEqual(['2027-11-13']);
    expect(spansIn('24 Dec', sprintBegan)).toEqual(['2026-12-24']);
    expect(spansIn('Monday', sprintBegan)).toEqual(['2026-11-23']);
  });

  test.each([
    ['', 'off-no-day'],
    ['half', 'off-no-day'],
    ['sometime', 'off-not-a-day'],
    ['not', 'off-not-a-day'],
    ['mondays', 'off-every-week'],
    ['until 9 Nov', 'off-one-end'],
    ['from Monday', 'off-one-end'],
    ['for two weeks', 'off-one-end'],
    ['for a week', 'off-one-end'],
    ['@Ben Friday', 'off-somebody-else'],
    ['every friday', 'off-every-week'],
    ['3/4', 'off-not-a-day'],
    ['31 Feb', 'off-not-a-day'],
    ['31 Feb 2027', 'off-not-a-day'],
    ['24 Dec to soon', 'off-not-a-day'],
    ['1 Dec to 3 Dec to 5 Dec', 'off-not-a-day'],
  ])('“%s” names no days', (words, code) => {
    expect(readDaysOff(words, TODAY, TODAY)).toMatchObject({ problem: { code } });
  });

  test('a span goes forward and no further than a year', () => {
    expect(whyNotSpan({ from: '2026-12-02', to: '2026-12-01' })?.code).toBe('off-reversed');
    expect(whyNotSpan({ from: '2026-01-01', to: '2027-01-01' })).toBeUndefined();
    expect(whyNotSpan({ from: '2026-01-01', to: '2027-01-02' })?.code).toBe('off-too-long');
  });
});

describe('weekdays in words', () => {
  test.each([
    ['mon-thu', [1, 2, 3, 4]],
    ['Mon, Tue and Thursday', [1, 2, 4]],
    ['Monday to Wednesday', [1, 2, 3]],
    ['mondays', [1]],
    ['fri-mon', [1, 5, 6, 7]],
    ['3 1 2', [1, 2, 3]],
    ['mo di', undefined],
    ['', undefined],
    ['all', 'team'],
  ])('“%s”', (words, expected) => expect(readWeekdays(words)).toEqual(expected));
});
