/** The thread below a verdict: all numbers, the cards that explain it, and the notes, a message each. Nobody is named. */
import type { CardLine } from '../../app/cards/card-line.ts';
import { ASKS_FOR_A_RANGE } from '../../app/closing/note-history.ts';
import type { VerdictContent } from '../../app/closing/verdict-content.ts';
import type { CarriedOverCard, CoachingNote } from '../../sprint/coaching-note.ts';
import { linkedCardName } from '../../words/cards.ts';
import { evidenceSentence } from '../../words/evidence.ts';
import { experimentResultWords, tryAfterNote } from '../../words/experiments.ts';
import {
  noteHistoryWords,
  ordinaryWords,
  rangeToTryWords,
  usuallyKeptWords,
} from '../../words/note-history.ts';
import { noteWords } from '../../words/notes.ts';
import { Markup, markup, mrkdwn, say } from '../../words/say.ts';
import { mrkdwnOf } from '../../words/typed-text.ts';
import { bold, lead, section } from './block-builders.ts';
import { lineList } from './line-sections.ts';
import { type MessagePart, type MessageView, messageView } from './message-view.ts';
import { ratioBlocks } from './ratio-blocks.ts';
import { verdictCardLists } from './verdict-card-lists.ts';

/** The most telling ones. */
const CAUSES_SHOWN = 2;

export function verdictNumbersMessage({ summary, sprint }: VerdictContent): MessageView {
  const { blockedCardDays: days = 0 } = summary;
  return messageView([
    lead(say('verdict-numbers-title', { sprint: sprint.name })),
    ...ratioBlocks(summary, 'over'),
    ...(days === 0 ? [] : [section(mrkdwn('verdict-blocked-days', { days }))]),
  ]);
}

export function verdictCardsMessage(verdict: VerdictContent): MessageView {
  const lists = verdictCardLists(verdict);
  return messageView([
    lead(say('verdict-cards-title', { sprint: verdict.sprint.name })),
    ...(lists.length > 0 ? lists : [section(mrkdwn('verdict-cards-as-planned'))]),
  ]);
}

export function verdictNotesMessage(verdict: VerdictContent): MessageView {
  const { notes } = verdict;
  const ordinary = ordinaryWords(verdict.history.notes);
  return messageView([
    lead(say('verdict-notes-title', { sprint: verdict.sprint.name })),
    ...(verdict.leadingNoteId === 'no-plan' ? [section(noPlanWords(verdict))] : []),
    ...notes.map((note) => noteBlock(note, verdict)),
    ...(notes.length > 0 || verdict.leadingNoteId === 'no-plan' ? [] : [section(mrkdwn('verdict-no-notes'))]),
    ...(ordinary === undefined ? [] : [section(mrkdwnOf(ordinary))]),
    ...experimentParts(verdict),
  ]);
}

/** A sprint without a plan has a note of its own. */
function noPlanWords({ summary: { totals } }: VerdictContent): string {
  const { pulledInPoints: pulledIn, velocityPoints: finished } = totals;
  const facts = pulledIn > 0 ? [mrkdwn('evidence-no-plan-facts', { pulledIn, finished })] : [];
  return [
    bold(mrkdwn('evidence-no-plan')),
    [...facts, mrkdwn('evidence-no-plan-ask')].join(' '),
    mrkdwn('note-try-next', { try: markup('evidence-no-plan-try') }),
  ].join('\n');
}

/** All of what is tried; the post itself has room for the first lines only. */
function experimentParts({ experiments }: VerdictContent): MessagePart[] {
  if (experiments.length === 0) return [];
  const lines = experiments.map((result) => `• ${mrkdwnOf(experimentResultWords(result))}`);
  const more = (count: number): string => mrkdwn('experiments-more', { count });
  return [lineList(bold(mrkdwn('experiments-in-thread')), lines, more)];
}

function noteBlock(note: CoachingNote, verdict: VerdictContent): MessagePart {
  const { crossed, evidence, mayMean, tryNext } = noteLines(note, verdict);
  const known = verdict.history.notes.find(({ id }) => id === note.id);
  const words = [
    bold(crossed),
    evidence ?? mayMean,
    ...(known ? [mrkdwnOf(noteHistoryWords(known))] : []),
    mrkdwn('note-try-next', { try: new Markup(tryNext) }),
  ].join('\n');
  return 'cards' in note ? carriedOverCards(words, note.cards, verdict.cards) : section(words);
}

interface NoteLines {
  /** What was crossed. */
  readonly crossed: string;
  /** What the ledger shows about it, with a question; undefined where it shows nothing. */
  readonly evidence: string | undefined;
  readonly mayMean: string;
  readonly tryNext: string;
}

/** The parts of a note, in mrkdwn. Where the ledger knows what happened, that takes the place of what may have. */
export function noteLines(
  note: CoachingNote,
  { causes, cards, history, summary }: VerdictContent,
): NoteLines {
  const words = noteWords(note);
  const all = causes.get(note.id) ?? [];
  const found = all.slice(0, CAUSES_SHOWN);
  const [first] = found;
  const range = ASKS_FOR_A_RANGE.includes(note.id) ? history.rangeToTry : undefined;
  const sentences = found.map((cause) => evidenceSentence(cause, cards));
  const toTry = [
    mrkdwnOf(tryAfterNote(note, all)),
    ...(range ? rangeSentences(note.id, range, summary.totals.commitmentPoints) : []),
  ];
  return {
    crossed: mrkdwnOf(words.crossed),
    evidence: first && [...sentences, mrkdwn(`evidence-${first.code}-ask`)].join(' '),
    mayMean: mrkdwnOf(words.mayMean),
    tryNext: toTry.join(' '),
  };
}

/** How much to commit to next, as far as it is known. */
function rangeSentences(
  id: CoachingNote['id'],
  range: NonNullable<VerdictContent['history']['rangeToTry']>,
  committedPoints: number,
): string[] {
  if ('undefined' in range) return [];
  const usual = id === 'kept-share-low' ? usuallyKeptWords(range, committedPoints) : undefined;
  return [rangeToTryWords(range, committedPoints), usual]
    .filter((words) => words !== undefined)
    .map(mrkdwnOf);
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
