/** How the dates of a body of work moved, from what was told of it and what is told now. Pure. */
import { type Day, daysBetween } from '../../sprint/calendar.ts';
import type { KeptAdvice } from '../advice/advice.ts';
import { datesOf, type ToldDates } from './body-of-work.ts';

type Kept = KeptAdvice['bodies'][number];

/** A year of two-week sprints. */
const MOST_TELLINGS = 26;

/** The latest of what was told, the earliest first, and at the end what is told now. */
function tellingsOf({ body, forecast, sprintsSinceSaid, told }: Kept, on: Day): ToldDates[] {
  const before = told.filter(({ toldOn }) => toldOn < on);
  if ('undefined' in forecast) return before.slice(-MOST_TELLINGS);
  const now = {
    bodyId: body.id,
    toldOn: on,
    leftPoints: body.leftPoints,
    sprintsSinceSaid,
    ...datesOf(forecast),
  };
  return [...before, now].slice(-MOST_TELLINGS);
}

export interface MovedDate {
  /** When the other date was told. */
  readonly since: Day;
  /** Calendar days; negative: it is earlier now. */
  readonly days: number;
}

interface MovedDates {
  /** By how much the likely date moved since it was told last, on a day before, and since it was told first. */
  readonly lately: MovedDate;
  /** Undefined: that is the same telling. */
  readonly inAll: MovedDate | undefined;
}

/** Undefined where there was no likely date before, or is none now. */
export function movedDates(kept: Kept, on: Day): MovedDates | undefined {
  const now = 'undefined' in kept.forecast ? undefined : datesOf(kept.forecast).likelyOn;
  const before = kept.told.filter(({ toldOn, likelyOn }) => toldOn < on && likelyOn !== undefined);
  const [first, last] = [before[0], before.at(-1)];
  if (now === undefined || !first || !last) return undefined;
  const moved = ({ toldOn, likelyOn }: ToldDates): MovedDate => ({
    since: toldOn,
    days: daysBetween(likelyOn as Day, now),
  });
  return { lately: moved(last), inAll: first === last ? undefined : moved(first) };
}

/** More panels would make a picture that no phone shows at once. */
const MOST_PANELS = 4;
/** A line takes two points. */
const LEAST_TELLINGS = 2;

/** What was told of one body of work, with a likely date at least. */
export interface DrawnBody {
  readonly name: string;
  readonly tellings: readonly ToldDates[];
}

interface DrawnBodies {
  readonly drawn: readonly DrawnBody[];
  /** How many more could be. */
  readonly leftOut: number;
}

export function drawnBodies({ bodies, on }: KeptAdvice): DrawnBodies {
  const drawable = bodies.flatMap((kept) => {
    const tellings = tellingsOf(kept, on).filter(({ likelyOn }) => likelyOn !== undefined);
    return tellings.length >= LEAST_TELLINGS ? [{ name: kept.body.name, tellings }] : [];
  });
  return { drawn: drawable.slice(0, MOST_PANELS), leftOut: Math.max(0, drawable.length - MOST_PANELS) };
}
