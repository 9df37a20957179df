/**
 * The daily prompt, in every state of its day: it is one message that is updated in place. Only the member
 * sees it.
 */
import type { ActionsBlock, KnownBlock } from '@slack/types';
import type { CardLine } from '../../app/cards/card-line.ts';
import type { AnsweredLine, PromptContent } from '../../app/posting/message-content.ts';
import { formatDay } from '../../sprint/calendar.ts';
import { formatPoints } from '../../sprint/points.ts';
import { plainTyped, typed } from '../../words/typed-text.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import { actions, button, code, context, lead, section } from './block-builders.ts';
import { cardName, growthWords, leftWords } from './card-words.ts';
import { lineSections } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';
import { closingWords, counted } from './sprint-words.ts';

export function dailyPromptMessage(prompt: PromptContent): MessageView {
  switch (prompt.state) {
    case 'asked':
      return askedMessage(prompt);
    case 'answered':
      return messageView([
        lead(`Recorded for ${dayWords(prompt)}`),
        ...answeredBlocks(prompt.answered),
        ...untouchedBlocks(prompt),
        ...laterButton(prompt, 'Change my answer'),
      ]);
    case 'unchanged':
      return messageView([
        lead(`Recorded for ${dayWords(prompt)}: nothing changed`),
        ...openCardBlocks('Still left:', prompt.cards),
        ...laterButton(prompt, 'Change my answer'),
      ]);
    case 'away':
      return messageView([
        lead(`Recorded for ${dayWords(prompt)}: you are away`),
        section('Your cards stay as they are, and you are not asked again for this day.'),
        ...laterButton(prompt, 'Answer after all'),
      ]);
    case 'over':
      return messageView([
        lead(`${plainTyped(prompt.sprint.name)} is over`),
        section(`The question of ${formatDay(prompt.day)} no longer needs an answer.`),
        ...(prompt.answered.length > 0
          ? [section('You had answered:'), ...answeredBlocks(prompt.answered)]
          : []),
      ]);
  }
}

function askedMessage(prompt: PromptContent): MessageView {
  const sprint = plainTyped(prompt.sprint.name);
  return messageView([
    lead(`${formatDay(prompt.day)}: what is left on your cards?`),
    ...openCardBlocks(`In ${typed(sprint)} you have ${counted(prompt.cards.length, 'card')}:`, prompt.cards),
    promptButtons(prompt),
    context(`${wordsHint(prompt.cards.length)} The sprint closes on ${closingWords(prompt)}.`),
  ]);
}

/** The three ways to meet a prompt by a click. */
export function promptButtons(prompt: PromptContent): ActionsBlock {
  const value = encodeValue({ sprintId: prompt.sprint.id, day: prompt.day });
  return actions([
    button('Answer', { actionId: ACTIONS.openAnswerForm, value, primary: true }),
    button('Nothing changed', { actionId: ACTIONS.recordUnchanged, value }),
    button('Away today', { actionId: ACTIONS.recordAway, value }),
  ]);
}

/** How to answer in words, with examples that fit the number of cards. */
export function wordsHint(cardCount: number): string {
  if (cardCount <= 1) {
    return `Or write here what is left, for example ${code('3')}. If you want to say what you worked as well: ${code('3 worked 1')}.`;
  }
  const inOrder = IN_ORDER[cardCount];
  const whole = inOrder ? `${code(inOrder)} in this order, or ` : '';
  return `Or write here what is left: ${whole}${code('2: 3')} for card 2 alone. If you want to say what you worked as well: ${code('2: 3 worked 1')}.`;
}

/** Examples of an answer for all cards, by their number; for more cards it would be long to read. */
const IN_ORDER: Readonly<Record<number, string>> = { 2: '3, 0', 3: '3, 0, 5' };

/** The open cards with the numbers by which an answer in words calls them. */
export function openCardBlocks(title: string, cards: readonly CardLine[]): KnownBlock[] {
  if (cards.length === 0) return [section('You have no card to answer for.')];
  const lines = cards.map((card, i) => `${i + 1}. ${leftLine(card)}`);
  return lineSections(title, lines, {
    maxSections: 40,
    more: (count) => `… and ${count} more of your cards.`,
  });
}

function leftLine(card: CardLine): string {
  return `${cardName(card)}: ${leftWords(card.leftPoints)}`;
}

/** A way back to the form, as long as the sprint takes answers. */
function laterButton(prompt: PromptContent, label: string): ActionsBlock[] {
  if (prompt.sprint.state !== 'open') return [];
  const value = encodeValue({ sprintId: prompt.sprint.id, day: prompt.day });
  return [actions([button(label, { actionId: ACTIONS.openAnswerForm, value })])];
}

function answeredBlocks(answered: readonly AnsweredLine[]): KnownBlock[] {
  const lines = answered.map(answeredWords);
  return lineSections('', lines, {
    maxSections: 30,
    more: (count) => `… and ${count} more answers, recorded as well.`,
  });
}

function answeredWords(line: AnsweredLine): string {
  const change = growthWords(line);
  const grew = change === '' ? '' : `, ${change}`;
  const note = line.note.trim() === '' ? '' : ` – ${typed(line.note)}`;
  return `• ${cardName(line.card)}: worked ${formatPoints(line.workedPoints)}, ${leftWords(line.leftPoints)}${grew}${note}`;
}

/** Open cards of which nothing was said that day. */
function untouchedBlocks({ cards, answered }: PromptContent): KnownBlock[] {
  const said = new Set(answered.map(({ card }) => card.cardId));
  const untouched = cards.filter(({ cardId }) => !said.has(cardId)).map((card) => `• ${leftLine(card)}`);
  if (untouched.length === 0) return [];
  return lineSections('Not answered, so as before:', untouched, {
    maxSections: 10,
    more: (count) => `… and ${count} more cards.`,
  });
}

function dayWords({ day, sprint }: PromptContent): string {
  return `${formatDay(day)} in ${plainTyped(sprint.name)}`;
}
