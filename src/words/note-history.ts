/** What the team's history says about a coaching note. It speaks of the way of working and of nobody. */
import type { NoteHistory } from '../app/closing/note-history.ts';
import type { CommitmentRange } from '../forecast/commitment-range.ts';
import type { ControlChart } from '../forecast/control-chart.ts';
import type { CoachingNoteId } from '../sprint/coaching-note.ts';
import type { UndefinedValue } from '../sprint/undefined-value.ts';
import { signalArguments } from './history.ts';
import { chanceWords, scaledTo } from './range.ts';
import { say } from './say.ts';
import { reasonSentence } from './undefined.ts';

/** Lines that are good to reach. */
const MARKS: readonly CoachingNoteId[] = ['velocity-growth-first-mark', 'velocity-growth-long-range-mark'];

/** How often lately, and what is usual or that it is a signal: one to three sentences, as plain text. */
export function noteHistoryWords({ id, chart, crossed }: NoteHistory): string {
  const isMark = MARKS.includes(id);
  const often =
    crossed.of === 1
      ? say('note-history-first')
      : say('note-history-often', { line: isMark ? 'mark' : 'threshold', ...crossed });
  if (!('undefined' in chart)) return `${often} ${readingWords(chart, crossed, isMark)}`;
  return chart.undefined.code === 'no-signal-yet' ? often : `${often} ${reasonSentence(chart.undefined)}`;
}

function readingWords(chart: ControlChart, crossed: NoteHistory['crossed'], isMark: boolean): string {
  const { limits, values, latest } = chart;
  if (latest.reading === 'signal') return say('note-history-signal', signalArguments(chart));
  // A line that is crossed in most sprints says nothing of this one, and much of how the team works.
  const isOften = 2 * crossed.sprints >= crossed.of;
  const isUnusual = latest.reading === 'unusual';
  const so = isMark ? 'mark' : isUnusual ? 'unusual' : isOften ? 'often' : 'seldom';
  return say('note-history-usual', { so, sprints: values, ...limits });
}

/** What holds for all notes that are no signal, said once; undefined when each is a signal, or isn't about a number. */
export function ordinaryWords(notes: readonly NoteHistory[]): string | undefined {
  const charts = notes.map(({ chart }) => chart);
  const unknown = charts.flatMap((chart) =>
    'undefined' in chart && chart.undefined.code === 'no-signal-yet' ? [chart.undefined] : [],
  );
  const isOrdinary = charts.some((chart) => !('undefined' in chart) && chart.latest.reading !== 'signal');
  const furthest = unknown.reduce<(typeof unknown)[number] | undefined>(
    (most, one) => (most && most.known >= one.known ? most : one),
    undefined,
  );
  const sentences = [
    ...(isOrdinary ? [say('note-history-ordinary')] : []),
    ...(furthest ? [reasonSentence(furthest)] : []),
  ];
  return sentences.length === 0 ? undefined : sentences.join(' ');
}

/** How much to commit to next, in one sentence or two, as plain text. @param committed points in the sprint that is over */
export function rangeToTryWords(range: CommitmentRange | UndefinedValue, committed: number): string {
  const advised = 'undefined' in range ? range : range.advised;
  if ('undefined' in range || 'undefined' in advised) {
    return `${say('note-range-unknown')} ${reasonSentence((advised as UndefinedValue).undefined)}`;
  }
  const { points, chances, unserved } = advised;
  const basis = say('note-range-basis', { sprints: range.sprints, scaledTo: scaledTo(range), committed });
  const next = say('note-range-next', { points, chances: chanceWords(chances), basis });
  return unserved ? `${next} ${reasonSentence(unserved.why)}` : next;
}

/**
 * What to say when a commitment was missed that the team usually keeps: that less is not the cure. Undefined when
 * it was above what is likely to be kept.
 */
export function usuallyKeptWords(
  range: CommitmentRange | UndefinedValue,
  committed: number,
): string | undefined {
  const highPoints = 'undefined' in range ? undefined : range.highPoints;
  if (typeof highPoints !== 'number' || committed > highPoints) return undefined;
  return say('note-range-usually-kept');
}
