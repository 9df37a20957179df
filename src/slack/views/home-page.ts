/**
 * The bot's home page: what a person has to do now, team by team, on one screen of a phone for a member with five cards.
 * Buttons are offered to those who may use them; whether somebody may is decided by the use case behind the button.
 */
import type { ActionsBlock, HomeView, KnownBlock } from '@slack/types';
import type { HomePage, HomeTeam } from '../../app/watching/home-page.ts';
import { linkedCardName } from '../../words/cards.ts';
import { todaySentences } from '../../words/home.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { closingTime, sprintSpan } from '../../words/sprint.ts';
import { typed } from '../../words/typed-text.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import { actions, button, context, lead, section } from './block-builders.ts';
import { lineList, lineSections } from './line-sections.ts';
import { buttonRows, helpBlocks } from './overview.ts';

const BLOCKS_MAX = 100;
/** How many more teams there are, the help (two blocks), and the caution. */
const OTHER_BLOCKS = 4;
/** More than anybody works on at a time; all of them are in the form. */
const CARDS_NAMED = 10;
const CARD_NAME_MAX_LENGTH = 150;

export function homeView({ teams }: HomePage): HomeView {
  const blocks: KnownBlock[] = [];
  let shown = 0;
  for (const team of teams) {
    const ofTeam = teamBlocks(team);
    if (blocks.length + ofTeam.length > BLOCKS_MAX - OTHER_BLOCKS) break;
    blocks.push(...ofTeam);
    shown += 1;
  }
  const hidden = teams.length - shown;
  if (hidden > 0) blocks.push(section(mrkdwn('overview-more-teams', { teams: hidden })));
  if (teams.length === 0) blocks.push(section(mrkdwn('overview-no-team')));
  return { type: 'home', blocks: [...blocks, ...helpBlocks(), context(mrkdwn('caution-set-up'))] };
}

function teamBlocks(about: HomeTeam): KnownBlock[] {
  const { team, sprint } = about;
  const named = { team: typed(team.name) };
  return [
    lead(sprint ? say('home-team-sprint', { ...named, sprint: sprint.name }) : say('home-team', named)),
    section(sprintSentences(about).join('\n')),
    ...dayBlocks(about),
    ...buttonRows(about).map(actions),
  ];
}

function sprintSentences({
  team,
  sprint,
  begun,
  isFacilitator,
  isMember,
  isProductOwner,
}: HomeTeam): string[] {
  const role = isProductOwner && !isMember ? [mrkdwn('overview-product-owner')] : [];
  if (!sprint) {
    return [...role, mrkdwn('overview-no-sprint', { role: isFacilitator ? 'facilitator' : 'other-role' })];
  }
  const about = { sprint: sprint.name };
  return [
    ...role,
    begun
      ? mrkdwn('overview-running', { ...about, closing: closingTime({ sprint, team }) })
      : mrkdwn('overview-begins', { ...about, on: sprint.startsOn, span: sprintSpan(sprint) }),
  ];
}

/** A member's cards, and today's question with the buttons that answer it: the same as under the daily prompt. */
function dayBlocks(about: HomeTeam): KnownBlock[] {
  const { begun, isMember, sprint, myOpenCards } = about;
  if (!begun || !isMember || !sprint) return [];
  const today = todaySentences(about).join(' ');
  const cards = myOpenCards.map((card) =>
    mrkdwn('home-card', {
      card: linkedCardName(card, CARD_NAME_MAX_LENGTH),
      left: say('cards-left', { points: card.leftPoints }),
    }),
  );
  const named = cards.slice(0, CARDS_NAMED);
  const more = cards.length - named.length;
  if (more > 0) named.push(mrkdwn('home-cards-more', { cards: more }));
  return [
    ...(cards.length === 0
      ? [section(mrkdwn('overview-no-card'))]
      : lineSections(
          lineList(mrkdwn('home-cards', { cards: cards.length }), named, () => ''),
          {},
        )),
    ...(today === '' ? [] : [context(today)]),
    ...answerButtons(about),
  ];
}

function answerButtons({ sprint, promptState, myOpenCards, today }: HomeTeam): ActionsBlock[] {
  if (!sprint || sprint.state !== 'open') return [];
  // A reopened sprint takes answers for its last day.
  const value = encodeValue({ sprintId: sprint.id, day: today > sprint.endsOn ? sprint.endsOn : today });
  const isMet = promptState !== undefined && promptState !== 'asked';
  if (isMet) {
    const label = say(promptState === 'away' ? 'prompt-after-all-button' : 'prompt-change-button');
    return [actions([button(label, { actionId: ACTIONS.openAnswerForm, value })])];
  }
  if (myOpenCards.length === 0) return [];
  return [
    actions([
      button(say('prompt-answer-button'), { actionId: ACTIONS.openAnswerForm, value, primary: true }),
      button(say('prompt-unchanged-button'), { actionId: ACTIONS.recordUnchanged, value }),
      button(say('prompt-away-button'), { actionId: ACTIONS.recordAway, value }),
    ]),
  ];
}
