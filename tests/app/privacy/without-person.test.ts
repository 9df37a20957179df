import { describe, expect, it } from 'vitest';
import { mayTell, withoutPerson } from '../../../src/app/privacy/without-person.ts';

const ben = { userId: 'U0BEN', names: ['Ben Ode'] };

describe('a text without a person', () => {
  it.each([
    ['a mention', 'ask <@U0BEN> first', 'ask somebody first'],
    ['a mention with its label', 'ask <@U0BEN|ben.ode> first', 'ask somebody first'],
    ['the id, as in a draft', 'Crane log\t3\t@U0BEN', 'Crane log\t3\tsomebody'],
    ['the id in lower case', 'u0ben knows', 'somebody knows'],
    ['the whole name', 'Ben Ode’s rope', 'somebody’s rope'],
    ['the whole name behind an @', '@Ben Ode, 3', 'somebody, 3'],
    ['the whole name, spaced and written otherwise', 'BEN   ode', 'somebody'],
    ['the first name behind an @', 'Tide table, 5, @ben', 'Tide table, 5, somebody'],
    ['several at once', '<@U0BEN> is Ben Ode', 'somebody is somebody'],
  ])('loses %s', (_what, text, left) => {
    expect(withoutPerson(text, ben)).toBe(left);
  });

  it.each([
    ['the first name alone, a word like others', 'Ben or a beam'],
    ['a longer id', 'ask <@U0BENX> and U0BEN2'],
    ['a longer name', 'Ben Odell, @Bente'],
    ['a name within a word', 'Urben Odes'],
  ])('keeps %s', (_what, text) => {
    expect(withoutPerson(text, ben)).toBe(text);
  });

  it('loses a name of one word only behind an @', () => {
    const will = { userId: 'U0WILL', names: ['Will'] };
    expect(withoutPerson('Will it float? Ask @Will, not @Willow', will)).toBe(
      'Will it float? Ask somebody, not @Willow',
    );
  });

  it('takes a name of signs to the letter', () => {
    const odd = { userId: 'U0ODD', names: ['A.B. (C+) $1 [x]', '—', ''] };
    expect(withoutPerson('A.B. (C+) $1 [x] and AxB. (C+) $1 [x]', odd)).toBe('somebody and AxB. (C+) $1 [x]');
  });

  it('in another script loses the name as well', () => {
    expect(withoutPerson('問 李 小龍', { userId: 'U0LI', names: ['李 小龍'] })).toBe('問 somebody');
  });

  it('is only looked for where the text holds one of the words that may identify them', () => {
    expect(mayTell(ben)).toEqual(['u0ben', 'ben ode', '@ben']);
    expect(mayTell({ userId: 'U0WILL', names: ['Will', ''] })).toEqual(['u0will', '@will']);
  });
});
