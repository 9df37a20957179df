/** What was read from a CSV file of cards, and what is wrong with which of its lines. */
import { type CardFileReading, mayFillIn } from '../app/planning/card-file.ts';
import { MAX_CARDS } from '../app/planning/card-paste.ts';
import type { CardRows } from '../app/planning/card-rows.ts';
import { lineProblemWords } from './import-problems.ts';
import { problemWords } from './problems.ts';
import { Markup, mrkdwn, say } from './say.ts';
import { plainTyped, shortened } from './typed-text.ts';

const FILE_NAME_MAX_LENGTH = 60;
const COLUMN_NAME_MAX_LENGTH = 40;
const UNUSED_NAMED = 12;

/** Plain text. */
export function cardFileLead({ fileName, read }: CardFileReading): string {
  const file = shortened(plainTyped(fileName), FILE_NAME_MAX_LENGTH);
  if ('code' in read) return say('card-file-unread', { file });
  if (!hasCards(read)) return say('card-file-choose', { file });
  return say('card-file-lead', { cards: read.cards, file });
}

function hasCards({ columns }: CardRows): boolean {
  return columns.title !== undefined && columns.estimate !== undefined;
}

/** What to do now. */
export function cardFileNext({ fileName, read }: CardFileReading): string {
  if ('code' in read) {
    const problem = new Markup(lineProblemWords(read, 'mrkdwn'));
    return mrkdwn('card-file-unread-why', { file: shortened(fileName, FILE_NAME_MAX_LENGTH), problem });
  }
  if (!hasCards(read)) return mrkdwn('card-file-choose-why');
  if (read.rows === 0) return mrkdwn('card-file-no-rows');
  if (!mayFillIn(read)) return mrkdwn('card-file-too-many', { rows: read.rows, most: MAX_CARDS });
  const next = [
    ...(read.bad.length > 0 ? [mrkdwn('card-file-next-bad')] : []),
    ...(read.broken.length > 0 ? [mrkdwn('card-file-next-broken')] : []),
  ];
  return next.length > 0 ? next.join(' ') : mrkdwn('card-file-next');
}

/** The columns of which nothing is read; undefined when there is none. */
export function unusedCardColumns({ headers, columns }: CardRows): string | undefined {
  const used = new Set(Object.values(columns));
  const unused = headers
    .filter((header, place) => header !== '' && !used.has(place))
    .map((header) => shortened(plainTyped(header), COLUMN_NAME_MAX_LENGTH));
  if (unused.length === 0) return undefined;
  const more = unused.length - UNUSED_NAMED;
  const named = unused.slice(0, UNUSED_NAMED);
  if (more > 0) named.push(say('import-more-items', { count: more }));
  return mrkdwn('card-file-unused', { columns: named });
}

/** One for each line with something wrong. */
export function badRows({ bad, broken }: CardRows): string[] {
  const said = [
    ...bad.map(({ lineNumber, problem }) => ({ lineNumber, why: problemWords(problem, 'mrkdwn') })),
    ...broken.map(({ lineNumber, problem }) => ({ lineNumber, why: lineProblemWords(problem, 'mrkdwn') })),
  ].sort((a, b) => a.lineNumber - b.lineNumber);
  return said.map(
    ({ lineNumber, why }) =>
      `• ${mrkdwn('problem-bad-line', { line: lineNumber, problem: new Markup(why) })}`,
  );
}

/** What a column is called among the choices. */
export function columnName(header: string, place: number): string {
  return header === '' ? say('card-file-unnamed', { place: place + 1 }) : plainTyped(header);
}
