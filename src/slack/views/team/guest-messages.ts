/** What is said about the guests of a sprint. */
import type { ContentOf } from '../../../app/posting/post-kinds.ts';
import type { GuestsChange } from '../../../app/team/guests.ts';
import { people, person } from '../../../words/people.ts';
import { mrkdwn, say } from '../../../words/say.ts';
import { context, lead, section } from '../block-builders.ts';
import { type MessageView, messageView } from '../message-view.ts';

export function guestsMessage({ heading, userIds }: GuestsChange, act: 'added' | 'removed'): MessageView {
  const { name: sprint } = heading.sprint;
  return messageView([
    section(mrkdwn('guests-changed', { guests: people(userIds), count: userIds.length, sprint, act })),
  ]);
}

/** To a guest, what they need to know. */
export function guestWelcomeMessage({ heading, from, byUserId }: ContentOf<'guest-welcome'>): MessageView {
  const { team, sprint } = heading;
  return messageView([
    lead(say('guest-welcome-title', { sprint: sprint.name, team: team.name })),
    section(
      mrkdwn('guest-welcome-asked', {
        days: from === sprint.endsOn ? 'one-day' : 'several',
        by: person(byUserId),
        from,
        to: sprint.endsOn,
      }),
    ),
    context(mrkdwn('guest-welcome-after')),
  ]);
}
