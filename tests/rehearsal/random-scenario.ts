/**
 * Invented scenarios from a seed: what a team may do in its sprints, and what it may do wrong. The same seed
 * gives the same scenario for ever. What is right or wrong is not decided here.
 */
import type {
  Scenario,
  ScenarioAnswer,
  ScenarioCard,
  ScenarioEvent,
  ScenarioSprint,
} from '../../src/rehearsal/scenario.ts';
import type { Tally } from './independent-reckoning.ts';
import { SprintBook } from './independent-reckoning.ts';
import { daysBetween, weekdayOf } from './local-instants.ts';
import { addCorrections } from './random-corrections.ts';
import { addExperiments } from './random-experiments.ts';

interface ScenarioSize {
  /** Sprints in a row, at most. */
  readonly sprints: number;
  readonly cards: number;
  /** Working days of a sprint, at most; days off come on top. */
  readonly days: number;
}

/** Numbers between 0 and 1 that follow from the seed (mulberry32). */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

export class Dice {
  readonly #next: () => number;

  constructor(seed: number) {
    this.#next = randomFrom(seed);
  }

  chance(share: number): boolean {
    return this.#next() < share;
  }

  /** A whole number from `low` to `high`, both included. */
  whole(low: number, high: number): number {
    return low + Math.floor(this.#next() * (high - low + 1));
  }

  /** Points in steps of a half, both ends included. */
  points(low: number, high: number): number {
    return this.whole(low * 2, Math.max(low * 2, Math.floor(high * 2))) / 2;
  }

  pick<T>(items: readonly T[]): T {
    return items[this.whole(0, items.length - 1)] as T;
  }
}

/** Zones with a day near which their clocks change; the first sprint starts a few days before it. */
const PLACES = [
  { timeZone: 'Europe/Berlin', near: '2026-10-25' },
  { timeZone: 'America/New_York', near: '2026-11-01' },
  { timeZone: 'Australia/Lord_Howe', near: '2026-10-04' },
  { timeZone: 'Africa/Cairo', near: '2026-04-24' },
  { timeZone: 'Africa/Cairo', near: '2026-10-30' },
  { timeZone: 'Asia/Kathmandu', near: '2026-12-31' },
  { timeZone: 'America/Santiago', near: '2026-09-06' },
  { timeZone: 'Pacific/Kiritimati', near: '2026-03-01' },
] as const;

const PROMPT_TIMES = [
  '09:15',
  '09:15',
  '02:30',
  '01:30',
  '00:00',
  '00:30',
  '23:45',
  '13:07',
  '16:59',
  '17:30',
];
const CLOSING_TIMES = [undefined, undefined, '17:00', '12:00', '23:59', '02:15'];
const WORKING_WEEKS = [[1, 2, 3, 4, 5], [1, 2, 3, 4, 5], [7, 1, 2, 3, 4], [1, 2, 3, 4, 5, 6, 7], [2, 4], [6]];
const SCALES = [
  undefined,
  undefined,
  [1, 2, 3, 5, 8, 13, 21],
  [0.5, 1, 2, 4, 8],
  [1, 10, 100],
  [0.5, 1.5, 3.5, 9.5, 20],
  [2, 4, 6, 8, 10, 12],
];
const TITLES = [
  'Tide table',
  'Berths, by length',
  '"Quoted" from the start',
  'A "quoted" word, and a comma',
  'Rain\tor shine',
  'Boats ⛵ and 🏳️‍🌈 flags',
  '<!channel> look here',
  '<@UMEMBER001> & <b>friends</b>',
  'Harbour; office; hours',
  '*Bold* _and_ `code` ~gone~',
  '  Spaces around  ',
  '5',
  'Ends in a number 3',
  'ÄÖÜ 港 مرفأ',
  '=SUM(A1:A9)',
  '&amp; already escaped &lt;',
  'undefinable work',
  `Long ${'anchor chain '.repeat(12)}end`,
];
const KEY_STYLES = [
  (n: number) => `LP-${n}`,
  (n: number) => `LP-${n}`,
  (n: number) => `#${n}`,
  (n: number) => `${n}`,
  (n: number) => `card ${n}`,
  (n: number) => `lp_${n}/é`,
];
const MEMBER_IDS = ['ana', 'bo', 'Čeněk', 'd e', 'u-4', '7', 'x.y@example.org', '李'];

/** @returns a scenario that follows from the seed alone */
export function randomScenario(seed: number, size: ScenarioSize): Scenario {
  const dice = new Dice(seed);
  // Dice of their own, so that a seed keeps what else it brings.
  const blockDice = new Dice(seed + 1_000_000);
  const place = dice.pick(PLACES);
  const members = Array.from({ length: dice.whole(1, 4) }, (_, i) => i + dice.whole(0, 4)).map((n, i) => ({
    id: i === 0 ? 'ana' : `${MEMBER_IDS[n]}${i}`,
    name: `Member ${i + 1}`,
  }));
  const closesAt = dice.pick(CLOSING_TIMES);
  const scale = dice.pick(SCALES);
  const scenario: Scenario = {
    team: {
      name: dice.pick(['Quayside', 'Crew & <Co>', 'Équipe №1', 'a']),
      timeZone: place.timeZone,
      promptAt: dice.pick(PROMPT_TIMES),
      ...(closesAt ? { closesAt } : {}),
      workingDays: dice.pick(WORKING_WEEKS),
      ...(scale ? { scale: [...scale] } : {}),
      thresholds: thresholdsFrom(dice),
    },
    members,
    sprints: [],
  };
  let startsOn = plusDays(place.near, -dice.whole(0, 3));
  for (let i = dice.whole(1, size.sprints); i > 0; i -= 1) {
    const endsOn = plusDays(startsOn, dice.whole(dice.chance(0.1) ? 0 : 3, size.days));
    const sprint = sprintFrom(dice, blockDice, scenario, size, startsOn, endsOn, scenario.sprints.length);
    scenario.sprints.push(sprint);
    startsOn = plusDays(endsOn, dice.whole(1, 4));
  }
  giveCalendars(new Dice(seed + 1_000_003), scenario);
  // With dice of their own as well, so that the rest stays what it was.
  addCorrections(new Dice(seed + 2_000_003), scenario);
  addExperiments(new Dice(seed + 3_000_003), scenario);
  return scenario;
}

/** Part-time, roles and days off, from dice of their own: whether somebody works changes nothing of the rest. */
function giveCalendars(dice: Dice, scenario: Scenario): void {
  for (const member of scenario.members) {
    const weekdays = scenario.team.workingDays.filter(() => dice.chance(0.7));
    if (dice.chance(0.3) && weekdays.length > 0) member.worksOn = weekdays;
  }
  if (dice.chance(0.4)) {
    const member = dice.pick(scenario.members).id;
    const facilitators = dice.chance(0.5) ? ['Lena'] : ['Lena', member];
    scenario.roles = {
      facilitators,
      ...(dice.chance(0.5) ? { productOwner: dice.pick(['Lena', member, 'Pia']) } : {}),
    };
  }
  for (const sprint of scenario.sprints) {
    const span = daysBetween(sprint.startsOn, sprint.endsOn);
    for (let i = dice.whole(0, 3); i > 0; i -= 1) {
      const on = dice.pick(span);
      const from = plusDays(on, dice.whole(-2, 5));
      const off = {
        from,
        ...(dice.chance(0.6) ? { to: plusDays(from, dice.whole(dice.chance(0.1) ? -1 : 0, 4)) } : {}),
        ...(dice.chance(0.4) ? { half: dice.chance(0.8) } : {}),
      };
      const by = dice.chance(0.2) ? 'team' : dice.chance(0.05) ? 'nobody' : dice.pick(scenario.members).id;
      sprint.events.splice(dice.whole(0, sprint.events.length), 0, { on, by, off });
    }
  }
}

function thresholdsFrom(dice: Dice): Record<string, number> {
  if (dice.chance(0.5)) return {};
  return {
    keptShareAtLeast: dice.pick([0.5, 0.75, 0.9, 1, 0.29]),
    surpriseRatioAtMost: dice.pick([0, 0.1, 0.25, 0.57]),
    ...(dice.chance(0.5) ? { pullInRatioAtMost: dice.pick([0, 0.35]) } : {}),
    ...(dice.chance(0.5) ? { planShareAtLeast: dice.pick([0.5, 0.95]) } : {}),
    ...(dice.chance(0.5) ? { estimateAccuracyAtLeast: 0.6, estimateAccuracyAtMost: 0.99 } : {}),
  };
}

function plusDays(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

function sprintFrom(
  dice: Dice,
  blockDice: Dice,
  scenario: Scenario,
  size: ScenarioSize,
  startsOn: string,
  endsOn: string,
  index: number,
): ScenarioSprint {
  const style = dice.pick(KEY_STYLES);
  let keys = index * 200;
  const newCard = (): ScenarioCard => {
    keys += 1;
    return cardFrom(dice, scenario, style(keys));
  };
  const count = dice.chance(0.15) ? 0 : dice.whole(1, size.cards);
  const sprint: ScenarioSprint = {
    name: `${dice.pick(['Harbour', 'Pier "x", y', 'Mole <!here>'])} ${index + 1}`,
    goal: dice.pick(['', 'Skippers see the tide', '<!everyone> & co']),
    startsOn,
    endsOn,
    ...(dice.chance(0.2) ? { closesAt: dice.pick(['11:30', '18:45', '23:00']) } : {}),
    cards: Array.from({ length: count }, newCard),
    events: [],
  };
  const book = new SprintBook(scenario, sprint);
  if (!book.plan()) return sprint;
  for (const day of daysBetween(startsOn, endsOn)) {
    const isBusy = scenario.team.workingDays.includes(weekdayOf(day)) || dice.chance(0.2);
    for (let i = isBusy ? dice.whole(0, scenario.members.length + 2) : 0; i > 0; i -= 1) {
      const events = eventsFrom(dice, scenario, book, day, newCard);
      for (const event of [...blockFrom(blockDice, scenario, book, day), ...events]) {
        sprint.events.push(event);
        book.take(event);
      }
    }
  }
  if (dice.chance(0.3)) {
    // A day on which the sprint does not run.
    const on = dice.chance(0.5) ? plusDays(startsOn, -1) : plusDays(endsOn, 1);
    const event = answerFrom(dice, scenario, book, on);
    if (event) sprint.events.push(event);
  }
  return sprint;
}

function cardFrom(dice: Dice, scenario: Scenario, key: string): ScenarioCard {
  const scale = scenario.team.scale ?? [1, 2, 3, 5, 8, 13];
  const owners = scenario.members.filter(() => dice.chance(0.4)).map(({ id }) => id);
  return {
    key,
    title: dice.pick(TITLES),
    estimate: dice.chance(0.85) ? dice.pick(scale) : dice.points(0.5, 30),
    owners: owners.length > 0 ? owners : [dice.pick(scenario.members).id],
  };
}

function eventsFrom(
  dice: Dice,
  scenario: Scenario,
  book: SprintBook,
  on: string,
  newCard: () => ScenarioCard,
): ScenarioEvent[] {
  const by = dice.pick(scenario.members).id;
  const roll = dice.whole(1, 100);
  const anyCard = (accept: (card: Tally) => boolean = () => true): Tally | undefined => {
    const found = book.cards.filter(accept);
    return found.length > 0 ? dice.pick(found) : undefined;
  };
  if (roll <= 7) return [{ on, by, pull: newCard() }];
  if (roll <= 10) {
    const card = anyCard(({ finished }) => !finished);
    return card
      ? [{ on, by, drop: { card: card.key, reason: dice.pick(['No data', '<!channel> 5 & "x"']) } }]
      : [];
  }
  if (roll <= 15) return [{ on, by, away: true }];
  if (roll <= 20) {
    const card = anyCard(({ finished }) => finished) ?? anyCard();
    if (!card) return [];
    // On a later day than the answer that finished it, as people do.
    if (card.lines.some((line) => line.on === on)) return [];
    return [{ on, by: dice.chance(0.8) ? dice.pick(card.owners) : by, reopen: { card: card.key } }];
  }
  if (roll >= 90) return [handOver(dice, scenario, book, on)].filter((event) => event !== undefined);
  if (roll === 21) return dice.chance(0.3) ? [{ on, cancel: true }] : [];
  if (roll <= 32) return [wrongAnswer(dice, scenario, book, on)].filter((event) => event !== undefined);
  const event = answerFrom(dice, scenario, book, on);
  return event ? [event] : [];
}

/** A drop taken back, or a card given to others; now and then by somebody who may not. */
function handOver(dice: Dice, scenario: Scenario, book: SprintBook, on: string): ScenarioEvent | undefined {
  const anybody = dice.pick(scenario.members).id;
  const dropped = book.cards.filter(({ dropped }) => dropped);
  if (dropped.length > 0 && dice.chance(0.7)) {
    const card = dice.pick(dropped);
    return { on, by: dice.chance(0.8) ? (card.droppedBy ?? anybody) : anybody, undrop: { card: card.key } };
  }
  if (book.cards.length === 0) return undefined;
  const card = dice.pick(book.cards);
  const to = scenario.members.filter(() => dice.chance(0.4)).map(({ id }) => id);
  if (dice.chance(0.1)) to.push('nobody');
  return { on, by: dice.chance(0.8) ? dice.pick(card.owners) : anybody, give: { card: card.key, to } };
}

/** Now and then a card is blocked, or moves again; sometimes wrongly. */
function blockFrom(dice: Dice, { members }: Scenario, book: SprintBook, on: string): ScenarioEvent[] {
  const says = dice.pick(['blocked', 'blocked', 'moving', undefined, undefined, undefined] as const);
  if (!says || book.cards.length === 0) return [];
  const fitting = book.cards.filter(
    (card) => !card.finished && !card.dropped && card.blocked === (says === 'moving'),
  );
  const card = dice.pick(fitting.length > 0 && dice.chance(0.9) ? fitting : book.cards);
  const by = dice.chance(0.9) ? dice.pick(card.owners) : dice.pick(members).id;
  if (says === 'moving') return [{ on, by, moving: { card: card.key } }];
  return [
    { on, by, blocked: { card: card.key, on: dice.pick(['the key', '<!here> & "x"', '2: 3, left', ' ']) } },
  ];
}

/** An answer by an owner for some of their open cards, or a correction of one given earlier that day. */
function answerFrom(dice: Dice, scenario: Scenario, book: SprintBook, on: string): ScenarioEvent | undefined {
  const by = dice.pick(scenario.members).id;
  const own = book.cards.filter(
    ({ owners, finished, dropped, lines }) =>
      owners.includes(by) &&
      !dropped &&
      (!finished || lines.some((line) => line.on === on && line.by === by)),
  );
  if (own.length === 0) return undefined;
  const chosen = own.filter(() => dice.chance(2 / own.length)).slice(0, 8);
  if (chosen.length === 0) chosen.push(dice.pick(own));
  return { on, by, answer: chosen.map((card) => numbersFrom(dice, card, by, on)) };
}

function numbersFrom(dice: Dice, card: Tally, by: string, on: string): ScenarioAnswer {
  const given = card.lines.at(-1);
  const corrects = given?.kind === 'answer' && given.by === by && given.on === on;
  const previous = (card.left + (corrects ? (given.worked ?? 0) : 0)) / 2;
  const left = dice.chance(0.25) ? 0 : dice.points(0, Math.max(1, previous * 1.3));
  const worked = dice.chance(0.25) ? undefined : dice.points(0, Math.max(1, previous - left + 1));
  const growth = (worked ?? Math.max(0, previous - left)) + left - previous;
  const soFar = card.surprise / 2;
  let surprise = 0;
  if (growth > 0 && dice.chance(0.7)) surprise = dice.points(0, growth);
  if (growth < 0 && dice.chance(0.6)) surprise = -dice.points(0, Math.min(-growth, soFar));
  return {
    card: card.key,
    left,
    ...(worked === undefined ? {} : { worked }),
    ...(surprise === 0 && dice.chance(0.5) ? {} : { surprise: surprise || 0 }),
    ...(dice.chance(0.2) ? { note: 'Two harbours, "one" <!channel> & more' } : {}),
  };
}

/** Something that should be refused; now and then it happens to be right. */
function wrongAnswer(
  dice: Dice,
  scenario: Scenario,
  book: SprintBook,
  on: string,
): ScenarioEvent | undefined {
  const { members } = scenario;
  const cardWhere = (accept: (card: Tally) => boolean): Tally | undefined => {
    const found = book.cards.filter(accept);
    return found.length > 0 ? dice.pick(found) : undefined;
  };
  const answer = (card: Tally | undefined, by: string | undefined, rest: object): ScenarioEvent | undefined =>
    card && { on, by: by ?? dice.pick(card.owners), answer: [{ card: card.key, left: 1, ...rest }] };
  const open = cardWhere(({ finished, dropped }) => !finished && !dropped);
  switch (dice.whole(1, 9)) {
    case 1: {
      const foreign = cardWhere(({ owners }) => owners.length < members.length);
      const stranger = members.find(({ id }) => !foreign?.owners.includes(id));
      return answer(foreign, stranger?.id, {});
    }
    case 2:
      return answer(
        cardWhere(({ finished }) => finished),
        undefined,
        {},
      );
    case 3:
      return answer(
        cardWhere(({ dropped }) => dropped),
        undefined,
        {},
      );
    case 4:
      return open && answer(open, undefined, { left: open.left / 2 + 1, worked: 0, surprise: 1.5 });
    case 5:
      return answer(open, undefined, { left: dice.pick([0.25, 1.75, 0.1]) });
    case 6:
      return open && answer(open, undefined, { left: 0, worked: 0, surprise: -open.surprise / 2 - 0.5 });
    case 7:
      return { on, by: dice.pick(members).id, answer: [{ card: 'no such card', left: 1 }] };
    case 8:
      return answer(open, undefined, dice.pick([{ left: -1 }, { left: 1_000 }, { worked: -0.5 }]));
    default:
      return { on, by: 'nobody', away: true };
  }
}
