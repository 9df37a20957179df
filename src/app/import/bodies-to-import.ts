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
  MOST_DONE_BODIES,
  sharesOf,
  type ToldDates,
} from '../bodies/body-of-work.ts';
import { labelledBodies } from '../export/body-rows.ts';
import type { BodyLine, DatesLine } from './body-lines.ts';
import { latestDay, timeThatCame } from './days-elsewhere.ts';
import type { ImportProblems } from './import-problem.ts';
import type { ReadImport } from './read-import.ts';
import type { PlanContext } from './sprints-to-import.ts';

/** A body of work as it would be recorded. */
interface PlannedBody {
  readonly body: BodyOfWork;
  readonly told: readonly ToldDates[];
}

export interface BodiesToImport {
  /** In their order: those to do, then those that are done. */
  readonly bodies: readonly PlannedBody[];
  readonly leftOut: readonly LeftOutBody[];
}

export interface LeftOutBody {
  readonly name: string;
  /** The team keeps it already; or of what is done, as many as it may without it. */
  readonly why: 'known' | 'long-done';
}

interface Found {
  readonly line: BodyLine;
  readonly keptOn: Day;
  readonly number: number;
  readonly body: BodyOfWork | LeftOutBody['why'];
}

interface NewBody extends Found {
  readonly body: BodyOfWork;
}

/** @param problems what is wrong with the lines already; more is added */
export function bodiesToImport(
  read: Pick<ReadImport, 'bodies' | 'unreadBodyNames' | 'dates'>,
  context: PlanContext,
  problems: ImportProblems,
): BodiesToImport {
  const found = withinLimits(foundBodies(read.bodies, context, problems), context.existingBodies);
  const toImport = found.filter((one): one is NewBody => typeof one.body !== 'string');
  checkTogether(toImport, context, problems);
  const tellings = tellingsOf(read, found, context, problems);
  const toDo = context.existingBodies.filter(isToDo);
  const lastPlace = Math.max(0, ...toDo.map(({ place }) => place));
  return {
    bodies: toImport.map(({ body }, i) => {
      const told = (tellings.get(body.id) ?? []).map((line) => toldOf(body.id, line));
      return { body: { ...body, place: lastPlace + i + 1 }, told };
    }),
    leftOut: found.flatMap(({ line: { name }, body: why }) =>
      typeof why === 'string' ? [{ name, why }] : [],
    ),
  };
}

/** Those to do by their turn, then those without one, then what is done; else in the order of the lines. */
function inTurn(lines: readonly BodyLine[]): BodyLine[] {
  const rank = ({ doneOn, turn }: BodyLine): number => (doneOn !== undefined ? 2e6 : (turn ?? 1e6));
  return [...lines].sort((a, b) => rank(a) - rank(b));
}

function foundBodies(lines: readonly BodyLine[], context: PlanContext, problems: ImportProblems): Found[] {
  const known = labelledBodies(context.existingBodies, context.team.timeZone);
  const isKnown = new Set(known.map((one) => labelOf(one)));
  const isKnownToDo = new Set(known.filter(({ body }) => isToDo(body)).map(({ name }) => name.toLowerCase()));
  const named = new Map<string, number>();
  return inTurn(lines).map((line) => {
    const { name, doneOn } = line;
    const [earliest = context.today] = [line.saidOn, doneOn].filter((day) => day !== undefined).sort();
    const keptOn = line.keptOn ?? earliest;
    const alike = labelOf({ name, keptOn });
    named.set(alike, (named.get(alike) ?? 0) + 1);
    const { number = named.get(alike) ?? 1 } = line;
    checkDays(line, context, problems);
    const isHere =
      isKnown.has(labelOf({ name, keptOn, number })) ||
      (doneOn === undefined && isKnownToDo.has(name.toLowerCase()));
    return { line, keptOn, number, body: isHere ? 'known' : bodyOf(line, keptOn, context) };
  });
}

/** Of what is done, the latest come in as long as there is room. */
function withinLimits(found: readonly Found[], existing: readonly BodyOfWork[]): Found[] {
  const done = existing.filter((body) => !isToDo(body)).length;
  const adding = found.filter(({ line, body }) => line.doneOn !== undefined && typeof body !== 'string');
  const dayOf = ({ line }: Found): Day => line.doneOn ?? '';
  adding.sort((a, b) => Number(dayOf(a) < dayOf(b)) - Number(dayOf(a) > dayOf(b)));
  const beyond = new Set(adding.slice(Math.max(0, MOST_DONE_BODIES - done)));
  return found.map((one) => (beyond.has(one) ? { ...one, body: 'long-done' } : one));
}

type Label = { readonly name: string; readonly keptOn: Day; readonly number?: number };

function labelOf({ name, keptOn, number }: Label): string {
  return `${keptOn} ${number ?? ''} ${name.toLowerCase()}`;
}

function checkDays(line: BodyLine, { now }: PlanContext, problems: ImportProblems): void {
  const latest = latestDay(now);
  for (const [column, day] of [
    ['kept on', line.keptOn],
    ['said on', line.saidOn],
    ['done on', line.doneOn],
  ] as const) {
    if (day !== undefined && day > latest) problems.tell(line, { code: 'day-not-come', column, day });
  }
}

function bodyOf(line: BodyLine, keptOn: Day, { team, now }: PlanContext): BodyOfWork {
  const { name, leftPoints, growthPoints, growthMostPoints, sharePercent, doneOn } = line;
  const at = (day: Day, time: string): Date => timeThatCame(day, time, team.timeZone, now);
  return {
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
    saidAt: at(line.saidOn ?? keptOn, '23:59'),
    doneAt: doneOn === undefined ? undefined : at(doneOn, '23:59'),
  };
}

/** What a team may keep at once. */
function checkTogether(toImport: readonly NewBody[], context: PlanContext, problems: ImportProblems): void {
  const all = context.existingBodies.filter(isToDo);
  const before: BodyLine[] = [];
  const added = toImport.filter(({ body }) => isToDo(body));
  const count = all.length + added.length;
  const last = added.at(-1);
  if (last && count > MOST_BODIES) {
    problems.tell(last.line, { code: 'bodies-many', count, most: MOST_BODIES });
    return;
  }
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
  }
  const sharing = before.findLast(({ sharePercent }) => sharePercent !== undefined) ?? before.at(-1);
  if (sharing && areSharesTooLarge(all)) {
    problems.tell(sharing, { code: 'body-shares', share: sharesOf(all) / 100 });
  }
}

function whereIs({ fileName, lineNumber = 0 }: BodyLine | DatesLine): { file: string; line: number } {
  return { file: fileName, line: lineNumber };
}

/** The lines of dates.csv by the id of the body that they name; those of bodies that are left out are passed over. */
function tellingsOf(
  { dates, unreadBodyNames }: Pick<ReadImport, 'unreadBodyNames' | 'dates'>,
  found: readonly Found[],
  { now }: PlanContext,
  problems: ImportProblems,
): ReadonlyMap<string, readonly DatesLine[]> {
  const latest = latestDay(now);
  const named = Map.groupBy(found, ({ line }) => line.name.toLowerCase());
  const labelled = Map.groupBy(found, ({ line: { name }, keptOn, number }) =>
    labelOf({ name, keptOn, number }),
  );
  const unread = new Set(unreadBodyNames.map((name) => name.toLowerCase()));
  const tellings = new Map<string, DatesLine[]>();
  const known = new Map<string, DatesLine>();
  for (const line of dates) {
    const { bodyName, bodyKeptOn, bodyNumber = 1, toldOn } = line;
    if (toldOn > latest) problems.tell(line, { code: 'day-not-come', column: 'told on', day: toldOn });
    const [one, another] =
      (bodyKeptOn === undefined
        ? named.get(bodyName.toLowerCase())
        : labelled.get(labelOf({ name: bodyName, keptOn: bodyKeptOn, number: bodyNumber }))) ?? [];
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
    } else if (typeof one.body !== 'string') {
      const { id } = one.body;
      const twin = known.get(`${id} ${toldOn}`);
      if (twin) {
        problems.tell(line, { code: 'told-twice', body: bodyName, day: toldOn, ...whereIs(twin) });
      }
      known.set(`${id} ${toldOn}`, line);
      const others = tellings.get(id);
      if (others) others.push(line);
      else tellings.set(id, [line]);
    }
  }
  return tellings;
}

function toldOf(bodyId: string, line: DatesLine): ToldDates {
  const { toldOn, leftPoints, sprintsSinceSaid, optimisticOn, likelyOn, pessimisticOn } = line;
  return { bodyId, toldOn, leftPoints, sprintsSinceSaid, optimisticOn, likelyOn, pessimisticOn };
}
