/** How much of its commitment the team was taken to finish when it planned the sprint: what its first days' status begins from. */
import { commitmentModel } from '../../forecast/commitment-model.ts';
import type { Amount } from '../../forecast/planned-and-projected.ts';
import { comingSprint, comingTime } from '../advice/range-advice.ts';
import { commitmentPast, oncePerPast, pastSprints } from '../history/team-history.ts';
import { letOthersTurn } from '../let-others-turn.ts';
import type { Transaction } from '../ports/store.ts';
import { workersOf } from '../team/team.ts';
import type { TeamSprint } from './team-sprint.ts';

/**
 * By the model of the plan's preview, for the same commitment and the same working time. Undefined without a commitment, and
 * where too few sprints say how much the team finishes.
 *
 * @param pastVersion of the workspace's past, read before in the same transaction
 */
export async function plannedAmount(
  tx: Transaction,
  { team, members, sprint, states }: TeamSprint,
  pastVersion: string | undefined,
): Promise<Amount | undefined> {
  const commitmentPoints = states
    .filter(({ card }) => card.origin === 'planned')
    .reduce((sum, { card }) => sum + card.estimatePoints, 0);
  if (commitmentPoints === 0) return undefined;
  const time = comingTime(comingSprint(team, workersOf(members, sprint.id), sprint, sprint.awayDays));
  const known = amountsOf(await pastSprints(tx, team, pastVersion));
  const key = JSON.stringify([time, commitmentPoints]);
  await letOthersTurn();
  if (!known.amounts.has(key)) known.amounts.set(key, known.amountOf(time, commitmentPoints));
  return known.amounts.get(key);
}

/** To learn from the past takes longer than all the rest of a status, so it is kept with it: one sprint runs at a time. */
const amountsOf = oncePerPast((past) => {
  const evidence = commitmentPast(past);
  return {
    amounts: new Map<string, Amount | undefined>(),
    amountOf: (time: ReturnType<typeof comingTime>, commitmentPoints: number): Amount | undefined => {
      const model = commitmentModel(evidence, time);
      if ('undefined' in model || 'undefined' in model.finishes) return undefined;
      return remembered(model.finishes.amountOf(commitmentPoints));
    },
  };
});

function remembered({ cdf }: Amount): Amount {
  const chances = new Map<number, number>();
  return {
    cdf: (points) => {
      const known = chances.get(points) ?? cdf(points);
      chances.set(points, known);
      return known;
    },
  };
}
