/**
 * Which of the bodies of work in the files would come in, with what was told of their dates: not those that the team keeps
 * already. Pure but for the ids it makes.
 */
import { randomUUID } from 'node:crypto';
import type { Day } from '../../sprint/calendar.ts';
import {
  areSharesTooLarge,
  type BodyOfWork,
  isSameName,
  isToDo,
  MOST_BODIES,
  sharesOf,
  type ToldDates,
} from '../bodies/body-of-work.ts';
import { instantOf } from '../clock/local-time.ts';
import { type LabelledBody, labelledBodies } from '../export/body-rows.ts';
import type { BodyLine, DatesLine } from './body-lines.ts';
import type { ImportProblems } from './import-problem.ts';
import type { ReadImport } from './read-import.ts';
import type { PlanContext } from './sprints-to-import.ts';

/** As many as a team finishes in twenty years when it finishes ten a year. */
export const MOST_BODIES_AT_ONCE = 200;

/** A body of work as it would be recorded. */
export interface PlannedBody {
  readonly body: BodyOfWork;
  readonly told: readonly ToldDates[];
}

export interface BodiesToImport {
  /** In their order: those to do, then those that are done. */
  readonly bodies: readonly PlannedBody[];
  /** Names of those that the team keeps already. */
  readonly leftOut: readonly string[];
}

interface Found {
  readonly line: BodyLine;
  readonly keptOn: Day;
  readonly number: number;
  /** Undefined: it is left out. */
  readonly body: BodyOfWork | undefined;
}

/** @param problems what is wrong with the lines already; more is added */
export function bodiesToImport(
  read: Pick<ReadImport, 'bodies' | 'unreadBodyNames' | 'dates'>,
  context: PlanContext,
  problems: ImportProblems,
): BodiesToImport {
  const [tooMany] = read.bodies.slice(MOST_BODIES_AT_ONCE);
  if (tooMany) {
    const count = read.bodies.length;
    problems.tell(tooMany, { code: 'bodies-at-once', count, most: MOST_BODIES_AT_ONCE });
    return { bodies: [], leftOut: [] };
  }
  const known = labelledBodies(context.existingBodies, context.team.timeZone);
  const found: Found[] = [];
  for (const line of inTurn(read.bodies))
    found.push(foundOf(line, { before: found, known }, context, problems));
  const toImport = found.filter(({ body }) => body !== undefined);
  checkTogether(toImport, context, problems);
  const tellings = tellingsOf(read, found, context, problems);
  const toDo = context.existingBodies.filter(isToDo);
  const lastPlace = Math.max(0, ...toDo.map(({ place }) => place));
  return {
    bodies: toImport.map(({ body }, i) => {
      const placed = { ...(body as BodyOfWork), place: lastPlace + i + 1 };
      const told = (tellings.get(placed.id) ?? []).map((line) => toldOf(placed.id, line));
      return { body: placed, told };
    }),
    leftOut: found.filter(({ body }) => body === undefined).map(({ line }) => line.name),
  };
}

/** Those to do by their turn, then those without one, then what is done; else in the order of the lines. */
function inTurn(lines: readonly BodyLine[]): BodyLine[] {
  const rank = ({ doneOn, turn }: BodyLine): number => (doneOn !== undefined ? 2e6 : (turn ?? 1e6));
  return [...lines].sort((a, b) => rank(a) - rank(b));
}

/** @param others of earlier lines, and those that the team keeps already */
function foundOf(
  line: BodyLine,
  { before, known }: { readonly before: readonly Found[]; readonly known: readonly LabelledBody[] },
  context: PlanContext,
  problems: ImportProblems,
): Found {
  const { team, today, now } = context;
  const { name, leftPoints, growthPoints, growthMostPoints, sharePercent, doneOn } = line;
  const [earliest = today] = [line.saidOn, doneOn].filter((day) => day !== undefined).sort();
  const keptOn = line.keptOn ?? earliest;
  const saidOn = line.saidOn ?? keptOn;
  for (const [column, day] of [
    ['kept on', line.keptOn],
    ['said on', line.saidOn],
    ['done on', doneOn],
  ] as const) {
    if (day !== undefined && day > today) problems.tell(line, { code: 'day-not-come', column, day });
  }
  const twins = before.filter((one) => one.keptOn === keptOn && isSameName(one.line.name, name));
  const { number = twins.length + 1 } = line;
  const isKnown = known.some(
    (one) =>
      isSameName(one.name, name) &&
      ((isToDo(one.body) && doneOn === undefined) || (one.keptOn === keptOn && one.number === number)),
  );
  if (isKnown) return { line, keptOn, number, body: undefined };
  const at = (day: Day, time: string): Date => earlier(instantOf(day, time, team.timeZone), now);
  const body = {
    id: randomUUID(),
    teamId: team.id,
    name,
    place: 0,
    leftPoints,
    growthPoints,
    growthMostPoints,
    sharePercent,
    keptAt: at(keptOn, '12:00'),
    // What is left is said when a sprint is looked back at: one that closed on that day is in it.
    saidAt: at(saidOn, '23:59'),
    doneAt: doneOn === undefined ? undefined : at(doneOn, '23:59'),
  };
  return { line, keptOn, number, body };
}

function earlier(one: Date, other: Date): Date {
  return one < other ? one : other;
}

/** What a team may keep at once. */
function checkTogether(toImport: readonly Found[], context: PlanContext, problems: ImportProblems): void {
  const all = context.existingBodies.filter(isToDo);
  const before: BodyLine[] = [];
  const added = toImport.flatMap(({ line, body }) => (body && isToDo(body) ? [{ line, body }] : []));
  const count = all.length + added.length;
  for (const { line, body } of added) {
    all.push(body);
    const twin = before.find(({ name }) => isSameName(name, line.name));
    const sameTurn = before.find(({ turn }) => turn !== undefined && turn === line.turn);
    if (twin) {
      problems.tell(line, { code: 'body-twice', body: line.name, ...whereIs(twin) });
    } else if (sameTurn) {
      const { name: other, turn = 0 } = sameTurn;
      problems.tell(line, { code: 'turn-twice', body: other, turn, ...whereIs(sameTurn) });
    }
    before.push(line);
    if (all.length === count && count > MOST_BODIES) {
      problems.tell(line, { code: 'bodies-many', count, most: MOST_BODIES });
    }
  }
  const last = before.findLast(({ sharePercent }) => sharePercent !== undefined) ?? before.at(-1);
  if (last && areSharesTooLarge(all)) {
    problems.tell(last, { code: 'body-shares', share: sharesOf(all) / 100 });
  }
}

function whereIs({ fileName, lineNumber = 0 }: BodyLine | DatesLine): { file: string; line: number } {
  return { file: fileName, line: lineNumber };
}

/** The lines of dates.csv by the id of the body that they name; those of bodies that are left out are passed over. */
function tellingsOf(
  { dates, unreadBodyNames }: Pick<ReadImport, 'unreadBodyNames' | 'dates'>,
  found: readonly Found[],
  { today }: PlanContext,
  problems: ImportProblems,
): ReadonlyMap<string, readonly DatesLine[]> {
  const named = Map.groupBy(found, ({ line }) => line.name.toLowerCase());
  const unread = new Set(unreadBodyNames.map((name) => name.toLowerCase()));
  const tellings = new Map<string, DatesLine[]>();
  const known = new Map<string, DatesLine>();
  for (const line of dates) {
    const { bodyName, bodyKeptOn, bodyNumber = 1, toldOn } = line;
    if (toldOn > today) problems.tell(line, { code: 'day-not-come', column: 'told on', day: toldOn });
    const [one, another] = (named.get(bodyName.toLowerCase()) ?? []).filter(
      ({ keptOn, number }) => bodyKeptOn === undefined || (keptOn === bodyKeptOn && number === bodyNumber),
    );
    if (another) {
      problems.tell(line, { code: 'several-bodies', body: bodyName });
    } else if (!one) {
      if (unread.has(bodyName.toLowerCase())) continue;
      problems.tell(
        line,
        bodyKeptOn === undefined
          ? { code: 'no-body', body: bodyName }
          : { code: 'no-body-then', body: bodyName, kept: bodyKeptOn },
      );
    } else if (one.body) {
      const { id } = one.body;
      const twin = known.get(`${id} ${toldOn}`);
      if (twin) {
        problems.tell(line, { code: 'told-twice', body: bodyName, day: toldOn, ...whereIs(twin) });
      }
      known.set(`${id} ${toldOn}`, line);
      tellings.set(id, [...(tellings.get(id) ?? []), line]);
    }
  }
  return tellings;
}

function toldOf(bodyId: string, line: DatesLine): ToldDates {
  const { toldOn, leftPoints, sprintsSinceSaid, optimisticOn, likelyOn, pessimisticOn } = line;
  return { bodyId, toldOn, leftPoints, sprintsSinceSaid, optimisticOn, likelyOn, pessimisticOn };
}
