/** What a team tries, in words. */
import type { Experiment } from '../app/experiments/experiment.ts';
import { say } from './say.ts';

/** `Nothing is pulled in early (pull-in ratio down)`, as plain text. */
export function experimentWords({
  text,
  ratio,
  direction,
}: Pick<Experiment, 'text' | 'ratio' | 'direction'>): string {
  return say('experiment', { text, ratio, direction });
}
