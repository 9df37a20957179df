/**
 * Three teams and their days: the calendar leaps from one interesting moment to the next, waits until what is due then is
 * recorded, and lets people act in the meantime. Each sprint takes three working days.
 */

import { setTimeout as wait } from 'node:timers/promises';
import { addDays } from 'date-fns/addDays';
import { formatISO } from 'date-fns/formatISO';
import type { StandIn } from '../../src/rehearsal/stand-in/stand-in.ts';
import type { StandInChannel, StandInUser } from '../../src/rehearsal/stand-in/stand-in-options.ts';
import { PLAN_FIELDS } from '../../src/slack/views/planning/plan-forms.ts';
import { SETUP_FIELDS } from '../../src/slack/views/team/team-forms.ts';
import type { ActBook } from './act.ts';
import type { ChaosClock } from './chaos-clock.ts';
import type { Expectations } from './expectations.ts';
import { Person } from './person.ts';
import type { SeededRandom } from './seeded-random.ts';

/** All teams live in UTC, so that local times are plain to see. */
const SPRINT_DAYS = 3;
const MOMENTS = { plan: '08:00', prompt: '09:15', reminder: '12:15', lastCall: '16:00', close: '17:00' };
type Moment = keyof typeof MOMENTS;

interface Crew {
  readonly name: string;
  readonly channelId: string;
  readonly facilitator: Person;
  readonly people: readonly Person[];
}

const TEAMS = [
  { name: 'Tugboats', channelId: 'CTUGBOATS', members: ['ana', 'ben', 'chi'] },
  { name: 'Lighters', channelId: 'CLIGHTERS', members: ['dayo', 'eli', 'fay'] },
  { name: 'Pilots', channelId: 'CPILOTS', members: ['gil', 'hana', 'ivo'] },
] as const;

const userIdOf = (name: string): string => `U0${name.toUpperCase()}`;

export const CHAOS_USERS: readonly StandInUser[] = TEAMS.flatMap(({ members }) =>
  members.map((name) => ({ id: userIdOf(name), name, realName: name, timeZone: 'Etc/UTC' })),
);
export const CHAOS_CHANNELS: readonly StandInChannel[] = TEAMS.map(({ name, channelId, members }) => ({
  id: channelId,
  name: name.toLowerCase(),
  memberIds: members.map(userIdOf),
}));

interface CrewsOptions {
  readonly standIn: StandIn;
  readonly clock: ChaosClock;
  readonly book: ActBook;
  readonly random: SeededRandom;
  readonly expectations: Expectations;
  /** A Monday. */
  readonly firstDay: string;
  readonly isOver: () => boolean;
  readonly say: (line: string) => void;
  /** How long people have between two moments of a day. */
  readonly momentMs: number;
}

export class Crews {
  readonly #options: CrewsOptions;
  readonly #crews: readonly Crew[];
  #sprints = 0;
  #titles = 0;

  constructor(options: CrewsOptions) {
    this.#options = options;
    const { standIn, book, random, isOver } = options;
    this.#crews = TEAMS.map(({ name, channelId, members }) => {
      const people = members.map(
        (member) => new Person({ standIn, userId: userIdOf(member), channelId, book, random, isOver }),
      );
      return { name, channelId, people, facilitator: people[0] as Person };
    });
  }

  /** Before anything goes wrong. */
  async setUp(): Promise<void> {
    this.#leapTo(this.#options.firstDay, 'plan', -5);
    for (const { name, facilitator, people } of this.#crews) {
      const done = await facilitator.setUp({
        [SETUP_FIELDS.name]: name,
        [SETUP_FIELDS.timeZone]: 'Etc/UTC',
        [SETUP_FIELDS.promptAt]: MOMENTS.prompt,
        [SETUP_FIELDS.memberIds]: people.map(({ userId }) => userId),
        [SETUP_FIELDS.facilitatorIds]: [facilitator.userId],
      });
      if (!done) throw new Error(`The team ${name} could not be set up.`);
    }
  }

  /** Day after day until it is over. @returns how many days were begun */
  async live(): Promise<number> {
    let days = 0;
    for (let day = this.#options.firstDay; !this.#options.isOver(); day = dayAfter(day)) {
      const weekday = new Date(`${day}T12:00:00Z`).getUTCDay();
      if (weekday === 0 || weekday === 6) continue;
      await this.#liveDay(day, days % SPRINT_DAYS);
      days += 1;
    }
    return days;
  }

  async #liveDay(day: string, dayOfSprint: number): Promise<void> {
    const { expectations, random, isOver, say } = this.#options;
    say(`day ${day}, day ${dayOfSprint + 1} of the sprint`);
    this.#leapTo(day, 'plan');
    if (dayOfSprint === 0) await Promise.all(this.#crews.map((crew) => this.#plan(crew, day)));
    if (isOver()) return;
    // Nobody acts while the day's prompts fall due, so that it is known who must be asked.
    const due = await expectations.openOn(day);
    this.#leapTo(day, 'prompt');
    const served = await expectations.nothingDue();
    if (served && due) await expectations.note(day, due);
    await this.#act(day, 'prompt');
    this.#leapTo(day, 'reminder');
    await this.#act(day, 'reminder');
    if (dayOfSprint < SPRINT_DAYS - 1 || isOver()) return;
    if (random.chance(0.2)) {
      await Promise.all(this.#crews.map(({ facilitator }) => facilitator.close(day)));
      if (random.chance(0.5)) await this.#reopen(day);
    }
    this.#leapTo(day, 'lastCall', 1);
    await this.#act(day, 'lastCall');
    this.#leapTo(day, 'close', 1);
    await expectations.nothingDue();
    await wait(this.#options.momentMs / 2);
    if (random.chance(0.4)) {
      await this.#reopen(day);
      await this.#act(day, 'close');
      await Promise.all(this.#crews.map(({ facilitator }) => facilitator.close(day)));
    }
  }

  async #reopen(day: string): Promise<void> {
    await Promise.all(
      this.#crews.map(({ facilitator }) =>
        facilitator.type('reopen', '', 'reopen', day, /reopened|is open again/i),
      ),
    );
  }

  async #plan({ name, facilitator, people }: Crew, day: string): Promise<void> {
    this.#sprints += 1;
    const [first, second, third] = people as [Person, Person, Person];
    const { random } = this.#options;
    const cards = [first, second, third, second, third].map(
      ({ userId }, i) =>
        `${this.#title('Planned')}, ${random.pick([1, 2, 3, 5, 8])}, <@${userId}>${i === 3 ? ` <@${first.userId}>` : ''}`,
    );
    let lastDay = day;
    for (let more = SPRINT_DAYS - 1; more > 0; ) {
      lastDay = dayAfter(lastDay);
      const weekday = new Date(`${lastDay}T12:00:00Z`).getUTCDay();
      if (weekday !== 0 && weekday !== 6) more -= 1;
    }
    await facilitator.plan(`${name} ${this.#sprints}`, day, {
      [PLAN_FIELDS.startsOn]: day,
      [PLAN_FIELDS.endsOn]: lastDay,
      [PLAN_FIELDS.closesAt]: MOMENTS.close,
      [PLAN_FIELDS.cards]: cards.join('\n'),
    });
  }

  /** Everybody does something or nothing, all at the same time, a few moments apart. */
  async #act(day: string, moment: Moment): Promise<void> {
    const { momentMs } = this.#options;
    const acting = this.#crews.flatMap(({ people }) =>
      people.map((person) => this.#actOf(person, day, moment)),
    );
    await Promise.all([wait(momentMs), ...acting]);
  }

  async #actOf(person: Person, day: string, moment: Moment): Promise<void> {
    const { random, momentMs, isOver } = this.#options;
    await wait(random.next() * momentMs);
    if (isOver()) return;
    const what = random.next();
    if (what < 0.45) await person.answerInForm(day);
    else if (what < 0.6) await person.answerInWords(day);
    else if (what < 0.68) await person.press('unchanged', day);
    else if (what < 0.71) await person.press('away', day);
    else if (what < 0.79 && moment !== 'close') await this.#pull(person, day);
    else if (what < 0.82 && moment !== 'close') await this.#drop(person, day);
    else if (what < 0.88) await person.look();
  }

  async #pull(person: Person, day: string): Promise<void> {
    const title = this.#title('Pulled');
    const line = `pull ${title}, ${this.#options.random.pick([1, 2, 3])}, <@${person.userId}>`;
    await person.type('pull', title, line, day, /^Pulled into/);
  }

  async #drop(person: Person, day: string): Promise<void> {
    const reason = this.#title('no longer wanted');
    await person.type(
      'drop',
      reason,
      `drop ${this.#options.random.whole(1, 5)} ${reason}`,
      day,
      /^Dropped from/,
    );
  }

  #title(words: string): string {
    this.#titles += 1;
    return `${words} ${this.#titles}`;
  }

  #leapTo(day: string, moment: Moment, minutesAfter = 0): void {
    const at = new Date(`${day}T${MOMENTS[moment]}:00Z`);
    // A second past the moment, so that it has come by every clock that is right.
    this.#options.clock.leapTo(new Date(at.getTime() + minutesAfter * 60_000 + 1_000));
  }
}

function dayAfter(day: string): string {
  return formatISO(addDays(new Date(`${day}T12:00:00`), 1), { representation: 'date' });
}
