/**
 * The answer to a planning question, in one frame for all four: the sentence that matters, the evidence and the chart, on
 * one screen of a phone. How it was made and what it doesn't know are a message of their own, behind a button.
 */
import type { Button, KnownBlock } from '@slack/types';
import type { Advice, JointAdvice } from '../../app/advice/advice.ts';
import type { AdviceWords, TitledLines } from '../../words/advice.ts';
import { keptWords } from '../../words/bodies.ts';
import { forecastWords } from '../../words/forecast.ts';
import { historyWords } from '../../words/history.ts';
import { jointWords } from '../../words/joint.ts';
import { oddsWords } from '../../words/odds.ts';
import { mention } from '../../words/people.ts';
import { rangeWords } from '../../words/range.ts';
import { Markup, mrkdwn, say } from '../../words/say.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS, openFormAction } from '../ids.ts';
import {
  actions,
  bold,
  button,
  type ChartImage,
  chartBlocks,
  context,
  lead,
  section,
} from './block-builders.ts';
import { lineList } from './line-sections.ts';
import { type MessagePart, type MessageView, messageView } from './message-view.ts';

/** What the asker alone sees. */
export function adviceMessage(advice: Advice, chart?: ChartImage): MessageView {
  const words = wordsOf(advice);
  const note = words.isAnswered
    ? `${mrkdwn('advice-only-you')} ${mrkdwn('caution-people')}`
    : mrkdwn('advice-only-you');
  return messageView([
    ...adviceBlocks(words, chart, changeButtons(advice)),
    context(note),
    actions(buttonsOf(advice, words.isAnswered)),
  ]);
}

/** What the channel sees. */
export function sharedAdviceMessage(advice: Advice, byUserId: string, chart?: ChartImage): MessageView {
  const shared = mrkdwn('advice-shared', {
    person: new Markup(mention(byUserId)),
    on: advice.on,
    command: advice.question.about === 'kept' ? 'forecast' : advice.question.about,
  });
  return messageView([
    ...adviceBlocks(wordsOf(advice), chart),
    context(`${shared} ${mrkdwn('caution-people')}`),
    actions([detailsButton(advice)]),
  ]);
}

/** About parts of several teams: for the asker alone, with nothing to share, since channels are of one team each. */
export function jointMessage(advice: JointAdvice, chart?: ChartImage): MessageView {
  const words = jointWords(advice);
  return messageView([
    ...adviceBlocks(words, chart),
    ...unknownBlocks(words.unknown),
    context(`${mrkdwn('advice-only-you')} ${mrkdwn('caution-people')}`),
  ]);
}

/** How the answer was made, for one person who asked that. */
export function adviceDetailsMessage(advice: Advice): MessageView {
  const { lead: answer, evidence, details, unknown } = wordsOf(advice);
  return messageView([
    lead(answer),
    // An answer that could be given then, and can't any more, says why.
    ...(details.length > 0 ? details : evidence).map((part) => paragraph(part)),
    ...unknownBlocks(unknown),
    context(mrkdwn('advice-only-you')),
  ]);
}

function wordsOf(advice: Advice): AdviceWords {
  if ('odds' in advice) return oddsWords(advice);
  if ('range' in advice) return rangeWords(advice);
  if ('forecast' in advice) return forecastWords(advice);
  if ('bodies' in advice) return keptWords(advice);
  return historyWords(advice);
}

/** @param beside the first paragraphs of the evidence, a button each */
function adviceBlocks(
  words: AdviceWords,
  chart: ChartImage | undefined,
  beside: readonly Button[] = [],
): MessagePart[] {
  const evidence = words.evidence.map((part, i) => paragraph(part, beside[i]));
  return [lead(words.lead), ...evidence, ...chartBlocks(chart)];
}

function paragraph(part: string | TitledLines, beside?: Button): MessagePart {
  if (typeof part === 'string') return { ...section(part), ...(beside && { accessory: beside }) };
  return lineList(bold(part.title), part.lines, (count) => mrkdwn('advice-more-lines', { count }));
}

function unknownBlocks(sentences: readonly string[]): KnownBlock[] {
  if (sentences.length === 0) return [];
  return [section([bold(mrkdwn('advice-unknown-title')), ...sentences.map((one) => `• ${one}`)].join('\n'))];
}

function detailsButton({ team, question }: Advice): Button {
  return button(say('advice-details-button'), {
    actionId: ACTIONS.explainAdvice,
    value: encodeValue({ teamId: team.id, question }),
  });
}

/** Beside each body of work that is kept, a button to say what is left of it. */
function changeButtons(advice: Advice): Button[] {
  if (!('bodies' in advice) || !advice.askerMayKeep) return [];
  return advice.bodies.map(({ body: { id: bodyId } }) =>
    button(say('kept-change-button'), { actionId: ACTIONS.changeBody, value: encodeValue({ bodyId }) }),
  );
}

/** Sharing, changing the question, and what one would ask next. Nobody is offered what they may not do. */
function buttonsOf(advice: Advice, isAnswered: boolean): Button[] {
  const { team, question, askerIsFacilitator } = advice;
  const value = encodeValue({ teamId: team.id, question });
  const place = encodeValue({ channelId: team.channelId });
  const mayKeep = 'askerMayKeep' in advice && advice.askerMayKeep === true;
  const next = (label: string, actionId: string): Button => button(label, { actionId, value: place });
  const odds = () => next(say('advice-odds-button'), ACTIONS.showOdds);
  const range = () => next(say('advice-range-button'), ACTIONS.showRange);
  const history = () => next(say('advice-history-button'), ACTIONS.showHistory);
  const change = (label: string, actionId: string): Button => button(label, { actionId, value });
  const plan = askerIsFacilitator ? [next(say('advice-plan-button'), openFormAction('plan'))] : [];
  const share = isAnswered
    ? [change(say('advice-share-button'), ACTIONS.shareAdvice), detailsButton(advice)]
    : [];
  switch (question.about) {
    case 'odds':
      return [...share, range(), ...plan];
    case 'range':
      return [...share, change(say('advice-change-range-button'), ACTIONS.changeRange), odds(), ...plan];
    case 'forecast':
      return [
        ...share,
        change(say('advice-change-forecast-button'), ACTIONS.changeForecast),
        ...(mayKeep && question.backlogPoints !== undefined
          ? [change(say('kept-new-button'), ACTIONS.keepForecast)]
          : []),
        history(),
      ];
    case 'kept':
      return [
        ...share,
        ...(mayKeep ? [next(say('kept-new-button'), openFormAction('keep'))] : []),
        next(say('kept-forecast-button'), openFormAction('forecast')),
      ];
    case 'history':
      return [...share, range(), next(say('advice-experiments-button'), ACTIONS.showExperiments)];
  }
}
