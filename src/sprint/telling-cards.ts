/** The few cards of a sprint from which a team can learn most, with why. Nothing here is about a person. */
import { blockedCardDays } from './blocks.ts';
import type { Day } from './calendar.ts';
import { estimateErrorPoints } from './estimate-error.ts';
import type { CardState } from './ledger.ts';
import type { Scale } from './scale.ts';

/** What one card was, more than any other. All amounts are points. */
interface LessonDetails {
  readonly 'grew-most': { readonly surprisePoints: number; readonly driftPoints: number };
  /** Furthest off its estimate, after the snap to the scale. */
  readonly 'off-scale': { readonly estimatePoints: number; readonly sizePoints: number };
  readonly 'blocked-longest': { readonly evenings: number };
  /** The one with most work of those pulled in, while committed cards stayed unfinished. */
  readonly 'pulled-in-before': { readonly workedPoints: number; readonly openCards: number };
  readonly 'nearly-done': { readonly leftPoints: number; readonly sizePoints: number };
}

export type Lesson = {
  [Code in keyof LessonDetails]: { readonly code: Code } & LessonDetails[Code];
}[keyof LessonDetails];

export interface TellingCard {
  readonly cardId: string;
  /** At least one. */
  readonly lessons: readonly Lesson[];
}

/** One evening is soon over. Ours, no published source. */
const BLOCKED_EVENINGS = 2;
/** "Nearly done" is less than half. Ours, no published source. */
const NEARLY_DONE_BELOW = 0.5;

/**
 * At most one card for each lesson, in order of the lessons.
 *
 * @param days the sprint's working days that are over, ascending
 */
export function tellingCards(
  states: readonly CardState[],
  days: readonly Day[],
  scale: Scale,
): TellingCard[] {
  const lessons = new Map<string, Lesson[]>();
  const teaches = <State extends CardState>(
    among: readonly State[],
    amount: (state: State) => number,
    lesson: (state: State) => Lesson,
  ): void => {
    const most = among.reduce<State | undefined>(
      (best, one) => (amount(one) > (best ? amount(best) : 0) ? one : best),
      undefined,
    );
    if (most) lessons.set(most.card.id, [...(lessons.get(most.card.id) ?? []), lesson(most)]);
  };

  const stayed = states.filter(({ droppedOn }) => droppedOn === undefined);
  const open = stayed.filter(({ finished }) => !finished);
  const openCommitted = open.filter(({ card }) => card.origin === 'planned');
  const evenings = (state: CardState): number => blockedCardDays([state], days);

  teaches(
    stayed,
    ({ surprisePoints, driftPoints }) => surprisePoints + driftPoints,
    ({ surprisePoints, driftPoints }) => ({ code: 'grew-most', surprisePoints, driftPoints }),
  );
  teaches(
    stayed,
    (state) => estimateErrorPoints(state, scale),
    ({ card: { estimatePoints }, trueSizePoints: sizePoints }) => ({
      code: 'off-scale',
      estimatePoints,
      sizePoints,
    }),
  );
  teaches(
    states.filter((state) => evenings(state) >= BLOCKED_EVENINGS),
    evenings,
    (state) => ({ code: 'blocked-longest', evenings: evenings(state) }),
  );
  teaches(
    openCommitted.length === 0 ? [] : states.filter(({ card }) => card.origin === 'pulled-in'),
    ({ workedPoints }) => workedPoints,
    ({ workedPoints }) => ({ code: 'pulled-in-before', workedPoints, openCards: openCommitted.length }),
  );
  teaches(
    open.filter(
      ({ leftPoints, trueSizePoints }) => leftPoints > 0 && leftPoints < NEARLY_DONE_BELOW * trueSizePoints,
    ),
    ({ leftPoints, trueSizePoints }) => trueSizePoints - leftPoints,
    ({ leftPoints, trueSizePoints: sizePoints }) => ({ code: 'nearly-done', leftPoints, sizePoints }),
  );
  return [...lessons].map(([cardId, list]) => ({ cardId, lessons: list }));
}
