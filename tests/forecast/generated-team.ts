/** Teams made up by chance, whose true capacity is known, to see how often a forecast for them comes true. */
import type { SprintEvidence } from '../../src/forecast/commitment-evidence.ts';
import { aPastSprint } from './past-sprint.ts';
import type { SeededRandom } from './seeded-random.ts';

export interface TeamHabit {
  /** Spread of the points it can finish in a sprint, as a share of their mean. */
  readonly spread: number;
  /** What it commits to, as a share of what it can finish on average; undefined: any, from 0.6 to 1.6. */
  readonly boldness: number | undefined;
  /** Whether a sprint's capacity is skewed (log-normal) or symmetric (normal). */
  readonly skewed: boolean;
}

/** What is different from sprint to sprint; the past has five members throughout. */
export interface World {
  readonly membersNow: number;
  /** Chance of a past sprint in which an incident or a windfall decides: nothing, or five times the usual. */
  readonly oddShare: number;
}
const USUAL_WORLD: World = { membersNow: 5, oddShare: 0 };

interface GeneratedTeam {
  readonly past: readonly SprintEvidence[];
  /** The next sprint when so much is committed to, its capacity being the same for every amount. */
  readonly nextSprint: (commitmentPoints: number) => SprintEvidence;
}

/** Finishes what fits into the capacity; pulls work in when there is room, now and then a little too much of it. */
function played(commitmentPoints: number, capacityPoints: number, extraPoints: number): SprintEvidence {
  const capacity = Math.floor(capacityPoints);
  const committedFinishedPoints = Math.min(commitmentPoints, capacity);
  const room = Math.max(0, capacity - commitmentPoints);
  const pulledInPoints = room >= 1 ? room + extraPoints : 0;
  return aPastSprint({
    commitmentPoints,
    pulledInPoints,
    committedFinishedPoints,
    velocityPoints: committedFinishedPoints + Math.min(room, pulledInPoints),
  });
}

/** A team with so many past sprints. */
export function generatedTeam(
  { uniform, normal }: SeededRandom,
  { spread, boldness, skewed }: TeamHabit,
  sprints: number,
  { membersNow, oddShare }: World = USUAL_WORLD,
): GeneratedTeam {
  const meanPoints = 15 + 40 * uniform();
  const logDeviation = Math.sqrt(Math.log(1 + spread ** 2));
  const capacity = (): number =>
    skewed
      ? meanPoints * Math.exp(logDeviation * normal() - logDeviation ** 2 / 2)
      : Math.max(0, meanPoints * (1 + spread * normal()));
  const extra = (): number => (uniform() < 0.5 ? 0 : 2);
  const past = Array.from({ length: sprints }, () => {
    const aim = (boldness ?? 0.6 + uniform()) * (0.9 + 0.2 * uniform());
    const isOdd = oddShare > 0 && uniform() < oddShare;
    const possible = isOdd ? (uniform() < 0.5 ? 0 : 5 * meanPoints) : capacity();
    return played(Math.max(1, Math.round(meanPoints * aim)), possible, extra());
  });
  const [nextCapacity, nextExtra] = [(capacity() * membersNow) / 5, extra()];
  return { past, nextSprint: (commitmentPoints) => played(commitmentPoints, nextCapacity, nextExtra) };
}
