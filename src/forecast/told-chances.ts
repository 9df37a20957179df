/**
 * Corrects chances by how often what was told so came true. A forecast that knows its own record need not be right from
 * the outset: if outcomes have fallen below its 10% mark in 20% of cases, that mark is a 20% mark.
 */
import { type WeightedPoints, withChances } from './weighted-points.ts';

/** Where an outcome fell in the distribution that had forecast it: the chance of less, and of no more. */
export interface OutcomePlace {
  readonly lessChance: number;
  readonly atMostChance: number;
}

/** Places of so many sprints are remembered; older ones may be of another team in all but name. */
const MOST_PLACES = 200;
/** The forecast is trusted as it is as much as the record of so many sprints. */
const TRUST_SPRINTS = 100;

/** The latest places, oldest first. */
export type Places = readonly OutcomePlace[];

export function withPlaces(places: Places, more: Places): Places {
  return [...places, ...more].slice(-MOST_PLACES);
}

/**
 * What a chance of "no more than this" was worth in the past.
 *
 * Formula: (100·p + Σ share of the outcome's place below p) ÷ (100 + n), over the latest 200 outcomes; an outcome that had a
 * chance of its own is spread evenly over it.
 * Units: a chance from 0 to 1. 0 and 1 stay what they are.
 * How it misleads: it corrects all forecasts alike, so what was told too boldly of large sprints and too timidly of
 * small ones stays uncorrected.
 * Source: recalibration by the probability integral transform; Dawid, "Statistical theory: the prequential
 * approach", 1984 (memory).
 *
 * @example correctedChance([{ lessChance: 0, atMostChance: 0.5 }], 0.5) === 51 / 101
 */
export function correctedChance(places: Places, chance: number): number {
  if (chance <= 0) return 0;
  if (chance >= 1) return 1;
  let sum = TRUST_SPRINTS * chance;
  for (const { lessChance, atMostChance } of places) {
    if (chance >= atMostChance) sum += 1;
    else if (chance > lessChance) sum += (chance - lessChance) / (atMostChance - lessChance);
  }
  return sum / (TRUST_SPRINTS + places.length);
}

export function correctedPlace(places: Places, { lessChance, atMostChance }: OutcomePlace): OutcomePlace {
  return {
    lessChance: correctedChance(places, lessChance),
    atMostChance: correctedChance(places, atMostChance),
  };
}

/** The same amounts with corrected chances. */
export function correctedDistribution(places: Places, { points, chances }: WeightedPoints): WeightedPoints {
  let told = 0;
  let before = 0;
  const corrected = chances.map((chance, i) => {
    told += chance;
    const upTo = i === chances.length - 1 ? 1 : correctedChance(places, told);
    const own = upTo - before;
    before = upTo;
    return own;
  });
  return withChances(points, corrected);
}
