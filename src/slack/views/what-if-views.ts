/** What if: the form that the status opens, and its answer. */
import type { ModalView } from '@slack/types';
import type { WhatIfAnswer, WhatIfForm } from '../../app/watching/what-if.ts';
import { cardName } from '../../words/cards.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { shortened } from '../../words/typed-text.ts';
import { whatIfBasis, whatIfSentence } from '../../words/what-if.ts';
import { context, section } from './block-builders.ts';
import { choiceField, OPTION_MAX_LENGTH, textField } from './form-inputs.ts';
import { formView } from './form-view.ts';
import { type MessageView, messageView } from './message-view.ts';

export const WHAT_IF_FIELDS = { without: 'without', awayDays: 'awayDays', morePoints: 'morePoints' } as const;

const AMOUNT_MAX_LENGTH = 10;

export function whatIfFormView({ sprint, cards }: WhatIfForm, replyTo?: string): ModalView {
  const frame = {
    form: 'what-if',
    title: say('what-if-title'),
    submit: say('what-if-submit'),
    context: { sprintId: sprint.id },
    replyTo,
  };
  const choices = cards.map((card) => ({
    value: String(card.number),
    label: shortened(`${card.number}. ${cardName(card)}`, OPTION_MAX_LENGTH),
  }));
  return formView(frame, [
    section(mrkdwn('what-if-intro', { sprint: sprint.name })),
    ...(choices.length === 0
      ? []
      : [
          choiceField({
            field: WHAT_IF_FIELDS.without,
            label: say('what-if-without'),
            choices,
            optional: true,
          }),
        ]),
    textField({
      field: WHAT_IF_FIELDS.awayDays,
      label: say('what-if-away'),
      hint: say('what-if-away-hint'),
      maxLength: AMOUNT_MAX_LENGTH,
      optional: true,
    }),
    textField({
      field: WHAT_IF_FIELDS.morePoints,
      label: say('what-if-more'),
      maxLength: AMOUNT_MAX_LENGTH,
      optional: true,
    }),
  ]);
}

export function whatIfMessage(answer: WhatIfAnswer): MessageView {
  return messageView([
    section(whatIfSentence(answer)),
    context([...whatIfBasis(answer), mrkdwn('what-if-unchanged')].join(' ')),
  ]);
}
