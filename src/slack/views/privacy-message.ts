/** What is stored about the person who asks, why, who sees it and for how long; a copy of it, and an erasure. */
import type { ModalView } from '@slack/types';
import type { ContentOf } from '../../app/posting/post-kinds.ts';
import type { Erased } from '../../app/privacy/erase-person.ts';
import type { PersonalCopy, PrivacyOverview } from '../../app/privacy/privacy-overview.ts';
import { erasedPerson, storedKind, teamKeeps } from '../../words/privacy.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { ACTIONS } from '../ids.ts';
import { actions, button, context, lead, section } from './block-builders.ts';
import { tickField } from './form-inputs.ts';
import { formView } from './form-view.ts';
import { lineList } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';

/** It is always about the person who presses it. */
const VALUE = 'me';

export function privacyMessage({ kinds, teams }: PrivacyOverview): MessageView {
  if (kinds.length === 0) {
    return messageView([lead(say('privacy-nothing')), section(mrkdwn('privacy-nothing-others'))]);
  }
  return messageView([
    lead(say('privacy-stored')),
    section(kinds.map(storedKind).join('\n')),
    section(`${mrkdwn('privacy-why')}\n${mrkdwn('privacy-who-sees-it')}`),
    lineList(mrkdwn('privacy-how-long'), teams.map(teamKeeps), (count) =>
      mrkdwn('privacy-and-more-teams', { count }),
    ),
    actions([
      button(say('privacy-copy-button'), { actionId: ACTIONS.sendMyCopy, value: VALUE }),
      button(say('privacy-erase-button'), { actionId: ACTIONS.openEraseForm, value: VALUE }),
    ]),
    context(mrkdwn('privacy-only-you')),
  ]);
}

/** What comes with the file, in the person's direct messages. Mrkdwn. */
export function copyComment({ records }: PersonalCopy): string {
  return mrkdwn('privacy-copy-comment', { records });
}

export function copySentMessage({ records }: PersonalCopy): MessageView {
  return messageView([section(mrkdwn('privacy-copy-sent', { records }))]);
}

export const ERASE_FIELDS = { messages: 'messages' } as const;
/** The value of the tick. */
export const REMOVE_MESSAGES = 'remove';

/** To the person, when it is done. */
export function messagesRemovedMessage({ removed, left }: ContentOf<'messages-removed'>): MessageView {
  const kept = left === 0 ? [] : [section(mrkdwn('privacy-messages-left', { count: left }))];
  return messageView([section(mrkdwn('privacy-messages-removed', { count: removed })), ...kept]);
}

/** Asks before a person is erased, and says all that will happen. */
export function eraseFormView(replyTo?: string): ModalView {
  const frame = {
    form: 'erase',
    title: say('privacy-erase-title'),
    submit: say('privacy-erase-submit'),
    leave: say('privacy-erase-keep'),
    context: {},
    replyTo,
  };
  return formView(frame, [
    section(`${mrkdwn('privacy-erase-goes-head')}\n${mrkdwn('privacy-erase-goes')}`),
    section(`${mrkdwn('privacy-erase-stays-head')}\n${mrkdwn('privacy-erase-stays')}`),
    section(mrkdwn('privacy-erase-then')),
    tickField({
      field: ERASE_FIELDS.messages,
      label: say('privacy-erase-messages'),
      hint: say('privacy-erase-messages-hint'),
      choices: [{ value: REMOVE_MESSAGES, label: say('privacy-erase-messages-yes') }],
      initial: [],
      optional: true,
    }),
    section(mrkdwn('privacy-erase-for-good')),
  ]);
}

export function erasedMessage({ records, teamNames, removesMessages }: Erased): MessageView {
  const elsewhere =
    removesMessages === undefined
      ? mrkdwn('privacy-erased-elsewhere')
      : mrkdwn('privacy-erased-messages', { known: removesMessages ? 'yes' : 'no' });
  return messageView([section(erasedPerson(records, teamNames)), section(elsewhere)]);
}
