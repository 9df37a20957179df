/**
 * Ends a team, and takes that back. Nobody is asked any more from then on; sprints that are open wait, so that a team which is
 * taken back soon goes on as if nothing had happened. What is stored goes later (`app/privacy/ended-teams.ts`).
 */
import type { Day } from '../../sprint/calendar.ts';
import { resetClocks } from '../clock/sprint-clock.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { channelPost, type PostKind, type SubjectOf } from '../posting/post-kinds.ts';
import { erasedOn } from '../privacy/promised-times.ts';
import { Refusal } from '../refusal.ts';
import {
  endedMembershipAt,
  membershipAt,
  membershipInTeam,
  type Place,
  requireFacilitator,
} from './place.ts';
import type { Actor, Team } from './team.ts';

/** What a facilitator reads before they end the team. */
export interface EndForm {
  readonly team: Team;
  /** The running sprint, or the next one. */
  readonly sprintName: string | undefined;
  /** Whether it has a sprint, or keeps a body of work. */
  readonly canBeExported: boolean;
  /** When everything is erased if it is ended now. */
  readonly erasedOn: Day;
}

/** @throws Refusal `not-a-facilitator`, and those of finding the team */
export async function endForm(deps: AppDependencies, actor: Actor, place: Place): Promise<EndForm> {
  return deps.store.read(async (read) => {
    const membership = await membershipAt(read, actor, place);
    requireFacilitator(membership, 'end-team');
    const { team, openSprints } = membership;
    return {
      team,
      sprintName: openSprints[0]?.name,
      canBeExported: (await read.sprintsOf(team.id)).length > 0 || (await read.bodiesOf(team.id)).length > 0,
      erasedOn: erasedOn(team, deps.clock.now()),
    };
  });
}

/** Ends the team. The channel hears of it. @throws Refusal `not-a-facilitator`, and those of finding the team */
export async function endTeam(
  deps: AppDependencies,
  actor: Actor,
  { teamId }: { readonly teamId: string },
): Promise<Team> {
  return deps.store.transaction(async (tx) => {
    await tx.lock.team(teamId);
    const membership = await membershipInTeam(tx.read, actor, teamId);
    requireFacilitator(membership, 'end-team');
    const word = { kind: 'team-ended', teamId, byUserId: actor.userId } as const;
    return endTeamNow(tx, membership.team, deps.clock.now(), word);
  });
}

/** The team must be locked. @param word to the channel; undefined: none, as when it is closed */
export async function endTeamNow(
  tx: Transaction,
  team: Team,
  now: Date,
  word?: SubjectOf<PostKind>,
): Promise<Team> {
  const ended: Team = { ...team, endedAt: now };
  await tx.write.teams.save(ended);
  const people = (await tx.read.membersOf(team.id)).map(({ userId }) => userId);
  await tx.write.posts.skipUnsentTo(team.id, people);
  if (word) await tx.write.posts.add([channelPost(ended, word)]);
  return ended;
}

/** A team that was taken back, and what became of its sprint. */
export interface ResumedTeam {
  readonly team: Team;
  /** The sprint that goes on. */
  readonly sprintName: string | undefined;
}

/**
 * Takes back that a team was ended, until it is erased. A sprint that still waits goes on; the channel hears of it.
 *
 * @throws Refusal `team-not-ended`, `not-a-facilitator`, and those of finding the team
 */
export async function resumeTeam(deps: AppDependencies, actor: Actor, place: Place): Promise<ResumedTeam> {
  return deps.store.transaction(async (tx) => {
    const found = await endedMembershipAt(tx.read, actor, place);
    await tx.lock.team(found.team.id);
    const ended = await tx.read.teamById(found.team.id);
    if (!ended) throw new Refusal('no-team-here', {});
    if (!ended.endedAt) throw new Refusal('team-not-ended', { teamName: ended.name });
    requireFacilitator(found, 'end-team');
    const team: Team = { ...ended, endedAt: undefined, resumedAt: deps.clock.now() };
    await tx.write.teams.save(team);
    await resetClocks(tx, team, deps.clock.now());
    const [sprint] = await tx.read.openSprintsOf(team.id);
    await tx.write.posts.add([
      channelPost(team, { kind: 'team-resumed', teamId: team.id, byUserId: actor.userId }),
    ]);
    return { team, sprintName: sprint?.name };
  });
}
