/** The first message in somebody's direct messages: what the bot will ask, and three things to type. */
import type { Welcome } from '../../app/watching/welcome.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { lead, section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';

export function welcomeMessage({ teamNames, isAsked }: Welcome): MessageView {
  const isOnTeam = teamNames.length > 0;
  const toType = isAsked ? 'welcome-member-type' : 'welcome-reader-type';
  return messageView([
    lead(say('welcome-title')),
    section(
      isOnTeam
        ? mrkdwn('welcome-team', { teams: teamNames.slice(0, TEAMS_NAMED) })
        : mrkdwn('welcome-no-team'),
    ),
    section(mrkdwn(isOnTeam ? toType : 'welcome-no-team-type')),
  ]);
}

/** Whom it is for knows the others. */
const TEAMS_NAMED = 5;
