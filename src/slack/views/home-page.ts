/**
 * The bot's home page: what a person has to do now, team by team, on one screen of a phone for a member with five cards.
 * Buttons are offered to those who may use them; whether somebody may is decided by the use case behind the button.
 */
import type { ActionsBlock, Button, HomeView, KnownBlock, SectionBlock } from '@slack/types';
import type { HomePage, HomeTeam, NextStep } from '../../app/watching/home-page.ts';
import { linkedCardName } from '../../words/cards.ts';
import { daysOffOnHome } from '../../words/days-off.ts';
import { nextStepSentence, progressSentences, todaySentences } from '../../words/home.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { closingTime, sprintSpan } from '../../words/sprint.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS, openFormAction } from '../ids.ts';
import { actions, button, context, lead, section } from './block-builders.ts';
import { lineList, lineSections } from './line-sections.ts';
import { buttonRows, helpBlocks } from './overview.ts';

const BLOCKS_MAX = 100;
/** How many more teams there are, the help (two blocks), and the caution. */
const OTHER_BLOCKS = 4;
/** More than anybody works on at a time; all of them are in the form. */
const CARDS_NAMED = 10;
const CARD_NAME_MAX_LENGTH = 150;

/** @param openChannelId the team of this channel is shown with all its buttons */
export function homeView({ teams }: HomePage, openChannelId?: string): HomeView {
  const blocks: KnownBlock[] = [];
  let shown = 0;
  for (const team of teams) {
    const ofTeam = teamBlocks(team, team.team.channelId === openChannelId);
    if (blocks.length + ofTeam.length > BLOCKS_MAX - OTHER_BLOCKS) break;
    blocks.push(...ofTeam);
    shown += 1;
  }
  const hidden = teams.length - shown;
  if (hidden > 0) blocks.push(section(mrkdwn('overview-more-teams', { teams: hidden })));
  if (teams.length === 0) {
    blocks.push(
      lead(say('home-no-team-title')),
      section(mrkdwn('home-no-team')),
      section(mrkdwn('overview-no-team')),
    );
  }
  return { type: 'home', blocks: [...blocks, ...helpBlocks(), context(mrkdwn('caution-set-up'))] };
}

function teamBlocks(about: HomeTeam, isOpen: boolean): KnownBlock[] {
  const { team, sprint } = about;
  return [
    lead(
      sprint
        ? say('home-team-sprint', { team: team.name, sprint: sprint.name })
        : say('home-team', { team: team.name }),
    ),
    ...dayBlocks(about),
    ...daysOffBlocks(about),
    ...sprintBlocks(about),
    ...about.nextSteps.map((step) => withButton(nextStepSentence(step), nextStepButton(step, about))),
    ...moreButtons(about, isOpen),
  ];
}

function withButton(text: string, accessory: Button): SectionBlock {
  return { ...section(text), accessory };
}

function nextStepButton(step: NextStep, { team }: HomeTeam): Button {
  const value = encodeValue({ channelId: team.channelId });
  switch (step.code) {
    case 'say-who-reads':
      return button(say('overview-setup-button'), { actionId: openFormAction('setup'), value });
    case 'find-owners':
      return button(say('home-owners-button'), { actionId: ACTIONS.showCards, value });
    case 'finish-corrections':
      return button(say('home-close-button'), { actionId: openFormAction('close'), value });
    case 'finish-draft':
      return button(say('home-draft-button'), { actionId: openFormAction('plan'), value });
    case 'plan':
      return button(say('home-plan-button'), { actionId: openFormAction('plan'), value });
  }
}

function sprintBlocks(about: HomeTeam): KnownBlock[] {
  const { team, sprint, begun, isFacilitator, isMember, isProductOwner, progress, nextSteps } = about;
  const role = isProductOwner && !isMember ? [section(mrkdwn('overview-product-owner'))] : [];
  if (!sprint) {
    // A facilitator reads what to do next.
    if (nextSteps.some(({ code }) => code !== 'say-who-reads')) return role;
    const says = isFacilitator ? 'facilitator' : 'other-role';
    return [...role, section(mrkdwn('overview-no-sprint', { role: says }))];
  }
  if (!begun) {
    const begins = { sprint: sprint.name, on: sprint.startsOn, span: sprintSpan(sprint) };
    return [...role, section(mrkdwn('overview-begins', begins))];
  }
  if (!progress) {
    const closing = closingTime({ sprint, team });
    return [...role, section(mrkdwn('overview-running', { sprint: sprint.name, closing }))];
  }
  const show = button(say('home-burndown-button'), {
    actionId: ACTIONS.showBurndown,
    value: encodeValue({ sprintId: sprint.id }),
  });
  return [withButton(progressSentences({ team, sprint }, progress).join('\n'), show)];
}

/** The day's buttons in one row; the others only when asked for, so that the page stays short. */
function moreButtons(about: HomeTeam, isOpen: boolean): ActionsBlock[] {
  const rows = buttonRows(about)
    .map((row) => row.filter(({ action_id }) => action_id !== ACTIONS.openAnswerForm))
    .filter((row) => row.length > 0);
  if (isOpen) return rows.map(actions);
  const daily = (about.isMember || about.isProductOwner) && about.sprint ? (rows[0] ?? []) : [];
  const more = button(say('home-more-button'), {
    actionId: ACTIONS.showMore,
    value: encodeValue({ channelId: about.team.channelId }),
  });
  return [actions([...daily, more])];
}

/** A member's cards, and today's question with the buttons that answer it: the same as under the daily prompt. */
function dayBlocks(about: HomeTeam): KnownBlock[] {
  const { begun, isMember, sprint, myOpenCards } = about;
  if (!begun || !isMember || !sprint) return [];
  const today = isOff(about) ? mrkdwn('days-off-today') : todaySentences(about).join(' ');
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
    ...(isOff(about) ? [] : answerButtons(about)),
  ];
}

/** On a day off nothing is asked; what was answered before can still be changed. */
function isOff({ isPromptDay, todayShare, promptState }: HomeTeam): boolean {
  return isPromptDay && todayShare === 0 && (promptState === undefined || promptState === 'asked');
}

function daysOffBlocks({ team, daysOff }: HomeTeam): KnownBlock[] {
  if (daysOff === undefined) return [];
  const value = encodeValue({ channelId: team.channelId });
  const buttons = [
    button(say('days-off-home-button'), { actionId: openFormAction('days-off'), value }),
    button(say('own-prompt-home-button'), { actionId: openFormAction('own-prompt'), value }),
  ];
  return [section(daysOffOnHome(daysOff)), actions(buttons)];
}

function answerButtons({ sprint, promptState, myOpenCards, today }: HomeTeam): ActionsBlock[] {
  if (sprint?.state !== 'open') return [];
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
