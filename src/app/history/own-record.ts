/** How the two models of a running sprint would have done on past sprints. It compares models, never teams. */
import { type ContestCase, contestCases, type ModelScore } from '../../forecast/contest.ts';
import { type WatchedSprint, watchedSprints } from './watched-sprint.ts';

export { LEAST_CONTEST_SPRINTS } from '../../forecast/contest.ts';

/** Shares of the working days at which sprints are scored. */
const MOMENTS = [0, 0.3, 0.5, 0.8];
/** A team's first sprints only teach. */
export const ONLY_TEACH = 6;

interface MomentScore {
  readonly elapsedPercent: number;
  readonly scored: number;
  readonly sums: MeanScore;
  readonly cards: MeanScore;
  /** The model of the lower mean CRPS. Which one speaks in a status, each team's own sprints decide (`speaker`). */
  readonly nearer: 'sums' | 'cards';
}

interface MeanScore {
  readonly meanAbsoluteError: number;
  readonly crps: number;
  readonly coverage80: number;
}

/**
 * The moments at which a sprint could be scored, all teams together; each sprint is foretold from its own team's before it.
 *
 * @param sprints oldest first
 */
export function ownRecord(sprints: readonly WatchedSprint[]): MomentScore[] {
  const teams = [...Map.groupBy(sprints, ({ teamId }) => teamId).values()];
  return MOMENTS.flatMap((share) => {
    const cases = teams.flatMap((own) => [...contestCases(watchedSprints(own, share), ONLY_TEACH)]);
    if (cases.length === 0) return [];
    const [sums, cards] = [meanScore(cases, 'sums'), meanScore(cases, 'cards')];
    const nearer = cards.crps < sums.crps ? 'cards' : 'sums';
    return [{ elapsedPercent: share * 100, scored: cases.length, sums, cards, nearer }];
  });
}

function meanScore(cases: readonly ContestCase[], model: 'sums' | 'cards'): MeanScore {
  const mean = (value: (score: ModelScore) => number): number =>
    cases.reduce((sum, each) => sum + value(each[model]), 0) / cases.length;
  return {
    meanAbsoluteError: mean(({ error }) => error),
    crps: mean((score) => score.crps),
    coverage80: mean(({ isHeld }) => (isHeld ? 1 : 0)),
  };
}
