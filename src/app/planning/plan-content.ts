/** The committed plan, as the channel and the person who committed it read it. */
import type { CardLine } from '../cards/card-line.ts';
import type { SprintHeading } from '../team/team.ts';

export interface PlanContent extends SprintHeading {
  readonly commitmentPoints: number;
  readonly cards: readonly CardLine[];
  readonly byUserId: string;
}

/** The points of the cards of a plan. */
export function commitmentOf(cards: readonly Pick<CardLine, 'estimatePoints'>[]): number {
  return cards.reduce((total, { estimatePoints }) => total + estimatePoints, 0);
}
