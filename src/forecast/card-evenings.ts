/** What became of each card, evening by evening, for a model that looks at cards rather than at sums. Names nobody. */

/**
 * One card of a sprint that ended. Lists have an entry an evening, from the evening `from` on (0: before the first working
 * day) to the last.
 */
export interface CardEvenings {
  readonly estimatePoints: number;
  readonly from: number;
  /** Points still to do; 0: finished. */
  readonly left: readonly number[];
  /** Points of work done so far. */
  readonly worked: readonly number[];
  /** On which evenings it was blocked. Missing: on none. */
  readonly blocked?: readonly number[];
  /** In whose hands it was: numbers that mean something within this sprint only, in the order of its cards. */
  readonly queues: readonly number[];
}

/** An open card on an evening, or now. */
export interface OpenCard {
  readonly estimatePoints: number;
  readonly leftPoints: number;
  readonly isBegun: boolean;
  /** Working days since somebody last worked on it, or since it entered. */
  readonly unmovedDays: number;
  readonly isBlocked: boolean;
  /** What else is left in the shortest queue that it is in. A card that is nobody's waits behind everything. */
  readonly queuePoints: number;
}

/** An open card of a past sprint, and what became of it. */
export interface EndedCard extends OpenCard {
  readonly isFinished: boolean;
}

/** The cards that were open on an evening, and whether the sprint's end found them finished. */
export function openCardsAt(cards: readonly CardEvenings[], evening: number): EndedCard[] {
  const leftOf = ({ from, left }: CardEvenings): number => (from > evening ? 0 : (left[evening - from] ?? 0));
  const open = cards.filter((card) => leftOf(card) > 0);
  const queuePoints = queueLengths(open.map((card) => ({ leftPoints: leftOf(card), queues: card.queues })));
  return open.map((card, i) => {
    const { estimatePoints, from, left, worked, blocked } = card;
    const at = evening - from;
    return {
      estimatePoints,
      leftPoints: leftOf(card),
      isBegun: (worked[at] as number) > 0,
      unmovedDays: at - lastMove(worked, at),
      isBlocked: blocked?.includes(evening) ?? false,
      queuePoints: queuePoints[i] as number,
      isFinished: left.at(-1) === 0,
    };
  });
}

/** The latest entry, up to this one, in which work was done; 0 when there is none. */
function lastMove(worked: readonly number[], at: number): number {
  let last = at;
  while (last > 0 && worked[last] === worked[last - 1]) last -= 1;
  return last;
}

/** For each open card what else is left in the shortest queue that it is in. */
export function queueLengths<Queue>(
  open: readonly { readonly leftPoints: number; readonly queues: readonly Queue[] }[],
): number[] {
  const lengths = new Map<Queue, number>();
  let all = 0;
  for (const { leftPoints, queues } of open) {
    all += leftPoints;
    for (const queue of queues) lengths.set(queue, (lengths.get(queue) ?? 0) + leftPoints);
  }
  return open.map(
    ({ leftPoints, queues }) =>
      Math.min(all, ...queues.map((queue) => lengths.get(queue) as number)) - leftPoints,
  );
}
