/**
 * All ratios of many sprints by loops over typed arrays, written for this one question and nothing else: the measure for
 * the ledger. Shares no code with it, and must come to the same numbers.
 */
import type { Columns } from './many-sprints.ts';

/** Kept share, pull-in ratio, surprise ratio, plan share, accuracy, on-scale share, finish share, velocity growth. */
export const RATIOS = 8;
const MOST_CARDS = 16;
const MOST_ANSWERS = 64;
const SIZES = Float64Array.of(1, 2, 3, 5, 8, 13, 21, 34, 55, 89, 144, 233, 377, 610, 987, 1597);

/** @returns so many ratios a sprint, NaN where one is undefined */
export function ratiosOfColumns(
  columns: Columns,
  cardsASprint: number,
  baselineVelocity: number,
): Float64Array {
  const { firstAnswers, estimates, isPlanned, cards, days, members, worked, left, surprise } = columns;
  const sprints = firstAnswers.length - 1;
  const ratios = new Float64Array(sprints * RATIOS);
  const counts = new Uint8Array(MOST_CARDS);
  // By card: its answers in force, in the order in which they count.
  const inForce = new Uint32Array(MOST_CARDS * MOST_ANSWERS);
  for (let sprint = 0; sprint < sprints; sprint += 1) {
    counts.fill(0);
    const end = firstAnswers[sprint + 1] as number;
    for (let answer = firstAnswers[sprint] as number; answer < end; answer += 1) {
      const card = cards[answer] as number;
      const count = counts[card] as number;
      const base = card * MOST_ANSWERS;
      const day = days[answer] as number;
      let place = base + count;
      while (place > base && (days[inForce[place - 1] as number] as number) > day) place -= 1;
      let same = place - 1;
      while (
        same >= base &&
        days[inForce[same] as number] === day &&
        members[inForce[same] as number] !== members[answer]
      )
        same -= 1;
      if (same >= base && days[inForce[same] as number] === day) {
        inForce[same] = answer;
        continue;
      }
      for (let later = base + count; later > place; later -= 1) inForce[later] = inForce[later - 1] as number;
      inForce[place] = answer;
      counts[card] = count + 1;
    }
    let commitment = 0;
    let pulledIn = 0;
    let surpriseSum = 0;
    let workedSum = 0;
    let velocity = 0;
    let committedFinished = 0;
    let errors = 0;
    let finishedCards = 0;
    let onScaleCards = 0;
    for (let card = 0; card < cardsASprint; card += 1) {
      const estimate = estimates[sprint * cardsASprint + card] as number;
      const planned = isPlanned[sprint * cardsASprint + card] === 1;
      let leftNow = estimate;
      let workedOnCard = 0;
      let surpriseOnCard = 0;
      const base = card * MOST_ANSWERS;
      const last = base + (counts[card] as number);
      for (let i = base; i < last; i += 1) {
        const answer = inForce[i] as number;
        const leftThen = left[answer] as number;
        const given = worked[answer] as number;
        const workedThen = Number.isNaN(given) ? Math.max(leftNow - leftThen, 0) : given;
        const growth = workedThen + leftThen - leftNow;
        const least =
          growth < 0
            ? growth > -surpriseOnCard
              ? growth
              : -surpriseOnCard
            : surpriseOnCard > 0
              ? 0
              : -surpriseOnCard;
        const most = growth > 0 ? growth : 0;
        const stated = surprise[answer] as number;
        surpriseOnCard += stated < least ? least : stated > most ? most : stated;
        workedOnCard += workedThen;
        leftNow = leftThen;
      }
      const size = workedOnCard + leftNow;
      let above = 0;
      while ((SIZES[above] as number) < size) above += 1;
      const upper = SIZES[above] as number;
      const lower = above > 0 ? (SIZES[above - 1] as number) : Number.NEGATIVE_INFINITY;
      const snapped = size - lower < upper - size ? lower : upper;
      if (planned) commitment += estimate;
      else pulledIn += estimate;
      surpriseSum += surpriseOnCard;
      workedSum += workedOnCard;
      if (snapped !== estimate) errors += Math.abs(size - estimate);
      if (leftNow === 0 && last > base) {
        velocity += estimate;
        if (planned) committedFinished += estimate;
        finishedCards += 1;
        if (snapped === estimate) onScaleCards += 1;
      }
    }
    const load = commitment + pulledIn + surpriseSum;
    const at = sprint * RATIOS;
    ratios[at] = commitment > 0 ? committedFinished / commitment : Number.NaN;
    ratios[at + 1] = commitment > 0 ? pulledIn / commitment : Number.NaN;
    ratios[at + 2] = commitment > 0 ? surpriseSum / commitment : Number.NaN;
    ratios[at + 3] = load > 0 ? commitment / load : Number.NaN;
    ratios[at + 4] = load > 0 ? (load - errors) / load : Number.NaN;
    ratios[at + 5] = finishedCards > 0 ? onScaleCards / finishedCards : Number.NaN;
    ratios[at + 6] = workedSum > 0 ? velocity / workedSum : Number.NaN;
    ratios[at + 7] = velocity / baselineVelocity;
  }
  return ratios;
}
