/** What roles on a team mean, told to those who get one, and what follows when somebody has one no more. */
import type { ContentOf } from '../../../app/posting/post-kinds.ts';
import type { Role } from '../../../app/team/team.ts';
import { person } from '../../../words/people.ts';
import { retentionSentence } from '../../../words/privacy.ts';
import { mrkdwn, say } from '../../../words/say.ts';
import { context, lead, section } from '../block-builders.ts';
import { type MessageView, messageView } from '../message-view.ts';

export function roleGivenMessage({
  team,
  roles,
  byUserId,
  isOwnDoing,
}: ContentOf<'role-given'>): MessageView {
  const by = isOwnDoing ? [] : [mrkdwn('role-given-by', { person: person(byUserId) })];
  const meanings = roles.map((role) => mrkdwn(`role-given-${role}`));
  const stored = roles.includes('member')
    ? [section(`${mrkdwn('role-given-stored')} ${retentionSentence(team)}`)]
    : [];
  return messageView([
    lead(say('role-given-title', { roles: roles.map(roleName), team: team.name })),
    section([...by, ...meanings].join(' ')),
    ...stored,
    context(mrkdwn('role-given-more')),
  ]);
}

export function takenOffMessage({ team, byUserId, isProductOwner }: ContentOf<'taken-off'>): MessageView {
  return messageView([
    lead(say('taken-off-title', { team: team.name })),
    section(
      [
        mrkdwn('taken-off-by', { person: person(byUserId) }),
        mrkdwn('taken-off-cards'),
        ...(isProductOwner ? [mrkdwn('taken-off-product-owner')] : []),
      ].join(' '),
    ),
    section(mrkdwn('taken-off-record')),
  ]);
}

export function noFacilitatorMessage({ team }: ContentOf<'no-facilitator'>): MessageView {
  return messageView([
    lead(say('no-facilitator-title', { team: team.name })),
    section(mrkdwn('no-facilitator-until')),
  ]);
}

/** A product owner is named by a facilitator; who facilitates now is said where that has changed. */
export function roleEndedMessage({ team, role, facilitatorIds }: ContentOf<'role-ended'>): MessageView {
  const people = facilitatorIds.map(person);
  return messageView([
    lead(say(`role-ended-${role}-title`, { team: team.name })),
    section(
      role === 'facilitator'
        ? mrkdwn('role-ended-facilitator', { count: people.length, people })
        : mrkdwn('role-ended-product-owner'),
    ),
  ]);
}

function roleName(role: Role): string {
  return say('role-name', { role });
}
