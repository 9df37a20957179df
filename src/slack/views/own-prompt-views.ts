/** The form for a member's own time of being asked, and what confirms it. */
import type { ModalView } from '@slack/types';
import type { OwnPromptSetting } from '../../app/team/own-prompt.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { context, section } from './block-builders.ts';
import { textField } from './form-inputs.ts';
import { formView } from './form-view.ts';
import { type MessageView, messageView } from './message-view.ts';

export const OWN_PROMPT_FIELDS = { at: 'at', timeZone: 'timeZone' } as const;

export function ownPromptFormView(
  { teams, ownPrompt, timeZone }: OwnPromptSetting,
  replyTo?: string,
): ModalView {
  const frame = {
    form: 'own-prompt',
    title: say('own-prompt-title'),
    submit: say('own-prompt-submit'),
    context: {},
    replyTo,
  };
  return formView(frame, [
    section(mrkdwn('own-prompt-intro', { teams: teams.map(({ name }) => name) })),
    textField({
      field: OWN_PROMPT_FIELDS.at,
      label: say('own-prompt-at'),
      hint: say('own-prompt-at-hint'),
      initial: ownPrompt?.at ?? '',
      maxLength: 5,
      optional: true,
    }),
    textField({
      field: OWN_PROMPT_FIELDS.timeZone,
      label: say('own-prompt-zone'),
      hint: say('own-prompt-zone-hint'),
      initial: timeZone,
      maxLength: 60,
      optional: true,
    }),
  ]);
}

export function ownPromptSetMessage({ teams, ownPrompt }: OwnPromptSetting): MessageView {
  const names = teams.map(({ name }) => name);
  if (ownPrompt === undefined) return messageView([section(mrkdwn('own-prompt-team', { teams: names }))]);
  const { at, timeZone } = ownPrompt;
  return messageView([
    section(mrkdwn('own-prompt-set', { time: at, zone: timeZone, teams: names })),
    context(mrkdwn('own-prompt-set-next')),
  ]);
}
