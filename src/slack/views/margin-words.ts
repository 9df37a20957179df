/** How far off commitments and estimates were so far, in two lines. It judges nobody. */
import type { Margin, MarginOfError } from '../../forecast/margin-of-error.ts';
import { LEAST_SPRINTS_FOR_MARGIN } from '../../forecast/margin-of-error.ts';
import type { UndefinedValue } from '../../sprint/undefined-value.ts';
import { wholePercentSpan } from '../../sprint/whole-percent.ts';
import { notKnown } from '../../words/undefined.ts';
import { bold } from './block-builders.ts';
import { chanceWords } from './chance-words.ts';

/** A paragraph; of one sentence while nothing is known. */
export function marginWords({ ofCommitments, ofEstimates }: MarginOfError): string {
  if ('undefined' in ofCommitments && 'undefined' in ofEstimates) {
    return `How far off commitments and estimates usually are can be told from ${LEAST_SPRINTS_FOR_MARGIN} sprints on.`;
  }
  return [
    bold('How far off the team was so far'),
    `• Commitments: ${marginLine(ofCommitments, commitmentWords)}`,
    `• Estimates: ${marginLine(ofEstimates, estimateWords)}`,
  ].join('\n');
}

function commitmentWords({ median, usual, sprints }: Margin): string {
  return `what was finished, pulled-in work included, was typically ${chanceWords(median)} of the commitment, and ${wholePercentSpan(usual)} in 8 of 10 sprints (from ${sprints}).`;
}

function estimateWords({ median, usual, sprints }: Margin): string {
  return `typically ${chanceWords(median)} accurate, and ${wholePercentSpan(usual)} in 8 of 10 sprints (from ${sprints}). What is missing from 100% is the part of the load by which estimates were off.`;
}

function marginLine(margin: Margin | UndefinedValue, words: (margin: Margin) => string): string {
  return 'undefined' in margin ? notKnown(margin.undefined) : words(margin);
}
