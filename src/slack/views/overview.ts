/**
 * What somebody can do now: the reply to the command alone. Buttons are offered to those who may use them; whether somebody
 * may is decided by the use case behind the button.
 */
import type { Button, KnownBlock } from '@slack/types';
import type { Overview, TeamOverview } from '../../app/watching/overview.ts';
import { linkedCardName } from '../../words/cards.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { closingTime, sprintSpan } from '../../words/sprint.ts';
import { typed } from '../../words/typed-text.ts';
import { encodeValue } from '../button-values.ts';
import { type Command, dashed, OVERVIEW_ROWS, type OverviewButton } from '../commands/command.ts';
import { COMMANDS } from '../commands/commands.ts';
import { ACTIONS, openFormAction } from '../ids.ts';
import { actions, bold, button, lead, section } from './block-builders.ts';
import { BLOCKS_TEXT_MAX_LENGTH, lengthOfTexts, type MessageView, messageView } from './message-view.ts';

/** Below the title. */
const MAX_BLOCKS = 49;
const MAX_LENGTH = BLOCKS_TEXT_MAX_LENGTH - 1_000;
/** How many more teams there are, setting one up (two blocks), and the help (two blocks). */
const OTHER_BLOCKS = 5;
const CARDS_NAMED = 3;
const CARD_NAME_MAX_LENGTH = 60;
/** The help is the same everywhere. */
const HELP_VALUE = 'help';
/** It is always about the person who presses it. */
const PRIVACY_VALUE = 'me';

/** @param hereChannelId the channel in which the command was typed; undefined in direct messages. */
export function overviewMessage(overview: Overview, hereChannelId?: string): MessageView {
  return messageView([lead(say('overview-title')), ...overviewBlocks(overview, hereChannelId)]);
}

function overviewBlocks(overview: Overview, hereChannelId: string | undefined): KnownBlock[] {
  const blocks: KnownBlock[] = [];
  let shown = 0;
  for (const team of overview.teams) {
    const ofTeam = teamBlocks(team);
    const withTeam = [...blocks, ...ofTeam];
    if (withTeam.length > MAX_BLOCKS - OTHER_BLOCKS || lengthOfTexts(withTeam) > MAX_LENGTH) break;
    blocks.push(...ofTeam);
    shown += 1;
  }
  const hidden = overview.teams.length - shown;
  if (hidden > 0) blocks.push(section(mrkdwn('overview-more-teams', { teams: hidden })));
  if (overview.canSetUpHere) blocks.push(...setUpBlocks(hereChannelId));
  if (overview.teams.length === 0 && !overview.canSetUpHere) {
    blocks.push(section(mrkdwn('overview-no-team')));
  }
  return [...blocks, ...helpBlocks()];
}

export function helpBlocks(): KnownBlock[] {
  return [
    section(mrkdwn('overview-help')),
    actions([
      button(say('overview-help-button'), { actionId: ACTIONS.showHelp, value: HELP_VALUE }),
      button(say('overview-privacy-button'), { actionId: ACTIONS.showPrivacy, value: PRIVACY_VALUE }),
    ]),
  ];
}

function setUpBlocks(hereChannelId: string | undefined): KnownBlock[] {
  const words = section(mrkdwn('overview-set-up'));
  if (hereChannelId === undefined) return [words];
  const value = encodeValue({ channelId: hereChannelId });
  return [
    words,
    actions([button(say('overview-set-up-button'), { actionId: openFormAction('setup'), value })]),
  ];
}

function teamBlocks(overview: TeamOverview): KnownBlock[] {
  const lines = [
    bold(typed(overview.team.name)),
    ...roleLines(overview),
    ...sprintLines(overview),
    ...heldBackLines(overview),
  ];
  return [section(lines.join('\n')), ...buttonRows(overview).map(actions)];
}

/** For a product owner who is no member; members know what they are. */
function roleLines({ isMember, isProductOwner }: TeamOverview): string[] {
  return isProductOwner && !isMember ? [mrkdwn('overview-product-owner')] : [];
}

function heldBackLines({ heldBackPosts }: TeamOverview): string[] {
  return heldBackPosts === 0 ? [] : [mrkdwn('home-next-say-who-reads', { posts: heldBackPosts })];
}

function sprintLines(overview: TeamOverview): string[] {
  const { team, sprint, begun, myOpenCards, promptState, isFacilitator, isMember } = overview;
  if (!sprint) {
    return [mrkdwn('overview-no-sprint', { role: isFacilitator ? 'facilitator' : 'other-role' })];
  }
  const about = { sprint: sprint.name };
  if (!begun) {
    return [mrkdwn('overview-begins', { ...about, on: sprint.startsOn, span: sprintSpan(sprint) })];
  }
  const running = mrkdwn('overview-running', { ...about, closing: closingTime({ sprint, team }) });
  if (!isMember) return [running];
  if (myOpenCards.length === 0) return [running, mrkdwn('overview-no-card')];
  const named = myOpenCards.slice(0, CARDS_NAMED).map((card) => linkedCardName(card, CARD_NAME_MAX_LENGTH));
  const more = myOpenCards.length - named.length;
  const all = [...named, ...(more > 0 ? [say('overview-cards-more', { cards: more })] : [])];
  return [
    running,
    mrkdwn('overview-cards', { cards: myOpenCards.length, named: all }),
    ...todayLines(promptState),
  ];
}

function todayLines(promptState: TeamOverview['promptState']): string[] {
  return promptState === undefined ? [] : [mrkdwn(`overview-${promptState}`)];
}

/** In rows of a kind; a row without a button is left out. */
export function buttonRows(team: TeamOverview): Button[][] {
  return OVERVIEW_ROWS.map((row) => COMMANDS.flatMap((command) => buttonIn(row, command, team))).filter(
    (buttons) => buttons.length > 0,
  );
}

function buttonIn(
  row: OverviewButton['row'],
  { word, forms, inOverview }: Command,
  team: TeamOverview,
): Button[] {
  if (inOverview?.row !== row || inOverview.when?.(team) === false) return [];
  const { label, actionId = openFormAction(forms?.[0]?.name ?? word), value, primary } = inOverview;
  const id = label?.(team) ?? `overview-${dashed(word)}-button`;
  return [
    button(say(id as 'overview-help-button'), {
      actionId,
      value: value?.(team) ?? encodeValue({ channelId: team.team.channelId }),
      primary: primary?.(team) ?? false,
    }),
  ];
}
