/** Whose home pages a delivered post makes out of date: those of a sprint's team when it is planned, begins or ends. */
import { sprintDays } from '../clock/sprint-clock.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { PostKind } from '../posting/post-kinds.ts';
import type { Post } from '../posting/posts.ts';
import type { Actor } from '../team/team.ts';

/** Posts to the channel that say of a sprint's beginning or end. */
const ABOUT_SPRINT: readonly string[] = ['plan', 'verdict', 'cancelled'] satisfies readonly PostKind[];

/** Only people who have ever opened their page. */
export async function homesTouchedBy(
  { store }: Pick<AppDependencies, 'store'>,
  post: Post,
): Promise<Actor[]> {
  if (!('sprintId' in post.subject)) return [];
  const { kind, sprintId } = post.subject;
  // An answer brings the prompt up to date, and the page of the person who gave it at once.
  const isFirstPrompt = kind === 'daily-prompt' && post.wantedVersion === 1;
  if (!ABOUT_SPRINT.includes(kind) && !isFirstPrompt) return [];
  return store.read(async (read) => {
    const found = await read.sprintWithTeam(String(sprintId));
    if (!found) return [];
    const { team, sprint, members } = found;
    const { workspaceId } = team;
    if (kind === 'daily-prompt' && post.subject.day !== sprintDays(team, sprint)[0]) return [];
    const userIds =
      'userId' in post.recipient
        ? [post.recipient.userId]
        : members.filter(({ isActive }) => isActive).map(({ userId }) => userId);
    return (await read.homeOpenedBy(workspaceId, userIds)).map((userId) => ({ workspaceId, userId }));
  });
}
