/**
 * What should come of a scenario, worked out a second time from the design alone: one loop over the events,
 * whole half points, its own snapping. It must not import anything from `src/` but the scenario's type, and
 * must not be changed to agree with the product without a reason in the design.
 */
import type {
  Scenario,
  ScenarioAnswer,
  ScenarioCard,
  ScenarioEvent,
  ScenarioSprint,
} from '../../src/rehearsal/scenario.ts';
import { daysBetween, localInstantMs, wallClock } from './local-instants.ts';
import { ReckonedDays } from './reckoned-days.ts';
import { type ReckonedExperiment, ReckonedExperiments } from './reckoned-experiments.ts';
import { habitsCrossed } from './reckoned-habits.ts';

/** One line of a card's record, in half points. */
interface Line {
  kind: 'answer' | 'reopen';
  by: string | undefined;
  on: string;
  worked: number | undefined;
  left: number;
  surprise: number;
}

/** A card as it is on record, in half points. */
export interface Tally {
  key: string;
  title: string;
  link: string | undefined;
  owners: string[];
  pulledIn: boolean;
  estimate: number;
  lines: Line[];
  worked: number;
  left: number;
  surprise: number;
  drift: number;
  finished: boolean;
  /** The day of the answer that left nothing to do. */
  finishedOn: string;
  dropped: boolean;
  /** Who dropped it last, and may take that back. */
  droppedBy: string | undefined;
  blocked: boolean;
}

export interface ReckonedSprint {
  sprint: ScenarioSprint;
  cards: Tally[];
  cancelled: boolean;
  endsOn: string;
  closesAt: string;
  goalMet: 'yes' | 'partly' | 'no' | null;
  /** What was tried when it closed. */
  experiments: ReckonedExperiment[];
  /** Every number by its name in the results; `undefined` where there is none. */
  numbers: Record<string, number | undefined>;
  verdict: 'kept' | 'missed' | 'no plan' | null;
  /** Which tests failed: `kept`, `surprise`. */
  failed: string[];
  /** Which thresholds were crossed, in words of this file. */
  crossed: string[];
  /** `member day` → the instant at which the prompt is due. */
  prompts: Map<string, number>;
  /** The day on which the message only lists the cards. */
  firstMorning: string | undefined;
  /** `member day` of everybody who is asked an hour before closing whether what they said still holds. */
  lastCalls: Set<string>;
  /** `member day` of everybody who answered or was away, in the order of the day's events. */
  heard: Set<string>;
  /** `member day` of everybody whose cards were all brought to an end in the course of the day. */
  idle: Set<string>;
  /** `member day` of everybody who was known to be off by the evening. */
  off: Set<string>;
  closesAtMs: number;
  /** Closing time on the team's next working day; `null` for a cancelled sprint. */
  reopenableUntil: string | null;
}

interface Reckoning {
  sprints: ReckonedSprint[];
  refused: (ScenarioEvent | { plan: string })[];
}

const DEFAULT_SCALE = [1, 2, 3, 5, 8, 13, 21];
const DEFAULT_LIMITS: Record<string, number> = {
  keptShareAtLeast: 0.8,
  surpriseRatioAtMost: 0.2,
  pullInRatioAtMost: 0.2,
  planShareAtLeast: 0.8,
  estimateAccuracyAtLeast: 0.8,
  estimateAccuracyAtMost: 0.95,
};

/** Points as whole halves, or undefined when they are not points. */
function halves(points: number): number | undefined {
  const doubled = points * 2;
  return Number.isInteger(doubled) && doubled >= 0 && doubled <= 1999 ? doubled : undefined;
}

/** Whether a size lies nearest to this very value of the scale; all in half points. */
function liesNearestTo(size: number, value: number, scalePoints: readonly number[] | undefined): boolean {
  const isDefault = !scalePoints || scalePoints.join() === DEFAULT_SCALE.join();
  const steps = (scalePoints ?? DEFAULT_SCALE).map((points) => points * 2);
  while (isDefault && (steps.at(-1) as number) <= Math.max(size, value) * 2) {
    steps.push((steps.at(-1) as number) + (steps.at(-2) as number));
  }
  const at = steps.indexOf(value);
  if (at < 0) return false;
  const below = steps[at - 1];
  const above = steps[at + 1];
  // Doubled once more, so that the middle between two values is whole.
  const reachesDown = below === undefined || size * 2 >= below + value;
  // The band of the largest value of a custom scale has both its ends in it; a lone value's begins at 0.
  const reachesUp =
    above === undefined ? size * 2 <= 3 * value - (below ?? -value) : size * 2 < value + above;
  return reachesDown && reachesUp;
}

/** Goes through a card's record from its estimate on. */
function derive(card: Tally): void {
  card.worked = 0;
  card.left = card.estimate;
  card.surprise = 0;
  card.drift = 0;
  card.finished = false;
  for (const line of card.lines) {
    if (line.kind === 'reopen') {
      card.finished = false;
      continue;
    }
    const worked = line.worked ?? Math.max(0, card.left - line.left);
    const growth = worked + line.left - card.left;
    const lowest = Math.max(Math.min(growth, 0), -card.surprise);
    const surprise = Math.min(Math.max(line.surprise, lowest), Math.max(growth, 0));
    card.worked += worked;
    card.left = line.left;
    card.surprise += surprise;
    card.drift += growth - surprise;
    card.finished = line.left === 0;
    card.finishedOn = line.on;
  }
}

export class SprintBook {
  readonly sprint: ScenarioSprint;
  readonly cards: Tally[] = [];
  cancelledOn: string | undefined;
  /** `member day` of those who said that they were away, and have not answered since. */
  readonly away = new Set<string>();
  goalMet: 'yes' | 'partly' | 'no' | null = null;
  /** Moves when the sprint is extended. */
  endsOn: string;
  closesAt: string;
  readonly #memberIds: Set<string>;
  readonly #facilitatorIds: Set<string>;
  readonly #scenario: Scenario;

  constructor(scenario: Scenario, sprint: ScenarioSprint) {
    this.sprint = sprint;
    this.#scenario = scenario;
    this.endsOn = sprint.endsOn;
    this.closesAt = sprint.closesAt ?? scenario.team.closesAt ?? '17:00';
    this.#memberIds = new Set(scenario.members.map(({ id }) => id));
    this.#facilitatorIds = new Set(scenario.roles?.facilitators ?? []);
  }

  get closesAtMs(): number {
    return localInstantMs(this.endsOn, this.closesAt, this.#scenario.team.timeZone);
  }

  /** Whether the sprint is open at the prompt time of the day. */
  isOpenOn(day: string): boolean {
    const { promptAt, timeZone } = this.#scenario.team;
    if (day < this.sprint.startsOn || this.cancelledOn !== undefined) return false;
    return localInstantMs(day, promptAt, timeZone) < this.closesAtMs;
  }

  /** Takes the cards of the plan; false when the plan is refused. */
  plan(): boolean {
    const { startsOn, endsOn, cards } = this.sprint;
    const keys = cards.map(({ key }) => key);
    if (endsOn < startsOn || cards.length > 100 || new Set(keys).size < keys.length) return false;
    if (!cards.every((card) => this.#canStand(card))) return false;
    for (const card of cards) this.cards.push(tallyOf(card, false));
    return true;
  }

  #canStand({ title, estimate, owners }: ScenarioCard): boolean {
    return (
      title.trim() !== '' && halves(estimate) !== undefined && owners.every((id) => this.#memberIds.has(id))
    );
  }

  /** Takes an event; false when it must be refused, and then nothing of it counts. */
  take(event: ScenarioEvent, isWorkingDay: (day: string) => boolean = () => true): boolean {
    const { team, roles } = this.#scenario;
    const isFacilitator = event.by === undefined || this.#facilitatorIds.has(event.by);
    const isOwner = event.by !== undefined && event.by === roles?.productOwner;
    if (event.on < this.sprint.startsOn || this.cancelledOn !== undefined) return false;
    if (event.goalMet) {
      if (isFacilitator || isOwner) this.goalMet = event.goalMet;
      return isFacilitator || isOwner;
    }
    // A product owner who is nothing else on the team may drop cards, and take that back.
    const mayDrop = isOwner && (event.drop !== undefined || event.undrop !== undefined);
    if (event.by !== undefined && !isFacilitator && !mayDrop && !this.#memberIds.has(event.by)) return false;
    const nowMs = localInstantMs(event.on, team.promptAt, team.timeZone);
    if (event.on > this.endsOn || nowMs >= this.closesAtMs) return false;
    if (event.edit) return isFacilitator && this.#takeEdit(event.on, event.edit, isWorkingDay);
    if (event.extend) return isFacilitator && this.#takeExtension(nowMs, event.extend);
    if (event.cancel) {
      if (!isFacilitator) return false;
      this.cancelledOn = event.on;
      return true;
    }
    if (event.away) {
      this.away.add(`${event.by} ${event.on}`);
      return true;
    }
    if (event.answer) {
      const isTaken = this.#takeAnswers(event.by as string, event.on, event.answer);
      // Somebody who answers after all is not away.
      if (isTaken) this.away.delete(`${event.by} ${event.on}`);
      return isTaken;
    }
    if (event.pull) {
      const { key } = event.pull;
      if (!this.#canStand(event.pull) || this.cards.some((card) => card.key === key)) return false;
      this.cards.push(tallyOf(event.pull, true));
      return true;
    }
    const named = (event.drop ??
      event.undrop ??
      event.give ??
      event.reopen ??
      event.blocked ??
      event.moving) as { card: string };
    const card = this.cards.find(({ key }) => key === named.card);
    if (event.undrop) {
      if (!card?.dropped || (!isFacilitator && !isOwner && card.droppedBy !== event.by)) return false;
      card.dropped = false;
      return true;
    }
    if (!card || card.dropped) return false;
    if (event.drop) {
      if (event.drop.reason.trim() === '') return false;
      card.dropped = true;
      card.droppedBy = event.by;
      card.blocked = false;
      return true;
    }
    if (event.blocked) {
      const isSaid = event.blocked.on.trim() !== '';
      if (!isSaid || card.finished || !card.owners.includes(event.by as string)) return false;
      card.blocked = true;
      return true;
    }
    if (event.moving) {
      if (!card.blocked || !card.owners.includes(event.by as string)) return false;
      card.blocked = false;
      return true;
    }
    if (event.give) return this.#give(card, event.by as string, event.give.to, isFacilitator);
    if (!card.finished || (!isFacilitator && !card.owners.includes(event.by as string))) return false;
    card.lines.push({ kind: 'reopen', by: event.by, on: event.on, worked: 0, left: 0, surprise: 0 });
    derive(card);
    return true;
  }

  /** Who gives puts others in their own place among the owners; a facilitator who has none gives all of it. */
  #give(card: Tally, by: string, to: readonly string[], isFacilitator: boolean): boolean {
    const at = card.owners.indexOf(by);
    if ((at < 0 && !isFacilitator) || to.length === 0 || !to.every((id) => this.#memberIds.has(id)))
      return false;
    const others = at < 0 ? [] : card.owners;
    card.owners = [...new Set([...others.slice(0, at), ...to, ...others.slice(at + 1)])];
    return true;
  }

  /** All of it or nothing. An estimate only on the first working day, and before anybody has answered. */
  #takeEdit(
    on: string,
    { card: key, ...to }: NonNullable<ScenarioEvent['edit']>,
    isWorkingDay: (day: string) => boolean,
  ): boolean {
    const card = this.cards.find((one) => one.key === key);
    if (!card) return false;
    const title = to.title?.trim().replaceAll(/\s+/g, ' ') ?? card.title;
    const estimate = to.estimate === undefined ? card.estimate : halves(to.estimate);
    if (title === '' || title.length > 200 || estimate === undefined) return false;
    const days = daysBetween(this.sprint.startsOn, this.endsOn);
    const firstDay = days.find(isWorkingDay) ?? this.sprint.startsOn;
    const isFixed = on > firstDay || card.lines.some(({ kind }) => kind === 'answer');
    if (estimate !== card.estimate && isFixed) return false;
    if (to.key !== undefined && to.key !== key) {
      const isWellFormed = /^[a-z][a-z0-9]{0,9}-\d{1,7}$/i.test(to.key);
      if (!isWellFormed || this.cards.some((one) => one.key.toLowerCase() === to.key?.toLowerCase()))
        return false;
    }
    if (to.link !== undefined && to.link !== '' && !/^https?:\/\/\S+$/.test(to.link)) return false;
    card.title = title;
    card.key = to.key ?? card.key;
    card.link = to.link === undefined ? card.link : to.link || undefined;
    card.estimate = estimate;
    derive(card);
    return true;
  }

  #takeExtension(nowMs: number, to: NonNullable<ScenarioEvent['extend']>): boolean {
    const { timeZone } = this.#scenario.team;
    const endsOn = to.endsOn ?? this.endsOn;
    const closesAt = to.closesAt ?? this.closesAt;
    const days = daysBetween(this.sprint.startsOn, endsOn).length;
    if (days < 1 || days > 92) return false;
    const isSame = endsOn === this.endsOn && closesAt === this.closesAt;
    if (!isSame && localInstantMs(endsOn, closesAt, timeZone) <= nowMs) return false;
    this.endsOn = endsOn;
    this.closesAt = closesAt;
    return true;
  }

  /** One bad answer refuses them all; a second one for the same card corrects the first. */
  #takeAnswers(by: string, on: string, answers: readonly ScenarioAnswer[]): boolean {
    const before = new Map(this.cards.map((card) => [card, [...card.lines]]));
    for (const answer of answers) {
      const card = this.cards.find(({ key }) => key === answer.card);
      const line = card && this.#lineOf(card, by, on, answer);
      if (!card || !line) {
        for (const [changed, lines] of before) {
          changed.lines = lines;
          derive(changed);
        }
        return false;
      }
      const earlier = card.lines.findIndex((old) => isSame(old, line));
      if (earlier < 0) card.lines.push(line);
      else {
        // An answer after a reopening says again whether the card is finished.
        const later = card.lines.slice(earlier + 1).filter(({ kind }) => kind === 'answer');
        card.lines = [...card.lines.slice(0, earlier), line, ...later];
      }
      derive(card);
      card.blocked = false;
    }
    return true;
  }

  #lineOf(card: Tally, by: string, on: string, answer: ScenarioAnswer): Line | undefined {
    const left = halves(answer.left);
    const worked = answer.worked === undefined ? undefined : halves(answer.worked);
    const surprise = (answer.surprise ?? 0) * 2;
    if (left === undefined || (answer.worked !== undefined && worked === undefined)) return undefined;
    if (!Number.isInteger(surprise) || card.dropped || !card.owners.includes(by)) return undefined;
    const line: Line = { kind: 'answer', by, on, worked, left, surprise };
    const earlier = card.lines.findIndex((old) => isSame(old, line));
    // On the day on which one owner finishes a card the others may still say what they did.
    if (card.finished && card.finishedOn < on) return undefined;
    // What the answer is checked against: the record up to the place where it goes.
    const before: Tally = { ...card, lines: earlier < 0 ? card.lines : card.lines.slice(0, earlier) };
    derive(before);
    const growth = (worked ?? Math.max(0, before.left - left)) + left - before.left;
    if (surprise > Math.max(0, growth)) return undefined;
    if (surprise < Math.max(Math.min(0, growth), -before.surprise)) return undefined;
    return line;
  }
}

function isSame(old: Line, line: Pick<Line, 'by' | 'on'>): boolean {
  return old.kind === 'answer' && old.by === line.by && old.on === line.on;
}

function tallyOf({ key, title, link, estimate, owners }: ScenarioCard, pulledIn: boolean): Tally {
  const half = estimate * 2;
  return {
    key,
    title,
    link,
    owners: [...new Set(owners)],
    pulledIn,
    estimate: half,
    lines: [],
    worked: 0,
    left: half,
    surprise: 0,
    drift: 0,
    finished: false,
    finishedOn: '',
    dropped: false,
    droppedBy: undefined,
    blocked: false,
  };
}

/** @returns what every sprint should come to, in order, and what should be refused, in order */
export function reckon(scenario: Scenario): Reckoning {
  const sprints: ReckonedSprint[] = [];
  const refused: Reckoning['refused'] = [];
  const work = new ReckonedDays(scenario);
  const experiments = new ReckonedExperiments(scenario);
  let baseline: number | undefined;
  for (const sprint of scenario.sprints) {
    const book = new SprintBook(scenario, sprint);
    const planned = book.plan();
    if (!planned) refused.push({ plan: sprint.name });
    const prompts = new Map<string, number>();
    const heard = new Set<string>();
    const idle = new Set<string>();
    const off = new Set<string>();
    const blocked = new Map<string, number>();
    const answered = new Set<string>();
    const lastCalls = new Set<string>();
    const gone = new Set<string>();
    for (let day = nextDay(book, gone); day !== undefined; day = nextDay(book, gone)) {
      gone.add(day);
      const today = day;
      if (planned) notePrompts(scenario, book, work, day, prompts);
      const call = (): void => {
        for (const key of calledLast(scenario, book, work, today, heard, answered)) lastCalls.add(key);
      };
      const isCalledFirst = planned && lastCallOn(scenario, book, work, day) === 'before the prompt';
      if (isCalledFirst) call();
      for (const event of sprint.events.filter(({ on }) => on === today)) {
        const isOpen = planned && book.isOpenOn(day);
        const earliest = isOpen && sprint.startsOn < day ? sprint.startsOn : day;
        const taken = event.off
          ? work.take(event, earliest)
          : event.try || event.experiment
            ? experiments.take(event)
            : planned && book.take(event, (one) => work.isWorkingDay(one));
        if (!taken) refused.push(event);
        else if (event.answer || event.away) heard.add(`${event.by} ${day}`);
        if (taken && event.answer) answered.add(`${event.by} ${day}`);
      }
      // Also late, when the sprint was shortened so that it has begun to close.
      if (planned && !isCalledFirst && lastCallOn(scenario, book, work, day) !== 'none') call();
      for (const { id } of scenario.members) {
        if (!hasOpenCards(book, id)) idle.add(`${id} ${day}`);
        if (work.share(id, day) === 0) off.add(`${id} ${day}`);
      }
      if (day >= sprint.startsOn && day <= book.endsOn && book.cancelledOn === undefined) {
        blocked.set(day, book.cards.filter((card) => card.blocked).length);
      }
    }
    if (!planned) continue;
    const cancelled = book.cancelledOn !== undefined;
    const velocity = sumOf(book.cards, (card) => (card.finished && !card.dropped ? card.estimate : 0));
    if (!cancelled && velocity > 0) baseline ??= velocity;
    const closesAtMs = book.closesAtMs;
    const measured = measure(book.cards, scenario, baseline);
    const blockedCardDays = sumOf([...blocked], ([day, cards]) => (work.isWorkingDay(day) ? cards : 0));
    Object.assign(measured.numbers, { blockedCardDays });
    const { endsOn, closesAt, goalMet } = book;
    const span = { startsOn: sprint.startsOn, endsOn };
    const firstMorning = firstMorningOf(scenario, span, work);
    const before = sprints.findLast((earlier) => !earlier.cancelled);
    const asked = questionsOf(scenario, span, work, prompts);
    Object.assign(measured.numbers, {
      memberDays: memberDaysOf(scenario, span, work, book.away),
      askedPrompts: asked.length,
      answeredPrompts: asked.filter((key) => heard.has(key)).length,
    });
    measured.crossed.push(...habitsCrossed({ cards: book.cards, asked, heard, idle }, before));
    sprints.push({
      sprint,
      cards: book.cards,
      cancelled,
      endsOn,
      closesAt,
      goalMet,
      prompts,
      firstMorning,
      lastCalls,
      heard,
      idle,
      off,
      closesAtMs,
      reopenableUntil: null,
      experiments: [],
      ...measured,
    });
    if (cancelled) Object.assign(sprints.at(-1) ?? {}, { verdict: null, failed: [], crossed: [] });
  }
  // What was begun after a sprint's closing is not tried in it; an end may come later too.
  for (const [i, one] of sprints.entries()) one.experiments = experiments.at(sprints.slice(0, i + 1));
  // As the team's calendar is in the end: days off may be said after a sprint.
  for (const one of sprints) {
    if (!one.cancelled) one.reopenableUntil = nextClosing(scenario, one, work);
  }
  return { sprints, refused };
}

const HOUR_MS = 3_600_000;

/** Whether the day's last call comes before or after what people say at prompt time; a prompt at its time replaces it. */
function lastCallOn(
  { team }: Scenario,
  book: SprintBook,
  work: ReckonedDays,
  day: string,
): 'before the prompt' | 'after the prompt' | 'none' {
  const callMs = Math.max(
    book.closesAtMs - HOUR_MS,
    localInstantMs(book.sprint.startsOn, '00:00', team.timeZone),
  );
  const promptMs = localInstantMs(day, team.promptAt, team.timeZone);
  if (!wallClock(callMs, team.timeZone).startsWith(day) || callMs >= book.closesAtMs) return 'none';
  if (!work.isWorkingDay(day) || callMs === promptMs) return 'none';
  return callMs < promptMs ? 'before the prompt' : 'after the prompt';
}

/** Those with open cards, but not who is away, nor who answered in the hour before. */
function calledLast(
  { team, members }: Scenario,
  book: SprintBook,
  work: ReckonedDays,
  day: string,
  heard: ReadonlySet<string>,
  answered: ReadonlySet<string>,
): Set<string> {
  if (book.cancelledOn !== undefined) return new Set();
  const isFresh = localInstantMs(day, team.promptAt, team.timeZone) >= book.closesAtMs - 2 * HOUR_MS;
  const called = members.filter(({ id }) => work.share(id, day) > 0 && hasOpenCards(book, id));
  const keys = called.map(({ id }) => `${id} ${day}`);
  return new Set(keys.filter((key) => (answered.has(key) ? !isFresh : !heard.has(key))));
}

/** Closing time on the first working day after the sprint's last day. */
function nextClosing(
  { team }: Scenario,
  { endsOn, closesAt }: Pick<ReckonedSprint, 'endsOn' | 'closesAt'>,
  work: ReckonedDays,
): string {
  const aMonthOn = new Date(Date.parse(`${endsOn}T00:00:00Z`) + 31 * 86_400_000).toISOString().slice(0, 10);
  const day = daysBetween(endsOn, aMonthOn).find((one) => one > endsOn && work.isWorkingDay(one)) as string;
  return new Date(localInstantMs(day, closesAt, team.timeZone)).toISOString();
}

/** The sprint's days, and others of which the file tells, in order; the sprint may have been extended since the last one. */
function nextDay({ sprint, endsOn }: SprintBook, gone: ReadonlySet<string>): string | undefined {
  const days = [...daysBetween(sprint.startsOn, endsOn), ...sprint.events.map(({ on }) => on)];
  return days.sort().find((day) => !gone.has(day));
}

interface Span {
  readonly startsOn: string;
  readonly endsOn: string;
}

/** The day on whose morning cards are only listed. */
function firstMorningOf(
  { team }: Scenario,
  { startsOn, endsOn }: Span,
  work: ReckonedDays,
): string | undefined {
  if (Number(team.promptAt.slice(0, 2)) >= 12) return undefined;
  return daysBetween(startsOn, endsOn).find((day) => work.isWorkingDay(day));
}

/** The prompts that were questions: not those of the first morning, nor those on days that turned out to be off. */
function questionsOf(
  scenario: Scenario,
  span: Span,
  work: ReckonedDays,
  prompts: ReadonlyMap<string, number>,
): string[] {
  const first = firstMorningOf(scenario, span, work);
  return [...prompts.keys()].filter((key) => {
    const at = key.lastIndexOf(' ');
    const day = key.slice(at + 1);
    return work.share(key.slice(0, at), day) > 0 && day !== first;
  });
}

function memberDaysOf(
  { members }: Scenario,
  { startsOn, endsOn }: Span,
  work: ReckonedDays,
  away: ReadonlySet<string>,
): number {
  return sumOf(daysBetween(startsOn, endsOn), (day) =>
    sumOf(members, ({ id }) => (away.has(`${id} ${day}`) ? 0 : work.share(id, day))),
  );
}

function notePrompts(
  scenario: Scenario,
  book: SprintBook,
  work: ReckonedDays,
  day: string,
  prompts: Map<string, number>,
): void {
  const { timeZone, promptAt } = scenario.team;
  const { endsOn } = book;
  const { startsOn } = book.sprint;
  if (day < startsOn || day > endsOn || book.cancelledOn !== undefined) return;
  const atMs = localInstantMs(day, promptAt, timeZone);
  if (atMs >= book.closesAtMs) return;
  for (const { id } of scenario.members) {
    if (work.share(id, day) > 0 && hasOpenCards(book, id)) prompts.set(`${id} ${day}`, atMs);
  }
}

function hasOpenCards(book: SprintBook, memberId: string): boolean {
  return book.cards.some(
    ({ owners, finished, dropped }) => owners.includes(memberId) && !finished && !dropped,
  );
}

function sumOf<T>(items: readonly T[], amount: (item: T) => number): number {
  let sum = 0;
  for (const item of items) sum += amount(item);
  return sum;
}

function measure(
  cards: readonly Tally[],
  { team }: Scenario,
  baseline: number | undefined,
): Pick<ReckonedSprint, 'numbers' | 'verdict' | 'failed' | 'crossed'> {
  const kept = cards.filter(({ dropped }) => !dropped);
  const done = kept.filter(({ finished }) => finished);
  const commitment = sumOf(cards, (card) => (card.pulledIn ? 0 : card.estimate));
  const pulledIn = sumOf(cards, (card) => (card.pulledIn ? card.estimate : 0));
  const surprise = sumOf(cards, (card) => card.surprise);
  const drift = sumOf(cards, (card) => card.drift);
  const worked = sumOf(cards, (card) => card.worked);
  const load = commitment + pulledIn + surprise;
  const velocity = sumOf(done, (card) => card.estimate);
  const committedDone = sumOf(done, (card) => (card.pulledIn ? 0 : card.estimate));
  const plainError = sumOf(kept, (card) => Math.abs(card.worked + card.left - card.estimate));
  const error = sumOf(kept, (card) => {
    const size = card.worked + card.left;
    return liesNearestTo(size, card.estimate, team.scale) ? 0 : Math.abs(size - card.estimate);
  });
  const onScale = done.filter((card) =>
    liesNearestTo(card.worked + card.left, card.estimate, team.scale),
  ).length;
  const per = (part: number, whole: number): number | undefined => (whole === 0 ? undefined : part / whole);
  const numbers = {
    commitmentPoints: commitment / 2,
    pulledInPoints: pulledIn / 2,
    estimatePoints: (commitment + pulledIn) / 2,
    workedPoints: worked / 2,
    leftPoints: sumOf(cards, (card) => card.left) / 2,
    openLeftPoints: sumOf(kept, (card) => card.left) / 2,
    growthPoints: (surprise + drift) / 2,
    surprisePoints: surprise / 2,
    driftPoints: drift / 2,
    loadPoints: load / 2,
    velocityPoints: velocity / 2,
    committedFinishedPoints: committedDone / 2,
    estimateErrorPoints: error / 2,
    plainEstimateErrorPoints: plainError / 2,
    finishedCards: done.length,
    onScaleCards: onScale,
    keptShare: per(committedDone, commitment),
    pullInRatio: per(pulledIn, commitment),
    surpriseRatio: per(surprise, commitment),
    planShare: per(commitment, load),
    estimateAccuracy: load === 0 ? undefined : 1 - error / load,
    onScaleShare: per(onScale, done.length),
    finishShare: per(velocity, worked),
    velocityGrowth: baseline === undefined ? undefined : velocity / baseline,
  };
  // A share is compared with its limit without dividing, so that no rounding decides.
  const limit = (name: string): number =>
    Math.round((team.thresholds[name] ?? (DEFAULT_LIMITS[name] as number)) * 1e6);
  const side = (part: number, whole: number, name: string): number =>
    whole === 0 ? 0 : Math.sign(part * 1e6 - limit(name) * whole);
  const failed = [];
  if (commitment > 0 && side(committedDone, commitment, 'keptShareAtLeast') < 0) failed.push('kept');
  if (commitment > 0 && side(surprise, commitment, 'surpriseRatioAtMost') > 0) failed.push('surprise');
  const crossed = [];
  if (side(pulledIn, commitment, 'pullInRatioAtMost') > 0) crossed.push('pull-in');
  if (side(commitment, load, 'planShareAtLeast') < 0) crossed.push('plan-share');
  if (side(load - error, load, 'estimateAccuracyAtLeast') < 0) crossed.push('accuracy-low');
  if (side(load - error, load, 'estimateAccuracyAtMost') > 0) crossed.push('accuracy-high');
  const verdict = commitment === 0 ? 'no plan' : failed.length > 0 ? 'missed' : 'kept';
  return { numbers, verdict, failed, crossed };
}
