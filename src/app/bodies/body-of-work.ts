/** A larger body of work that a team keeps by name, to forecast it again and again. Nobody's name is kept with it. */
import type { ReleaseForecast } from '../../forecast/release-forecast.ts';
import type { Day } from '../../sprint/calendar.ts';

export const BODY_NAME_MAX_LENGTH = 60;

/** Larger than anybody plans; on one busy core the forecast of it took four tenths of a second at the worst. */
export const MAX_BACKLOG_POINTS = 20_000;

/** Whether work may have so many points: whole or half ones. */
export function isAmountOfWork(points: number): boolean {
  return points >= 0 && points <= MAX_BACKLOG_POINTS && Number.isInteger(points * 2);
}

/** More than a team can mean to do in order, and as many as fit in a message. */
export const MOST_BODIES = 10;

/**
 * As many as a team finishes in twenty years when it finishes ten a year. Of those that were done before, the earliest is
 * forgotten: everything that is told of them is read again and again.
 */
export const MOST_DONE_BODIES = 200;

export interface BodyOfWork {
  readonly id: string;
  readonly teamId: string;
  readonly name: string;
  /** In the order in which the team's are worked on; of two alike, the one that was kept first comes first. */
  readonly place: number;
  readonly leftPoints: number;
  /** By how much it grows with each sprint; undefined: as much as measured. */
  readonly growthPoints: number | undefined;
  /** With it: in 8 of 10 cases the growth lies between the two. */
  readonly growthMostPoints: number | undefined;
  /** How much of each sprint goes to it, beside the others; undefined: it waits for its turn. */
  readonly sharePercent: number | undefined;
  readonly keptAt: Date;
  /** When somebody last said how much is left. */
  readonly saidAt: Date;
  /** Undefined while it is still to do. */
  readonly doneAt: Date | undefined;
}

/** The dates of a body of work as they were told on a day. */
export interface ToldDates {
  readonly bodyId: string;
  /** The team's day; of several tellings on one day the last is kept. */
  readonly toldOn: Day;
  readonly leftPoints: number;
  /** Sprints that had closed since somebody said how much was left. */
  readonly sprintsSinceSaid: number;
  /** Undefined: there was none within reach. */
  readonly optimisticOn: Day | undefined;
  readonly likelyOn: Day | undefined;
  readonly pessimisticOn: Day | undefined;
}

/** In percent, of those that have one. */
export function sharesOf(bodies: readonly BodyOfWork[]): number {
  return bodies.reduce((sum, { sharePercent = 0 }) => sum + sharePercent, 0);
}

/** Whether they leave nothing of the sprints to one that waits for its turn, or there isn't as much. */
export function areSharesTooLarge(bodies: readonly BodyOfWork[]): boolean {
  const shares = sharesOf(bodies);
  return shares > 100 || (shares === 100 && bodies.some(({ sharePercent }) => sharePercent === undefined));
}

export function isToDo({ doneAt }: BodyOfWork): boolean {
  return doneAt === undefined;
}

/** Of those that are done, the latest first. */
export function doneLatestFirst(bodies: readonly BodyOfWork[]): BodyOfWork[] {
  return bodies.filter((body) => !isToDo(body)).sort((a, b) => Number(b.doneAt) - Number(a.doneAt));
}

/** What is kept of a forecast. */
export function datesOf({
  dates,
}: ReleaseForecast): Pick<ToldDates, 'optimisticOn' | 'likelyOn' | 'pessimisticOn'> {
  const [optimisticOn, likelyOn, pessimisticOn] = dates.map((date) =>
    'undefined' in date ? undefined : date.on,
  );
  return { optimisticOn, likelyOn, pessimisticOn };
}

export function isSameName(one: string, other: string): boolean {
  return one.toLowerCase() === other.toLowerCase();
}

/** One of those still to do: by its name, its number in the list, or the beginning of its name. */
export function calledSo(bodies: readonly BodyOfWork[], reference: string): BodyOfWork | undefined {
  const called = reference.replace(/\s+/g, ' ').trim();
  if (called === '') return bodies.length === 1 ? bodies[0] : undefined;
  const same = bodies.find(({ name }) => isSameName(name, called));
  if (same) return same;
  if (/^\d{1,3}$/.test(called)) return bodies[Number(called) - 1];
  const beginning = bodies.filter(({ name }) => name.toLowerCase().startsWith(called.toLowerCase()));
  return beginning.length === 1 ? beginning[0] : undefined;
}
