import { describe, expect, it } from 'vitest';
import type { PullInCheck } from '../../src/app/cards/pull-in-check.ts';
import { undefinedBecause } from '../../src/sprint/undefined-value.ts';
import { pulledCardWords, pullInCheckWords } from '../../src/words/pull-in.ts';
import { pullInCheckOf } from '../slack/views/view-examples.ts';

const TOO_FEW = undefinedBecause('few-sprints', { needed: 3, known: 2, having: 'closed' });
const NO_RECORD = undefinedBecause('few-pulled-in', { needed: 5, known: 2 });

function checkOf(afterOpenWork: number, doneFirst: number, over: Partial<PullInCheck> = {}): PullInCheck {
  const sizes = [{ estimatePoints: 3, chance: { afterOpenWork, doneFirst }, record: NO_RECORD }];
  return pullInCheckOf({ sizes, ...over });
}

const untold = (record = pullInCheckOf().sizes[1]?.record ?? NO_RECORD): PullInCheck =>
  pullInCheckOf({ sizes: [{ estimatePoints: 3, chance: TOO_FEW, record }] });

describe('the check before a card is pulled in', () => {
  it('says both chances of each size, and puts the sizes that hardly fit into one line', () => {
    expect(pullInCheckWords(pullInCheckOf()).split('\n').slice(0, 5)).toEqual([
      '*Will it be finished?*',
      '• 1 point: 42% chance after the open work, 97% if done first',
      '• 3 points: 31% chance after the open work, 90% if done first; of 7 such cards 5 were finished',
      '• 8 points: 6% chance after the open work, 44% if done first',
      '• 13 points or more: hardly, even if done first',
    ]);
  });

  it('says what the chances are based on, and what doing it first costs', () => {
    const words = pullInCheckWords(pullInCheckOf());
    expect(words).toContain('Based on 14 closed sprints of the team');
    expect(words).toContain('leaves that much less time for the 16 points of open work');
    expect(words).toContain('Of 9 cards pulled in before, 6 were finished in the same sprint.');
  });

  it('says one chance when nothing else is open', () => {
    const words = pullInCheckWords(checkOf(0.8, 0.8, { openPoints: 0 }));
    expect(words).toContain('• 3 points: 80% chance\n');
    expect(words).toContain('Nothing else is open.');
  });

  it('shows seven sizes of a long scale, the smallest and the largest among them', () => {
    const sizes = Array.from({ length: 30 }, (_, i) => ({
      estimatePoints: (i + 1) / 2,
      chance: { afterOpenWork: 0.2, doneFirst: 0.5 },
      record: NO_RECORD,
    }));
    const lines = pullInCheckWords(pullInCheckOf({ sizes })).split('\n');
    const shown = lines.filter((line) => line.startsWith('•')).map((line) => line.split(' point')[0]);
    expect(shown).toHaveLength(7);
    expect([shown[0], shown[6]]).toEqual(['• 0.5', '• 15']);
  });

  it('without enough history says what is missing, how to get it, and what the record says', () => {
    expect(pullInCheckWords(untold())).toBe(
      [
        '*Will it be finished?*',
        'The chance isn’t known. This needs 3 closed sprints; there are 2. More history: `/loadline import`.',
        'Of 9 cards pulled in before, 6 were finished in the same sprint.',
      ].join('\n'),
    );
  });

  it('sends nobody to the import where more history would change nothing', () => {
    const chance = undefinedBecause('nobody-answered');
    const words = pullInCheckWords(
      pullInCheckOf({ sizes: [{ estimatePoints: 3, chance, record: NO_RECORD }] }),
    );
    expect(words).toContain(
      'The chance isn’t known. Nobody has answered in this sprint yet, so it isn’t known what is left.\n',
    );
  });

  it.each([
    [0, 0, 'No card has been pulled into a closed sprint yet, so there is no record to look at.'],
    [1, 1, 'One card was pulled in before; it was finished in its sprint.'],
    [1, 0, 'One card was pulled in before; it wasn’t finished in its sprint.'],
    [4, 1, 'Of 4 cards pulled in before, 1 was finished in the same sprint.'],
  ])('says of a record of %i cards that %i were finished', (cards, finished, words) => {
    expect(pullInCheckWords(pullInCheckOf({ pulledIn: { cards, finished } }))).toContain(words);
  });
});

describe('the reply after a card was pulled in', () => {
  const WAY_OUT = 'If it can wait, leave it for the next planning';

  it.each<[string, number, number, string, boolean]>([
    [
      'a good bet',
      0.72,
      0.95,
      'its chance of being finished by the end is 72%, or 95% if it’s done before',
      false,
    ],
    [
      'a good bet only when done first',
      0.2,
      0.8,
      'its chance of being finished after the open work is 20%',
      true,
    ],
    [
      'a bad bet',
      0.05,
      0.3,
      'probably won’t be finished by the end: the chance is 5% after the open work, 30%',
      true,
    ],
  ])(
    'of a card that is %s says so, and offers a way out when it is not',
    (_what, after, first, words, out) => {
      const said = pulledCardWords(checkOf(after, first));
      expect(said).toContain(words);
      expect(said.includes(WAY_OUT)).toBe(out);
    },
  );

  it.each([
    [0.9, 'its chance of being finished by the end is 90%.', false],
    [0.4, 'it probably won’t be finished by the end: the chance is 40%.', true],
  ])('when nothing else is open there is one chance: %s', (chance, words, out) => {
    const said = pulledCardWords(checkOf(chance, chance, { openPoints: 0 }));
    expect(said).toContain(words);
    expect(said.includes(WAY_OUT)).toBe(out);
  });

  it('without a chance falls back on the record of cards like it', () => {
    expect(pulledCardWords(untold())).toBe(
      'Whether it fits isn’t known. This needs 3 closed sprints; there are 2. Of 7 cards like it, 5 were finished; expect 36% to 92% of the next ones.',
    );
    expect(pulledCardWords(untold(NO_RECORD))).toBe(
      'Whether it fits isn’t known. This needs 3 closed sprints; there are 2.',
    );
  });
});
