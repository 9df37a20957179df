/** What is listed as changed in a sprint's plan: its corrections, drops that were taken back, and cards that changed hands. */
import type { OwnerMove } from '../ports/sprints.ts';
import type { Reading } from '../ports/store.ts';
import type { SprintRecords } from '../team/team.ts';
import type { PlanChange, PlanPart } from './plan-change.ts';

type Changed = Pick<PlanChange, 'changedBy' | 'changedAt'>;

/** Also that a drop was taken back, which is kept as a fact of the card. */
export type CorrectedPlan = Changed &
  Pick<PlanChange, 'cardId' | 'was' | 'became'> & { readonly part: PlanPart | 'undrop' };

/** A card changed hands, which is kept with its owners. */
export interface ChangedHands extends Changed {
  readonly part: 'owners';
  readonly cardId: string;
  /** `first`: it had had no owner yet. */
  readonly how: 'first' | 'joined' | 'left' | 'handed-over';
  readonly newOwnerIds: readonly string[];
}

export type ListedPlanChange = CorrectedPlan | ChangedHands;

/** All that was changed in a sprint's plan, in order. */
export async function listedPlanChanges(
  read: Reading,
  sprintId: string,
  records: SprintRecords,
): Promise<ListedPlanChange[]> {
  const undrops = records.facts
    .filter(({ kind }) => kind === 'undrop')
    .map(
      ({ cardId, memberId, recordedAt }): CorrectedPlan => ({
        ...{ cardId, part: 'undrop', was: '', became: '' },
        ...{ changedBy: memberId, changedAt: recordedAt },
      }),
    );
  const moves = await read.ownerMovesOf(sprintId);
  return [
    ...(await read.planChangesOf(sprintId)),
    ...undrops,
    ...records.cards.flatMap(({ id, ownerIds }) =>
      changesOfHands(
        ownerIds,
        moves.filter(({ cardId }) => cardId === id),
      ),
    ),
  ].sort((a, b) => a.changedAt.getTime() - b.changedAt.getTime());
}

/** Of one card, the latest first. @param ownerIds those it has now */
function changesOfHands(ownerIds: readonly string[], moves: readonly OwnerMove[]): ChangedHands[] {
  const together = [...Map.groupBy(moves, ({ changedAt }) => changedAt.getTime()).values()];
  let owners = ownerIds;
  return together.reverse().flatMap((moved, i) => {
    const [first] = moved;
    if (!first) return [];
    const { cardId, changedBy, changedAt } = first;
    const came = moved.filter(({ kind }) => kind === 'added').map(({ userId }) => userId);
    const went = moved.filter(({ kind }) => kind === 'removed').map(({ userId }) => userId);
    owners = [...owners.filter((id) => !came.includes(id)), ...went];
    const isFirst = i === together.length - 1 && owners.length === 0;
    const how = isFirst ? 'first' : howChanged(owners, came, went);
    return [{ part: 'owners', cardId, how, newOwnerIds: came, changedBy, changedAt }];
  });
}

function howChanged(
  before: readonly string[],
  came: readonly string[],
  went: readonly string[],
): ChangedHands['how'] {
  if (came.length === 0) return 'left';
  return went.length === 0 && before.length > 0 ? 'joined' : 'handed-over';
}
