/** What the channel reads once a team has been set up, and the replies to the person who set it up or changed it. */
import type { ContentOf } from '../../../app/posting/post-kinds.ts';
import { erasedOn, MONTHS_IDLE } from '../../../app/privacy/promised-times.ts';
import type { ResumedTeam } from '../../../app/team/end-team.ts';
import type { Team } from '../../../app/team/team.ts';
import { people, person } from '../../../words/people.ts';
import { retentionSentence } from '../../../words/privacy.ts';
import { Markup, mrkdwn, say } from '../../../words/say.ts';
import { weekdayWords } from '../../../words/team.ts';
import { context, lead, section } from '../block-builders.ts';
import { lineList } from '../line-sections.ts';
import { type MessageView, messageView } from '../message-view.ts';

export function teamSetUpMessage({
  team,
  sprintName,
  memberIds,
  facilitatorIds,
}: ContentOf<'team-set-up'>): MessageView {
  const takingPart = [
    mrkdwn('team-members', { people: people(memberIds) }),
    mrkdwn('team-facilitators', { people: people(facilitatorIds) }),
    ...(team.productOwnerId ? [mrkdwn('team-product-owner', { person: person(team.productOwnerId) })] : []),
  ];
  return messageView([
    lead(say('team-set-up-title', { team: team.name, members: memberIds.length })),
    section(mrkdwn('team-set-up-intro', askingTimes(team))),
    lineList('', takingPart, () => mrkdwn('team-more-people')),
    section(`${mrkdwn('team-set-up-privacy')} ${retentionSentence(team)}`),
    section(
      sprintName === undefined
        ? mrkdwn('team-set-up-next')
        : mrkdwn('team-set-up-goes-on', { sprint: sprintName }),
    ),
    context(mrkdwn('caution-set-up')),
  ]);
}

export function teamMovedMessage({ team, byUserId, isHere }: ContentOf<'team-moved'>): MessageView {
  const by = { person: person(byUserId) };
  if (isHere) {
    return messageView([
      lead(say('team-moved-here-title', { team: team.name })),
      section(mrkdwn('team-moved-here', by)),
    ]);
  }
  const channel = new Markup(`<#${team.channelId}>`);
  return messageView([
    lead(say('team-moved-away-title', { team: team.name })),
    section(mrkdwn('team-moved-away', { ...by, channel })),
  ]);
}

export function teamMovedReply({ name }: Team): MessageView {
  return messageView([section(mrkdwn('team-moved-reply', { team: name }))]);
}

export function teamEndedMessage({ team, byUserId, erasedOn }: ContentOf<'team-ended'>): MessageView {
  return messageView([
    lead(say('team-ended-title', { team: team.name })),
    section(mrkdwn('team-ended-by', { person: person(byUserId) })),
    ...untilErased(erasedOn),
  ]);
}

export function teamIdleMessage({ team, erasedOn }: ContentOf<'team-idle'>): MessageView {
  return messageView([
    lead(say('team-ended-title', { team: team.name })),
    section(mrkdwn('team-idle', { months: MONTHS_IDLE })),
    ...untilErased(erasedOn),
  ]);
}

/** Undefined: the team was taken back since. */
function untilErased(erasedOn: string | undefined) {
  return [
    context(
      erasedOn === undefined ? mrkdwn('team-ended-no-more') : mrkdwn('team-ended-until', { day: erasedOn }),
    ),
  ];
}

export function teamResumedMessage({ team, byUserId }: ContentOf<'team-resumed'>): MessageView {
  return messageView([
    lead(say('team-resumed-title', { team: team.name })),
    section(mrkdwn('team-resumed-by', { person: person(byUserId) })),
  ]);
}

export function teamEndedReply(team: Team): MessageView {
  const day = team.endedAt ? erasedOn(team, team.endedAt) : '';
  return messageView([
    section(mrkdwn('team-ended-reply', { team: team.name })),
    context(mrkdwn('team-ended-until', { day })),
  ]);
}

export function teamResumedReply({ team, sprintName }: ResumedTeam): MessageView {
  const next =
    sprintName === undefined
      ? mrkdwn('team-resumed-plan')
      : mrkdwn('team-resumed-sprint', { sprint: sprintName });
  return messageView([section(`${mrkdwn('team-resumed-reply', { team: team.name })} ${next}`)]);
}

export function teamSavedReply(team: Team, existed: boolean): MessageView {
  const change = existed ? 'changed' : 'new';
  return messageView([
    section(mrkdwn('team-saved', { change, team: team.name, ...askingTimes(team) })),
    section(mrkdwn('team-saved-next', { change })),
  ]);
}

function askingTimes({ workingDays, promptAt, timeZone }: Team) {
  return { days: weekdayWords(workingDays), time: promptAt, timeZone };
}

export function measuresSavedReply(team: Team): MessageView {
  return messageView([
    section(
      mrkdwn('team-measures-saved', {
        team: team.name,
        time: team.closesAt,
        minutes: team.reminderAfterMinutes,
        scale: team.scale.map(String),
      }),
    ),
    section(retentionSentence(team)),
    section(mrkdwn('team-measures-from-when')),
  ]);
}

export function teamLeftReply({ name }: Team): MessageView {
  return messageView([section(mrkdwn('team-left', { team: name })), context(mrkdwn('team-left-privacy'))]);
}
