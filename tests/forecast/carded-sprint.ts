/**
 * Sprints made up by chance card by card, by written-down rules, to see how often a chance over whole cards comes true.
 * Sizes are drawn from a usual scale until the sprint is full. A team has so many points of time in a sprint, spread
 * evenly over it; a card takes its estimate, times a factor that nobody knows before. Working in a row, the team takes the
 * cards in the order of the list. Otherwise three people have a third of the time each, more or less: working side by side,
 * each takes the cards that were dealt to them in order, and from one list, who is free takes the next card of it.
 */
import type { SprintSoFar } from '../../src/forecast/sprint-so-far.ts';
import type { QueuedCard } from '../../src/forecast/whole-cards.ts';
import type { SeededRandom } from './seeded-random.ts';

export interface CardedHabit {
  /** Points of work that the team gets through in a sprint, in the mean. */
  readonly meanPoints: number;
  /** Spread of those from sprint to sprint, as a share of the mean. */
  readonly spread: number;
  /** What it commits to, as a share of the mean. */
  readonly boldness: number;
  /** How much longer or shorter than estimated a card takes: deviation of the logarithm. */
  readonly wrongness: number;
  readonly order: 'in a row' | 'side by side' | 'from one list';
  /** Sizes are drawn from these. */
  readonly scale: readonly number[];
}

interface CardedSprint {
  readonly commitmentPoints: number;
  /** At the moment that was asked about. */
  readonly soFar: SprintSoFar;
  readonly sizes: readonly number[];
  readonly open: readonly QueuedCard[];
  /** At its end. */
  readonly velocityPoints: number;
}

const PEOPLE = 3;

export function cardedSprint(random: SeededRandom, habit: CardedHabit, elapsedShare: number): CardedSprint {
  const { meanPoints, spread, boldness, wrongness, scale, order } = habit;
  const { uniform, normal } = random;
  const aim = Math.max(1, meanPoints * boldness * (0.9 + 0.2 * uniform()));
  const sizes: number[] = [];
  while (sum(sizes) < aim) sizes.push(scale[Math.floor(uniform() * scale.length)] as number);
  const efforts = sizes.map((size) => size * Math.exp(wrongness * normal() - wrongness ** 2 / 2));
  const capacity = Math.max(0, meanPoints * (1 + spread * normal()));
  const times =
    order === 'in a row'
      ? [capacity]
      : Array.from({ length: PEOPLE }, () => (capacity / PEOPLE) * Math.max(0, 1 + 0.2 * normal()));
  const takers =
    order === 'from one list' ? takenWhenFree(efforts, times) : sizes.map((_, i) => i % times.length);
  const worked = (share: number): number[] => {
    const rest = times.map((time) => time * share);
    return efforts.map((effort, i) => {
      const taker = takers[i] as number;
      const done = Math.min(effort, rest[taker] as number);
      rest[taker] = (rest[taker] as number) - done;
      return done;
    });
  };
  const isFinished = (done: readonly number[]) => (_: number, i: number) =>
    (done[i] as number) >= (efforts[i] as number);
  const now = worked(elapsedShare);
  const stillOpen = [...sizes.keys()].filter((i) => !isFinished(now)(0, i));
  return {
    commitmentPoints: sum(sizes),
    soFar: {
      cardPoints: sum(sizes),
      finishedPoints: sum(sizes.filter(isFinished(now))),
      underwayPoints: sum(
        stillOpen.map((i) => ((sizes[i] as number) * (now[i] as number)) / (efforts[i] as number)),
      ),
    },
    sizes,
    open: stillOpen.map((i) => ({
      estimatePoints: sizes[i] as number,
      isCommitted: true,
      isBegun: (now[i] as number) > 0,
    })),
    velocityPoints: sum(sizes.filter(isFinished(worked(1)))),
  };
}

/** Who takes each card of the list: whoever is the first to be through with the earlier ones. */
function takenWhenFree(efforts: readonly number[], times: readonly number[]): number[] {
  const used = times.map(() => 0);
  return efforts.map((effort) => {
    const busy = used.map((time, person) => time / Math.max(times[person] as number, 1e-9));
    const taker = busy.indexOf(Math.min(...busy));
    used[taker] = (used[taker] as number) + effort;
    return taker;
  });
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
