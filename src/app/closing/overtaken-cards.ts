/** Cards that the sprint before finished once they had been planned for the next one: their points count there. */
import { cardIdentity, type SprintCardState, statesOf } from '../cards/card-line.ts';
import type { Reading } from '../ports/store.ts';
import type { Sprint, SprintRecords } from '../team/team.ts';

/** Those of a plan that nobody has answered for yet. A card that was finished already when it was planned is new work. */
export function overtakenIn(
  { plannedAt }: Pick<Sprint, 'plannedAt'>,
  states: readonly SprintCardState[],
  before: SprintRecords,
): SprintCardState[] {
  const knownThen = before.facts.filter(
    ({ recordedAt }) => plannedAt === undefined || recordedAt <= plannedAt,
  );
  const doneThen = finishedIn({ ...before, facts: knownThen });
  const doneNow = finishedIn(before);
  return states.filter(
    ({ card, entries }) =>
      card.origin === 'planned' &&
      card.estimatePoints > 0 &&
      entries.length === 0 &&
      doneNow.has(cardIdentity(card)) &&
      !doneThen.has(cardIdentity(card)),
  );
}

/** By `cardIdentity`. */
export function finishedIn(records: SprintRecords): Set<string> {
  return new Set(
    statesOf(records)
      .filter(({ finished }) => finished)
      .map(({ card }) => cardIdentity(card)),
  );
}

/** The latest of the team's sprints that is meant; not a cancelled one, nor one whose cards aren't known. */
export async function sprintBefore(
  read: Reading,
  teamId: string,
  isMeant: (sprint: Sprint) => boolean,
): Promise<Sprint | undefined> {
  return (await read.sprintsOf(teamId)).findLast(
    (sprint) => isMeant(sprint) && sprint.state !== 'cancelled' && sprint.importedAt === undefined,
  );
}

/** The ids of such cards in the sprint, and the name of the sprint that finished them. */
export async function overtakenCards(
  read: Reading,
  sprint: Sprint,
  states: readonly SprintCardState[],
): Promise<{ readonly cardIds: ReadonlySet<string>; readonly finishedIn: string }> {
  const before = await sprintBefore(read, sprint.teamId, ({ startsOn }) => startsOn < sprint.startsOn);
  if (!before) return { cardIds: new Set(), finishedIn: '' };
  const overtaken = overtakenIn(sprint, states, await read.recordsOf(before.id));
  return { cardIds: new Set(overtaken.map(({ card }) => card.id)), finishedIn: before.name };
}
