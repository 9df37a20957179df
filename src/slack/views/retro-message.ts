/** The retrospective sheet as a message: for the person who asked, or shared with the channel. It names cards and nobody. */
import type { RetroContent } from '../../app/retro/retro-content.ts';
import type { TimelineDay } from '../../app/retro/timeline.ts';
import { person } from '../../words/people.ts';
import {
  BRIEF,
  retroDayLine,
  retroExperimentLine,
  retroHeadline,
  retroQuestionLine,
  retroWithoutDays,
  tellingCardLine,
} from '../../words/retro.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { mrkdwnOf } from '../../words/typed-text.ts';
import { goalSentence } from '../../words/verdict.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import { actions, bold, button, context, lead, section } from './block-builders.ts';
import { type MessagePart, type MessageView, messageView } from './message-view.ts';

/** What fits one screen. */
const DAYS_SHOWN = 8;
const CARDS_SHOWN = 4;
const EXPERIMENTS_SHOWN = 2;

export function retroMessage(retro: RetroContent): MessageView {
  const value = encodeValue({ sprintId: retro.sprint.id });
  return messageView([
    ...sheet(retro),
    context(mrkdwn('retro-only-you')),
    actions([
      button(say('retro-share-button'), { actionId: ACTIONS.shareRetro, value }),
      button(say('retro-page-button'), { actionId: ACTIONS.printRetro, value }),
    ]),
  ]);
}

/** What the channel sees. */
export function sharedRetroMessage(retro: RetroContent, byUserId: string): MessageView {
  return messageView([...sheet(retro), context(mrkdwn('retro-shared-by', { person: person(byUserId) }))]);
}

export function retroSharedReply(): MessageView {
  return messageView([section(mrkdwn('retro-shared-reply'))]);
}

/** Beside the file. */
export function retroPageComment({ sprint }: RetroContent): string {
  return mrkdwn('retro-page-comment', { sprint: sprint.name });
}

export function retroPageSent(): MessageView {
  return messageView([section(mrkdwn('retro-page-sent'))]);
}

function sheet(retro: RetroContent): MessagePart[] {
  const { verdict, timeline, telling, experiments, questions } = retro;
  const goal = verdict && goalSentence(verdict);
  const headline = [retroHeadline(retro), ...(goal === undefined ? [] : [goal])];
  const shown = mostEventful(timeline);
  const left = timeline.length - shown.length;
  const noDays = retroWithoutDays(retro);
  return [
    lead(say('retro-title', { sprint: retro.sprint.name })),
    section(headline.map(mrkdwnOf).join('\n')),
    ...list(say('retro-days-title'), [
      ...(noDays === undefined ? [] : [noDays]),
      ...shown.map((day) => retroDayLine(day, retro, 'mrkdwn', BRIEF)),
      ...(left === 0 ? [] : [mrkdwn('retro-days-more', { days: left })]),
    ]),
    ...list(
      say('retro-cards-title'),
      telling.slice(0, CARDS_SHOWN).map((card) => `• ${tellingCardLine(card, retro, 'mrkdwn', BRIEF)}`),
    ),
    ...list(
      say('experiments-in-thread'),
      experiments.slice(-EXPERIMENTS_SHOWN).map((one) => `• ${retroExperimentLine(one, 'mrkdwn')}`),
    ),
    ...list(
      say('retro-questions-title'),
      questions.map((question, i) => retroQuestionLine(question, i + 1, retro, 'mrkdwn')),
    ),
  ];
}

/** Of a long sprint, the days on which most happened; that cards were finished counts least. */
function mostEventful(timeline: readonly TimelineDay[]): TimelineDay[] {
  const weight = ({ events }: TimelineDay): number => events.filter(({ kind }) => kind !== 'finished').length;
  const chosen = [...timeline].sort((a, b) => weight(b) - weight(a)).slice(0, DAYS_SHOWN);
  return timeline.filter((day) => chosen.includes(day));
}

function list(title: string, lines: readonly string[]): MessagePart[] {
  return lines.length === 0 ? [] : [section([bold(mrkdwnOf(title)), ...lines].join('\n'))];
}
