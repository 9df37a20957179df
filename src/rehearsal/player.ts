/**
 * Plays a scenario step by step through the bot's conversations: the facilitator sets up and plans, members
 * answer their prompts, the calendar moves on, the sprint closes by itself. What the bot refuses is noted
 * with its event and its words, and play goes on.
 */
import { instantOf } from '../app/clock/local-time.ts';
import { say } from '../words/say.ts';
import { Unheard } from './conversation.ts';
import { Moves } from './moves.ts';
import type { Rehearsal } from './rehearsal.ts';
import type { Scenario, ScenarioEvent, ScenarioSprint } from './scenario.ts';

/** Something of the scenario that the bot did not take. */
export interface PlayRefusal {
  readonly sprint: string;
  /** The event as it is in the file, or what else was tried. */
  readonly event: ScenarioEvent | { readonly setup: true } | { readonly plan: string };
  /** What the person read. */
  readonly words: string;
}

/** A sprint that was planned, for the results. */
export interface PlayedPlan {
  /** How many posts there were before it was planned. */
  readonly firstPost: number;
  /** The scenario's key of each card, by the number that the bot gave it. */
  readonly keys: ReadonlyMap<number, string>;
}

/** What comes next in a scenario. */
export interface PlayStep {
  /** When it happens. */
  readonly at: Date;
  /** Makes it happen; the calendar moves on to its time. @returns what happened, as a sentence */
  play(): Promise<string>;
}

/** Plays an event: all of it, a part, or nothing. */
type PlayEvent = (event: ScenarioEvent, play: (event: ScenarioEvent) => Promise<void>) => Promise<void>;

export class Player {
  readonly refusals: PlayRefusal[] = [];
  /** In the order in which they were planned. */
  readonly plans: PlayedPlan[] = [];
  readonly #rehearsal: Rehearsal;
  readonly #scenario: Scenario;
  readonly #moves: Moves;
  readonly #playEvent: PlayEvent;
  /** When the sprint being played ends; moves when it is extended. */
  #end = { endsOn: '', closesAt: '' };

  /** @param playEvent decides what of an event is played; everything when left out */
  constructor(rehearsal: Rehearsal, scenario: Scenario, playEvent: PlayEvent = (event, play) => play(event)) {
    this.#rehearsal = rehearsal;
    this.#scenario = scenario;
    this.#moves = new Moves(rehearsal, scenario);
    this.#playEvent = playEvent;
  }

  /** @param onStep hears of each step once it is played */
  async playAll(onStep: (did: string) => void = () => undefined): Promise<void> {
    for await (const step of this.steps()) onStep(await step.play());
  }

  /** The steps in order; each is to be played before the next is asked for. */
  async *steps(): AsyncGenerator<PlayStep, void, undefined> {
    const { team, sprints } = this.#scenario;
    yield {
      at: this.#rehearsal.deps.clock.now(),
      play: async () => {
        await this.#try('', { setup: true }, () => this.#moves.setUp());
        return say('rehearsal-set-up', { team: team.name });
      },
    };
    for (const sprint of sprints) yield* this.#sprintSteps(sprint);
  }

  /** The number by which the bot calls a card of the sprint being played. */
  cardNumber(key: string): number | undefined {
    return this.#moves.cardNumber(key);
  }

  async *#sprintSteps(sprint: ScenarioSprint): AsyncGenerator<PlayStep, void, undefined> {
    const { timeZone } = this.#scenario.team;
    const keys = this.#moves.turnTo(sprint);
    this.#end = { endsOn: sprint.endsOn, closesAt: this.#moves.closesAt(sprint) };
    const days = [...new Set(sprint.events.map(({ on }) => on))].sort();
    // What is said before the first day is said before the sprint is planned, so that the bot refuses it.
    for (const day of days.filter((one) => one < sprint.startsOn)) yield this.#messagesStep(sprint, day);
    const firstDay = instantOf(sprint.startsOn, '00:00', timeZone);
    yield {
      at: firstDay,
      play: async () => {
        await this.#rehearsal.moveTo(firstDay);
        const firstPost = this.#rehearsal.standIn.allPosts().length;
        const planned = await this.#try(sprint.name, { plan: sprint.name }, () => this.#moves.plan(sprint));
        if (planned) this.plans.push({ firstPost, keys });
        return say(planned ? 'rehearsal-planned' : 'rehearsal-not-planned', { sprint: sprint.name });
      },
    };
    for (const day of days.filter((one) => one >= sprint.startsOn)) yield this.#messagesStep(sprint, day);
    const closing = instantOf(this.#end.endsOn, this.#end.closesAt, timeZone);
    yield {
      at: closing,
      play: async () => {
        await this.#rehearsal.moveTo(closing);
        return say('rehearsal-closed', { sprint: sprint.name });
      },
    };
  }

  /** What people say on a day, at the time of its prompt. */
  #messagesStep(sprint: ScenarioSprint, day: string): PlayStep {
    const { timeZone, promptAt } = this.#scenario.team;
    const at = instantOf(day, promptAt, timeZone);
    const events = sprint.events.filter(({ on }) => on === day);
    return {
      at,
      play: async () => {
        await this.#rehearsal.moveTo(at);
        for (const event of events) {
          await this.#playEvent(event, async (one) => {
            const taken = await this.#try(sprint.name, one, () => this.#moves.act(one));
            if (taken) Object.assign(this.#end, one.extend);
          });
        }
        return say('rehearsal-said', { day, people: this.#peopleOf(events) });
      },
    };
  }

  #peopleOf(events: readonly ScenarioEvent[]): string[] {
    const nameOf = (id: string | undefined): string =>
      this.#scenario.members.find((member) => member.id === id)?.name ?? say('rehearsal-facilitator');
    return [...new Set(events.map(({ by }) => nameOf(by)))];
  }

  /** Plays one thing; a refusal is noted. Returns whether it went through. */
  async #try(sprint: string, event: PlayRefusal['event'], play: () => Promise<void>): Promise<boolean> {
    const before = this.#rehearsal.refusals.length;
    let words: string | undefined;
    try {
      await play();
    } catch (error) {
      if (!(error instanceof Unheard)) throw error;
      words = error.words;
    }
    const refused = this.#rehearsal.refusals.slice(before).at(-1) ?? words;
    if (refused !== undefined) this.refusals.push({ sprint, event, words: refused });
    const { by } = event as { by?: string };
    await this.#rehearsal.conversation.closeForms(this.#moves.userOf(by));
    await this.#rehearsal.settle();
    return refused === undefined;
  }
}
