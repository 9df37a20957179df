/** A coaching note with what the team's history says about it. It speaks of the way of working and of nobody. */
import type { NoteHistory } from '../../app/closing/note-history.ts';
import { advisedRange } from '../../forecast/advised-range.ts';
import type { CommitmentRange } from '../../forecast/commitment-range.ts';
import type { ControlChart, SignalKind } from '../../forecast/control-chart.ts';
import type { CoachingNoteId } from '../../sprint/coaching-note.ts';
import { formatPoints, formatPointsWithUnit } from '../../sprint/points.ts';
import type { UndefinedValue } from '../../sprint/undefined-value.ts';
import { wholePercent, wholePercentSpan } from '../../sprint/whole-percent.ts';
import { reasonSentence } from '../../words/undefined.ts';
import { counted } from './sprint-words.ts';

/** Lines that are good to reach. */
const MARKS: readonly CoachingNoteId[] = ['velocity-growth-first-mark', 'velocity-growth-long-range-mark'];

/** How often lately, and whether it is a signal: two or three sentences. */
export function noteHistoryWords({ id, chart, crossed }: NoteHistory): string {
  const isMark = MARKS.includes(id);
  const often =
    crossed.of === 1
      ? 'This is the first sprint with this number.'
      : `${isMark ? 'Reached' : 'Crossed'} in ${crossed.sprints} of the latest ${crossed.of} sprints, this one included.`;
  if ('undefined' in chart) return `${often} ${reasonSentence(chart.undefined)}`;
  return `${often} ${chart.latest.reading === 'signal' ? signalWords(chart) : ordinaryWords(chart, crossed, isMark)}`;
}

function signalWords(chart: ControlChart): string {
  const kinds = chart.latest.kinds.map((kind) => kindWords(kind, chart)).join(', and ');
  return `That is a signal: ${kinds}. Something has changed; what was different?`;
}

function kindWords(kind: SignalKind, { limits, mean }: ControlChart): string {
  const usual = `what is usual for the team (${wholePercentSpan(limits)})`;
  const team = `the team’s own mean of ${wholePercent(mean)}`;
  switch (kind) {
    case 'above the limits':
      return `it lies above ${usual}`;
    case 'below the limits':
      return `it lies below ${usual}`;
    case 'run above the mean':
      return `for eight sprints or more it has been above ${team}`;
    case 'run below the mean':
      return `for eight sprints or more it has been below ${team}`;
  }
}

/** A line that is crossed in most sprints says nothing of this one, and much of how the team works. */
function ordinaryWords(
  { limits, values }: ControlChart,
  crossed: NoteHistory['crossed'],
  isMark: boolean,
): string {
  const so = `That is ordinary variation for the team (${wholePercentSpan(limits)} over ${counted(values, 'sprint')})`;
  if (isMark) return `${so}: one sprint proves little, so see whether the next ones reach it as well.`;
  if (2 * crossed.sprints >= crossed.of) {
    return `${so}: it usually goes like this, so only a change in the way of working will move it.`;
  }
  return `${so}: one sprint proves little, so look at the way of working behind all of them rather than at this one.`;
}

/** How much to commit to next, in one sentence or two. @param committedPoints in the sprint that is over */
export function rangeToTryWords(range: CommitmentRange | UndefinedValue, committedPoints: number): string {
  const advised = advisedRange(range);
  const sprints = 'undefined' in range ? 0 : range.sprints;
  const rests = `(from ${counted(sprints, 'sprint')}; this time it was ${formatPoints(committedPoints)})`;
  switch (advised.kind) {
    case 'range': {
      const { lowPoints, highPoints } = advised;
      const span =
        lowPoints === highPoints
          ? `about ${formatPointsWithUnit(highPoints)}`
          : `${formatPoints(lowPoints)} to ${formatPointsWithUnit(highPoints)}`;
      return `Commit to ${span} next ${rests}.`;
    }
    case 'at most':
      return `Commit to at most ${formatPointsWithUnit(advised.highPoints)} next ${rests}.`;
    case 'at least':
      return `Commit to at least ${formatPointsWithUnit(advised.lowPoints)} next ${rests}.`;
    case 'middle way':
      return `${reasonSentence(advised.why)} A middle way: commit to about ${formatPointsWithUnit(advised.points)} ${rests}.`;
    case 'crossed':
      return `${reasonSentence(advised.why)} The better guide is what gets finished: commit to at most ${formatPointsWithUnit(advised.highPoints)} ${rests}.`;
    case 'none':
      return `How much to try next isn’t known. ${reasonSentence(advised.why)}`;
  }
}

/**
 * What is to be said when a commitment was missed that the team usually keeps: that less is not the cure. Empty when
 * it lay above what is likely to be kept.
 */
export function usuallyKeptWords(range: CommitmentRange | UndefinedValue, committedPoints: number): string {
  const highPoints = 'undefined' in range ? undefined : range.highPoints;
  if (typeof highPoints !== 'number' || committedPoints > highPoints) return '';
  return 'So the commitment was no larger than the team usually keeps: before committing to less, ask what went otherwise this time.';
}
