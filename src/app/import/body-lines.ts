/** Reads a line of the files of bodies of work: what it says, and what is wrong with it alone. Pure. */
import type { Day } from '../../sprint/calendar.ts';
import { BODY_NAME_MAX_LENGTH, MAX_BACKLOG_POINTS } from '../bodies/body-of-work.ts';
import { LineReader } from '../csv/line-reader.ts';
import type { TableLine } from '../csv/read-table.ts';
import { handOn, type ImportProblems, type LinePlace, type LineProblem, placeOf } from './import-problem.ts';
import { EARLIEST_DAY, type UnreadLine } from './sprint-line.ts';

/** As for one that is typed. */
const LEAST_SHARE = 0.01;

export interface BodyLine extends LinePlace {
  readonly name: string;
  readonly leftPoints: number;
  readonly turn: number | undefined;
  readonly growthPoints: number | undefined;
  readonly growthMostPoints: number | undefined;
  readonly sharePercent: number | undefined;
  readonly keptOn: Day | undefined;
  /** Among those of the same name that were kept on the same day. */
  readonly number: number | undefined;
  readonly saidOn: Day | undefined;
  readonly doneOn: Day | undefined;
}

export interface DatesLine extends LinePlace {
  readonly bodyName: string;
  readonly bodyKeptOn: Day | undefined;
  readonly bodyNumber: number | undefined;
  readonly toldOn: Day;
  readonly leftPoints: number;
  readonly sprintsSinceSaid: number;
  readonly optimisticOn: Day | undefined;
  readonly likelyOn: Day | undefined;
  readonly pessimisticOn: Day | undefined;
}

type BodyReader = LineReader<'bodies', LineProblem>;
type DatesReader = LineReader<'dates', LineProblem>;

export function readBodyLine(line: TableLine<'bodies'>, problems: ImportProblems): BodyLine | UnreadLine {
  const read: BodyReader = new LineReader(line);
  const name = read.requiredText('body', BODY_NAME_MAX_LENGTH);
  if (name !== '' && !/\p{L}/u.test(name)) read.tell({ code: 'body-name', most: BODY_NAME_MAX_LENGTH });
  const body = {
    ...placeOf(line),
    name,
    leftPoints: pointsToDo(read),
    turn: read.count('turn'),
    ...growthOf(read),
    sharePercent: sharePercentOf(read),
    keptOn: knownDay(read, 'kept on'),
    number: read.count('number'),
    saidOn: knownDay(read, 'said on'),
    doneOn: knownDay(read, 'done on'),
  };
  for (const [column, day] of [
    ['said on', body.saidOn],
    ['done on', body.doneOn],
  ] as const) {
    if (day !== undefined && body.keptOn !== undefined && day < body.keptOn) {
      read.tell({ code: 'before-kept', column, day, kept: body.keptOn });
    }
  }
  return handOn(read, line, problems) ? { unread: true, name } : body;
}

export function readDatesLine(line: TableLine<'dates'>, problems: ImportProblems): DatesLine | undefined {
  const read: DatesReader = new LineReader(line);
  const toldOn = read.requiredDay('told on');
  if (toldOn !== undefined) checkYear(read, 'told on', toldOn);
  const dates = {
    ...placeOf(line),
    bodyName: read.requiredText('body', BODY_NAME_MAX_LENGTH),
    bodyKeptOn: read.day('kept on'),
    bodyNumber: read.count('number'),
    toldOn: toldOn ?? EARLIEST_DAY,
    leftPoints: pointsToDo(read),
    sprintsSinceSaid: read.count('sprints since') ?? 0,
    optimisticOn: knownDay(read, 'optimistic'),
    likelyOn: knownDay(read, 'likely'),
    pessimisticOn: knownDay(read, 'pessimistic'),
  };
  // One that isn't within reach comes after all days.
  const [optimistic, likely, pessimistic] = [dates.optimisticOn, dates.likelyOn, dates.pessimisticOn].map(
    (day) => day ?? 'none',
  ) as [Day, Day, Day];
  if (read.problems.length === 0 && !(optimistic <= likely && likely <= pessimistic)) {
    read.tell({ code: 'told-order' });
  }
  return handOn(read, line, problems) ? undefined : dates;
}

function pointsToDo(reader: BodyReader | DatesReader): number {
  const read = reader as BodyReader;
  const points = read.requiredSumOfPoints('to do');
  if (points === 0 || (points !== undefined && points > MAX_BACKLOG_POINTS)) {
    read.tell({ code: 'body-points', most: MAX_BACKLOG_POINTS });
  }
  return points ?? 0;
}

function growthOf(read: BodyReader): Pick<BodyLine, 'growthPoints' | 'growthMostPoints'> {
  const growthPoints = read.sumOfPoints('growth');
  const growthMostPoints = read.sumOfPoints('growth at most');
  if (Math.max(growthPoints ?? 0, growthMostPoints ?? 0) > MAX_BACKLOG_POINTS) {
    read.tell({ code: 'body-growth', most: MAX_BACKLOG_POINTS });
  } else if (growthMostPoints !== undefined && growthPoints === undefined) {
    read.tell({ code: 'body-growth-alone' });
  } else if (
    growthMostPoints !== undefined &&
    growthPoints !== undefined &&
    growthMostPoints < growthPoints
  ) {
    read.tell({ code: 'body-growth-reversed', least: growthPoints, most: growthMostPoints });
  }
  return { growthPoints, growthMostPoints };
}

/** In tenths of a percent; undefined for all of the sprints, in its turn. */
function sharePercentOf(read: BodyReader): number | undefined {
  const share = read.share('share', 0, 1);
  if (share === undefined) return undefined;
  if (share < LEAST_SHARE) read.tell({ code: 'body-share', least: LEAST_SHARE });
  const percent = Math.round(share * 1_000) / 10;
  return percent < 100 ? percent : undefined;
}

function knownDay(reader: BodyReader, column: 'kept on' | 'said on' | 'done on'): Day | undefined;
function knownDay(reader: DatesReader, column: 'optimistic' | 'likely' | 'pessimistic'): Day | undefined;
function knownDay(reader: BodyReader | DatesReader, column: string): Day | undefined {
  const day = (reader as BodyReader).day(column as 'kept on');
  if (day !== undefined) checkYear(reader, column, day);
  return day;
}

function checkYear(read: BodyReader | DatesReader, column: string, day: Day): void {
  if (day < EARLIEST_DAY) read.tell({ code: 'day-early', column, day, earliest: EARLIEST_DAY });
}
