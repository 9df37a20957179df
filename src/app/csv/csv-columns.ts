/**
 * The columns of the files of an export and of a file of values, declared once: writing, reading and the table in docs/import-export.md follow them.
 * Declarations only.
 */

import type { RatioId } from '../../sprint/sprint-ratios.ts';

/**
 * - `required`: a file without it can't be imported.
 * - `optional`: read when it is there.
 * - `computed`: written for people who read the file; reading computes it again and ignores what is in the file.
 */
type ColumnUse = 'required' | 'optional' | 'computed';

export interface CsvColumn {
  /** As it is written, and as messages call it. */
  readonly name: string;
  /** Other names under which it is read. Case, spaces, hyphens and underscores don't matter. */
  readonly aliases: readonly string[];
  readonly use: ColumnUse;
  /** What it holds, in a few words. */
  readonly holds: string;
  /** Set for a ratio. One that is `optional` is read where a sprint's cards are not known. */
  readonly ratio?: RatioId;
}

function column<Name extends string>(
  name: Name,
  use: ColumnUse,
  holds: string,
  ...aliases: string[]
): CsvColumn & { readonly name: Name } {
  return { name, use, holds, aliases };
}

function ratioColumn<Name extends string>(
  ratio: RatioId,
  ...of: [name: Name, use: ColumnUse, holds: string, ...aliases: string[]]
): CsvColumn & { readonly name: Name } {
  return { ...column(...of), ratio };
}

/** In the order in which they are written. The first eight are what a team that starts with Loadline will know. */
const SPRINTS = [
  column('name', 'required', 'the sprint’s name', 'sprint', 'sprint name', 'title'),
  column('first day', 'required', 'date', 'start', 'starts', 'starts on', 'start date', 'begin', 'from'),
  column('last day', 'required', 'date', 'end', 'ends', 'ends on', 'end date', 'to', 'until'),
  column(
    'commitment',
    'required',
    'points of the cards chosen at planning',
    'commitment points',
    'committed',
    'committed points',
    'planned',
    'planned points',
  ),
  column('pulled in', 'optional', 'points of the cards brought in afterwards', 'pulled in points', 'added'),
  column('surprise', 'optional', 'points of surprise work', 'surprise work', 'surprise points'),
  column(
    'finished',
    'optional',
    'points of all cards finished',
    'velocity',
    'finished points',
    'velocity points',
    'done',
    'completed',
  ),
  column('points worked', 'optional', 'points of work done', 'worked', 'worked points'),
  column(
    'finished of commitment',
    'optional',
    'points of the committed cards that were finished',
    'finished of the commitment',
    'committed finished',
  ),
  column('drift', 'optional', 'points of estimate drift', 'estimate drift', 'drift points'),
  column('state', 'optional', '`closed`, `cancelled` or `running`; only closed ones are imported', 'status'),
  column('closed on', 'optional', 'date on which it was closed, if not on its last day', 'closing day'),
  column('goal', 'optional', 'the sprint’s goal', 'sprint goal'),
  column('member days', 'optional', 'working days of all members together, without those away'),
  column('value', 'optional', 'the number that the product owner recorded', 'recorded value'),
  column(
    'daily answers',
    'optional',
    '`yes` when the sprint’s days are known from answers.csv, else `no`; left out, it follows from that file',
  ),
  ratioColumn(
    'estimateAccuracy',
    'estimate accuracy',
    'optional',
    'share, 1 is 100%; made from the cards where they are given',
    'accuracy of estimates',
  ),
  ratioColumn(
    'onScaleShare',
    'on-scale share',
    'optional',
    'share, 1 is 100%; made from the cards where they are given',
  ),
  column('working days', 'computed', 'number of the team’s working days in it'),
  column('load', 'computed', 'commitment + pulled in + surprise, in points'),
  column('verdict', 'computed', '`kept`, `missed` or `no plan`; empty when it is not known'),
  ratioColumn('keptShare', 'kept share', 'computed', 'share'),
  ratioColumn('pullInRatio', 'pull-in ratio', 'computed', 'ratio, 1 is 100%'),
  ratioColumn('surpriseRatio', 'surprise ratio', 'computed', 'ratio'),
  ratioColumn('planShare', 'plan share', 'computed', 'share'),
  ratioColumn('finishShare', 'finish share', 'computed', 'share'),
  ratioColumn(
    'velocityGrowth',
    'velocity growth',
    'computed',
    'ratio to the velocity of the baseline sprint',
  ),
] as const;

const SPRINT_REFERENCE = [
  column('sprint', 'required', 'the sprint’s name, as in sprints.csv', 'sprint name'),
  column(
    'sprint first day',
    'optional',
    'date; tells sprints of the same name apart',
    'first day',
    'sprint start',
  ),
] as const;

const CARDS = [
  ...SPRINT_REFERENCE,
  column('card', 'optional', 'the card’s number in its sprint; left out, the order counts', 'number', 'no'),
  column('key', 'optional', 'the team’s short name of it, such as berth-7'),
  column('title', 'required', 'the card’s title', 'name'),
  column('link', 'optional', 'a web address, such as the card’s page in your tracker', 'url', 'address'),
  column('estimate', 'required', 'points', 'estimate points', 'points'),
  column('came in', 'optional', '`planned` or `pulled in`; left out, planned', 'origin'),
  column(
    'came in on',
    'optional',
    'date; needed for a card that was pulled in',
    'entered on',
    'pulled in on',
  ),
  column('surprise', 'optional', 'points of surprise work', 'surprise work', 'surprise points'),
  column('drift', 'optional', 'points of estimate drift', 'estimate drift', 'drift points'),
  column('worked', 'optional', 'points worked', 'points worked', 'worked points'),
  column('left', 'optional', 'points left at the end', 'left points', 'points left'),
  column('state', 'optional', '`open`, `finished` or `dropped`', 'status'),
  column('finished on', 'optional', 'date'),
  column('dropped on', 'optional', 'date'),
] as const;

const CARD_REFERENCE = [
  ...SPRINT_REFERENCE,
  column('card', 'required', 'the card’s number or short name, as in cards.csv', 'card number', 'key'),
  column('day', 'required', 'date', 'date', 'on'),
] as const;

const ANSWERS = [
  ...CARD_REFERENCE,
  column(
    'answer',
    'optional',
    'a running number, where several owners answered on that day',
    'answer number',
  ),
  column('worked', 'optional', 'points worked since the answer before', 'points worked', 'worked points'),
  column('left', 'required', 'points left after it', 'left points', 'points left'),
  column('surprise', 'optional', 'how much of the growth was surprise work; left out, none', 'surprise work'),
  column('drift', 'optional', 'the rest of the growth', 'estimate drift'),
  column('note', 'optional', 'what was said about it'),
] as const;

const CHANGES = [
  ...CARD_REFERENCE,
  column(
    'change',
    'required',
    '`dropped`, `reopened` after it was finished, `blocked`, or `moving` again',
    'kind',
  ),
  column(
    'after answer',
    'optional',
    'how many of that day’s answers about the card came before it; left out, all of them',
  ),
  column('reason', 'optional', 'what was said about it', 'note'),
] as const;

/** What the team tries and tried. An import knows it by its required columns, and leaves it out. */
const EXPERIMENTS = [
  column('experiment', 'required', 'what the team tries, as it was typed'),
  column('ratio', 'required', 'the number that it should move, as the column in sprints.csv is called'),
  column('direction', 'required', '`up` or `down`'),
  column('begun on', 'required', 'date'),
  column(
    'after sprint',
    'required',
    'the sprint that had closed last by then, whose number is the one before; empty when none had',
  ),
  column('after sprint first day', 'computed', 'date'),
  column('outcome', 'computed', '`keep`, `change` or `drop`; empty while it is being tried'),
  column('ended on', 'computed', 'date'),
] as const;

/** Bodies of work that the team keeps by name: those to do in their order, then those that are done. */
const BODIES = [
  column('body', 'required', 'the name under which the team keeps it', 'body of work'),
  column('to do', 'required', 'points left of it, as somebody said last', 'points to do'),
  column(
    'turn',
    'optional',
    'its place in the order of those to do; left out, the order of the lines counts',
  ),
  column(
    'growth',
    'optional',
    'points by which it grows with each sprint; left out, as much as measured',
    'growth points',
  ),
  column('growth at most', 'optional', 'with it: in 8 of 10 cases the growth lies between the two'),
  column(
    'share',
    'optional',
    'share of each sprint that goes to it, 1 is 100%; left out, it waits for its turn',
  ),
  column('kept on', 'optional', 'date since which it is kept; left out, today'),
  column(
    'number',
    'optional',
    'a running number, where several of one name were kept on one day; left out, the order of the lines counts',
  ),
  column('said on', 'optional', 'date on which somebody said last what is left; left out, as kept on'),
  column('done on', 'optional', 'date; empty while it is to do'),
] as const;

/** The dates of bodies of work as they were told, to see how they moved. */
const DATES = [
  column('body', 'required', 'its name, as in bodies.csv', 'body of work'),
  column('kept on', 'optional', 'date; tells bodies of the same name apart'),
  column('number', 'optional', 'its number, as in bodies.csv; left out, 1'),
  column('told on', 'required', 'date on which the dates were told'),
  column('to do', 'required', 'points that were left by what was said then', 'points to do'),
  column('sprints since', 'optional', 'sprints that had closed since that was said; left out, none'),
  column(
    'optimistic',
    'optional',
    'date by which it was done with a chance of 15%; empty: none within reach',
  ),
  column('likely', 'optional', 'the same with 50%'),
  column('pessimistic', 'optional', 'the same with 85%'),
] as const;

/** What the product owner gives for several sprints at once. sprints.csv will do, with its names of these columns. */
const VALUES = [
  column('sprint', 'required', 'the sprint’s name', 'sprint name', 'name', 'title'),
  column(
    'sprint first day',
    'optional',
    'date; tells sprints of the same name apart',
    'first day',
    'sprint start',
    'start',
    'starts',
    'starts on',
    'start date',
  ),
  column('value', 'required', 'any number; a row without one is left out', 'recorded value'),
] as const;

export const CSV_COLUMNS = {
  sprints: SPRINTS,
  cards: CARDS,
  answers: ANSWERS,
  changes: CHANGES,
  bodies: BODIES,
  dates: DATES,
  experiments: EXPERIMENTS,
  values: VALUES,
} as const;

export type CsvKind = keyof typeof CSV_COLUMNS;
/** What is known of a team's sprints. */
export const HISTORY_KINDS = ['sprints', 'cards', 'answers', 'changes'] as const;
type HistoryKind = (typeof HISTORY_KINDS)[number];
/** What is known of the bodies of work that it keeps. */
export const BODY_KINDS = ['bodies', 'dates'] as const;
type BodyKind = (typeof BODY_KINDS)[number];
/** The kinds that an export writes and an import reads. */
export const IMPORTED_KINDS = [...HISTORY_KINDS, ...BODY_KINDS] as const;
export type ImportedKind = HistoryKind | BodyKind;

/** The names of a kind's columns. */
export type ColumnName<Kind extends CsvKind> = (typeof CSV_COLUMNS)[Kind][number]['name'];

/** As exported. */
/** @param part of an export that has several, from 1 */
export function fileNameOf(kind: CsvKind, part = 1): string {
  return part === 1 ? `${kind}.csv` : `${kind}-${part}.csv`;
}

/** Names of columns are the same whatever their case, spaces, hyphens and underscores. */
export function alikeColumn(name: string): string {
  return name
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[\s_‐-―−-]+/gu, ' ')
    .trim();
}
