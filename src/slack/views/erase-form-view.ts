/** Asks before a person is erased, and says all that will happen. Nothing is typed in it. */
import type { ModalView } from '@slack/types';
import { encodeContext } from '../form-contexts.ts';
import { FORMS } from '../ids.ts';
import { bold, section } from './block-builders.ts';
import { formView, withReplyTo } from './form-view.ts';

const GOES = [
  'your id and your name, everywhere',
  'your notes, and the reasons that you gave',
  'your prompts, drafts, and the record of messages to you',
  'your place on teams, as facilitator and as product owner',
];
const STAYS = [
  'the points that you reported, as the team’s, so that every number stays as it was posted; nothing tells whose they were',
  'titles of cards and goals of sprints; where others wrote your name, it says “somebody”',
  'messages that were sent, on the chat platform: those are not Loadline’s to take back',
];

export function eraseFormView(replyTo?: string): ModalView {
  const frame = {
    callbackId: FORMS.erase,
    title: 'Erase me for good?',
    submit: 'Erase me',
    leave: 'Keep everything',
    context: encodeContext(withReplyTo({}, replyTo)),
  };
  return formView(frame, [
    section(`${bold('What goes:')}\n${GOES.map((what) => `• ${what}`).join('\n')}`),
    section(`${bold('What stays:')}\n${STAYS.map((what) => `• ${what}`).join('\n')}`),
    section(
      'Your open cards will have no owner, and the facilitators are told that they need one. You are asked nothing any more. Whoever adds you to a team again begins afresh.',
    ),
    section(bold('This can’t be undone. Get a copy first if you want one.')),
  ]);
}
