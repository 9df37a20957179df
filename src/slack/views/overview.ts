/**
 * What somebody can do now: the reply to the command alone, and the bot's home page. Buttons are offered to those who
 * may use them; whether somebody may is decided by the use case behind the button.
 */
import type { Button, HomeView, KnownBlock } from '@slack/types';
import type { Overview, TeamOverview } from '../../app/watching/overview.ts';
import { cardName } from '../../words/cards.ts';
import { type MessageId, mrkdwn, say } from '../../words/say.ts';
import { closingTime, sprintSpan } from '../../words/sprint.ts';
import { shortened, typed } from '../../words/typed-text.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import { actions, bold, button, context, lead, section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';

const MESSAGE_BLOCKS_MAX = 49;
const HOME_BLOCKS_MAX = 98;
/** How many more teams there are, setting one up (two blocks), and the help (two blocks). */
const OTHER_BLOCKS = 5;
const CARDS_NAMED = 3;
const CARD_NAME_MAX_LENGTH = 60;
/** The help is the same everywhere. */
const HELP_VALUE = 'help';
/** It is always about the person who presses it. */
const PRIVACY_VALUE = 'me';

/** More in one row are a thicket. */
export const MOST_BUTTONS_IN_ROW = 6;

/** @param hereChannelId the channel in which the command was typed; undefined in direct messages. */
export function overviewMessage(overview: Overview, hereChannelId?: string): MessageView {
  return messageView([
    lead(say('overview-title')),
    ...overviewBlocks(overview, MESSAGE_BLOCKS_MAX, hereChannelId),
  ]);
}

export function homeView(overview: Overview): HomeView {
  return {
    type: 'home',
    blocks: [
      lead(say('overview-title')),
      ...overviewBlocks(overview, HOME_BLOCKS_MAX, undefined),
      context(mrkdwn('caution-set-up')),
    ],
  };
}

function overviewBlocks(
  overview: Overview,
  maxBlocks: number,
  hereChannelId: string | undefined,
): KnownBlock[] {
  const blocks: KnownBlock[] = [];
  let shown = 0;
  for (const team of overview.teams) {
    const ofTeam = teamBlocks(team);
    if (blocks.length + ofTeam.length > maxBlocks - OTHER_BLOCKS) break;
    blocks.push(...ofTeam);
    shown += 1;
  }
  const hidden = overview.teams.length - shown;
  if (hidden > 0) blocks.push(section(mrkdwn('overview-more-teams', { teams: hidden })));
  if (overview.canSetUpHere) blocks.push(...setUpBlocks(hereChannelId));
  if (overview.teams.length === 0 && !overview.canSetUpHere) {
    blocks.push(section(mrkdwn('overview-no-team')));
  }
  blocks.push(
    section(mrkdwn('overview-help')),
    actions([
      button(say('overview-help-button'), { actionId: ACTIONS.showHelp, value: HELP_VALUE }),
      button(say('overview-privacy-button'), { actionId: ACTIONS.showPrivacy, value: PRIVACY_VALUE }),
    ]),
  );
  return blocks;
}

function setUpBlocks(hereChannelId: string | undefined): KnownBlock[] {
  const words = section(mrkdwn('overview-set-up'));
  if (hereChannelId === undefined) return [words];
  const value = encodeValue({ channelId: hereChannelId });
  return [
    words,
    actions([button(say('overview-set-up-button'), { actionId: ACTIONS.openSetupForm, value })]),
  ];
}

function teamBlocks(overview: TeamOverview): KnownBlock[] {
  const lines = [bold(typed(overview.team.name)), ...roleLines(overview), ...sprintLines(overview)];
  return [section(lines.join('\n')), ...buttonRows(overview).map(actions)];
}

/** For a product owner who is no member; members know what they are. */
function roleLines({ isMember, isProductOwner }: TeamOverview): string[] {
  return isProductOwner && !isMember ? [mrkdwn('overview-product-owner')] : [];
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
  const named = myOpenCards
    .slice(0, CARDS_NAMED)
    .map((card) => shortened(cardName(card), CARD_NAME_MAX_LENGTH));
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

/** Makes a button that means the team of the row, wherever it is pressed. */
type PlaceButton = (label: MessageId & `overview-${string}`, actionId: string, primary?: boolean) => Button;

/** In rows of a kind; a row without a button is left out. */
export function buttonRows(overview: TeamOverview): Button[][] {
  const value = encodeValue({ channelId: overview.team.channelId });
  const place: PlaceButton = (label, actionId, primary = false) =>
    button(say(label as 'overview-help-button'), { actionId, value, primary });
  const rows = [
    dailyRow(overview, place),
    planningRow(overview, place),
    sprintAndTeamRow(overview, place),
    numbersRow(overview, place),
  ];
  return rows.filter((row) => row.length > 0);
}

/** The day's work of a member. */
function dailyRow(overview: TeamOverview, place: PlaceButton): Button[] {
  const { sprint, begun, isMember, myOpenCards, promptState } = overview;
  if (!sprint || !isMember) return [];
  const toAnswer = promptState === undefined || promptState === 'asked';
  const answer = button(say(toAnswer ? 'overview-answer-button' : 'overview-change-answer-button'), {
    actionId: ACTIONS.openAnswerForm,
    value: encodeValue({ sprintId: sprint.id }),
    primary: toAnswer,
  });
  return [
    ...(begun && myOpenCards.length > 0 ? [answer] : []),
    place('overview-status-button', ACTIONS.showStatus),
    place('overview-cards-button', ACTIONS.showCards),
    ...(begun ? [place('overview-pull-button', ACTIONS.openPullForm)] : []),
    place('overview-drop-button', ACTIONS.openDropForm),
  ];
}

/** Planning, and the questions that one asks before it. */
function planningRow({ sprint, isFacilitator }: TeamOverview, place: PlaceButton): Button[] {
  const plan = place(
    sprint ? 'overview-plan-another-button' : 'overview-plan-button',
    ACTIONS.openPlanForm,
    !sprint,
  );
  return [
    ...(isFacilitator ? [plan] : []),
    place('overview-range-button', ACTIONS.showRange),
    place('overview-odds-button', ACTIONS.showOdds),
    place('overview-forecast-button', ACTIONS.openForecastForm),
    place('overview-history-button', ACTIONS.showHistory),
  ];
}

/** What a facilitator does with the sprint as a whole, and with the team's settings. */
function sprintAndTeamRow(overview: TeamOverview, place: PlaceButton): Button[] {
  const { sprint, begun, isFacilitator, reopenable } = overview;
  if (!isFacilitator) return [];
  return [
    ...(sprint && begun ? [place('overview-close-button', ACTIONS.openCloseForm)] : []),
    ...(sprint ? [place('overview-cancel-button', ACTIONS.openCancelForm)] : []),
    ...(reopenable && !sprint ? [place('overview-reopen-button', ACTIONS.reopenLastSprint)] : []),
    place('overview-setup-button', ACTIONS.openSetupForm),
    place('overview-setup-measures-button', ACTIONS.openMeasuresForm),
  ];
}

/** What is recorded about sprints that are over, and the ways in and out of it. */
function numbersRow(overview: TeamOverview, place: PlaceButton): Button[] {
  const { isFacilitator, isProductOwner, hasFinishedSprint } = overview;
  return [
    ...(hasFinishedSprint && (isFacilitator || isProductOwner)
      ? [place('overview-value-button', ACTIONS.openValueForm)]
      : []),
    ...(hasFinishedSprint && isFacilitator
      ? [place('overview-baseline-button', ACTIONS.openBaselineForm)]
      : []),
    ...(isFacilitator ? [place('overview-import-button', ACTIONS.openImportForm)] : []),
    ...(hasFinishedSprint && isFacilitator ? [place('overview-export-button', ACTIONS.exportSprints)] : []),
  ];
}
