/** Posts about a member's day, on one team or several: the prompt, its reminder and the last call. */
import { type needsNoLastCall, type PromptContent, promptContentOf } from '../answering/prompt-content.ts';
import { type Asked, promptInstant } from '../clock/prompt-time.ts';
import { isQuestionDay } from '../clock/sprint-clock.ts';
import type { Reading } from '../ports/store.ts';
import { workersOf } from '../team/team.ts';
import { waitForAll } from '../wait-for-all.ts';
import { isLate, isOurs, type KindDeclaration, type Occasion } from './kind-declaration.ts';
import type { Post, SubjectFields } from './posts.ts';

/**
 * A member's day: the prompt, or what reminds of it and isn't sent once the day is met.
 *
 * @param isMet whether there is nothing more to ask, as far as this post is concerned
 */
export function aboutDay({
  skipIfMet,
  isMet = (_team, _sprint, _userId, _records, prompt) => prompt !== undefined && prompt.state !== 'asked',
}: {
  readonly skipIfMet: boolean;
  readonly isMet?: typeof needsNoLastCall;
}) {
  const make = async ({ tx, post, now, subject }: Occasion<'sprintId' | 'userId' | 'day'>) => {
    const { userId, day } = subject;
    const contents: PromptContent[] = [];
    let placesBefore = 0;
    for (const { team, members, sprint, records, asked } of await readWaiting(tx.read, post, subject)) {
      const member: Asked & { readonly userId: string } = members.find((it) => it.userId === userId) ?? {
        userId,
      };
      const isDone = isMet(team, sprint, userId, records, asked);
      const state = isDone ? (asked?.state ?? 'asked') : 'asked';
      const met = promptContentOf(team, sprint, member, day, records, state);
      const isListed = !skipIfMet && met.state === 'asked' && !isQuestionDay(team, sprint, member, day);
      // A co-owner may have finished the member's last card in the meantime.
      const hasOpenCards = met.cards.some((card) => card.state === 'open');
      // A prompt that was held up until its day had passed is not asked afterwards.
      const isGone = !workersOf(members, sprint.id).some((one) => one.userId === userId);
      const isNeedless = isGone || isLate(team, sprint, day, now) || (skipIfMet && (isDone || !hasOpenCards));
      if (post.postedAt === undefined && isNeedless) continue;
      contents.push({
        ...met,
        placesBefore,
        ...(isListed && { state: 'listed' as const }),
        ...(post.postedAt === undefined && { dueAt: promptInstant(team, member, day) }),
      });
      placesBefore += met.cards.length;
    }
    const [first, ...others] = contents.map((one) => ({ ...one, placesInAll: placesBefore }));
    if (!first) return undefined;
    const prompt: PromptContent = others.length === 0 ? first : { ...first, others };
    return { content: { prompt } };
  };
  const fields = ['sprintId', 'userId', 'day'] as const;
  const declaration: KindDeclaration<(typeof fields)[number], { readonly prompt: PromptContent }> = {
    fields,
    make,
  };
  // A prompt confirms the answer to it, so that one in a message that can't be changed is confirmed in a new one.
  return skipIfMet ? ({ ...declaration, mayStayAsItIs: true } as const) : declaration;
}

/** The sprints that a post asks somebody about, with what was said in each and how its prompt was met. */
async function readWaiting(
  read: Reading,
  post: Post,
  subject: Pick<SubjectFields, 'sprintId' | 'userId' | 'day'>,
) {
  const sprintNow = (sprintId: string) =>
    waitForAll([read.sprintWithTeam(sprintId), read.recordsAbout(sprintId, subject.userId, [])]);
  // Nearly every post is about one sprint, so that is read while the others are looked for.
  const [prompts, itsOwn] = await waitForAll([read.promptsOfPost(post.id), sprintNow(subject.sprintId)]);
  const { sprintId, userId, day } = subject;
  // A prompt that was recorded before prompts knew what reminded of them.
  const alone = prompts.length === 0 ? await read.promptOf(sprintId, userId, day) : undefined;
  const about =
    prompts.length === 0
      ? [{ sprintId, asked: alone }]
      : prompts.map((asked) => ({ sprintId: asked.sprintId, asked }));
  const waiting = [];
  for (const one of about) {
    const [found, records] = one.sprintId === sprintId ? itsOwn : await sprintNow(one.sprintId);
    if (found && isOurs(post, found.team)) waiting.push({ ...found, records, asked: one.asked });
  }
  return waiting;
}
