/**
 * Plays a scenario step by step through the bot's conversations: the facilitator sets up and plans, members
 * answer their prompts, the calendar moves on, the sprint closes by itself. What the bot refuses is noted
 * with its event and its words, and play goes on.
 */
import { instantOf } from '../app/clock/local-time.ts';
import { daysFromTo } from '../sprint/calendar.ts';
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

/** One step that was played. */
export interface PlayStep {
  /** What happened, as a sentence. */
  readonly did: string;
  /** Undefined before the first sprint. */
  readonly sprint: ScenarioSprint | undefined;
}

export class Player {
  readonly refusals: PlayRefusal[] = [];
  /** In the order in which they were planned. */
  readonly plans: PlayedPlan[] = [];
  readonly #rehearsal: Rehearsal;
  readonly #scenario: Scenario;
  readonly #moves: Moves;

  constructor(rehearsal: Rehearsal, scenario: Scenario) {
    this.#rehearsal = rehearsal;
    this.#scenario = scenario;
    this.#moves = new Moves(rehearsal, scenario);
  }

  /** The steps in order; each is played when it is asked for. */
  async *steps(): AsyncGenerator<PlayStep, void, undefined> {
    const { team, sprints } = this.#scenario;
    await this.#try('', { setup: true }, () => this.#moves.setUp());
    yield { did: say('rehearsal-set-up', { team: team.name }), sprint: undefined };
    for (const sprint of sprints) yield* this.#sprintSteps(sprint);
  }

  async *#sprintSteps(sprint: ScenarioSprint): AsyncGenerator<PlayStep, void, undefined> {
    const { timeZone } = this.#scenario.team;
    const keys = this.#moves.turnTo(sprint);
    const days = daysOf(sprint);
    // What is said before the first day is said before the sprint is planned, so that the bot refuses it.
    for (const day of days.filter((one) => one < sprint.startsOn)) yield* this.#daySteps(sprint, day);
    await this.#rehearsal.moveTo(instantOf(sprint.startsOn, '00:00', timeZone));
    const firstPost = this.#rehearsal.standIn.allPosts().length;
    const planned = await this.#try(sprint.name, { plan: sprint.name }, () => this.#moves.plan(sprint));
    if (planned) this.plans.push({ firstPost, keys });
    const did = say(planned ? 'rehearsal-planned' : 'rehearsal-not-planned', { sprint: sprint.name });
    yield { did, sprint };
    for (const day of days.filter((one) => one >= sprint.startsOn)) yield* this.#daySteps(sprint, day);
    await this.#rehearsal.moveTo(instantOf(sprint.endsOn, this.#moves.closesAt(sprint), timeZone));
    yield { did: say('rehearsal-closed', { sprint: sprint.name }), sprint };
  }

  async *#daySteps(sprint: ScenarioSprint, day: string): AsyncGenerator<PlayStep, void, undefined> {
    const { timeZone, promptAt } = this.#scenario.team;
    await this.#rehearsal.moveTo(instantOf(day, promptAt, timeZone));
    const events = sprint.events.filter(({ on }) => on === day);
    if (day >= sprint.startsOn && day <= sprint.endsOn) {
      yield { did: say('rehearsal-day', { day, time: promptAt }), sprint };
    }
    if (events.length === 0) return;
    for (const event of events) await this.#try(sprint.name, event, () => this.#moves.act(event));
    yield { did: say('rehearsal-said', { day, people: this.#peopleOf(events) }), sprint };
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

/** The sprint's days, and other days on which the file has events; in order. */
function daysOf(sprint: ScenarioSprint): string[] {
  const span = daysFromTo(sprint.startsOn, sprint.endsOn);
  return [...new Set([...span, ...sprint.events.map(({ on }) => on)])].sort();
}
