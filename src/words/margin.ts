/** How far off commitments and estimates were so far. It judges nobody. */
import { LEAST_SPRINTS_FOR_MARGIN, type Margin, type MarginOfError } from '../forecast/margin-of-error.ts';
import type { UndefinedValue } from '../sprint/undefined-value.ts';
import { mrkdwn } from './say.ts';
import { reasonSentence } from './undefined.ts';

/** A paragraph of mrkdwn; one sentence while nothing is known. */
export function marginWords({ ofCommitments, ofEstimates }: MarginOfError): string {
  if ('undefined' in ofCommitments && 'undefined' in ofEstimates) {
    return mrkdwn('margin-none', { sprints: LEAST_SPRINTS_FOR_MARGIN });
  }
  return [
    `*${mrkdwn('margin-title')}*`,
    `• ${marginLine('commitments', ofCommitments)}`,
    `• ${marginLine('estimates', ofEstimates)}`,
  ].join('\n');
}

function marginLine(what: 'commitments' | 'estimates', margin: Margin | UndefinedValue): string {
  if ('undefined' in margin) {
    return `${mrkdwn(`margin-${what}-unknown`)} ${reasonSentence(margin.undefined)}`;
  }
  const { sprints, median, usual, isWholeSpan } = margin;
  return mrkdwn(`margin-${what}`, { sprints, median, ...usual, span: isWholeSpan ? 'whole' : 'usual' });
}
