import { expect, test } from 'vitest';
import { undefinedBecause } from '../../src/sprint/undefined-value.ts';
import { noAnswer, ratioText, reasonSentence } from '../../src/words/undefined.ts';

test('a reason is a sentence with its numbers', () => {
  expect(reasonSentence({ code: 'no-card-of-size', estimatePoints: 21 })).toBe(
    'No closed card was estimated at 21 points.',
  );
  expect(reasonSentence({ code: 'too-far-off', sprints: 130, chance: 0.85 })).toBe(
    'Even after 130 sprints the chance is below 85%.',
  );
  expect(reasonSentence({ code: 'few-sprints', needed: 3, known: 1, having: 'closed' })).toBe(
    'This needs 3 closed sprints; there is 1.',
  );
});

test('an answer that comes with more sprints is missing “yet”, another is not', () => {
  const tooFew = undefinedBecause('few-sprints', { needed: 5, known: 2, having: 'number' });
  expect(noAnswer('forecast', tooFew.undefined)).toBe(
    'No forecast yet. This needs 5 closed sprints with these numbers; there are 2.',
  );
  expect(noAnswer('range', { code: 'nobody-there' })).toBe(
    'No range. Nobody is there to work in the coming sprint.',
  );
});

test('a ratio is a percentage, or none with its reason', () => {
  expect(ratioText(0.5)).toBe('50%');
  expect(ratioText(undefinedBecause('no-commitment'))).toBe('None. There was no commitment.');
});

test('a sentence that an earlier version posted is shown as it was', () => {
  expect(ratioText(undefinedBecause('as-posted', { sentence: 'Nobody knows any more.' }))).toBe(
    'None. Nobody knows any more.',
  );
});
