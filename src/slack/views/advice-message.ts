/**
 * The answer to a planning question, in one frame for all four: the sentence that matters, the evidence, the chart, and
 * what it does not know. The asker's own answer has buttons; the one that is shared says who shared it.
 */
import type { Button, KnownBlock } from '@slack/types';
import type { Advice } from '../../app/advice/advice.ts';
import { mention } from '../../words/typed-text.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS, COMMAND } from '../ids.ts';
import type { AdviceWords, TitledLines } from './advice-words.ts';
import { actions, bold, button, code, context, lead, section } from './block-builders.ts';
import { PEOPLE_CAUTION } from './caution-words.ts';
import { type ChartImage, chartBlocks } from './chart-image.ts';
import { datedDay } from './closed-sprint-words.ts';
import { forecastWords } from './forecast-words.ts';
import { historyWords } from './history-words.ts';
import { lineSections } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';
import { oddsWords } from './odds-words.ts';
import { rangeWords } from './range-words.ts';

const LINE_SECTIONS_MAX = 6;

/** What the asker alone sees. */
export function adviceMessage(advice: Advice, chart?: ChartImage): MessageView {
  const words = wordsOf(advice);
  const note = words.isAnswered
    ? `Only you see this, unless you share it. ${PEOPLE_CAUTION}`
    : 'Only you see this.';
  return messageView([
    ...adviceBlocks(words, chart),
    context(note),
    actions(buttonsOf(advice, words.isAnswered)),
  ]);
}

/** What the channel sees. */
export function sharedAdviceMessage(advice: Advice, byUserId: string, chart?: ChartImage): MessageView {
  const again = `Shared by ${mention(byUserId)} on ${datedDay(advice.on)}. Ask it any time with ${code(`${COMMAND} ${advice.question.about}`)}.`;
  return messageView([...adviceBlocks(wordsOf(advice), chart), context(`${again} ${PEOPLE_CAUTION}`)]);
}

function wordsOf(advice: Advice): AdviceWords {
  if ('odds' in advice) return oddsWords(advice);
  if ('range' in advice) return rangeWords(advice);
  if ('forecast' in advice) return forecastWords(advice);
  return historyWords(advice);
}

function adviceBlocks(words: AdviceWords, chart: ChartImage | undefined): KnownBlock[] {
  return [
    lead(words.lead),
    ...words.evidence.flatMap((part) => (typeof part === 'string' ? [section(part)] : titledSections(part))),
    ...chartBlocks(chart),
    ...unknownBlocks(words.unknown),
  ];
}

function titledSections({ title, lines }: TitledLines): KnownBlock[] {
  return lineSections(bold(title), lines, {
    maxSections: LINE_SECTIONS_MAX,
    more: (count) => `… and ${count} more.`,
  });
}

function unknownBlocks(sentences: readonly string[]): KnownBlock[] {
  if (sentences.length === 0) return [];
  return [section([bold('What this does not know'), ...sentences.map((one) => `• ${one}`)].join('\n'))];
}

type Label = readonly [label: string, actionId: string];
const ODDS: Label = ['Surprise odds', ACTIONS.showOdds];
const RANGE: Label = ['Commitment range', ACTIONS.showRange];
const HISTORY: Label = ['History', ACTIONS.showHistory];

/** Sharing, changing the question, and what one would ask next. Nobody is offered what they may not do. */
function buttonsOf(advice: Advice, isAnswered: boolean): Button[] {
  const { team, question, askerIsFacilitator } = advice;
  const value = encodeValue({ teamId: team.id, question });
  const place = encodeValue({ channelId: team.channelId });
  const next = ([label, actionId]: Label): Button => button(label, { actionId, value: place });
  const change = (label: string, actionId: string): Button => button(label, { actionId, value });
  const plan = askerIsFacilitator ? [next(['Plan a sprint', ACTIONS.openPlanForm])] : [];
  const share = isAnswered ? [change('Share in the channel', ACTIONS.shareAdvice)] : [];
  switch (question.about) {
    case 'odds':
      return [...share, next(RANGE), ...plan];
    case 'range':
      return [...share, change('Other days or people away', ACTIONS.changeRange), next(ODDS), ...plan];
    case 'forecast':
      return [...share, change('Change the numbers', ACTIONS.changeForecast), next(HISTORY)];
    case 'history':
      return [...share, next(RANGE), next(ODDS)];
  }
}
