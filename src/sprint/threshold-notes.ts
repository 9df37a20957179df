/** The notes on ratios that crossed a threshold of the team. Other notes are not its business. */
import type { CoachingNoteId, ThresholdNote } from './coaching-note.ts';
import { RATIO_IDS, RATIOS, type RatioId, type RatioLine, type SprintRatios } from './sprint-ratios.ts';
import type { Thresholds } from './thresholds.ts';
import { isDefined } from './undefined-value.ts';

interface Rule extends RatioLine {
  readonly ratio: RatioId;
}

const RULES: readonly Rule[] = RATIO_IDS.flatMap((ratio) =>
  RATIOS[ratio].lines.map((line) => ({ ratio, ...line })),
);

function crosses({ side }: Pick<Rule, 'side'>, value: number, threshold: number): boolean {
  if (side === 'floor') return value < threshold;
  return side === 'ceiling' ? value > threshold : value >= threshold;
}

/**
 * One note for each crossed threshold, in a fixed order. A ratio that does not exist crosses nothing. Of
 * the two marks of the velocity growth only the higher one that was reached gets a note.
 */
export function thresholdNotes(ratios: SprintRatios, thresholds: Thresholds): ThresholdNote[] {
  const notes = RULES.flatMap((rule): ThresholdNote[] => {
    const value = ratios[rule.ratio];
    const threshold = thresholds[rule.threshold];
    if (threshold === undefined || !isDefined(value) || !crosses(rule, value, threshold)) return [];
    return [{ id: rule.note, value, threshold }];
  });
  const passedBoth = notes.some(({ id }) => id === 'velocity-growth-long-range-mark');
  return notes.filter(({ id }) => !passedBoth || id !== 'velocity-growth-first-mark');
}

/** The ratio that a note is about, and whether a value of it would call for the note; undefined for other notes. */
export function crossingOf(
  id: CoachingNoteId,
  thresholds: Thresholds,
): { readonly ratio: RatioId; readonly isCrossedBy: (value: number) => boolean } | undefined {
  const rule = RULES.find(({ note }) => note === id);
  if (!rule) return undefined;
  const threshold = thresholds[rule.threshold];
  if (threshold === undefined) return undefined;
  return { ratio: rule.ratio, isCrossedBy: (value) => crosses(rule, value, threshold) };
}
