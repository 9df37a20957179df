/** Reads a line of the file of sprints: what it says, and what is wrong with it alone. Pure. */
import { type Day, daysBetween } from '../../sprint/calendar.ts';
import { RATIOS, type RatioId } from '../../sprint/sprint-ratios.ts';
import { CSV_COLUMNS } from '../csv/csv-columns.ts';
import { LineReader } from '../csv/line-reader.ts';
import type { TableLine } from '../csv/read-table.ts';
import { handOn, type ImportProblems, type LinePlace, type LineProblem, placeOf } from './import-problem.ts';

/** A sprint longer than this is surely a typing error. */
const MOST_SPRINT_DAYS = 92;
/** An earlier one is surely a slip in the year. */
export const EARLIEST_DAY = '1990-01-01';
/** Longest name of a sprint. */
export const MOST_NAME_CHARACTERS = 80;
export const MOST_GOAL_CHARACTERS = 500;
/** As many as the column of the database holds. */
const MOST_MEMBER_DAYS = 999_999;
/** A ratio beyond it is a slip, above as below 0. */
const FARTHEST_RATIO = 1_000;

const YES_NO = { yes: ['y', 'true'], no: ['n', 'false'] } as const;

export type StatedRatios = { readonly [Id in RatioId]?: number };

/** Amounts are points; undefined where the line doesn't say. */
export interface SprintLine extends LinePlace {
  readonly name: string;
  readonly startsOn: Day;
  readonly endsOn: Day;
  readonly state: 'closed' | 'cancelled' | 'running';
  readonly closedOn: Day | undefined;
  readonly goal: string;
  readonly commitmentPoints: number;
  readonly pulledInPoints: number | undefined;
  readonly surprisePoints: number | undefined;
  readonly velocityPoints: number | undefined;
  readonly workedPoints: number | undefined;
  readonly committedFinishedPoints: number | undefined;
  readonly driftPoints: number | undefined;
  readonly memberDays: number | undefined;
  readonly value: number | undefined;
  /** Whether its days are known from answers; undefined: then it follows from whether there are any. */
  readonly dailyAnswers: boolean | undefined;
  /** Those that it says itself. */
  readonly ratios: StatedRatios;
}

/** A line of which no more than its name could be read. */
export interface UnreadLine {
  readonly unread: true;
  readonly name: string;
}

export function readSprintLine(
  line: TableLine<'sprints'>,
  problems: ImportProblems,
): SprintLine | UnreadLine {
  const read = new LineReader<'sprints', LineProblem>(line);
  const name = read.requiredText('name', MOST_NAME_CHARACTERS);
  const startsOn = read.requiredDay('first day');
  const endsOn = read.requiredDay('last day');
  const state = read.choice('state', {
    closed: ['done', 'over', 'finished'],
    cancelled: ['canceled'],
    running: ['open'],
  });
  // The rest need not be right in a sprint that isn't imported.
  const isLeftOut = state === 'cancelled' || state === 'running';
  const numbers = isLeftOut ? NOTHING_KNOWN : sprintNumbers(read);
  if (startsOn !== undefined && endsOn !== undefined) checkDays(read, startsOn, endsOn);
  if (!isLeftOut) checkSums(read, numbers);
  if (handOn(read, line, problems) || startsOn === undefined || endsOn === undefined)
    return { unread: true, name };
  return { ...placeOf(line), name, startsOn, endsOn, state: state ?? 'closed', ...numbers };
}

type SprintNumbers = Omit<SprintLine, keyof LinePlace | 'name' | 'startsOn' | 'endsOn' | 'state'>;

const NOTHING_KNOWN: SprintNumbers = {
  commitmentPoints: 0,
  pulledInPoints: undefined,
  surprisePoints: undefined,
  velocityPoints: undefined,
  workedPoints: undefined,
  committedFinishedPoints: undefined,
  driftPoints: undefined,
  closedOn: undefined,
  goal: '',
  memberDays: undefined,
  value: undefined,
  dailyAnswers: undefined,
  ratios: {},
};

function sprintNumbers(read: LineReader<'sprints', LineProblem>): SprintNumbers {
  const dailyAnswers = read.choice('daily answers', YES_NO);
  const memberDays = read.sumOfPoints('member days');
  if (memberDays !== undefined && memberDays > MOST_MEMBER_DAYS) {
    read.tell({ code: 'member-days', most: MOST_MEMBER_DAYS });
  }
  return {
    commitmentPoints: read.requiredSumOfPoints('commitment') ?? 0,
    pulledInPoints: read.sumOfPoints('pulled in'),
    surprisePoints: read.sumOfPoints('surprise'),
    velocityPoints: read.sumOfPoints('finished'),
    workedPoints: read.sumOfPoints('points worked'),
    committedFinishedPoints: read.sumOfPoints('finished of commitment'),
    driftPoints: read.changeOfPoints('drift'),
    closedOn: read.day('closed on'),
    goal: read.longText('goal', MOST_GOAL_CHARACTERS),
    memberDays,
    value: read.number('value'),
    dailyAnswers: dailyAnswers && dailyAnswers === 'yes',
    ratios: statedRatios(read),
  };
}

function statedRatios(read: LineReader<'sprints', LineProblem>): StatedRatios {
  const stated = CSV_COLUMNS.sprints.flatMap(({ name, use, ratio }) => {
    if (ratio === undefined || use !== 'optional') return [];
    const { low = -FARTHEST_RATIO, high = FARTHEST_RATIO } = RATIOS[ratio].possible;
    const value = read.share(name, low, high);
    return value === undefined ? [] : [[ratio, value]];
  });
  return Object.fromEntries(stated);
}

function checkDays(read: LineReader<'sprints', LineProblem>, startsOn: Day, endsOn: Day): void {
  const lengthDays = daysBetween(startsOn, endsOn) + 1;
  if (lengthDays < 1) read.tell({ code: 'days-reversed', first: startsOn, last: endsOn });
  if (lengthDays > MOST_SPRINT_DAYS) {
    read.tell({ code: 'sprint-too-long', days: lengthDays, most: MOST_SPRINT_DAYS });
  }
  if (startsOn < EARLIEST_DAY) read.tell({ code: 'too-early', first: startsOn, earliest: EARLIEST_DAY });
}

function checkSums(read: LineReader<'sprints', LineProblem>, numbers: SprintNumbers): void {
  // Sums are compared only where each part could be read.
  if (read.problems.length > 0) return;
  const { commitmentPoints, pulledInPoints, velocityPoints, committedFinishedPoints } = numbers;
  const held = pulledInPoints === undefined ? undefined : commitmentPoints + pulledInPoints;
  if (velocityPoints !== undefined && held !== undefined && velocityPoints > held) {
    read.tell({ code: 'finished-more', finished: velocityPoints, held });
  }
  if (committedFinishedPoints === undefined) return;
  if (committedFinishedPoints > Math.min(commitmentPoints, velocityPoints ?? commitmentPoints)) {
    read.tell({ code: 'finished-of-commitment' });
  } else if (
    velocityPoints !== undefined &&
    pulledInPoints !== undefined &&
    velocityPoints - committedFinishedPoints > pulledInPoints
  ) {
    read.tell({ code: 'finished-beside' });
  }
}

/** The name without case and spaces, which don't make names different. */
export function alikeName(name: string): string {
  return name.normalize('NFKC').replace(/\s+/g, ' ').trim().toLowerCase();
}
