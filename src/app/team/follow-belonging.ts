/**
 * What follows on a person's teams from how they belong to the workspace now: who has become a guest facilitates no more, and
 * who has become nothing to it (`belonging.ts`) is nothing on a team. What they said stays.
 */
import type { Profile } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { directPost } from '../posting/post-kinds.ts';
import { mayFacilitate, whyNot } from './belonging.ts';
import { gonePerson, leaveAllTeams, letGo, tellIfStuck } from './leave-team.ts';
import { facilitatorIdsOf, todayOf } from './place.ts';
import { type Actor, isWorking, type Member, type Team } from './team.ts';

/** Whether nothing follows. @param member as they are recorded on a team; undefined: its product owner alone */
export function isAsBefore(profile: Profile, member: Member | undefined): boolean {
  if (whyNot(profile, 'member')) return false;
  return !member || (member.mayFacilitate !== false) === mayFacilitate(profile);
}

export async function followBelonging(
  tx: Transaction,
  person: Actor,
  profile: Profile,
  now: Date,
): Promise<void> {
  if (whyNot(profile, 'member')) return leaveAllTeams(tx, person, now);
  await tx.lock.teamsOfPerson(person);
  for (const team of await tx.read.teamsOfPerson(person)) {
    const people = await tx.read.membersOf(team.id);
    const member = people.find(({ userId, isActive }) => userId === person.userId && isActive);
    if (!member || isAsBefore(profile, member)) continue;
    if (mayFacilitate(profile)) {
      await tx.write.teams.saveMembers(team.id, [{ ...member, mayFacilitate: undefined }]);
    } else {
      await facilitateNoMore(tx, team, member, people, now);
    }
  }
}

async function facilitateNoMore(
  tx: Transaction,
  team: Team,
  member: Member,
  people: readonly Member[],
  now: Date,
): Promise<void> {
  const guest: Member = { ...member, isFacilitator: false, digestAt: undefined, mayFacilitate: false };
  const stays = isWorking(guest);
  await tx.write.teams.saveMembers(team.id, [stays ? guest : gonePerson(guest, todayOf(team, now))]);
  if (!stays) await letGo(tx, team, [member.userId], { at: now });
  if (!member.isFacilitator || team.endedAt) return;
  const others = facilitatorIdsOf(people).filter((userId) => userId !== member.userId);
  await tx.write.posts.add(
    [member.userId, ...others].map((userId) =>
      directPost(team, userId, { kind: 'role-ended', teamId: team.id, reason: 'facilitator' }),
    ),
  );
  await tellIfStuck(tx, team, people);
}
