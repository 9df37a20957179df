/**
 * Delivered − committed points of a real sprint, given to the project's own ledger as cards and facts and
 * read back from its totals, so that the open data checks the core and not just this arithmetic.
 */
import type { Card, CardFact, CardOrigin } from '../../src/sprint/card.ts';
import { ledgerOf } from '../../src/sprint/ledger.ts';
import { DEFAULT_SCALE } from '../../src/sprint/scale.ts';
import { sprintTotals } from '../../src/sprint/totals.ts';
import type { SprintMoment } from './read-open-data.ts';

const START = '2026-11-02';
const MOMENT = '2026-11-04';
const AFTER_MOMENT = '2026-11-05';
const END = '2026-11-13';

type Fate = 'finished' | 'open' | 'dropped';

/**
 * Points committed at a moment (start + added − removed) and points delivered in the end.
 *
 * The rows give sums, not items; so there is one card for each part that shares an origin and a fate.
 * Removed points are taken from the start first. What was delivered beyond the commitment of the moment
 * must have come in later, and is pulled in after it.
 */
export function ledgerFigures(row: SprintMoment): { committedPoints: number; deliveredPoints: number } {
  const cards: Card[] = [];
  const facts: CardFact[] = [];

  const add = (origin: CardOrigin, enteredOn: string, fate: Fate, estimatePoints: number): void => {
    if (estimatePoints === 0) return;
    const id = `${origin}, ${enteredOn}, ${fate}`;
    cards.push({ id, key: id, title: id, estimatePoints, origin, enteredOn, ownerIds: ['team'] });
    const fact = { cardId: id, memberId: 'team', order: facts.length };
    if (fate === 'dropped') facts.push({ ...fact, kind: 'drop', day: MOMENT });
    if (fate === 'finished') {
      facts.push({
        ...fact,
        kind: 'answer',
        day: END,
        workedPoints: estimatePoints,
        leftPoints: 0,
        surprisePoints: 0,
      });
    }
  };

  const removedFromStart = Math.min(row.removedPoints, row.startPoints);
  const removedFromAdded = row.removedPoints - removedFromStart;
  if (removedFromAdded > row.addedPoints) {
    throw new Error(`Board ${row.board}, sprint ${row.sprint}: more points removed than there were.`);
  }
  const startKept = row.startPoints - removedFromStart;
  const addedKept = row.addedPoints - removedFromAdded;
  const startDelivered = Math.min(row.deliveredPoints, startKept);
  const addedDelivered = Math.min(row.deliveredPoints - startDelivered, addedKept);

  add('planned', START, 'dropped', removedFromStart);
  add('planned', START, 'finished', startDelivered);
  add('planned', START, 'open', startKept - startDelivered);
  add('pulled-in', MOMENT, 'dropped', removedFromAdded);
  add('pulled-in', MOMENT, 'finished', addedDelivered);
  add('pulled-in', MOMENT, 'open', addedKept - addedDelivered);
  add('pulled-in', AFTER_MOMENT, 'finished', row.deliveredPoints - startDelivered - addedDelivered);

  const atMoment = sprintTotals(
    ledgerOf(
      cards.filter((card) => card.enteredOn <= MOMENT),
      facts.filter((fact) => fact.day <= MOMENT),
    ),
    DEFAULT_SCALE,
  );
  const droppedPoints = atMoment.leftPoints - atMoment.openLeftPoints;
  return {
    committedPoints: atMoment.loadPoints - droppedPoints,
    deliveredPoints: sprintTotals(ledgerOf(cards, facts), DEFAULT_SCALE).velocityPoints,
  };
}

/** Delivered − committed of a sprint at a moment; below 0 when the team delivered less. */
export function deliveryDifference(row: SprintMoment): number {
  const { committedPoints, deliveredPoints } = ledgerFigures(row);
  return deliveredPoints - committedPoints;
}
