/** What the caller can do now, as blocks for a reply or for the bot's home page. */
import type { Button, KnownBlock } from '@slack/types';
import type { Overview, TeamOverview } from '../../app/overview.ts';
import { formatDay } from '../../sprint/calendar.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS, COMMAND } from '../ids.ts';
import { actions, bold, button, code, section } from './block-builders.ts';
import { plainCardName } from './card-words.ts';
import { closingWords, counted, listed, spanWords } from './sprint-words.ts';
import { mrkdwnOf, shortened, typed } from './typed-text.ts';

/** Of one team: a section and a row of buttons. */
const BLOCKS_PER_TEAM = 2;
/** How many more teams there are, setting one up (two blocks), and the help. */
const OTHER_BLOCKS = 4;
const CARDS_NAMED = 3;
const CARD_NAME_MAX_LENGTH = 60;

export interface OverviewOptions {
  /** The channel in which a team can be set up, when the overview says that it can. */
  readonly hereChannelId?: string | undefined;
  readonly maxBlocks: number;
}

export function overviewBlocks(
  overview: Overview,
  { hereChannelId, maxBlocks }: OverviewOptions,
): KnownBlock[] {
  const blocks: KnownBlock[] = [];
  const roomForTeams = Math.floor((maxBlocks - OTHER_BLOCKS) / BLOCKS_PER_TEAM);
  for (const team of overview.teams.slice(0, roomForTeams)) blocks.push(...teamBlocks(team));
  const hidden = overview.teams.length - roomForTeams;
  if (hidden > 0) {
    blocks.push(
      section(`You are in ${counted(hidden, 'more team')}: type ${code(COMMAND)} in the team’s channel.`),
    );
  }
  if (overview.canSetUpHere) blocks.push(...setUpBlocks(hereChannelId));
  if (overview.teams.length === 0 && !overview.canSetUpHere) blocks.push(section(noTeamWords()));
  blocks.push(section(`All commands: ${code(`${COMMAND} help`)}.`));
  return blocks;
}

function noTeamWords(): string {
  return `You are not in a team here. To set one up, type ${code(`${COMMAND} setup`)} in the team’s channel; to join one, ask its facilitator to add you there.`;
}

function setUpBlocks(hereChannelId: string | undefined): KnownBlock[] {
  const words = `This channel has no team yet. Set one up with ${code(`${COMMAND} setup`)}.`;
  if (hereChannelId === undefined) return [section(words)];
  const value = encodeValue({ channelId: hereChannelId });
  return [section(words), actions([button('Set up a team', { actionId: ACTIONS.openSetupForm, value })])];
}

function teamBlocks(overview: TeamOverview): KnownBlock[] {
  const lines = [bold(typed(overview.team.name)), ...sprintLines(overview)];
  return [section(lines.join('\n')), actions(buttonsOf(overview))];
}

function sprintLines({
  team,
  sprint,
  begun,
  myOpenCards,
  promptState,
  isFacilitator,
}: TeamOverview): string[] {
  if (!sprint) {
    const next = isFacilitator ? 'Plan one when the team is ready.' : 'A facilitator can plan one.';
    return [`No sprint is running. ${next}`];
  }
  const name = typed(sprint.name);
  if (!begun) return [`${name} begins on ${formatDay(sprint.startsOn)} (${spanWords(sprint)}).`];
  const running = `${name} is running and closes on ${closingWords({ sprint, team })}.`;
  if (myOpenCards.length === 0) return [running, 'You have no open card.'];
  const named = myOpenCards
    .slice(0, CARDS_NAMED)
    .map((card) => mrkdwnOf(shortened(plainCardName(card), CARD_NAME_MAX_LENGTH)));
  const more = myOpenCards.length - named.length;
  const cards = listed([...named, ...(more > 0 ? [`${more} more`] : [])]);
  return [
    running,
    `You have ${counted(myOpenCards.length, 'open card')}: ${cards}.`,
    todayWords(promptState),
  ].filter((line) => line !== '');
}

function todayWords(promptState: TeamOverview['promptState']): string {
  switch (promptState) {
    case 'asked':
      return 'Today’s question is waiting for your answer.';
    case 'answered':
      return 'You have answered today.';
    case 'unchanged':
      return 'You have said today that nothing changed.';
    case 'away':
      return 'You are away today.';
    case undefined:
      return '';
  }
}

function buttonsOf({
  team,
  sprint,
  begun,
  isFacilitator,
  myOpenCards,
  promptState,
  reopenable,
}: TeamOverview): Button[] {
  const value = encodeValue({ channelId: team.channelId });
  const place = (label: string, actionId: string, primary = false): Button =>
    button(label, { actionId, value, primary });
  const buttons: Button[] = [];
  if (sprint && begun && myOpenCards.length > 0) {
    const toAnswer = promptState === undefined || promptState === 'asked';
    buttons.push(
      button(toAnswer ? 'Answer' : 'Change my answer', {
        actionId: ACTIONS.openAnswerForm,
        value: encodeValue({ sprintId: sprint.id }),
        primary: toAnswer,
      }),
    );
  }
  if (sprint) buttons.push(place('Status', ACTIONS.showStatus), place('Cards', ACTIONS.showCards));
  if (sprint && begun) buttons.push(place('Pull in a card', ACTIONS.openPullForm));
  if (sprint) buttons.push(place('Drop a card', ACTIONS.openDropForm));
  if (isFacilitator) {
    buttons.push(place(sprint ? 'Plan another sprint' : 'Plan a sprint', ACTIONS.openPlanForm, !sprint));
    if (sprint && begun) buttons.push(place('Close the sprint', ACTIONS.openCloseForm));
    if (sprint) buttons.push(place('Cancel the sprint', ACTIONS.openCancelForm));
    if (reopenable && !sprint) buttons.push(place('Reopen the last sprint', ACTIONS.reopenLastSprint));
    buttons.push(
      place('Team and times', ACTIONS.openSetupForm),
      place('Scale and thresholds', ACTIONS.openMeasuresForm),
    );
  }
  buttons.push(place('Help', ACTIONS.showHelp));
  return buttons;
}
