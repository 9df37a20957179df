/** What a team agreed to try, with the number that it should move. It is the team's; nobody's name is shown with it. */
import type { RatioId } from '../../sprint/sprint-ratios.ts';

export const EXPERIMENT_TEXT_MAX_LENGTH = 200;

export const DIRECTIONS = ['up', 'down'] as const;
export type Direction = (typeof DIRECTIONS)[number];

/** It is a habit now, something else is tried in its place, or it is given up. */
export const OUTCOMES = ['keep', 'change', 'drop'] as const;
export type Outcome = (typeof OUTCOMES)[number];

export interface Experiment {
  readonly id: string;
  readonly teamId: string;
  /** In the team's words. */
  readonly text: string;
  readonly ratio: RatioId;
  readonly direction: Direction;
  readonly begunBy: string;
  readonly begunAt: Date;
  /** The sprint that had closed last by then: its number is the one before. Undefined: none had. */
  readonly afterSprintId: string | undefined;
  /** Undefined while it is being tried. */
  readonly ended: { readonly how: Outcome; readonly by: string; readonly at: Date } | undefined;
}

export function isSameText(one: string, other: string): boolean {
  return one.toLowerCase() === other.toLowerCase();
}

export function isOpen({ ended }: Experiment): boolean {
  return ended === undefined;
}
