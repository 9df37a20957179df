/**
 * What people may do on a team by how they belong to the workspace: the one rule for bots, leavers, guests, and people of
 * another workspace who share a channel.
 *
 * - Bots and people who have left are nothing on a team.
 * - People of another workspace are nothing on a team either, and can't set one up: the team's plan and numbers belong to
 *   this workspace, and the bot's command doesn't work for them. They may read the help, and read why they can do no more.
 * - Guests may be members and product owners, but don't facilitate, nor set a team up, not even where nobody facilitates: a
 *   workspace lets them in for some work, not to decide how others work.
 * - It holds for what people are now (`follow-belonging.ts`), not only for what they were when they were added.
 */
import type { AppDependencies, Directory, Profile } from '../ports/app-dependencies.ts';
import { Refusal, type RefusalCode } from '../refusal.ts';
import type { Actor, Role } from './team.ts';

/** Why the person can't have the role; undefined when they can. */
export function whyNot(
  { isBot, isDeactivated, isOutsider, isGuest }: Profile,
  role: Role,
): 'is-bot' | 'is-deactivated' | 'is-outsider' | 'is-guest' | undefined {
  if (isBot) return 'is-bot';
  if (isDeactivated) return 'is-deactivated';
  if (isOutsider) return 'is-outsider';
  return !mayFacilitate({ isGuest }) && role === 'facilitator' ? 'is-guest' : undefined;
}

/** Of those who may be on a team at all. */
export function mayFacilitate({ isGuest }: Pick<Profile, 'isGuest'>): boolean {
  return !isGuest;
}

/** @throws Refusal `outsider`, `guest-set-up`, `set-up-left-to-others` */
export function requireMaySetUp(
  { userId, isOutsider, isGuest, isAdmin }: Profile,
  { setUpUsers }: Pick<AppDependencies, 'setUpUsers'>,
): void {
  if (isOutsider) throw new Refusal('outsider', {});
  if (isGuest) throw new Refusal('guest-set-up', {});
  if (!setUpUsers || setUpUsers.userIds.includes(userId) || (setUpUsers.admins && isAdmin)) return;
  throw new Refusal('set-up-left-to-others', { admins: setUpUsers.admins });
}

/** What somebody without a team reads; its advice would lead a person of another workspace nowhere. */
const FOR_STRANGERS: ReadonlySet<RefusalCode> = new Set(['no-team-here', 'no-team-of-yours', 'not-a-member']);

/** Does what was asked. A refusal of somebody from another workspace says that this is why. */
export async function explainedToOutsiders<Result>(
  { directory }: Pick<AppDependencies, 'directory'>,
  actor: Actor,
  work: () => Promise<Result>,
): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof Refusal) || !FOR_STRANGERS.has(error.code)) throw error;
    await refuseOutsider(directory, actor);
    throw error;
  }
}

/**
 * Lets everybody pass of whom the platform doesn't say that they are one.
 *
 * @throws Refusal `outsider`
 */
export async function refuseOutsider(directory: Directory, { workspaceId, userId }: Actor): Promise<void> {
  const profile = await directory.profile(workspaceId, userId).catch(() => undefined);
  if (profile?.isOutsider) throw new Refusal('outsider', {});
}
