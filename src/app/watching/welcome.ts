/** Who is welcomed in the direct messages: each person once, when they first look in there. */
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { teamsReadBy } from '../team/place.ts';
import type { Actor } from '../team/team.ts';

export interface Welcome {
  /** None: the person is on no team. */
  readonly teamNames: readonly string[];
}

/** Undefined: the person was welcomed before. */
export async function beginWelcome(deps: AppDependencies, actor: Actor): Promise<Welcome | undefined> {
  return deps.store.transaction(async (tx) => {
    if (!(await tx.visits.welcomed(actor, deps.clock.now()))) return undefined;
    return { teamNames: (await teamsReadBy(tx.read, actor)).map(({ name }) => name) };
  });
}

/** The welcome could not be sent, so the next visit is welcomed. */
export async function takeBackWelcome(deps: AppDependencies, actor: Actor): Promise<void> {
  await deps.store.transaction((tx) => tx.visits.notWelcomed(actor));
}
