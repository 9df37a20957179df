/** The form that brings cards in after planning, with what to weigh before, and the form that drops a card. */
import type { ModalView } from '@slack/types';
import type { CardLine } from '../../../app/cards/card-line.ts';
import type { PullForm } from '../../../app/cards/pull-cards.ts';
import { keyAndTitle } from '../../../app/planning/card-key.ts';
import { formatCardLine } from '../../../app/planning/card-paste.ts';
import type { SprintHeading, Team } from '../../../app/team/team.ts';
import { cardName } from '../../../words/cards.ts';
import { loadWords } from '../../../words/load.ts';
import { pullInCheckWords } from '../../../words/pull-in.ts';
import { mrkdwn, say } from '../../../words/say.ts';
import { bold, section } from '../block-builders.ts';
import { choiceField, textField } from '../form-inputs.ts';
import { formView, noticeView } from '../form-view.ts';

export const DROP_FIELDS = {
  reference: 'reference',
  reason: 'reason',
} as const;

export const PULL_FIELDS = {
  cards: 'cards',
} as const;

const REASON_MAX_LENGTH = 300;

/** A card as a message makes it. */
export interface CardDraft {
  readonly title: string;
  /** Undefined: it can't be had. */
  readonly link: string | undefined;
}

export const PULL_TEAM = 'pull-team';
export const PULL_TEAM_FIELDS = { channelId: 'channelId' } as const;

/** Asks for which of several teams a message becomes a card. */
export function pullTeamFormView(
  draft: CardDraft,
  teams: readonly Pick<Team, 'name' | 'channelId'>[],
  replyTo?: string,
): ModalView {
  const frame = {
    form: PULL_TEAM,
    title: say('pull-title'),
    submit: say('answer-choose-submit'),
    context: draft,
    replyTo,
  };
  return formView(frame, [
    section(mrkdwn('pull-choose-team')),
    choiceField({
      field: PULL_TEAM_FIELDS.channelId,
      label: say('pull-team'),
      choices: teams.map(({ name, channelId }) => ({ value: channelId, label: name })),
    }),
  ]);
}

/** @param draft what it begins with */
export function pullFormView(
  { heading, load, check, workingDaysLeft }: PullForm,
  replyTo?: string,
  draft?: CardDraft,
): ModalView {
  const frame = {
    form: 'pull',
    title: say('pull-title'),
    submit: say('pull-submit'),
    context: { sprintId: heading.sprint.id },
    replyTo,
  };
  const days = mrkdwn('pull-days', { sprint: heading.sprint.name, days: workingDaysLeft });
  return formView(frame, [
    ...(draft ? [section(draftWords(draft))] : []),
    section(`${days} ${loadWords(load)}`),
    textField({
      field: PULL_FIELDS.cards,
      label: say('plan-cards'),
      hint: say('pull-cards-hint'),
      multiline: true,
      initial: draft ? formatCardLine({ ...draft, ...keyAndTitle(draft.title) }, '?', []) : '',
    }),
    // Below the field: nobody has to scroll to it.
    section(pullInCheckWords(check)),
    section(checklist(workingDaysLeft)),
  ]);
}

function draftWords({ link }: CardDraft): string {
  return mrkdwn('pull-message', { link: link === undefined ? 'unknown' : 'known' });
}

function checklist(workingDaysLeft: number): string {
  return [
    bold(mrkdwn('pull-checklist-title')),
    mrkdwn('pull-checklist-independent'),
    mrkdwn('pull-checklist-negotiable'),
    mrkdwn('pull-checklist-valuable'),
    mrkdwn('pull-checklist-estimable'),
    mrkdwn('pull-checklist-small', { time: workingDaysLeft === 0 ? 'today' : 'days' }),
    mrkdwn('pull-checklist-testable'),
  ].join('\n');
}

/** With no card to drop it only says so. */
export function dropFormView(
  { heading, cards }: { readonly heading: SprintHeading; readonly cards: readonly CardLine[] },
  replyTo?: string,
): ModalView {
  const about = { sprint: heading.sprint.name };
  const droppable = cards.filter(({ state }) => state !== 'dropped');
  if (droppable.length === 0) {
    return noticeView(say('drop-title'), [section(mrkdwn('drop-nothing', about))]);
  }
  const frame = {
    form: 'drop',
    title: say('drop-title'),
    submit: say('drop-submit'),
    context: { sprintId: heading.sprint.id },
    replyTo,
  };
  return formView(frame, [
    section(mrkdwn('drop-intro', about)),
    choiceField({
      field: DROP_FIELDS.reference,
      label: say('drop-card'),
      choices: droppable.map((card) => ({
        value: String(card.number),
        label: say('drop-choice', {
          number: String(card.number),
          card: cardName(card),
          points: card.estimatePoints,
        }),
      })),
    }),
    textField({
      field: DROP_FIELDS.reason,
      label: say('drop-reason'),
      hint: say('drop-reason-hint'),
      maxLength: REASON_MAX_LENGTH,
    }),
  ]);
}
