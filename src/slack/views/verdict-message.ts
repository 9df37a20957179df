/**
 * The verdict, posted in the channel when a sprint closes and brought up to date in place: what happened,
 * why, and what to try next. It speaks to the team and names nobody.
 */
import type { KnownBlock } from '@slack/types';
import type { CardLine } from '../../app/cards/card-line.ts';
import { ASKS_FOR_A_RANGE } from '../../app/closing/note-history.ts';
import type { VerdictContent } from '../../app/closing/verdict-content.ts';
import type { CarriedOverCard, CoachingNote } from '../../sprint/coaching-note.ts';
import { linkedCardName } from '../../words/cards.ts';
import { noteHistoryWords, rangeToTryWords, usuallyKeptWords } from '../../words/note-history.ts';
import { noteWords } from '../../words/notes.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { momentOf, sprintSpan } from '../../words/sprint.ts';
import { mrkdwnOf } from '../../words/typed-text.ts';
import { failedTestSentence, reopenedSentence, verdictSentence } from '../../words/verdict.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import {
  actions,
  bold,
  button,
  type ChartImage,
  chartBlocks,
  confirmation,
  context,
  divider,
  lead,
  section,
} from './block-builders.ts';
import { lineList } from './line-sections.ts';
import { type MessagePart, type MessageView, messageView } from './message-view.ts';
import { ratioBlocks } from './ratio-blocks.ts';
import { verdictCardLists } from './verdict-card-lists.ts';

export function verdictMessage(verdict: VerdictContent, chart?: ChartImage): MessageView {
  const { summary, sprint } = verdict;
  return messageView([
    lead(say('verdict-title', { sprint: sprint.name, verdict: verdictSentence(summary) })),
    ...sectionOf([reopenedSentence(verdict), ...summary.verdict.failedTests.map(failedTestSentence)]),
    ...chartBlocks(chart),
    ...ratioBlocks(summary),
    ...noteBlocks(verdict),
    ...verdictCardLists(verdict),
    context(`${mrkdwnOf(sprintSpan(sprint))}. ${nextWords(verdict)}`),
    ...reopenBlocks(verdict),
  ]);
}

/** One section of the sentences that there are; none when there are none. */
function sectionOf(sentences: readonly (string | undefined)[]): KnownBlock[] {
  const said = sentences.filter((sentence) => sentence !== undefined).map(mrkdwnOf);
  return said.length === 0 ? [] : [section(said.join('\n'))];
}

function noteBlocks(verdict: VerdictContent): MessagePart[] {
  const { notes } = verdict.summary;
  if (notes.length === 0) return [];
  return [divider(), ...notes.map((note) => noteBlock(note, verdict)), divider()];
}

function noteBlock(note: CoachingNote, { summary, history, cards }: VerdictContent): MessagePart {
  const { id } = note;
  const { crossed, mayMean, tryNext } = noteWords(note, summary.verdict.failedTests.length > 0);
  const known = history.notes.find((one) => one.id === id);
  const range = ASKS_FOR_A_RANGE.includes(id) ? history.rangeToTry : undefined;
  const words = [
    bold(mrkdwnOf(crossed)),
    mrkdwnOf(mayMean),
    ...(known ? [mrkdwnOf(noteHistoryWords(known))] : []),
    mrkdwn('note-try-next', { try: tryNext }),
    ...(range ? [rangeLine(range, id, summary.totals.commitmentPoints)] : []),
  ].join('\n');
  return 'cards' in note ? carriedOverCards(words, note.cards, cards) : section(words);
}

function rangeLine(
  range: NonNullable<VerdictContent['history']['rangeToTry']>,
  id: CoachingNote['id'],
  committedPoints: number,
): string {
  const usual = id === 'kept-share-low' ? usuallyKeptWords(range, committedPoints) : undefined;
  const sentences = [rangeToTryWords(range, committedPoints), ...(usual === undefined ? [] : [usual])];
  return mrkdwnOf(sentences.join(' '));
}

/** The cards that a note is about, below its words. */
function carriedOverCards(
  words: string,
  carried: readonly CarriedOverCard[],
  cards: readonly CardLine[],
): MessagePart {
  const lines = carried.flatMap(({ cardId, sprints }) => {
    const card = cards.find((one) => one.cardId === cardId);
    return card ? [`• ${mrkdwn('note-carried-card', { card: linkedCardName(card), sprints })}`] : [];
  });
  if (lines.length === 0) return section(words);
  return lineList(words, lines, (cards) => mrkdwn('cards-more', { cards }));
}

function nextWords({ reopened, reopenUntil, team }: VerdictContent): string {
  if (reopened === 'open') return mrkdwn('verdict-next-correct');
  const plan = mrkdwn('verdict-next-plan');
  if (!reopenUntil) return plan;
  return `${plan} ${mrkdwn('verdict-reopen-until', { moment: momentOf(reopenUntil, team.timeZone) })}`;
}

function reopenBlocks({ reopenUntil, reopened, sprint }: VerdictContent): KnownBlock[] {
  if (!reopenUntil || reopened === 'open') return [];
  return [
    actions([
      button(say('verdict-reopen'), {
        actionId: ACTIONS.reopenSprint,
        value: encodeValue({ sprintId: sprint.id }),
        confirm: confirmation({
          title: say('verdict-reopen-title'),
          text: say('verdict-reopen-text'),
          yes: say('verdict-reopen-yes'),
          no: say('verdict-reopen-no'),
        }),
      }),
    ]),
  ];
}
