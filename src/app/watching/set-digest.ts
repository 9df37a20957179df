/** Whether and when a facilitator hears of the sprint every morning. */
import { type TimeOfDay, timeTyped } from '../clock/local-time.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { refuseIfAny } from '../refusal.ts';
import {
  membershipAt,
  membershipBy,
  membershipInTeam,
  type Place,
  requireFacilitator,
  type TeamReference,
} from '../team/place.ts';
import type { Actor, Team } from '../team/team.ts';

export interface DigestSetting {
  readonly team: Team;
  /** Undefined: none is wanted. */
  readonly digestAt: TimeOfDay | undefined;
}

/** @throws Refusal `not-a-facilitator`, and those of finding the team. */
export async function digestForm(deps: AppDependencies, actor: Actor, place: Place): Promise<DigestSetting> {
  return deps.store.read(async (read) => {
    const membership = await membershipAt(read, actor, place);
    requireFacilitator(membership, 'watch');
    return { team: membership.team, digestAt: membership.member.digestAt };
  });
}

/**
 * @param input `digestAt` as it was typed; empty: no digest.
 * @throws Refusal `bad-input` (field `digestAt`), `not-a-facilitator`, and those of finding the team.
 */
export async function setDigest(
  deps: AppDependencies,
  actor: Actor,
  input: TeamReference & { readonly digestAt: string },
): Promise<DigestSetting> {
  const typed = input.digestAt.trim();
  const digestAt = timeTyped(typed);
  if (typed !== '' && digestAt === undefined) {
    refuseIfAny([{ field: 'digestAt', problem: { code: 'no-time', example: '08:30' } }]);
  }
  return deps.store.transaction(async (tx) => {
    const found = await membershipBy(tx.read, actor, input);
    await tx.lock.team(found.team.id);
    const membership = await membershipInTeam(tx.read, actor, found.team.id);
    requireFacilitator(membership, 'watch');
    const { team, member } = membership;
    await tx.write.teams.saveMembers(team.id, [{ ...member, digestAt }]);
    const open = digestAt === undefined ? [] : await tx.read.openSprintsOf(team.id);
    await tx.write.watches.begin(
      open.map(({ id }) => id),
      deps.clock.now(),
    );
    return { team, digestAt };
  });
}
