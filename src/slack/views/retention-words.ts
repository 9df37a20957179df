/** How long a team keeps the details of its sprints, as people read it. */
import { counted } from './sprint-words.ts';

/** One sentence. @param months undefined: without end */
export function retentionSentence(months: number | undefined): string {
  return months === undefined
    ? 'The details of past sprints are kept without end.'
    : `${counted(months, 'month')} after its end a sprint is reduced to its totals.`;
}
