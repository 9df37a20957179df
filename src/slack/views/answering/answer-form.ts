/**
 * The form in which a member answers for their cards. Its second step asks of each card that grew how much
 * of the growth was surprise work; the other fields keep their ids, so what was typed in them stays.
 */
import type { KnownBlock, ModalView } from '@slack/types';
import type { AnswerForm, AnswerFormCard } from '../../../app/answering/answer-form.ts';
import type { TypedAnswer } from '../../../app/answering/read-answers.ts';
import type { AnswerOutcome, GrownCard } from '../../../app/answering/record-answers.ts';
import { impliedWorkedPoints } from '../../../sprint/ledger.ts';
import { cardName } from '../../../words/cards.ts';
import { person } from '../../../words/people.ts';
import { mrkdwn, say } from '../../../words/say.ts';
import { teamTime } from '../../../words/sprint.ts';
import { answerField } from '../../ids.ts';
import { context, divider, section } from '../block-builders.ts';
import { choicesField, textField } from '../form-inputs.ts';
import { formView } from '../form-view.ts';

/** Besides this, the fields of `answerField` for each card. */
export const ANSWER_FIELDS = {
  takeCardIds: 'takeCardIds',
  /** Cards about which there is more to say than what is left. */
  moreCardIds: 'moreCardIds',
} as const;

/** Cards that one form shows; more would be unwieldy and outgrow the platform's 100 blocks. */
const ANSWER_FORM_CARDS_MAX = 15;
const POINTS_MAX_LENGTH = 10;
const NOTE_MAX_LENGTH = 500;
const BLOCKED_MAX_LENGTH = 300;

/** What the second step explains: the outcome of submitting the first. */
type GrowthToAsk = Pick<Extract<AnswerOutcome, { kind: 'growth-to-explain' }>, 'answers' | 'grown'>;

interface NumberedCard extends AnswerFormCard {
  /** The card's place in the daily prompt. */
  readonly place: number;
}

/** What was typed before the fields of these cards were opened. */
interface MoreToSay {
  readonly answers: readonly TypedAnswer[];
  readonly cardIds: readonly string[];
}

export function answerFormView(
  form: AnswerForm,
  growth?: GrowthToAsk,
  replyTo?: string,
  more?: MoreToSay,
): ModalView {
  const { heading, day, takeable } = form;
  const shown = shownCards(form, growth);
  const frame = {
    form: 'answer',
    title: say(growth ? 'answer-title-growth' : 'answer-title'),
    submit: say('answer-submit'),
    context: { sprintId: heading.sprint.id, day },
    replyTo,
  };
  return formView(frame, [
    section(introWords(form, growth)),
    ...shown.flatMap((card) => cardBlocks(card, { growth, more, timeZone: heading.team.timeZone })),
    ...moreBlocks(growth ? [] : shown),
    ...tooManyBlocks(growth ? growth.answers.length : form.cards.length, shown.length),
    ...takeBlocks(takeable),
  ]);
}

/**
 * In the first step the cards that have no answer for the day come first, so that a second round shows the
 * others; in the second step it is the cards that grew, beside those answered together with them.
 */
function shownCards({ cards }: AnswerForm, growth: GrowthToAsk | undefined): NumberedCard[] {
  const numbered = cards.map((card, i) => ({ ...card, place: i + 1 }));
  const answers = new Set(growth?.answers.map(({ cardId }) => cardId));
  const grown = new Set(growth?.grown.map(({ card }) => card.cardId));
  const wanted = growth ? numbered.filter(({ card }) => answers.has(card.cardId)) : numbered;
  const isFirst = ({ card, given }: NumberedCard): boolean => (growth ? grown.has(card.cardId) : !given);
  const inOrder = [...wanted.filter(isFirst), ...wanted.filter((card) => !isFirst(card))];
  return inOrder.slice(0, ANSWER_FORM_CARDS_MAX).sort((a, b) => a.place - b.place);
}

function introWords({ heading, day, cards }: AnswerForm, growth: GrowthToAsk | undefined): string {
  if (growth) {
    const intro = mrkdwn('answer-intro-growth', { cards: growth.grown.length });
    return `${intro} ${mrkdwn('growth-explained')}`;
  }
  const about = { sprint: heading.sprint.name, day };
  return mrkdwn(cards.length === 0 ? 'answer-intro-none' : 'answer-intro', about);
}

function cardBlocks(
  card: NumberedCard,
  {
    growth,
    more,
    timeZone,
  }: { growth: GrowthToAsk | undefined; more: MoreToSay | undefined; timeZone: string },
): KnownBlock[] {
  const { cardId } = card.card;
  const name = cardName(card.card);
  const grown = growth?.grown.find((one) => one.card.cardId === cardId);
  const hasMoreToSay = more?.cardIds.includes(cardId) === true;
  const isOpened = grown !== undefined || hasMoreToSay;
  const typedBefore = (growth ?? more)?.answers.find((answer) => answer.cardId === cardId);
  const start = startValues(card, typedBefore);
  const left = textField({
    field: answerField('left', cardId),
    label: say('answer-left', {
      place: String(card.place),
      card: name,
      before: card.previousLeftPoints,
    }),
    // Not prefilled: a number that nobody typed must not overwrite what another owner has said since.
    optional: true,
    initial: start.left,
    maxLength: POINTS_MAX_LENGTH,
  });
  const worked = textField({
    field: answerField('worked', cardId),
    label: say('answer-worked', { card: name }),
    hint: say('answer-worked-hint'),
    optional: true,
    initial: start.worked,
    maxLength: POINTS_MAX_LENGTH,
  });
  return [
    left,
    ...otherWords(grown, timeZone),
    ...(isOpened || start.worked !== '' ? [worked] : []),
    ...growthFields(card, start, grown, isOpened),
    ...(hasMoreToSay || start.blocked !== '' ? [blockedField(card, start.blocked)] : []),
  ];
}

/** Empty even for a card that is blocked: the answer ends a block unless it says so again. */
function blockedField({ card }: NumberedCard, initial: string): KnownBlock {
  return textField({
    field: answerField('blocked', card.cardId),
    label: say('answer-blocked', { card: cardName(card) }),
    hint: say('answer-blocked-hint', { state: card.blocked ? 'blocked' : 'moving' }),
    optional: true,
    initial,
    maxLength: BLOCKED_MAX_LENGTH,
  });
}

function otherWords(grown: GrownCard | undefined, timeZone: string): KnownBlock[] {
  const other = grown?.saidByOther;
  if (!other) return [];
  const who = person(other.userId);
  const left = say('cards-left', { points: other.leftPoints });
  return [context(mrkdwn('answer-said-by-other', { who, left, moment: teamTime(other.at, timeZone) }))];
}

/** What is in the fields at first: what was typed a moment ago, else what was answered for the day before. */
function startValues({ given, previousLeftPoints }: AnswerFormCard, typedBefore: TypedAnswer | undefined) {
  const answered = {
    left: formatTyped(given?.left),
    worked: formatTyped(given?.worked),
    surprise: given && givenGrowth(given, previousLeftPoints) !== 0 ? formatTyped(given.surprise) : '',
    note: given?.note ?? '',
    blocked: '',
  };
  if (!typedBefore) return answered;
  return {
    left: typedBefore.left,
    worked: typedBefore.worked,
    surprise: typedBefore.surprise || answered.surprise,
    note: typedBefore.note || answered.note,
    blocked: typedBefore.blocked ?? '',
  };
}

function givenGrowth(given: NonNullable<AnswerFormCard['given']>, previousLeftPoints: number): number {
  const worked = given.worked ?? impliedWorkedPoints(previousLeftPoints, given.left);
  return worked + given.left - previousLeftPoints;
}

/** A minus that can be typed. */
function formatTyped(points: number | undefined): string {
  return points === undefined ? '' : String(points);
}

/** Lets the other fields of some cards be opened: most answers need none of them. */
function moreBlocks(shown: readonly NumberedCard[]): KnownBlock[] {
  if (shown.length === 0) return [];
  return [
    choicesField({
      field: ANSWER_FIELDS.moreCardIds,
      label: say('answer-more'),
      hint: say('answer-more-hint'),
      optional: true,
      choices: shown.map(({ card }) => ({ value: card.cardId, label: cardName(card) })),
    }),
  ];
}

/**
 * Surprise work, where the card grew, an earlier answer explained a growth, or the card holds some that may turn out not to
 * be needed; and a note.
 */
function growthFields(
  { card, given }: NumberedCard,
  start: ReturnType<typeof startValues>,
  grown: GrownCard | undefined,
  isOpened: boolean,
): KnownBlock[] {
  const name = cardName(card);
  const growthPoints = grown?.growthPoints;
  const mayGiveBack = isOpened && card.surprisePoints > 0;
  const asksSurprise = growthPoints !== undefined || mayGiveBack || start.surprise !== '';
  const asksNote = isOpened || asksSurprise || (given?.note ?? '') !== '' || start.note !== '';
  return [
    ...(asksSurprise
      ? [
          textField({
            field: answerField('surprise', card.cardId),
            label:
              growthPoints === undefined
                ? say('answer-surprise', { card: name })
                : say('answer-surprise-grown', { card: name, growth: growthPoints }),
            hint: surpriseHint(card.surprisePoints, growthPoints),
            optional: growthPoints === undefined || grown?.saidByOther !== undefined,
            initial: start.surprise,
            maxLength: POINTS_MAX_LENGTH,
          }),
        ]
      : []),
    ...(asksNote
      ? [
          textField({
            field: answerField('note', card.cardId),
            label: say('answer-note', { card: name }),
            hint: say('answer-note-hint'),
            optional: true,
            initial: start.note,
            maxLength: NOTE_MAX_LENGTH,
          }),
        ]
      : []),
  ];
}

function surpriseHint(soFarPoints: number, growthPoints: number | undefined): string {
  if (growthPoints !== undefined) return say('answer-surprise-hint-grown', { growth: growthPoints });
  if (soFarPoints <= 0) return say('answer-surprise-hint');
  return say('answer-surprise-hint-before', { points: soFarPoints });
}

function tooManyBlocks(all: number, shown: number): KnownBlock[] {
  return all <= shown ? [] : [context(mrkdwn('answer-too-many', { shown, cards: all }))];
}

function takeBlocks(takeable: AnswerForm['takeable']): KnownBlock[] {
  if (takeable.length === 0) return [];
  return [
    divider(),
    choicesField({
      field: ANSWER_FIELDS.takeCardIds,
      label: say('answer-take'),
      hint: say('answer-take-hint'),
      optional: true,
      choices: takeable.map((card) => ({
        value: card.cardId,
        label: say('answer-take-choice', { left: card.leftPoints, card: cardName(card) }),
      })),
    }),
  ];
}
