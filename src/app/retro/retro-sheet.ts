/** The retrospective sheet, for everybody who may read the team's numbers, and shared with the channel on request. */

import type { Day } from '../../sprint/calendar.ts';
import { isSameName } from '../history/closed-sprint.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading } from '../ports/store.ts';
import { channelPost } from '../posting/post-kinds.ts';
import { readOrWrite } from '../read-or-write.ts';
import { Refusal } from '../refusal.ts';
import { audienceAt, audienceInTeam, type Place, requireBegun, todayOf } from '../team/place.ts';
import type { Actor, Sprint, Team } from '../team/team.ts';
import { type RetroContent, retroContent } from './retro-content.ts';

/** A sprint by its id (from a button), or of the team of a place by its name as typed; empty: the one that a retrospective is due for. */
type RetroReference = { readonly sprintId: string } | { readonly place: Place; readonly sprintName: string };

/** @throws Refusal `no-closed-sprint`, `no-such-sprint`, `sprint-not-begun`, and those of finding the team. */
export async function retroSheet(
  deps: AppDependencies,
  actor: Actor,
  reference: RetroReference,
): Promise<RetroContent> {
  return readOrWrite(deps.store, async (tx) => {
    const now = deps.clock.now();
    const { team, sprint } = await sprintOf(tx.read, actor, reference, now);
    return retroContent(tx, team, sprint, now);
  });
}

/** Posts the sheet in the team's channel, through the queue. @throws Refusal as `retroSheet` does. */
export async function shareRetro(
  deps: AppDependencies,
  actor: Actor,
  { sprintId }: { readonly sprintId: string },
): Promise<void> {
  await deps.store.transaction(async (tx) => {
    const { team } = await sprintOf(tx.read, actor, { sprintId }, deps.clock.now());
    await tx.write.posts.add([channelPost(team, { kind: 'shared-retro', sprintId, byUserId: actor.userId })]);
  });
}

async function sprintOf(
  read: Reading,
  actor: Actor,
  reference: RetroReference,
  now: Date,
): Promise<{ readonly team: Team; readonly sprint: Sprint }> {
  if ('sprintId' in reference) {
    const sprint = await read.sprintById(reference.sprintId);
    const { team } = await audienceInTeam(read, actor, sprint?.teamId ?? '');
    // Without a sprint there is no team, which has been refused.
    return { team, sprint: begun(sprint as Sprint, todayOf(team, now)) };
  }
  const { team } = await audienceAt(read, actor, reference.place);
  const sprints = await read.sprintsOf(team.id);
  const today = todayOf(team, now);
  const { sprintName } = reference;
  if (sprintName === '') {
    const due = dueSprint(sprints, today);
    if (!due) throw new Refusal('no-closed-sprint', { teamName: team.name, withVelocity: false });
    return { team, sprint: due };
  }
  const named = sprints.findLast(({ name }) => isSameName(name, sprintName));
  if (named) return { team, sprint: begun(named, today) };
  const known = sprints.filter(({ state }) => state === 'closed').map(({ name }) => name);
  if (known.length === 0) throw new Refusal('no-closed-sprint', { teamName: team.name, withVelocity: false });
  throw new Refusal('no-such-sprint', { reference: sprintName, known: known.reverse() });
}

function begun(sprint: Sprint, today: Day): Sprint {
  requireBegun(sprint, today);
  return sprint;
}

/**
 * The sprint that a team looks back on: the running one from its last day on, else the one that ended last, else the running
 * one, and only without any of these the imported one that ended last. Not one that was cancelled.
 *
 * @param sprints earliest first
 */
export function dueSprint(sprints: readonly Sprint[], today: Day): Sprint | undefined {
  const begun = sprints.filter(({ startsOn, state }) => startsOn <= today && state !== 'cancelled');
  const own = begun.filter(({ importedAt }) => importedAt === undefined);
  return (
    own.findLast(({ state, endsOn }) => state === 'closed' || endsOn <= today) ?? own.at(-1) ?? begun.at(-1)
  );
}
