/** Tells the channel that a sprint was cancelled, and where it stood. */
import type { MessageContent } from '../../app/posting/message-content.ts';
import { mention } from '../../words/people.ts';
import { plainTyped, typed } from '../../words/typed-text.ts';
import { COMMAND } from '../ids.ts';
import { code, fieldSections, lead, section } from './block-builders.ts';
import { type ChartImage, chartBlocks } from './chart-image.ts';
import { type MessageView, messageView } from './message-view.ts';
import { loadSentence, ratioFields } from './ratio-fields.ts';
import { verdictCardLists } from './verdict-card-lists.ts';

const CARD_SECTIONS_MAX = 40;

export function cancelledMessage(
  { verdict, byUserId, reason }: Extract<MessageContent, { kind: 'cancelled' }>,
  chart?: ChartImage,
): MessageView {
  const why = reason.trim() === '' ? '' : ` Reason: ${typed(reason)}`;
  return messageView([
    lead(`${plainTyped(verdict.sprint.name)} was cancelled`),
    section(`Called off by ${mention(byUserId)}.${why}`),
    section(
      'There is no verdict. The numbers below are kept and marked as cancelled; they never count as history.',
    ),
    ...chartBlocks(chart),
    ...fieldSections(ratioFields(verdict.summary)),
    section(loadSentence(verdict.summary)),
    ...verdictCardLists(verdict, CARD_SECTIONS_MAX),
    section(`Next: plan the coming sprint with ${code(`${COMMAND} plan`)}.`),
  ]);
}
