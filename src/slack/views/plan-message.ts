/** Tells the channel what the team has committed to. */
import type { PlanContent } from '../../app/posting/message-content.ts';
import { formatPointsWithUnit } from '../../sprint/points.ts';
import { mention, plainTyped, typed } from '../../words/typed-text.ts';
import { COMMAND } from '../ids.ts';
import { code, lead, section } from './block-builders.ts';
import { cardName, ownerWords } from './card-words.ts';
import { lineSections } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';
import { closingWords, counted, spanWords } from './sprint-words.ts';

export function planMessage({ sprint, team, cards, commitmentPoints, byUserId }: PlanContent): MessageView {
  const name = plainTyped(sprint.name);
  const goal = sprint.goal.trim() === '' ? [] : [section(`Goal: ${typed(sprint.goal)}`)];
  const when = section(
    `${spanWords(sprint)}. It closes by itself on ${closingWords({ sprint, team })} (${typed(team.timeZone)}). Planned by ${mention(byUserId)}.`,
  );
  const pull = code(`${COMMAND} pull`);
  if (cards.length === 0) {
    return messageView([
      lead(`${name} begins without a plan`),
      ...goal,
      when,
      section(`Nothing is promised, so every card that comes in counts as pulled-in work: ${pull}.`),
    ]);
  }
  const lines = cards.map(
    (card) =>
      `${card.number}. ${cardName(card)}: ${formatPointsWithUnit(card.estimatePoints)} (${ownerWords(card.ownerIds)})`,
  );
  return messageView([
    lead(
      `${name}: the team commits to ${formatPointsWithUnit(commitmentPoints)} on ${counted(cards.length, 'card')}`,
    ),
    ...goal,
    when,
    ...lineSections('', lines, {
      maxSections: 40,
      more: (count, index) =>
        `… and ${counted(count, 'more card', 'more cards')}: ${code(`${COMMAND} cards ${cards[index]?.number}`)}`,
    }),
    section(`Work that comes in later: ${pull}. How it stands: ${code(`${COMMAND} status`)}.`),
  ]);
}
