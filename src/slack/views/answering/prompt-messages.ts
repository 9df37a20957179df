/**
 * The daily prompt in every state of its day (it is one message that is updated in place), its one reminder, and the
 * last call before a sprint closes; and what whoever edits an answer or says thanks hears. Only the member sees them.
 */
import type { ActionsBlock } from '@slack/types';
import type { AnsweredLine, PromptCard, PromptContent } from '../../../app/answering/prompt-content.ts';
import type { CardLine } from '../../../app/cards/card-line.ts';
import { cardGrowth, linkedCardName, withBlock } from '../../../words/cards.ts';
import { person } from '../../../words/people.ts';
import { mrkdwn, say } from '../../../words/say.ts';
import { closingTime, teamTime } from '../../../words/sprint.ts';
import { shortened } from '../../../words/typed-text.ts';
import { encodeValue } from '../../button-values.ts';
import { ACTIONS } from '../../ids.ts';
import { actions, bold, button, context, divider, lead, section } from '../block-builders.ts';
import { lineList } from '../line-sections.ts';
import { type MessagePart, type MessageView, messageView } from '../message-view.ts';

const LEFT_OUT_LENGTH = 100;
/** Who has more blocked cards names the others in words. */
const MOVING_BUTTONS_MAX = 5;

export function dailyPromptMessage(prompt: PromptContent): MessageView {
  return aboutEachTeam(prompt, dailyPromptParts);
}

/** Of a person's only team, or of several below each other, each under its name. */
function aboutEachTeam(
  prompt: PromptContent,
  parts: (prompt: PromptContent, hint: string) => MessagePart[],
): MessageView {
  const others = prompt.others ?? [];
  if (others.length === 0) return messageView(parts(prompt, wordsHint(prompt)));
  const all = [prompt, ...others];
  const lastAsked = all.findLast(isAsking);
  return messageView(
    all.flatMap((one, i) => [
      ...(i === 0 ? [] : [divider()]),
      section(bold(mrkdwn('prompt-team', { team: one.team.name }))),
      // How to answer in words holds for all of them: once, at the end.
      ...parts(one, one === lastAsked ? wordsHint(one) : ''),
    ]),
  );
}

function isAsking({ state, cards }: PromptContent): boolean {
  return state === 'asked' && cards.length > 0;
}

function hintAnd(hint: string, rest: string): MessagePart[] {
  const words = [hint, rest].filter((sentence) => sentence !== '').join(' ');
  return words === '' ? [] : [context(words)];
}

function dailyPromptParts(prompt: PromptContent, hint: string): MessagePart[] {
  const { day, sprint, cards, answered } = prompt;
  const about = { day, sprint: sprint.name };
  switch (prompt.state) {
    case 'listed':
      if (cards.length === 0) return [lead(say('prompt-listed', about)), nothingOpen(prompt)];
      return [
        lead(say('prompt-listed', about)),
        openCards(mrkdwn('prompt-listed-cards', { cards: cards.length }), prompt),
        ...laterButton(prompt, say('prompt-answer-button')),
        ...movingButtons(prompt),
        context(
          `${mrkdwn('prompt-listed-next', { rest: day < sprint.endsOn ? 'more' : 'none' })} ${mrkdwn('prompt-closes', { closing: closingTime(prompt) })}`,
        ),
      ];
    case 'asked':
      if (cards.length === 0) return [lead(say('prompt-asked', { day })), nothingOpen(prompt)];
      return [
        lead(say('prompt-asked', { day })),
        openCards(mrkdwn('prompt-cards', { sprint: sprint.name, cards: cards.length }), prompt, 'with news'),
        promptButtons(prompt),
        ...movingButtons(prompt),
        ...hintAnd(hint, mrkdwn('prompt-closes', { closing: closingTime(prompt) })),
      ];
    case 'answered':
      return [
        lead(say('prompt-answered', about)),
        answeredCards(answered),
        untouchedCards(prompt),
        ...laterButton(prompt, say('prompt-change-button')),
        ...movingButtons(prompt),
      ];
    case 'unchanged':
      return [
        lead(say('prompt-unchanged', about)),
        openCards(mrkdwn('prompt-still-left'), prompt),
        ...laterButton(prompt, say('prompt-change-button')),
        ...movingButtons(prompt),
      ];
    case 'away':
      return [
        lead(say('prompt-away', about)),
        ...answeredBefore(answered),
        section(mrkdwn('prompt-away-next')),
        ...laterButton(prompt, say('prompt-after-all-button')),
      ];
    case 'over':
      return [
        lead(say('prompt-over', about)),
        section(mrkdwn('prompt-over-day', { day })),
        ...answeredBefore(answered),
      ];
  }
}

/** The member's cards were given away, dropped or taken since the message was sent. */
function nothingOpen({ sprint }: PromptContent): MessagePart {
  return section(mrkdwn('prompt-no-card', { sprint: sprint.name }));
}

function answeredBefore(answered: readonly AnsweredLine[]): MessagePart[] {
  return answered.length > 0 ? [section(mrkdwn('prompt-over-answered')), answeredCards(answered)] : [];
}

/** Shows how the day was answered, once it was. */
export function reminderMessage(prompt: PromptContent): MessageView {
  return aboutEachTeam(prompt, reminderParts);
}

function reminderParts(prompt: PromptContent, hint: string): MessagePart[] {
  if (!isAsking(prompt)) return dailyPromptParts(prompt, hint);
  return [
    lead(say('reminder-title', { sprint: prompt.sprint.name })),
    openCards('', prompt),
    promptButtons(prompt),
    ...hintAnd(hint, hint === '' ? '' : mrkdwn('reminder-only-one')),
  ];
}

/** Asks whether what was said still holds. Shows how the day was answered, once it was in the last hour. */
export function lastCallMessage(prompt: PromptContent): MessageView {
  return aboutEachTeam(prompt, lastCallParts);
}

function lastCallParts(prompt: PromptContent, hint: string): MessagePart[] {
  if (!isAsking(prompt)) return dailyPromptParts(prompt, hint);
  return [
    lead(say('last-call-title', { sprint: prompt.sprint.name, closing: closingTime(prompt) })),
    section(mrkdwn('last-call-question')),
    cardList(
      '',
      prompt.cards.map((card, i) => saidLine(card, placeOf(prompt, i), prompt)),
    ),
    promptButtons(prompt, say('last-call-still-so-button')),
    ...hintAnd(hint, ''),
  ];
}

function saidLine(card: PromptCard, place: number, { userId, team }: PromptContent): string {
  const about = { place: String(place), card: linkedCardName(card), left: leftOn(card) };
  const { saidLast } = card;
  if (!saidLast) return withBlock(mrkdwn('last-call-line-never', about), card);
  const moment = teamTime(saidLast.at, team.timeZone);
  if (saidLast.userId === userId) return withBlock(mrkdwn('last-call-line', { ...about, moment }), card);
  return withBlock(mrkdwn('last-call-line-other', { ...about, moment, who: person(saidLast.userId) }), card);
}

function promptButtons(
  prompt: PromptContent,
  unchanged: string = say('prompt-unchanged-button'),
): ActionsBlock {
  const value = encodeValue({ sprintId: prompt.sprint.id, day: prompt.day });
  return actions([
    button(say('prompt-answer-button'), { actionId: ACTIONS.openAnswerForm, value, primary: true }),
    button(unchanged, { actionId: ACTIONS.recordUnchanged, value }),
    button(say('prompt-away-button'), { actionId: ACTIONS.recordAway, value }),
  ]);
}

/** Below the others. One block each, since an action may be in a block once only. */
function movingButtons(prompt: PromptContent): ActionsBlock[] {
  const { sprint, day, cards } = prompt;
  if (sprint.state !== 'open') return [];
  const blocked = cards.flatMap((card, i) =>
    card.blocked ? [{ key: card.key, place: String(placeOf(prompt, i)) }] : [],
  );
  return blocked.slice(0, MOVING_BUTTONS_MAX).map(({ key, place }) => {
    const label = say('prompt-moving-button', { cards: blocked.length === 1 ? 'only' : 'several', place });
    const value = encodeValue({ sprintId: sprint.id, day, card: key });
    return actions([button(label, { actionId: ACTIONS.cardMoving, value })]);
  });
}

/** How to answer in words, with examples that fit the number of cards in the message. */
function wordsHint({ cards, placesInAll: cardCount = cards.length }: PromptContent): string {
  if (cardCount <= 1) return mrkdwn('prompt-words-one');
  if (cardCount === 2) return mrkdwn('prompt-words-two');
  // All of more than three in a row would be long to read.
  return mrkdwn(cardCount === 3 ? 'prompt-words-three' : 'prompt-words-several');
}

/** By which number an answer in words calls the card; cards of several teams are counted on. */
function placeOf({ placesBefore = 0 }: PromptContent, index: number): number {
  return placesBefore + index + 1;
}

/**
 * The open cards with the numbers by which an answer in words calls them.
 *
 * @param news names another owner who has answered since morning
 */
function openCards(title: string, prompt: PromptContent, news?: 'with news'): MessagePart {
  const isNews = ({ saidLast }: PromptCard): boolean =>
    news !== undefined && saidLast?.day === prompt.day && saidLast.userId !== prompt.userId;
  const lines = prompt.cards.map((card, i) =>
    isNews(card) ? saidLine(card, placeOf(prompt, i), prompt) : openCardLine(prompt, i),
  );
  return cardList(title, lines);
}

function openCardLine(prompt: PromptContent, index: number): string {
  const card = prompt.cards[index] as PromptCard;
  const about = { place: String(placeOf(prompt, index)), card: linkedCardName(card), left: leftOn(card) };
  return withBlock(mrkdwn('prompt-card-line', about), card);
}

function cardList(title: string, lines: readonly string[]): MessagePart {
  return lineList(title, lines, (count) => mrkdwn('prompt-more-cards', { cards: count }));
}

function leftOn({ leftPoints }: Pick<CardLine, 'leftPoints'>): string {
  return say('cards-left', { points: leftPoints });
}

/** A way back to the form, as long as the sprint takes answers. */
function laterButton(prompt: PromptContent, label: string): ActionsBlock[] {
  if (prompt.sprint.state !== 'open') return [];
  const value = encodeValue({ sprintId: prompt.sprint.id, day: prompt.day });
  return [actions([button(label, { actionId: ACTIONS.openAnswerForm, value })])];
}

function answeredCards(answered: readonly AnsweredLine[]): MessagePart {
  return lineList('', answered.map(answeredLine), (count) =>
    mrkdwn('prompt-more-answers', { answers: count }),
  );
}

function answeredLine(line: AnsweredLine): string {
  const facts = [say('prompt-worked', { points: line.workedPoints }), leftOn(line), ...cardGrowth(line)];
  const card = linkedCardName(line.card);
  const said =
    line.note.trim() === ''
      ? mrkdwn('prompt-answered-line', { card, facts })
      : mrkdwn('prompt-answered-line-note', { card, facts, note: line.note });
  return withBlock(said, line.card);
}

/** Open cards that had no answer that day, with the numbers by which an answer in words still calls them. */
function untouchedCards(prompt: PromptContent): MessagePart {
  const said = new Set(prompt.answered.map(({ card }) => card.cardId));
  const untouched = prompt.cards.flatMap((card, i) =>
    said.has(card.cardId) ? [] : [openCardLine(prompt, i)],
  );
  return lineList(mrkdwn('prompt-untouched'), untouched, (count) => mrkdwn('cards-more', { cards: count }));
}

export function thanksMessage(): MessageView {
  return messageView([lead(say('thanks-answer'))]);
}

/** What of an answer in words isn't kept. @param near the command that it may be about */
export function leftOutMessage(leftOut: readonly string[], near: string | undefined): MessageView {
  const words = shortened(leftOut.join(', '), LEFT_OUT_LENGTH);
  const said =
    near === undefined
      ? mrkdwn('answer-left-out', { words })
      : mrkdwn('answer-left-out-near', { words, near });
  return messageView([section(said)]);
}

/** To somebody who edited or deleted what they had written. */
export function changeUnreadMessage(change: 'edited' | 'deleted'): MessageView {
  return messageView([lead(say('edit-unread', { change })), section(mrkdwn('edit-unread-next'))]);
}
