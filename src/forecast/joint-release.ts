/** When parts that several teams do are all finished. It knows no team, and what it gives is about all parts together. */
import { type Day, dayPlus, daysBetween } from '../sprint/calendar.ts';

/** One part, as the forecast of who does it has it. */
export interface PartForecast {
  readonly startsOn: Day;
  readonly sprintLengthDays: number;
  /** The chance to be finished by the end of sprint 0, 1, 2 …; after the last it stays as it is. */
  readonly chanceBySprint: readonly number[];
}

/** The chance that all parts are finished lies between these, however they hang together. */
export interface ChanceBounds {
  readonly least: number;
  readonly most: number;
}

export interface JointDate {
  readonly chance: number;
  /** From this day on all is finished with this chance or a better one; undefined: on no day within reach. */
  readonly surely: Day | undefined;
  /** Before this day it can't be, however the parts hang together; undefined: on no day within reach. */
  readonly soonest: Day | undefined;
}

/** Of an even chance, and of the date to promise. */
export const JOINT_CHANCES = [0.5, 0.85] as const;

/**
 * The chance that all parts are finished by the end of a day.
 *
 * Formula, with p the chances of n parts: from max(0, Σp − (n − 1)) to min p. The least holds where parts get in each
 * other's way as much as they can, the most where they hang together fully. The product of the chances lies between
 * them and is not told: it holds only where parts have nothing to do with each other.
 * Units: chances from 0 to 1. Between the ends of two sprints a part's chance rises by a straight line.
 * How it misleads: with many parts the least is very low, since it allows for the worst of all ways to hang together.
 * Source: Fréchet, "Généralisation du théorème des probabilités totales", Fundamenta Mathematicae 25 (1935), from memory.
 *
 * @throws RangeError without a part.
 * @example jointChance([{ startsOn: '2026-11-02', sprintLengthDays: 14, chanceBySprint: [0, 0.8] }, { startsOn: '2026-11-02', sprintLengthDays: 14, chanceBySprint: [0, 0.75] }], '2026-11-15').most === 0.75
 */
export function jointChance(parts: readonly PartForecast[], on: Day): ChanceBounds {
  if (parts.length === 0) throw new RangeError('There is a part at least.');
  const chances = parts.map((part) => partChance(part, on));
  const sum = chances.reduce((total, chance) => total + chance, 0);
  // A hair of rounding must not lift the least above the most.
  const most = Math.min(...chances);
  return { least: Math.min(most, Math.max(0, sum - (parts.length - 1))), most };
}

function partChance({ startsOn, sprintLengthDays, chanceBySprint }: PartForecast, on: Day): number {
  const sprints = Math.max(0, daysBetween(startsOn, on) + 1) / sprintLengthDays;
  const last = chanceBySprint.length - 1;
  if (sprints >= last) return chanceBySprint[last] ?? 0;
  const whole = Math.floor(sprints);
  const [before, after] = [chanceBySprint[whole] as number, chanceBySprint[whole + 1] as number];
  return before + (sprints - whole) * (after - before);
}

/**
 * The days from which on all parts are finished with an even chance, and with 85%: surely so, and at the soonest.
 *
 * Formula: the first day on which `jointChance` has a least, and a most, of the chance or more.
 * Units: calendar days. Undefined where no day within the forecasts of all parts has it.
 * How it misleads: as `jointChance`. That the parts fit together is work of nobody's in it.
 * Source: as `jointChance`.
 *
 * @throws RangeError without a part.
 * @example jointDates([{ startsOn: '2026-11-02', sprintLengthDays: 14, chanceBySprint: [0, 1] }])[1].surely === '2026-11-13'
 */
export function jointDates(parts: readonly PartForecast[]): readonly [JointDate, JointDate] {
  const dateOf = (chance: number): JointDate => ({
    chance,
    surely: firstDay(parts, (bounds) => bounds.least >= chance),
    soonest: firstDay(parts, (bounds) => bounds.most >= chance),
  });
  const [even, promised] = JOINT_CHANCES;
  return [dateOf(even), dateOf(promised)];
}

/** Chances never fall, so the day is found by halving. */
function firstDay(
  parts: readonly PartForecast[],
  isReached: (bounds: ChanceBounds) => boolean,
): Day | undefined {
  const { from, to } = spanOf(parts);
  let [low, high] = [-1, daysBetween(from, to)];
  if (!isReached(jointChance(parts, to))) return undefined;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    [low, high] = isReached(jointChance(parts, dayPlus(from, middle))) ? [low, middle] : [middle, high];
  }
  return dayPlus(from, high);
}

/** From the first day of the part that begins first to the last of the one that is foretold furthest. */
function spanOf(parts: readonly PartForecast[]): { readonly from: Day; readonly to: Day } {
  const starts = parts.map(({ startsOn }) => startsOn).toSorted();
  const ends = parts.map(({ startsOn, sprintLengthDays, chanceBySprint }) =>
    dayPlus(startsOn, (chanceBySprint.length - 1) * sprintLengthDays - 1),
  );
  return { from: starts[0] as Day, to: ends.toSorted().at(-1) as Day };
}

/**
 * The bounds day by day, for a picture: from the day before the first sprint to the day on which even the least is as high
 * as the promise, or to the last.
 *
 * @param most days at the most
 * @throws RangeError without a part.
 */
export function jointCurve(
  parts: readonly PartForecast[],
  most: number,
): readonly (ChanceBounds & { readonly on: Day })[] {
  const { from, to } = spanOf(parts);
  const [, promised] = jointDates(parts);
  const days = daysBetween(from, promised.surely ?? to) + 1;
  const step = Math.max(1, Math.ceil(days / most));
  return Array.from({ length: Math.ceil(days / step) + 1 }, (_, i) => {
    const on = dayPlus(from, i * step - 1);
    return { on, ...jointChance(parts, on) };
  });
}
