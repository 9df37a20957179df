/** What the caller can do now, as blocks for a reply or for the bot's home page. */
import type { KnownBlock } from '@slack/types';
import type { Overview, TeamOverview } from '../../app/watching/overview.ts';
import { formatDay } from '../../sprint/calendar.ts';
import { mrkdwnOf, shortened, typed } from '../../words/typed-text.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS, COMMAND } from '../ids.ts';
import { actions, bold, button, code, section } from './block-builders.ts';
import { plainCardName } from './card-words.ts';
import { overviewButtons } from './overview-buttons.ts';
import { closingWords, counted, listed, spanWords } from './sprint-words.ts';

/** How many more teams there are, setting one up (two blocks), and the help (two blocks). */
const OTHER_BLOCKS = 5;
const CARDS_NAMED = 3;
const CARD_NAME_MAX_LENGTH = 60;
/** The help is the same everywhere. */
const HELP_VALUE = 'help';
/** It is always about whoever presses it. */
const PRIVACY_VALUE = 'me';

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
  let shown = 0;
  for (const team of overview.teams) {
    const ofTeam = teamBlocks(team);
    if (blocks.length + ofTeam.length > maxBlocks - OTHER_BLOCKS) break;
    blocks.push(...ofTeam);
    shown += 1;
  }
  const hidden = overview.teams.length - shown;
  if (hidden > 0) {
    blocks.push(
      section(`You have ${counted(hidden, 'more team')}: type ${code(COMMAND)} in the team’s channel.`),
    );
  }
  if (overview.canSetUpHere) blocks.push(...setUpBlocks(hereChannelId));
  if (overview.teams.length === 0 && !overview.canSetUpHere) blocks.push(section(noTeamWords()));
  blocks.push(
    section(`All commands: ${code(`${COMMAND} help`)}.`),
    actions([
      button('Help', { actionId: ACTIONS.showHelp, value: HELP_VALUE }),
      button('What is stored about me', { actionId: ACTIONS.showPrivacy, value: PRIVACY_VALUE }),
    ]),
  );
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
  const lines = [bold(typed(overview.team.name)), ...roleLines(overview), ...sprintLines(overview)];
  return [section(lines.join('\n')), ...overviewButtons(overview).map(actions)];
}

/** Of a product owner who is no member; members know what they are. */
function roleLines({ isMember, isProductOwner }: TeamOverview): string[] {
  return isProductOwner && !isMember
    ? [
        'You are its product owner: here is what its past sprints tell. Cards and answers stay with its members.',
      ]
    : [];
}

function sprintLines({
  team,
  sprint,
  begun,
  myOpenCards,
  promptState,
  isFacilitator,
  isMember,
}: TeamOverview): string[] {
  if (!sprint) {
    const next = isFacilitator ? 'Plan one when the team is ready.' : 'A facilitator can plan one.';
    return [`No sprint is running. ${next}`];
  }
  const name = typed(sprint.name);
  if (!begun) return [`${name} begins on ${formatDay(sprint.startsOn)} (${spanWords(sprint)}).`];
  const running = `${name} is running and closes on ${closingWords({ sprint, team })}.`;
  if (!isMember) return [running];
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
