/** The cards of a sprint as a list, the replies after one was changed, and the notice that some have no owner. */
import type { Button } from '@slack/types';
import type { CardLine } from '../../../app/cards/card-line.ts';
import type { CardChange } from '../../../app/cards/change-cards.ts';
import type { OwnersChange } from '../../../app/cards/change-owners.ts';
import type { PulledCards } from '../../../app/cards/pull-cards.ts';
import type { ListedPlanChange } from '../../../app/planning/listed-plan-changes.ts';
import type { ContentOf } from '../../../app/posting/post-kinds.ts';
import type { SprintHeading } from '../../../app/team/team.ts';
import type { SprintSummary } from '../../../sprint/summary.ts';
import { isDefined } from '../../../sprint/undefined-value.ts';
import { cardListLine, cardOwners, moreCardsFrom, numbered } from '../../../words/cards.ts';
import { person } from '../../../words/people.ts';
import { planChangedTitle, planChangeLinesBy } from '../../../words/plan-changes.ts';
import { pulledCardWords } from '../../../words/pull-in.ts';
import { loadSentence } from '../../../words/ratios.ts';
import { mrkdwn, say } from '../../../words/say.ts';
import { mrkdwnOf } from '../../../words/typed-text.ts';
import { encodeValue } from '../../button-values.ts';
import { ACTIONS } from '../../ids.ts';
import { actions, bold, button, context, lead, section } from '../block-builders.ts';
import { type LineList, lineList } from '../line-sections.ts';
import { type MessageView, messageView } from '../message-view.ts';

interface CardList {
  readonly heading: SprintHeading;
  readonly cards: readonly CardLine[];
  readonly summary: SprintSummary;
  readonly planChanges: readonly ListedPlanChange[];
  readonly isOnTeam: boolean;
}

/** @param from show the cards from this number on. */
export function cardsMessage(
  { heading, cards, summary, planChanges, isOnTeam }: CardList,
  from = 1,
): MessageView {
  const changed = { team: heading.team, cards, planChanges };
  const title = { sprint: heading.sprint.name, cards: cards.length };
  const who = { reader: isOnTeam ? ('team' as const) : ('owner' as const) };
  const shown = cards.filter(({ number }) => number >= from);
  if (shown.length === 0) {
    const none =
      cards.length === 0 ? mrkdwn('cards-none', who) : mrkdwn('cards-none-from', { from: String(from) });
    return messageView([lead(say('cards-title-none', title)), section(none)]);
  }
  return messageView([
    lead(say('cards-title', { ...title, left: summary.totals.openLeftPoints })),
    section(mrkdwnOf(loadSentence(summary))),
    lineList('', shown.map(cardListLine), (count, index) => moreCardsFrom(count, shown[index]?.number)),
    ...(planChanges.length === 0
      ? []
      : [
          lineList(bold(planChangedTitle(changed)), planChangeLinesBy(changed), (count) =>
            mrkdwn('plan-changes-more', { changes: count }),
          ),
        ]),
    context(mrkdwn('cards-change', who)),
  ]);
}

function pulledTotal({ totals, ratios }: SprintSummary): string {
  const points = totals.pulledInPoints;
  return isDefined(ratios.pullInRatio)
    ? mrkdwn('card-pulled-total-share', { points, share: ratios.pullInRatio })
    : mrkdwn('card-pulled-total', { points });
}

export function pulledMessage({ heading, cards, alike, summary, check }: PulledCards): MessageView {
  const [card] = cards;
  const copies =
    alike.length > 0
      ? [section(mrkdwn('card-pulled-alike', { cards: alike.map(String), number: String(alike.at(-1)) }))]
      : [];
  if (card === undefined || check === undefined) {
    const title = { sprint: heading.sprint.name, cards: cards.length };
    return messageView([
      cardsUnder(mrkdwn('cards-pulled-title', title), cards),
      section(pulledTotal(summary)),
      ...copies,
    ]);
  }
  const about = aboutCard(heading, card);
  const nobody = card.ownerIds.length === 0 ? [mrkdwn('card-pulled-no-owner', about)] : [];
  return messageView([
    section(
      mrkdwn('card-pulled', {
        ...about,
        points: card.estimatePoints,
        owners: cardOwners(card.ownerIds),
      }),
    ),
    section([pulledTotal(summary), ...nobody].join(' ')),
    ...copies,
    section(pulledCardWords(check)),
  ]);
}

export function droppedMessage({ heading, card }: CardChange, reason = ''): MessageView {
  const dropped = mrkdwn('card-dropped', aboutCard(heading, card));
  const why = reason.trim() === '' ? [] : [mrkdwn('card-dropped-reason', { reason })];
  return messageView([
    section([dropped, ...why].join(' ')),
    section(mrkdwn('card-dropped-counts', { part: card.origin, points: card.estimatePoints })),
    actions([takeBackButton(heading, card)]),
  ]);
}

function takeBackButton({ sprint }: SprintHeading, { number }: CardLine): Button {
  const value = encodeValue({ sprintId: sprint.id, card: String(number) });
  return button(say('card-take-drop-back'), { actionId: ACTIONS.takeDropBack, value });
}

export function undroppedMessage({ heading, card }: CardChange): MessageView {
  const left = say('cards-left', { points: card.leftPoints });
  return messageView([section(mrkdwn('card-undropped', { ...aboutCard(heading, card), left }))]);
}

/** @param act what the reader did */
export function ownersMessage(
  { heading, cards }: OwnersChange,
  act: 'take' | 'give' | 'release',
): MessageView {
  const next = act === 'take' ? 'cards-taken-next' : 'cards-owners-next';
  return messageView([
    cardsUnder(
      mrkdwn('cards-owners-title', { sprint: heading.sprint.name, cards: cards.length, act }),
      cards,
    ),
    section(mrkdwn(next)),
  ]);
}

function cardsUnder(title: string, cards: readonly CardLine[]): LineList {
  return lineList(title, cards.map(cardListLine), (count, index) =>
    moreCardsFrom(count, cards[index]?.number),
  );
}

/** To somebody who got cards by somebody else's doing. */
export function cardsGivenMessage({ heading, cards, byUserId }: ContentOf<'cards-given'>): MessageView {
  const title = { by: person(byUserId), sprint: heading.sprint.name, cards: cards.length };
  return messageView([
    cardsUnder(mrkdwn('cards-given-title', title), cards),
    section(mrkdwn('cards-taken-next')),
  ]);
}

/** To a facilitator. Must not say who said so. */
export function cardsBlockedMessage({ heading, cards }: ContentOf<'cards-blocked'>): MessageView {
  const sprint = heading.sprint.name;
  if (cards.length === 0) return messageView([section(mrkdwn('cards-blocked-over', { sprint }))]);
  const lines = cards.map((card) => {
    const { since = '', on = '' } = card.blocked ?? {};
    const about = { ...numbered(card), since };
    return on === ''
      ? mrkdwn('status-blocked-card', about)
      : mrkdwn('status-blocked-card-on', { ...about, on });
  });
  return messageView([
    lead(say('cards-blocked-title', { sprint, cards: cards.length })),
    lineList('', lines, (count) => mrkdwn('status-blocked-more', { cards: count })),
    context(mrkdwn('cards-blocked-next')),
  ]);
}

/** To the product owner. */
export function cardsDroppedMessage(content: ContentOf<'cards-dropped'>): MessageView {
  const { heading, cards, byUserId, reason, isTakenBack } = content;
  const [card] = cards;
  if (!card) return messageView([section(mrkdwn('card-dropped-gone', { sprint: heading.sprint.name }))]);
  const about = aboutCard(heading, card);
  const dropped = mrkdwn('card-dropped-by', { ...about, by: person(byUserId) });
  const why = reason.trim() === '' ? [] : [mrkdwn('card-dropped-reason', { reason })];
  const next = isTakenBack ? mrkdwn('card-dropped-taken-back') : mrkdwn('card-dropped-take-back');
  const takeBack = isTakenBack ? [] : [actions([takeBackButton(heading, card)])];
  return messageView([section([dropped, ...why].join(' ')), section(next), ...takeBack]);
}

export function reopenedCardMessage({ heading, card }: CardChange): MessageView {
  return messageView([
    section(mrkdwn('card-reopened', aboutCard(heading, card))),
    section(mrkdwn('card-reopened-next')),
  ]);
}

export function blockedMessage({ heading, card }: CardChange, reason: string): MessageView {
  const about = aboutCard(heading, card);
  return messageView([
    section(mrkdwn('card-blocked', { ...about, reason })),
    section(mrkdwn('card-blocked-next', { number: about.number })),
  ]);
}

export function movingMessage({ heading, card }: CardChange): MessageView {
  const left = say('cards-left', { points: card.leftPoints });
  return messageView([section(mrkdwn('card-moving', { ...aboutCard(heading, card), left }))]);
}

function aboutCard({ sprint }: SprintHeading, card: CardLine) {
  return { sprint: sprint.name, ...numbered(card) };
}

/** For a facilitator. Must not say whose the cards were, nor why they no longer are. */
export function ownerNeededMessage({
  heading,
  cards,
}: {
  readonly heading: SprintHeading;
  readonly cards: readonly CardLine[];
}): MessageView {
  const title = { sprint: heading.sprint.name, cards: cards.length };
  const [first] = cards;
  if (!first) return messageView([lead(say('cards-have-owner-title', title))]);
  return messageView([
    lead(say('cards-need-owner-title', title)),
    lineList('', cards.map(cardListLine), (count, index) => moreCardsFrom(count, cards[index]?.number)),
    section(mrkdwn('cards-need-owner-next', { cards: cards.length, number: String(first.number) })),
    context(mrkdwn('cards-need-owner-kept')),
  ]);
}
