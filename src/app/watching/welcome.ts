/** Who is welcomed in the direct messages: each person once, when they first look in there. */
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { teamsReadBy } from '../team/place.ts';
import { type Actor, isWorking } from '../team/team.ts';

export interface Welcome {
  /** None: the person is on no team. */
  readonly teamNames: readonly string[];
  /** Whether anybody asks the person what is left on their cards. */
  readonly isAsked: boolean;
}

/** Undefined: the person was welcomed before. */
export async function beginWelcome(deps: AppDependencies, actor: Actor): Promise<Welcome | undefined> {
  return deps.store.transaction(async (tx) => {
    if (!(await tx.visits.welcomed(actor, deps.clock.now()))) return undefined;
    const teams = await teamsReadBy(tx.read, actor);
    const people = [...(await tx.read.peopleOf(teams.map(({ id }) => id))).values()].flat();
    const isAsked = people.some((person) => person.userId === actor.userId && isWorking(person));
    return { teamNames: teams.map(({ name }) => name), isAsked };
  });
}

/** The welcome could not be sent, so the next visit is welcomed. */
export async function takeBackWelcome(deps: AppDependencies, actor: Actor): Promise<void> {
  await deps.store.transaction((tx) => tx.visits.notWelcomed(actor));
}
