/** Tells the channel that a team has been set up or changed, what will happen, and what to be careful about. */
import type { MessageContent } from '../../app/posting/message-content.ts';
import { mention, plainTyped, typed } from '../../words/typed-text.ts';
import { COMMAND } from '../ids.ts';
import { code, context, lead, section } from './block-builders.ts';
import { CAUTION } from './caution-words.ts';
import { lineSections } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';
import { retentionSentence } from './retention-words.ts';
import { counted } from './sprint-words.ts';
import { weekdayWords } from './weekday-words.ts';

export function teamSetUpMessage({
  team,
  memberIds,
  facilitatorIds,
}: Extract<MessageContent, { kind: 'team-set-up' }>): MessageView {
  const people = [
    `Members: ${memberIds.map(mention).join(', ')}`,
    `Facilitators: ${facilitatorIds.map(mention).join(', ')}`,
    ...(team.productOwnerId ? [`Product owner: ${mention(team.productOwnerId)}`] : []),
  ];
  return messageView([
    lead(`${plainTyped(team.name)} is set up with ${counted(memberIds.length, 'member')}`),
    section(
      `On working days of a sprint (${weekdayWords(team.workingDays)}), at ${team.promptAt} (${typed(team.timeZone)}), I ask each member in a direct message what is left on their cards. When the sprint ends I post here whether the commitment was kept, and why.`,
    ),
    ...lineSections('', people, {
      maxSections: 5,
      more: () => `The rest stand in ${code(`${COMMAND} setup`)}.`,
    }),
    section(
      `Everybody can see what is stored about them, get a copy and be erased: ${code(`${COMMAND} privacy`)}. ${retentionSentence(team.retentionMonths)}`,
    ),
    section(
      `Next: a facilitator plans a sprint with ${code(`${COMMAND} plan`)}. What else there is: ${code(`${COMMAND} help`)}.`,
    ),
    context(CAUTION),
  ]);
}
