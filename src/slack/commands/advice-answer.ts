/** Answers a planning question, with its picture where there is one. */
import type { Advice, AdviceQuestion, JointAdvice } from '../../app/advice/advice.ts';
import type { TeamReference } from '../../app/team/place.ts';
import type { Actor } from '../../app/team/team.ts';
import type { Asker } from '../listeners/asker.ts';
import type { ListenerContext } from '../listeners/listener-context.ts';
import { adviceMessage } from '../views/advice-message.ts';
import type { ChartImage } from '../views/block-builders.ts';
import type { MessageView } from '../views/message-view.ts';

export async function tellAdvice(
  context: ListenerContext,
  asker: Asker,
  team: TeamReference,
  question: AdviceQuestion,
): Promise<void> {
  await asker.tell(await answerTo(context, asker.actor, team, question));
}

type Tools = Pick<ListenerContext, 'useCases' | 'upload' | 'logger'>;

export async function answerTo(
  tools: Tools,
  actor: Actor,
  team: TeamReference,
  question: AdviceQuestion,
): Promise<MessageView> {
  const advice = await tools.useCases.askAdvice(actor, team, question);
  return adviceMessage(advice, await chartOf(tools, advice));
}

/** The words hold every number, so they are shown even when the chart can't be made or uploaded. */
export async function chartOf(
  { useCases, upload, logger }: Tools,
  advice: Advice | JointAdvice,
): Promise<ChartImage | undefined> {
  try {
    const image = await useCases.adviceChart(advice);
    return image && { fileId: await upload(image), altText: image.altText };
  } catch (error) {
    logger.warn({ err: error }, 'An answer is shown without its chart.');
    return undefined;
  }
}
