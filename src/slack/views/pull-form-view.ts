/** The form that brings a card in after planning, with what to weigh before. */
import type { ModalView } from '@slack/types';
import type { PullForm } from '../../app/cards/pull-card.ts';
import { typed } from '../../words/typed-text.ts';
import { encodeContext } from '../form-contexts.ts';
import { FIELDS, FORMS } from '../ids.ts';
import { bold, section } from './block-builders.ts';
import { peopleField, textField } from './form-inputs.ts';
import { formView, withReplyTo } from './form-view.ts';
import { loadWords } from './load-words.ts';
import { pullInCheckWords } from './pull-in-words.ts';
import { counted } from './sprint-words.ts';

const TITLE_MAX_LENGTH = 200;

export function pullFormView(
  { heading, load, check, workingDaysLeft }: PullForm,
  replyTo?: string,
): ModalView {
  const fields = FIELDS.pull;
  const frame = {
    callbackId: FORMS.pull,
    title: 'Pull in a card',
    submit: 'Pull in',
    context: encodeContext(withReplyTo({ sprintId: heading.sprint.id }, replyTo)),
  };
  const days =
    workingDaysLeft === 0
      ? 'no working day comes after today'
      : `${counted(workingDaysLeft, 'working day')} ${workingDaysLeft === 1 ? 'comes' : 'come'} after today`;
  return formView(frame, [
    section(`${typed(heading.sprint.name)}: ${days}. ${loadWords(load)}`),
    section(pullInCheckWords(check)),
    section(checklist(workingDaysLeft)),
    textField({
      field: fields.title,
      label: 'Title',
      hint: 'May begin with a key of your own, such as LP-9.',
      maxLength: TITLE_MAX_LENGTH,
    }),
    textField({
      field: fields.estimate,
      label: 'Estimate, in points',
      hint: 'Halves are fine, such as 0.5.',
      maxLength: 10,
    }),
    peopleField({
      field: fields.ownerIds,
      label: 'Owners',
      hint: 'Members of the team. Nobody is asked about a card without an owner.',
      optional: true,
      initial: [],
    }),
  ]);
}

/** After the INVEST criteria of Bill Wake (2003), in our own words. */
function checklist(workingDaysLeft: number): string {
  const time = workingDaysLeft === 0 ? 'today' : 'the time that is left';
  return [
    bold('Before you pull it in'),
    '• Independent: can it be finished without waiting for another card?',
    '• Negotiable: may the team still choose how to do it?',
    '• Valuable: who will be glad that it is done this sprint?',
    '• Estimable: do you know enough to give it points?',
    `• Small: does it fit into ${time}?`,
    '• Testable: how will you see that it is finished?',
  ].join('\n');
}
