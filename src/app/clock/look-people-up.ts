/**
 * Looks, once a day and team and shortly before its prompts if it has any, how its people belong to the workspace now. The
 * platform takes messages to somebody who has left as if they were read, so that a leaver would be asked, and own cards, for
 * good; and who has become a guest would go on leading the team. To hear of every change of every profile in the workspace
 * instead would be more than the bot needs to know.
 */
import { type NotePassedOver, oneByOne } from '../in-portions.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { followBelonging, isAsBefore } from '../team/follow-belonging.ts';
import type { Actor, Member } from '../team/team.ts';

type Ports = Pick<AppDependencies, 'store' | 'clock' | 'directory'>;

/** How long before the prompts a team's turn may come, so that the look-ups of many teams are spread over many ticks. */
const AHEAD_MS = 30 * 60_000;
/** The platform allows about a hundred look-ups a minute in each workspace, and people who wait for a form need some of them. */
const TEAMS_AT_ONCE = { all: 200, ofWorkspace: 5 };
/** A slow platform must not delay the prompts: who was not looked up by then is looked up tomorrow. */
const LONGEST_MS = 20_000;

/** Undefined where they are the team's product owner, and not on it. */
type Account = Actor & { readonly member: Member | undefined };

/** A look-up that fails changes nothing. */
export async function lookPeopleUp({ store, clock, directory }: Ports, note: NotePassedOver): Promise<void> {
  const beganMs = performance.now();
  const now = clock.now();
  const accounts = await store.transaction(async (tx) => {
    const until = new Date(now.getTime() + AHEAD_MS);
    const teams = await tx.claim.teamsToLookUp(now, until, TEAMS_AT_ONCE);
    const people = await tx.read.peopleOf(teams.map(({ id }) => id));
    return teams.flatMap(({ id, workspaceId, productOwnerId }): Account[] => {
      const members = people.get(id) ?? [];
      const isApart =
        productOwnerId !== undefined && !members.some(({ userId }) => userId === productOwnerId);
      return [
        ...members.map((member) => ({ workspaceId, userId: member.userId, member })),
        ...(isApart ? [{ workspaceId, userId: productOwnerId, member: undefined }] : []),
      ];
    });
  });
  const lookUp = async ({ member, ...person }: Account): Promise<void> => {
    if (performance.now() - beganMs > LONGEST_MS) return;
    const profile = await directory.profile(person.workspaceId, person.userId).catch(() => undefined);
    if (!profile || isAsBefore(profile, member)) return;
    await store.transaction((tx) => followBelonging(tx, person, profile, now));
  };
  const workspaces = Map.groupBy(accounts, ({ workspaceId }) => workspaceId);
  await Promise.all(
    [...workspaces.values()].map(async (members) => {
      await oneByOne(store, members, { work: lookUp, idOf: (person) => person.workspaceId, note });
    }),
  );
}
