/** To a facilitator: something that the bot had to say can't be delivered, and what to do about it. */
import type { ContentOf } from '../../app/posting/post-kinds.ts';
import { DAYS_WITHOUT_CHANNEL } from '../../app/privacy/promised-times.ts';
import { person } from '../../words/people.ts';
import { Markup, mrkdwn, say } from '../../words/say.ts';
import { context, lead, section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';

export function channelUnreachableMessage({ team, cause }: ContentOf<'channel-unreachable'>): MessageView {
  const channel = new Markup(`<#${team.channelId}>`);
  if (cause === 'shared') {
    return messageView([
      lead(say('channel-shared-title', { team: team.name })),
      section(mrkdwn('channel-shared-where', { channel })),
      section(mrkdwn('shared-channel-seen')),
      section(mrkdwn('channel-shared-until')),
    ]);
  }
  return messageView([
    lead(say('channel-unreachable-title', { team: team.name })),
    section(mrkdwn('channel-unreachable-why', { channel, cause, days: DAYS_WITHOUT_CHANNEL })),
    context(mrkdwn('unreachable-again')),
  ]);
}

export function memberUnreachableMessage({
  team,
  userId,
  cause,
}: ContentOf<'member-unreachable'>): MessageView {
  return messageView([
    lead(say('member-unreachable-title', { team: team.name })),
    section(mrkdwn('member-unreachable-why', { person: person(userId), cause })),
    context(mrkdwn('unreachable-again')),
  ]);
}
