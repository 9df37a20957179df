/** How messages become text. The expected numbers, dates and lists are those of CLDR for English (United Kingdom). */
import { afterEach, describe, expect, test } from 'vitest';
import { languageOf } from '../../src/words/language.ts';
import { Markup, type MessageId, mrkdwn, say, speak } from '../../src/words/say.ts';

/** Messages of the test's own, which the types know nothing of. */
function speaking(source: string) {
  speak(
    languageOf('en-GB', [
      `amount-points = { $amount ->\n    [one] { NUMBER($amount) } point\n   *[other] { NUMBER($amount) } points\n }\n${source}`,
    ]),
  );
  return {
    say: say as unknown as (id: string, args?: object) => string,
    mrkdwn: mrkdwn as unknown as (id: string, args?: object) => string,
  };
}

afterEach(() => speak(undefined));

describe('a message', () => {
  test.each([
    ['NUMBER', 1234.5, '1,234.5'],
    ['NUMBER', -0, '0'],
    ['SIGNED', 2, '+2'],
    ['SIGNED', -1.5, '-1.5'],
    ['POINTS', 1, '1 point'],
    ['POINTS', 0.5, '0.5 points'],
    ['PERCENT', 0.799, '79.9%'],
    ['WHOLE_PERCENT', 0.799, '80%'],
    ['DAY', '2026-11-04', 'Wed 4 Nov'],
    ['SHORT_DATE', '2027-03-12', '12 Mar 2027'],
    ['SHORT_DATE_NO_YEAR', '2027-03-12', '12 Mar'],
    ['YEAR', '2027-03-12', '2027'],
    ['DATE', '2027-03-12', '12 March 2027'],
    ['LIST', ['a', 'b', 'c'], 'a, b and c'],
    ['OR_LIST', ['a', 'b'], 'a or b'],
    ['SERIES', ['a', 'b', 'c'], 'a, b, c'],
  ])('%s(%s) says %s', (name, value, text) => {
    expect(speaking(`m = { ${name}($x) }`).say('m', { x: value })).toBe(text);
  });

  test('selects the ordinal plural', () => {
    const { say: words } = speaking(
      'm = { ORDINAL($n) ->\n    [one] { NUMBER($n) }st\n    [two] { NUMBER($n) }nd\n    [few] { NUMBER($n) }rd\n   *[other] { NUMBER($n) }th\n }',
    );
    expect([1, 2, 3, 4, 11, 21].map((n) => words('m', { n }))).toEqual([
      '1st',
      '2nd',
      '3rd',
      '4th',
      '11th',
      '21st',
    ]);
  });

  test('is refused when it does not exist, lacks an argument, or is given no number', () => {
    const { say: words } = speaking('m = { NUMBER($n) }');
    expect(() => words('none')).toThrow('no message none');
    expect(() => words('m')).toThrow('$n');
    expect(() => words('m', { n: Number.NaN })).toThrow('NaN');
    expect(() => words('m', { n: 'three' })).toThrow('three');
  });

  test('cannot be steered by what people typed', () => {
    const { say: words } = speaking('m = { $title }');
    expect(words('m', { title: '{ $secret } { m }' })).toBe('{ $secret } { m }');
  });

  test('in plain text shows a command bare and other things to type in quotes', () => {
    expect(speaking('m = Type `/loadline plan` or `2: 3`.').say('m')).toBe('Type /loadline plan or “2: 3”.');
  });

  test('in markup escapes every text, also in lists, but not markup', () => {
    const { mrkdwn: words } = speaking('m = `/loadline` { $title }, { LIST($names) }');
    expect(words('m', { title: '<!channel> *x*', names: ['<@U1>', new Markup('<@U2>')] })).toBe(
      '`/loadline` &lt;!channel&gt; ∗x∗, &lt;@U1&gt; and <@U2>',
    );
  });
});

test('English is spoken unless something else was chosen', () => {
  expect(say('somebody' satisfies MessageId)).toBe('somebody');
});

describe('an estimated chance', () => {
  test.each([
    [0.62, '62%'],
    [0.996, 'more than 99%'],
    [0.004, 'less than 1%'],
    [1, '100%'],
    [0, '0%'],
  ])('of %d reads %s: what is only nearly certain is never called certain', (keep, words) => {
    expect(say('load-heavy', { keep, floor: 0.8 })).toContain(`is ${words}.`);
  });
});

test('of several dates each names its year where the one before has another', () => {
  const chances = { optimisticChance: 0.15, likelyChance: 0.5, pessimisticChance: 0.85 };
  const dates = { optimistic: '2026-12-28', likely: '2027-01-16', pessimistic: '2027-03-02' };
  expect(say('forecast-lead', { points: 120, ...chances, ...dates })).toBe(
    '120 points: likely by 16 January 2027 (50%), optimistic 28 December 2026 (15%), pessimistic 2 March 2027 (85%).',
  );
});
