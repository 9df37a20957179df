/** The form that takes a card out of the sprint. */
import type { ModalView } from '@slack/types';
import type { CardLine } from '../../app/cards/card-line.ts';
import type { SprintHeading } from '../../app/posting/message-content.ts';
import { formatPointsWithUnit } from '../../sprint/points.ts';
import { typed } from '../../words/typed-text.ts';
import { encodeContext } from '../form-contexts.ts';
import { COMMAND, FIELDS, FORMS } from '../ids.ts';
import { code, plain, section } from './block-builders.ts';
import { plainCardName } from './card-words.ts';
import { choiceField, textField } from './form-inputs.ts';
import { formView, withReplyTo } from './form-view.ts';

const REASON_MAX_LENGTH = 300;

/** With no card to drop it only says so. */
export function dropFormView(
  { heading, cards }: { readonly heading: SprintHeading; readonly cards: readonly CardLine[] },
  replyTo?: string,
): ModalView {
  const sprint = typed(heading.sprint.name);
  const droppable = cards.filter(({ state }) => state !== 'dropped');
  if (droppable.length === 0) {
    return {
      type: 'modal',
      title: plain('Drop a card'),
      close: plain('Close'),
      blocks: [section(`${sprint} has no card to drop. See its cards with ${code(`${COMMAND} cards`)}.`)],
    };
  }
  const frame = {
    callbackId: FORMS.drop,
    title: 'Drop a card',
    submit: 'Drop',
    context: encodeContext(withReplyTo({ sprintId: heading.sprint.id }, replyTo)),
  };
  return formView(frame, [
    section(
      `A card dropped from ${sprint} still counts with its estimate, as not finished, and is listed with your reason. It cannot be brought back.`,
    ),
    choiceField({
      field: FIELDS.drop.reference,
      label: 'Card',
      choices: droppable.map((card) => ({
        value: String(card.number),
        label: `${card.number}. ${plainCardName(card)} (${formatPointsWithUnit(card.estimatePoints)})`,
      })),
    }),
    textField({
      field: FIELDS.drop.reason,
      label: 'Reason',
      hint: 'The channel reads it with the verdict.',
      maxLength: REASON_MAX_LENGTH,
    }),
  ]);
}
