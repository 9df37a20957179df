/** The forms that take an imported sprint out again: which one, and whether it is to go; and what the channel reads. */
import type { ModalView } from '@slack/types';
import type { Removal, RemovalForm } from '../../app/import/remove-import.ts';
import type { ContentOf } from '../../app/posting/post-kinds.ts';
import { points } from '../../words/amounts.ts';
import { person } from '../../words/people.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { pastSprintChoice } from '../../words/sprint.ts';
import { context, lead, section } from './block-builders.ts';
import { choiceField } from './form-inputs.ts';
import { formView, noticeView } from './form-view.ts';
import { type MessageView, messageView } from './message-view.ts';

export const REMOVAL_FIELDS = {
  sprintId: 'sprintId',
} as const;

/** Without an imported sprint it only says so. */
export function removalFormView({ team, sprints, leftOut }: RemovalForm, replyTo?: string): ModalView {
  if (sprints.length === 0) {
    return noticeView(say('remove-title'), [section(mrkdwn('remove-none', { team: team.name }))]);
  }
  const frame = {
    form: 'remove-import',
    title: say('remove-title'),
    submit: say('remove-submit'),
    context: { teamId: team.id },
    replyTo,
  };
  return formView(frame, [
    section(mrkdwn('remove-intro', { team: team.name })),
    choiceField({
      field: REMOVAL_FIELDS.sprintId,
      label: say('remove-sprint'),
      choices: sprints.map((sprint) => ({
        value: sprint.sprintId,
        label: pastSprintChoice(sprint, points(sprint.commitmentPoints)),
      })),
    }),
    ...(leftOut > 0 ? [context(mrkdwn('remove-older', { sprints: leftOut }))] : []),
  ]);
}

export function removalConfirmView({ team, sprint, sprintsLeft }: Removal, replyTo?: string): ModalView {
  const frame = {
    form: 'remove-import-confirm',
    title: say('remove-confirm-title'),
    submit: say('remove-confirm-submit'),
    context: { teamId: team.id, sprintId: sprint.sprintId },
    replyTo,
  };
  const { name, startsOn: first, endsOn: last } = sprint;
  return formView(frame, [
    lead(say('remove-confirm-lead', { sprint: name, first, last })),
    section(mrkdwn('remove-confirm-what')),
    section(mrkdwn('remove-confirm-left', { sprints: sprintsLeft })),
  ]);
}

export function importRemovedReply({ sprint }: Removal): MessageView {
  return messageView([section(mrkdwn('remove-done', { sprint: sprint.name }))]);
}

export function importRemovedPost({ byUserId, sprintName }: ContentOf<'import-removed'>): MessageView {
  return messageView([
    section(mrkdwn('import-removed-post', { person: person(byUserId), sprint: sprintName })),
  ]);
}
