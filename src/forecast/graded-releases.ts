/**
 * Lets forecasts learn from how earlier ones came out. After each closed sprint of a team it is asked when work of three,
 * six and ten sprints' worth would have been finished, and what has happened since is the grade: which chance the
 * forecast gave to being finished by the moment at which it was.
 */
import { chanceFinished, type PacedSprint, type TeamPace, teamPaces } from './team-pace.ts';

/** An earlier forecast and what came of it. */
export interface GradedRelease {
  readonly team: string;
  /** The size of the work, in sprints. */
  readonly sprintsWorth: number;
  /** The chance that it gave to being finished by the moment of finishing; by now, while it isn't finished. */
  readonly chance: number;
  readonly isFinished: boolean;
}

/**
 * Of how many of the latest sprints forecasts are graded: the team's own, and those of the others of its workspace. Of
 * fewer, the boards of a large project have too short a past each, and what they lend promises too much.
 */
export const MOST_SPRINTS_GRADED = { own: 300, others: 600 };
/** Sizes that are asked about, in sprints of the latest mean velocity. */
export const GRADED_SPRINTS_WORTH = [3, 6, 10] as const;
/** What a sprint is worth is read from so many of the latest. */
export const WORTH_SPRINTS = 5;
/** Sizes whose ratio is e^0.3 = 1.35 are one step apart, and lend each other e^−½ = 61%. */
const SIZE_STEP = 0.3;
/** A forecast of another team counts for half of the team's own. */
const OTHER_TEAMS_WEIGHT = 0.5;
/** Weights below this change nothing that could be read. */
const NEGLIGIBLE = 0.001;
/** The belief that a forecast is right as it is counts as so many grades. */
const TRUST = 10;

/** Mean velocity of the latest five sprints before `end`, in points. */
export function sprintWorthPoints(sprints: readonly PacedSprint[], end = sprints.length): number {
  const latest = sprints.slice(Math.max(0, end - WORTH_SPRINTS), end);
  return latest.reduce((sum, { velocityPoints }) => sum + velocityPoints, 0) / latest.length;
}

/**
 * The grades of all forecasts that could have been made after the sprints of one team.
 *
 * @param sprints oldest first
 * @example gradedReleases('A', [4, 4, 4, 4].map((velocityPoints) => ({ velocityPoints, time: 1 }))).length === 3
 */
export function gradedReleases(team: string, sprints: readonly PacedSprint[]): GradedRelease[] {
  const graded: GradedRelease[] = [];
  const paceAfter = teamPaces(sprints);
  for (let end = 1; end < sprints.length; end += 1) {
    const pace = paceAfter(end);
    const worth = sprintWorthPoints(sprints, end);
    if (pace === undefined || worth === 0) continue;
    for (const sprintsWorth of GRADED_SPRINTS_WORTH) {
      graded.push({ team, sprintsWorth, ...gradeOf(pace, Math.ceil(sprintsWorth * worth), sprints, end) });
    }
  }
  return graded;
}

function gradeOf(pace: TeamPace, points: number, sprints: readonly PacedSprint[], end: number) {
  let [left, time, before] = [points, 0, 0];
  for (let i = end; i < sprints.length; i += 1) {
    const sprint = sprints[i] as PacedSprint;
    time += sprint.time;
    const after = chanceFinished(pace, points, time);
    if (sprint.velocityPoints >= left) {
      return { chance: before + (left / sprint.velocityPoints) * (after - before), isFinished: true };
    }
    left -= sprint.velocityPoints;
    before = after;
  }
  return { chance: before, isFinished: false };
}

/** What chances that were told have come to. */
export interface ToldChances {
  /** How often it came true by the moment to which a forecast gives this chance. */
  cameTrue(told: number): number;
  /** The chance that a forecast must give so that it comes true so often. */
  toldFor(chance: number): number;
}

/** As if nothing were known of how forecasts came out. */
export const AS_TOLD: ToldChances = { cameTrue: (told) => told, toldFor: (chance) => chance };

/**
 * How often forecasts like this one came true, from the grades of earlier ones, with the belief that they are right as
 * they are for a start.
 *
 * Formula: the product-limit estimate of the grades' distribution (Kaplan and Meier, "Nonparametric estimation from
 * incomplete observations", 1958), as work that isn't finished yet says only "later", with a guess of evenly spread
 * grades that weighs as 10 of them (Susarla and Van Ryzin, 1976). Each grade weighs
 * e^(−½·(ln of the ratio of the sizes ÷ 0.3)²), half as much if another team's. Sizes below 3 and beyond 10 sprints
 * are graded as those.
 * Units: chances from 0 to 1. Without grades the chances stay as they are.
 * How it misleads: the forecasts of neighbouring sprints come out alike, so that their number promises too much.
 *
 * @example toldChances([], 'A', 5).cameTrue(0.4) === 0.4
 */
export function toldChances(
  graded: readonly GradedRelease[],
  team: string,
  sprintsWorth: number,
): ToldChances {
  const [least, , most] = GRADED_SPRINTS_WORTH;
  const size = Math.log(Math.min(most, Math.max(least, sprintsWorth)));
  const weighOf = (grade: GradedRelease): number =>
    Math.exp(-0.5 * ((Math.log(grade.sprintsWorth) - size) / SIZE_STEP) ** 2) *
    (grade.team === team ? 1 : OTHER_TEAMS_WEIGHT);
  const weighed: WeighedGrade[] = [];
  for (const grade of graded) {
    const weight = weighOf(grade);
    if (weight >= NEGLIGIBLE) weighed.push({ chance: grade.chance, isFinished: grade.isFinished, weight });
  }
  // Takes no time where they are in order already.
  return lookedUp(productLimit(inOrderOfChance(weighed)));
}

interface WeighedGrade extends Pick<GradedRelease, 'chance' | 'isFinished'> {
  readonly weight: number;
}

/** As `toldChances` needs them: whoever asks it about several sizes puts them in order once. */
export function inOrderOfChance<T extends Pick<GradedRelease, 'chance' | 'isFinished'>>(
  graded: readonly T[],
): T[] {
  return graded.toSorted((a, b) => a.chance - b.chance || Number(b.isFinished) - Number(a.isFinished));
}

/** Corners of a line that never falls: what was told, and what came true. */
type Corner = readonly [told: number, cameTrue: number];

function productLimit(weighed: readonly WeighedGrade[]): Corner[] {
  const corners: Corner[] = [[0, 0]];
  let open = weighed.reduce((sum, { weight }) => sum + weight, 0);
  let [later, told] = [1, 0];
  for (const { chance, isFinished, weight } of weighed) {
    const [was, is] = [TRUST * (1 - told) + open, TRUST * (1 - chance) + open];
    later *= is / was;
    corners.push([chance, 1 - later]);
    if (isFinished) {
      later *= (is - weight) / is;
      corners.push([chance, 1 - later]);
    }
    open = Math.max(0, open - weight);
    told = chance;
  }
  corners.push([1, 1]);
  return corners;
}

function lookedUp(corners: readonly Corner[]): ToldChances {
  const along = (value: number, from: 0 | 1, to: 0 | 1, isAfter: (corner: Corner) => boolean): number => {
    const next = firstPassing(corners, isAfter);
    if (next === 0 || next === corners.length) return (corners.at(next === 0 ? 0 : -1) as Corner)[to];
    const [a, b] = [corners[next - 1], corners[next]] as [Corner, Corner];
    return b[from] === a[from] ? b[to] : a[to] + ((value - a[from]) / (b[from] - a[from])) * (b[to] - a[to]);
  };
  return {
    cameTrue: (told) => along(told, 0, 1, ([corner]) => corner > told),
    toldFor: (chance) => along(chance, 1, 0, ([, corner]) => corner >= chance),
  };
}

/** Index of the first item that passes, in a list where all after it pass as well; its length if none does. */
function firstPassing<T>(items: readonly T[], passes: (item: T) => boolean): number {
  let [low, high] = [0, items.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (passes(items[middle] as T)) high = middle;
    else low = middle + 1;
  }
  return low;
}
