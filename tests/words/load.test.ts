import { describe, expect, it } from 'vitest';
import type { LoadOutlook, ProjectionReading } from '../../src/app/watching/load-outlook.ts';
import { statusMessage } from '../../src/slack/views/status-message.ts';
import { reason } from '../../src/sprint/undefined-value.ts';
import { loadEvidenceWords, loadWords } from '../../src/words/load.ts';
import { card, fact, projectionOf, statusOf, verdictOf } from '../slack/views/view-examples.ts';

const projected = (over: Partial<ProjectionReading> = {}): LoadOutlook => ({
  from: 'projection',
  reading: projectionOf(over),
});

describe('a projection in words', () => {
  it('leads with the signal and the chance to keep the commitment, then says where the sprint may end', () => {
    expect(loadWords(projected())).toBe(
      'The load is heavy: the chance of finishing at least 80% of the commitment is 32%. About 13 points will probably be finished by the end. Of 10 sprints like this, 8 end between 8 and 19. Half of them end between 10 and 15.',
    );
  });

  it.each<[string, Partial<ProjectionReading>, string]>([
    [
      'light',
      { signal: 'light', keepingChance: 0.97, allFinishedChance: 0.86 },
      'The load is light: the chance of finishing everything is 86%.',
    ],
    [
      'on the line',
      { signal: 'on the line', keepingChance: 0.62, allFinishedChance: 0.2 },
      'The load is on the line: the chance of finishing at least 80% of the commitment is 62%, that of finishing everything 20%.',
    ],
    [
      'light with everything done',
      { signal: 'light', keepingChance: 1, allFinishedChance: 1, finishedPoints: 21 },
      'The load is light: everything in the sprint is finished.',
    ],
    [
      'surely heavy',
      { keepingChance: 0 },
      'The load is heavy: the chance of finishing at least 80% of the commitment is less than 1%.',
    ],
    [
      'nearly surely heavy',
      { keepingChance: 0.004 },
      'The load is heavy: the chance of finishing at least 80% of the commitment is less than 1%.',
    ],
    [
      'heavy with cards that are all needed',
      { keepingChance: 0.31, allFinishedChance: 0.31, isAllNeeded: true },
      'The load is heavy: finishing at least 80% of the commitment takes every card that is open, and the chance of that is 31%.',
    ],
    [
      'on the line with cards that are all needed',
      { signal: 'on the line', keepingChance: 0.7, allFinishedChance: 0.7, isAllNeeded: true },
      'The load is on the line: finishing at least 80% of the commitment takes every card that is open, and the chance of that is 70%.',
    ],
    [
      'nothing to keep',
      { signal: undefined, keepingChance: undefined, allFinishedChance: 0.4 },
      'No load signal: there was no commitment, so there is nothing to keep. The chance of finishing everything in the sprint is 40%.',
    ],
  ])('says of a load that is %s', (_what, over, words) => {
    expect(loadWords(projected(over)).startsWith(words)).toBe(true);
  });

  it('rounds intervals outwards, and says one number where both ends are the same', () => {
    const words = loadWords(
      projected({ medianPoints: 7, narrow: { low: 7, high: 7 }, wide: { low: 6.5, high: 7 } }),
    );
    expect(words).toContain('Of 10 sprints like this, 8 end between 6 and 7. Half of them end at 7.');
  });

  it('promises no interval before enough sprints were watched, as with imported ones alone', () => {
    const all = { narrow: { low: 1, high: 31 }, wide: { low: 1, high: 31 } };
    expect(loadWords(projected({ ...all, watchedSprints: 3 }))).toContain(
      'How far off that may be is known once 4 sprints have been watched to their end.',
    );
    expect(loadWords(projected({ ...all, watchedSprints: 4 }))).toContain('end between 1 and 31.');
  });

  it('says an interval once where both are the same', () => {
    const words = loadWords(projected({ narrow: { low: 1, high: 31 }, wide: { low: 1, high: 31 } }));
    expect(words).toContain('end between 1 and 31.');
    expect(words).not.toContain('Half of them');
  });

  it('says what it is based on and what it doesn’t know', () => {
    expect(loadEvidenceWords(projected())).toBe(
      'Based on 14 closed sprints of the team; those most like this one count most. It doesn’t know who will be away, what kind of work the open cards hold, or what hasn’t been answered yet.',
    );
    const borrowed = loadEvidenceWords(projected({ ownSprints: 3, alikeSprints: 0.6, othersLend: true }));
    expect(borrowed).toContain('Based on 3 closed sprints of the team');
    expect(borrowed).toContain('A little comes from other teams.');
    expect(borrowed).toContain('Hardly any of them was like this one, so the answer is wide.');
  });
});

const paced = (points: number, signal: 'light' | 'on the line' | 'heavy'): LoadOutlook => ({
  from: 'pace',
  pace: { signal, projectedLeftPoints: points, daysGone: 6, isEarly: false },
  ownSprints: 1,
  neededSprints: 3,
});

describe('a pace in words', () => {
  it.each<[string, LoadOutlook, string]>([
    [
      'heavy',
      paced(8.75, 'heavy'),
      'The load is heavy: at the pace so far, about 9 points will be left at the end.',
    ],
    [
      'light',
      paced(-4.2, 'light'),
      'The load is light: at the pace so far, there is room for about 4 points more.',
    ],
    [
      'even',
      paced(0.3, 'on the line'),
      'The load is on the line: at the pace so far, everything will be finished just in time.',
    ],
    [
      'even, rather more',
      paced(1.2, 'on the line'),
      'The load is on the line: at the pace so far, about 1 point will be left at the end.',
    ],
    [
      'even, rather less',
      paced(-1.6, 'on the line'),
      'The load is on the line: at the pace so far, everything will be finished, with room for about 2 points more.',
    ],
    [
      'unknown',
      {
        from: 'pace',
        pace: { signal: undefined, because: reason('few-days', { needed: 2 }) },
        ownSprints: 0,
        neededSprints: 3,
      },
      'No load signal yet. The pace shows after 2 working days of answers.',
    ],
  ])('shows a load that is %s by its word and number', (_what, load, words) => {
    expect(loadWords(load)).toBe(words);
  });

  it.each([
    [
      'light',
      'The load may be light: at the pace of the first 2 working days, everything would be finished early. So few days can’t say whether there is room for more.',
    ],
    [
      'heavy',
      'The load may be heavy: at the pace of the first 2 working days, work would be left at the end. So few days can’t say how much.',
    ],
    [
      'on the line',
      'The load may be on the line: at the pace of the first 2 working days, everything would be finished about in time. After so few days, that can still change.',
    ],
  ] as const)('tells no amount of a load that looks %s on the second day', (signal, words) => {
    const pace = { signal, projectedLeftPoints: -16, daysGone: 2, isEarly: true };
    expect(loadWords({ from: 'pace', pace, ownSprints: 0, neededSprints: 3 })).toBe(words);
  });

  it('says how much history is missing, and how to bring it in', () => {
    const words = loadEvidenceWords(paced(0, 'on the line'));
    expect(words).toMatch(/^This is the plain pace of this sprint, .+ From 3 closed sprints on/);
    const noPaceYet = { signal: undefined, because: reason('few-days', { needed: 2 }) } as const;
    expect(loadEvidenceWords({ from: 'pace', pace: noPaceYet, ownSprints: 0, neededSprints: 3 })).toMatch(
      /^From 3 closed sprints on/,
    );
    expect(words).toContain('so far there is 1');
    expect(words).toContain('`/loadline import`');
    expect(loadEvidenceWords({ ...paced(0, 'light'), ownSprints: 0 } as LoadOutlook)).toContain(
      'so far there are 0',
    );
  });
});

describe('where nothing can be foreseen', () => {
  it('says why, and no more', () => {
    const load: LoadOutlook = { from: 'nothing', because: reason('no-points') };
    expect(loadWords(load)).toBe('No load signal. There are no points in the sprint.');
    expect(loadEvidenceWords(load)).toBe('');
    expect(statusMessage(statusOf({ load })).text).not.toContain('Based on');
  });
});

describe('surprise work above its ceiling', () => {
  const { summary } = verdictOf(
    [card(1)],
    [fact(1, { cardId: 'card-1', day: '2026-11-05', workedPoints: 0, leftPoints: 7, surprisePoints: 2 })],
  );
  const sentence = 'Surprise work alone would make it missed: its ratio is 40%, above the ceiling of 20%.';

  it('is said beside the load, which knows nothing of it', () => {
    expect(statusMessage(statusOf({ summary })).text).toContain(sentence);
    expect(statusMessage(statusOf()).text).not.toContain('Surprise work alone');
  });
});
