/** What a commitment range advises, in one sentence. It advises; the team decides. */
import type { RangeAdvice } from '../../app/advice/advice.ts';
import { type AdvisedRange, advisedRange } from '../../forecast/advised-range.ts';
import { formatPoints, formatPointsWithUnit } from '../../sprint/points.ts';
import { noAnswer, reasonSentence } from '../../words/undefined.ts';

/** `Commit to 26 to 31 points; your last was 21.`, as plain text. */
export function rangeLead({ range, past }: Pick<RangeAdvice, 'range' | 'past'>): string {
  const advised = advisedRange(range);
  if (advised.kind === 'none') {
    const nothingGetsFinished = !('undefined' in range) && range.crossed !== undefined;
    return nothingGetsFinished ? reasonSentence(advised.why) : noAnswer('range', advised.why);
  }
  const last = past.at(-1);
  return `Commit to ${advisedAmount(advised)}${last ? `; your last was ${formatPoints(last.commitmentPoints)}` : ''}.`;
}

/** `26 to 31 points`, to complete “commit to …”. */
export function advisedAmount(advised: Exclude<AdvisedRange, { kind: 'none' }>): string {
  switch (advised.kind) {
    case 'range': {
      const { lowPoints, highPoints } = advised;
      const to = formatPointsWithUnit(highPoints);
      return lowPoints === highPoints ? to : `${formatPoints(lowPoints)} to ${to}`;
    }
    case 'middle way':
      return `about ${formatPointsWithUnit(advised.points)} as a compromise`;
    case 'at least':
      return `${formatPointsWithUnit(advised.lowPoints)} at least`;
    case 'at most':
    case 'crossed':
      return `${formatPointsWithUnit(advised.highPoints)} at most`;
  }
}
