import { describe, expect, it } from 'vitest';
import type { NoteHistory, NotesHistory } from '../../src/app/closing/note-history.ts';
import type { AdvisedCommitment, CommitmentRange } from '../../src/forecast/commitment-range.ts';
import type { ControlChart, SignalKind } from '../../src/forecast/control-chart.ts';
import { verdictNotesMessage } from '../../src/slack/views/verdict-thread.ts';
import type { CoachingNote } from '../../src/sprint/coaching-note.ts';
import { undefinedBecause } from '../../src/sprint/undefined-value.ts';
import {
  noteHistoryWords,
  ordinaryWords,
  rangeToTryWords,
  usuallyKeptWords,
} from '../../src/words/note-history.ts';
import { expectMessageFits, mrkdwnTexts } from '../slack/views/view-checks.ts';
import { card, missedVerdict, verdictOf } from '../slack/views/view-examples.ts';

function chartOf(kinds: SignalKind[]): ControlChart {
  return {
    values: 12,
    meanBefore: 0.93,
    mean: 0.75,
    meanMovingRange: 0.1,
    limits: { low: 0.484, high: 1 },
    signals: kinds.map((kind) => ({ kind, index: 11 })),
    latest: {
      index: 11,
      value: 0.72,
      reading: kinds.length > 0 ? 'signal' : 'ordinary variation',
      kinds,
    },
  };
}

function historyOf(over: Partial<NoteHistory> = {}): NoteHistory {
  return { id: 'kept-share-low', chart: chartOf([]), crossed: { sprints: 3, of: 8 }, ...over };
}

describe('what history says about a note', () => {
  it('of ordinary variation: one sprint proves little, so look at the way of working', () => {
    expect(noteHistoryWords(historyOf())).toBe(
      'Crossed in 3 of the latest 8 sprints, this one included. Usual for the team: 48% to 100% (over 12 sprints). So this is no signal.',
    );
  });

  it('of ordinary variation that crosses the line as a rule: only the way of working will move it', () => {
    const words = noteHistoryWords(historyOf({ crossed: { sprints: 4, of: 8 } }));
    expect(words).toContain(
      'It usually goes like this, so only a change in the way of working will change it.',
    );
    expect(words).not.toContain('no signal');
  });

  it.each<[SignalKind, string]>([
    ['below the limits', 'it’s far below what is usual for the team (48% to 100%)'],
    ['above the limits', 'it’s far above what is usual for the team (48% to 100%)'],
    ['fall', 'the last 6 sprints were at 75% on average, the sprints before at 93%'],
    ['rise', 'the last 6 sprints were at 75% on average, the sprints before at 93%'],
  ])('of a signal (%s): asks what changed', (kind, words) => {
    expect(noteHistoryWords(historyOf({ chart: chartOf([kind]) }))).toContain(
      `That is a signal: ${words}. Something has changed; what was different?`,
    );
  });

  it('of an unusual value that is no signal: that chance may do it', () => {
    const chart = chartOf([]);
    const unusual = { ...chart, latest: { ...chart.latest, value: 0.4, reading: 'unusual' } } as const;
    expect(noteHistoryWords(historyOf({ chart: unusual }))).toContain(
      'Usual for the team: 48% to 100% (over 12 sprints). This one is outside of that, which one sprint may be by chance',
    );
  });

  it('of too little history is nothing but how often', () => {
    const chart = undefinedBecause('no-signal-yet', { needed: 8, known: 3 });
    expect(noteHistoryWords(historyOf({ chart, crossed: { sprints: 1, of: 3 } }))).toBe(
      'Crossed in 1 of the latest 3 sprints, this one included.',
    );
    expect(noteHistoryWords(historyOf({ crossed: { sprints: 1, of: 1 } }))).toContain(
      'This is the first sprint with this number.',
    );
  });

  it('of a mark: it is reached, not crossed, and nothing went wrong', () => {
    const words = noteHistoryWords(historyOf({ id: 'velocity-growth-first-mark' }));
    expect(words).toContain('Reached in 3 of the latest 8 sprints');
    expect(words).toContain('See whether the next sprints reach it as well.');
    expect(words).not.toContain('wrong');
  });
});

describe('what is said once for all notes', () => {
  const unknown = (known: number) =>
    historyOf({ chart: undefinedBecause('no-signal-yet', { needed: 8, known }) });

  it('is that one sprint proves little, when a note is no signal', () => {
    expect(ordinaryWords([historyOf({ chart: chartOf(['below the limits']) }), historyOf()])).toMatch(
      /^What is usual for a team is ordinary variation: one sprint proves little/,
    );
  });

  it('is how many sprints it takes, by the number with most of them', () => {
    expect(ordinaryWords([unknown(2), unknown(3)])).toBe(
      'It takes 8 sprints with this number to tell a signal from ordinary variation; there are 3.',
    );
  });

  it('is nothing when there are only signals', () => {
    expect(ordinaryWords([historyOf({ chart: chartOf(['below the limits']) })])).toBeUndefined();
  });
});

const NONE = undefinedBecause('few-sprints', { needed: 3, known: 2, having: 'pulled-in-points' });
const ADVISED: AdvisedCommitment = {
  points: 29,
  chances: { kept: 0.82, finishedWhole: 0.5, ranOut: 0.18 },
  unserved: undefined,
};

function rangeOf(over: Partial<CommitmentRange>): CommitmentRange {
  return {
    lowPoints: 26,
    highPoints: 31,
    advised: ADVISED,
    sprints: 8,
    surpriseAboveCeiling: { sprints: 0, of: 8 },
    missing: [],
    model: {
      ...{ finishes: NONE, takesIn: NONE, used: [], missing: [] },
      scaledTo: { measuredBy: 'member-days', comingTime: 40 },
    },
    ...over,
  };
}

describe('the range to try next', () => {
  it.each<[string, CommitmentRange['advised'], string]>([
    [
      'a number that serves both',
      ADVISED,
      'Next, at 29 points: 8 in 10 to keep it, 5 in 10 to finish everything, 2 in 10 to run out of work (from 8 sprints, for 40 member-days; this time it was 21).',
    ],
    [
      'a chance that isn’t known',
      { ...ADVISED, chances: { ...ADVISED.chances, ranOut: NONE } },
      'Next, at 29 points: 8 in 10 to keep it, 5 in 10 to finish everything (from 8 sprints, for 40 member-days; this time it was 21).',
    ],
    [
      'none that serves both',
      { ...ADVISED, unserved: { why: { code: 'varies-too-much' }, remedies: [] } },
      'Next, at 29 points: 8 in 10 to keep it, 5 in 10 to finish everything, 2 in 10 to run out of work (from 8 sprints, for 40 member-days; this time it was 21). No commitment serves both: your sprints differ too much, or are too few.',
    ],
    [
      'nothing that is kept',
      undefinedBecause('too-little-finished'),
      'How much to try next isn’t known. No commitment would be kept: too often, hardly any of it was finished.',
    ],
  ])('with %s', (_what, advised, words) => {
    expect(rangeToTryWords(rangeOf({ advised }), 21)).toBe(words);
  });

  it('without enough sprints says what is missing', () => {
    const tooFew = undefinedBecause('few-sprints', { needed: 3, known: 2, having: 'commitment' });
    expect(rangeToTryWords(tooFew, 21)).toBe(
      'How much to try next isn’t known. This needs 3 closed sprints with a commitment; there are 2.',
    );
  });
});

describe('a commitment that was missed', () => {
  it.each([
    ['within what is usually kept calls for another question than its size', 31, true],
    ['above it does not', 31.5, false],
  ])('%s', (_what, committedPoints, isSaid) => {
    expect(usuallyKeptWords(rangeOf({}), committedPoints) !== undefined).toBe(isSaid);
  });

  it('has no such words without a range', () => {
    expect(
      usuallyKeptWords(undefinedBecause('few-sprints', { needed: 3, known: 2, having: 'commitment' }), 20),
    ).toBeUndefined();
  });
});

describe('in the verdict', () => {
  const history: NotesHistory = { notes: [historyOf()], rangeToTry: rangeOf({}) };

  it('each note gives its own history, and only over- and under-commitment the range', () => {
    const texts = mrkdwnTexts(verdictNotesMessage({ ...missedVerdict, history }).blocks);
    const kept = texts.find((text) => text.includes('The kept share is')) ?? '';
    expect(kept).toContain('Crossed in 3 of the latest 8 sprints');
    expect(kept).toContain(
      'Next, at 29 points: 8 in 10 to keep it, 5 in 10 to finish everything, 2 in 10 to run out of work (from 8 sprints, for 40 member-days; this time it was 18).',
    );
    // 18 points were missed that the team usually keeps: less of them is not the cure.
    expect(kept).toContain('The team usually keeps a commitment of this size');
    const plan = texts.find((text) => text.includes('The plan share is')) ?? '';
    expect(plan).not.toContain('Crossed in');
    expect(plan).not.toContain('Next, at');
  });

  const carriedOver = (count: number, title: string) => {
    const cards = Array.from({ length: count }, (_, i) => card(i + 1, { title }));
    const note: CoachingNote = {
      id: 'carry-over-repeated',
      cards: cards.map(({ id }, i) => ({ cardId: id, sprints: i + 2 })),
    };
    return verdictNotesMessage(verdictOf(cards, [], { notes: [note] }));
  };

  it('cards carried over are named with the number of sprints, and nobody is', () => {
    const text = carriedOver(2, 'Print the harbour map').text;
    expect(text).toContain(
      'what held it up is gone.\n• LP-1 Print the harbour map: open at the end of 2 sprints',
    );
    expect(text).toContain('• LP-2 Print the harbour map: open at the end of 3 sprints in a row');
    expect(text).not.toContain('<@');
  });

  it('a hundred of them with long, hostile titles still fit, and those left out are counted', () => {
    const view = carriedOver(100, '<!channel>&'.repeat(18));
    expectMessageFits(view);
    expect(mrkdwnTexts(view.blocks).join('\n')).toMatch(/… and \d+ more cards\.\n?/);
    expect(view.text).not.toContain('<!channel>');
  });

  it('notes on all numbers with the longest history fit as well', () => {
    const ids = missedVerdict.summary.notes.map(({ id }) => id);
    const kinds: SignalKind[] = ['below the limits', 'fall'];
    const notes = ids.map((id) => historyOf({ id, chart: chartOf(kinds) }));
    expectMessageFits(verdictNotesMessage({ ...missedVerdict, history: { notes, rangeToTry: rangeOf({}) } }));
  });
});
