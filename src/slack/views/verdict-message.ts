/**
 * The verdict, posted in the channel when a sprint closes and brought up to date in place: what happened,
 * why, and what to try next. It speaks to the team and names nobody.
 */
import type { KnownBlock, SectionBlock } from '@slack/types';
import type { CardLine } from '../../app/cards/card-line.ts';
import { ASKS_FOR_A_RANGE } from '../../app/closing/note-history.ts';
import type { VerdictContent } from '../../app/posting/message-content.ts';
import type { CarriedOverCard, CoachingNote } from '../../sprint/coaching-note.ts';
import { noteWords } from '../../words/notes.ts';
import { Markup, mrkdwn } from '../../words/say.ts';
import { mrkdwnOf, plainTyped } from '../../words/typed-text.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS, COMMAND } from '../ids.ts';
import {
  actions,
  bold,
  button,
  code,
  confirmation,
  context,
  divider,
  fieldSections,
  lead,
  section,
} from './block-builders.ts';
import { cardName } from './card-words.ts';
import { type ChartImage, chartBlocks } from './chart-image.ts';
import { lineSections } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';
import { noteHistoryWords, rangeToTryWords, usuallyKeptWords } from './note-words.ts';
import { loadSentence, ratioFields } from './ratio-fields.ts';
import { counted, instantWords, spanWords } from './sprint-words.ts';
import { verdictCardLists } from './verdict-card-lists.ts';
import { failedTestSentence, reopenedSentence, verdictSentence } from './verdict-words.ts';

const BLOCKS_MAX = 50;
const CARRIED_OVER_SECTIONS_MAX = 2;

export function verdictMessage(verdict: VerdictContent, chart?: ChartImage): MessageView {
  const { summary, sprint } = verdict;
  const before: KnownBlock[] = [
    lead(`${plainTyped(sprint.name)}: ${verdictSentence(summary)}`),
    ...sectionOf([reopenedSentence(verdict), ...summary.verdict.failedTests.map(failedTestSentence)]),
    ...chartBlocks(chart),
    ...fieldSections(ratioFields(summary)),
    section(loadSentence(summary)),
    ...noteBlocks(verdict),
  ];
  const after = [context(`${spanWords(sprint)}. ${nextWords(verdict)}`), ...reopenBlocks(verdict)];
  const lists = verdictCardLists(verdict, BLOCKS_MAX - before.length - after.length);
  return messageView([...before, ...lists, ...after]);
}

/** One section of the lines that are not empty; none when all are. */
function sectionOf(lines: readonly string[]): KnownBlock[] {
  const said = lines.filter((line) => line !== '').map(mrkdwnOf);
  return said.length === 0 ? [] : [section(said.join('\n'))];
}

function noteBlocks(verdict: VerdictContent): KnownBlock[] {
  const { notes } = verdict.summary;
  if (notes.length === 0) return [];
  return [divider(), ...notes.flatMap((note) => noteSections(note, verdict)), divider()];
}

function noteSections(note: CoachingNote, { summary, history, cards }: VerdictContent): SectionBlock[] {
  const { id } = note;
  const { crossed, mayMean, tryNext } = noteWords(note, summary.verdict.failedTests.length > 0);
  const known = history.notes.find((one) => one.id === id);
  const range = ASKS_FOR_A_RANGE.includes(id) ? history.rangeToTry : undefined;
  const words = [
    bold(mrkdwnOf(crossed)),
    mrkdwnOf(mayMean),
    ...(known ? [noteHistoryWords(known)] : []),
    `Try next: ${mrkdwnOf(tryNext)}`,
    ...(range ? [rangeLine(range, id, summary.totals.commitmentPoints)] : []),
  ].join('\n');
  return 'cards' in note ? carriedOverSections(words, note.cards, cards) : [section(words)];
}

function rangeLine(
  range: NonNullable<VerdictContent['history']['rangeToTry']>,
  id: CoachingNote['id'],
  committedPoints: number,
): string {
  const usual = id === 'kept-share-low' ? usuallyKeptWords(range, committedPoints) : '';
  return mrkdwnOf([rangeToTryWords(range, committedPoints), usual].join(' ').trim());
}

/** The cards that a note is about, below its words. */
function carriedOverSections(
  words: string,
  carried: readonly CarriedOverCard[],
  cards: readonly CardLine[],
): SectionBlock[] {
  const lines = carried.flatMap(({ cardId, sprints }) => {
    const card = cards.find((one) => one.cardId === cardId);
    return card ? [`• ${mrkdwn('note-carried-card', { card: new Markup(cardName(card)), sprints })}`] : [];
  });
  return lineSections(words, lines, {
    maxSections: CARRIED_OVER_SECTIONS_MAX,
    more: (count) => `… and ${counted(count, 'more card')}.`,
  });
}

function nextWords({ reopened, reopenUntil, team }: VerdictContent): string {
  const plan = `Next: plan the coming sprint with ${code(`${COMMAND} plan`)}.`;
  if (reopened === 'open')
    return `Next: correct what is wrong, then close it with ${code(`${COMMAND} close`)}.`;
  if (!reopenUntil) return plan;
  return `${plan} If a number is wrong, a facilitator can reopen the sprint until ${instantWords(reopenUntil, team.timeZone)}.`;
}

function reopenBlocks({ reopenUntil, reopened, sprint }: VerdictContent): KnownBlock[] {
  if (!reopenUntil || reopened === 'open') return [];
  return [
    actions([
      button('Reopen for corrections', {
        actionId: ACTIONS.reopenSprint,
        value: encodeValue({ sprintId: sprint.id }),
        confirm: confirmation({
          title: 'Reopen the sprint?',
          text: 'Answers can then be corrected. It closes again by itself, and this post is brought up to date.',
          yes: 'Reopen',
          no: 'Leave it closed',
        }),
      }),
    ]),
  ];
}
