/** Reads a line of the files of cards, answers and changes: what it says, and what is wrong with it alone. Pure. */

import type { Day } from '../../sprint/calendar.ts';
import type { CardChangeFact, CardOrigin } from '../../sprint/card.ts';
import { cardLink, MAX_LINK_LENGTH } from '../cards/card-link.ts';
import { LineReader } from '../csv/line-reader.ts';
import type { TableLine } from '../csv/read-table.ts';
import { MAX_NOTE_LENGTH } from '../export/exported-answers.ts';
import { MAX_TITLE_LENGTH } from '../planning/card-paste.ts';
import { handOn, type ImportProblems, type LinePlace, type LineProblem, placeOf } from './import-problem.ts';
import { MOST_NAME_CHARACTERS } from './sprint-line.ts';

const MOST_KEY_CHARACTERS = 40;
/** Which sprint a line of another file is about. */
interface SprintMention extends LinePlace {
  readonly sprintName: string;
  readonly sprintStartsOn: Day | undefined;
}

export interface CardLine extends SprintMention {
  readonly number: number | undefined;
  readonly key: string;
  readonly title: string;
  readonly link: string | undefined;
  readonly estimatePoints: number;
  readonly origin: CardOrigin;
  readonly enteredOn: Day | undefined;
  readonly surprisePoints: number | undefined;
  readonly driftPoints: number | undefined;
  readonly workedPoints: number | undefined;
  readonly leftPoints: number | undefined;
  readonly state: 'open' | 'finished' | 'dropped' | undefined;
  readonly finishedOn: Day | undefined;
  readonly droppedOn: Day | undefined;
}

/** Which card a line is about, and on which day. */
interface CardMention extends SprintMention {
  readonly card: string;
  readonly day: Day;
}

export interface AnswerLine extends CardMention {
  readonly place: number | undefined;
  readonly workedPoints: number | undefined;
  readonly leftPoints: number;
  readonly surprisePoints: number;
  readonly driftPoints: number | undefined;
  readonly note: string;
}

export interface ChangeLine extends CardMention {
  readonly kind: Exclude<CardChangeFact['kind'], 'undrop'>;
  readonly afterAnswers: number | undefined;
  readonly reason: string;
}

export function readCardLine(line: TableLine<'cards'>, problems: ImportProblems): CardLine | undefined {
  const read = new LineReader<'cards', LineProblem>(line);
  const state = read.choice('state', { open: ['running'], finished: ['done', 'closed'], dropped: [] });
  const origin = read.choice('came in', { planned: ['committed'], 'pulled in': [] });
  const estimatePoints = read.requiredPoints('estimate');
  const typedLink = read.text('link', MAX_LINK_LENGTH);
  const link = cardLink(typedLink);
  if (typedLink !== '' && link === undefined) read.tell({ code: 'card-link', most: MAX_LINK_LENGTH });
  const card = {
    ...placeOf(line),
    ...sprintMention(read),
    number: read.count('card'),
    key: read.text('key', MOST_KEY_CHARACTERS),
    title: read.requiredText('title', MAX_TITLE_LENGTH),
    link,
    estimatePoints: estimatePoints ?? 0,
    origin: origin === 'pulled in' ? ('pulled-in' as const) : ('planned' as const),
    enteredOn: read.day('came in on'),
    surprisePoints: read.sumOfPoints('surprise'),
    driftPoints: read.changeOfPoints('drift'),
    workedPoints: read.sumOfPoints('worked'),
    leftPoints: read.points('left'),
    state,
    finishedOn: read.day('finished on'),
    droppedOn: read.day('dropped on'),
  };
  if (card.number === 0) read.tell({ code: 'number-zero' });
  return handOn(read, line, problems) ? undefined : card;
}

export function readAnswerLine(line: TableLine<'answers'>, problems: ImportProblems): AnswerLine | undefined {
  const read = new LineReader(line);
  const mention = cardMention(read);
  const leftPoints = read.requiredPoints('left');
  const answer = {
    ...placeOf(line),
    ...mention,
    place: read.count('answer'),
    workedPoints: read.points('worked'),
    leftPoints: leftPoints ?? 0,
    surprisePoints: read.changeOfPoints('surprise') ?? 0,
    driftPoints: read.changeOfPoints('drift'),
    note: read.longText('note', MAX_NOTE_LENGTH),
  };
  return handOn(read, line, problems) ? undefined : answer;
}

const CHANGE_KINDS = { dropped: 'drop', reopened: 'reopen', blocked: 'blocked', moving: 'moving' } as const;

export function readChangeLine(line: TableLine<'changes'>, problems: ImportProblems): ChangeLine | undefined {
  const read = new LineReader(line);
  const mention = cardMention(read);
  const kind = read.choice('change', { dropped: ['drop'], reopened: ['reopen'], blocked: [], moving: [] });
  if (kind === undefined && read.problems.length === 0) read.requiredText('change', MOST_NAME_CHARACTERS);
  const change = {
    ...placeOf(line),
    ...mention,
    kind: CHANGE_KINDS[kind ?? 'dropped'],
    afterAnswers: read.count('after answer'),
    reason: read.longText('reason', MAX_NOTE_LENGTH),
  };
  return handOn(read, line, problems) ? undefined : change;
}

function sprintMention(
  read: LineReader<'cards', LineProblem> | LineReader<'answers'> | LineReader<'changes'>,
) {
  const reader = read as LineReader<'cards'>;
  return {
    sprintName: reader.requiredText('sprint', MOST_NAME_CHARACTERS),
    sprintStartsOn: reader.day('sprint first day'),
  };
}

function cardMention(read: LineReader<'answers'> | LineReader<'changes'>) {
  const reader = read as LineReader<'answers'>;
  return {
    ...sprintMention(read),
    card: reader.requiredText('card', MOST_KEY_CHARACTERS),
    day: reader.requiredDay('day') ?? '',
  };
}
