/** Posts the answer to a planning question in the team's channel, through the queue. */
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { channelPost } from '../posting/post-kinds.ts';
import { audienceInTeam, todayOf } from '../team/place.ts';
import type { Actor } from '../team/team.ts';
import type { AdviceQuestion } from './advice.ts';
import { requireAnswerable } from './ask-advice.ts';

/**
 * Members and the product owner may share.
 *
 * @throws Refusal `bad-input` with fields named as in the question, and those of finding the team.
 */
export async function shareAdvice(
  deps: AppDependencies,
  actor: Actor,
  { teamId, question }: { readonly teamId: string; readonly question: AdviceQuestion },
): Promise<void> {
  await deps.store.transaction(async (tx) => {
    const { team, members } = await audienceInTeam(tx.read, actor, teamId);
    const on = todayOf(team, deps.clock.now());
    await requireAnswerable(tx.read, team, members, question, on);
    await tx.write.posts.add([
      channelPost(team, { kind: 'shared-advice', teamId: team.id, byUserId: actor.userId, on, question }),
    ]);
  });
}
