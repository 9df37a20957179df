/** The ratios of a sprint, in two columns. */
import type { SectionBlock } from '@slack/types';
import type { SprintSummary } from '../../sprint/summary.ts';
import { loadSentence, ratioFacts } from '../../words/ratios.ts';
import { mrkdwnOf } from '../../words/typed-text.ts';
import { bold, fieldSections, section } from './block-builders.ts';

/** @param sprint of one that is running, nothing is said yet of how its velocity compares */
export function ratioBlocks(summary: SprintSummary, sprint: 'running' | 'over'): SectionBlock[] {
  const fields = ratioFacts(summary, sprint).map(
    ({ title, fact }) => `${bold(mrkdwnOf(title))}\n${mrkdwnOf(fact)}`,
  );
  return [...fieldSections(fields), section(mrkdwnOf(loadSentence(summary)))];
}
