/**
 * The scenario as the page plays it: it goes on as the calendar moves, and leaves alone what the visitor did. Whatever
 * the visitor said about a card on a day, or about a member's whole day, it doesn't say again; a card that the visitor
 * finished or dropped stays so; and a sprint that the visitor planned is the visitor's.
 */
import { statesOf } from '../app/cards/card-line.ts';
import type { Prompt, RecordedFact } from '../app/team/team.ts';
import { Player, type PlayStep } from './player.ts';
import type { OpenSprint, Rehearsal } from './rehearsal.ts';
import type { Scenario, ScenarioEvent } from './scenario.ts';

/** What was said in the sprint so far, and how the members met the prompts of one day. */
interface Said extends OpenSprint {
  readonly prompts: readonly Prompt[];
}

export class Script {
  readonly #rehearsal: Rehearsal;
  readonly #player: Player;
  readonly #steps: AsyncGenerator<PlayStep, void, undefined>;
  #next: PlayStep | undefined;
  /** Ids of the sprints, facts and met prompts that are the scenario's own. */
  readonly #own = new Set<string>();
  #wrote = new Set<string>();

  constructor(rehearsal: Rehearsal, scenario: Scenario) {
    this.#rehearsal = rehearsal;
    this.#player = new Player(rehearsal, scenario, (event, play) => this.#playEvent(event, play));
    this.#steps = this.#player.steps();
  }

  /** When something happens next; undefined at the scenario's end. */
  async nextAt(): Promise<Date | undefined> {
    this.#next ??= (await this.#steps.next()).value ?? undefined;
    return this.#next?.at;
  }

  async playNext(): Promise<void> {
    await this.nextAt();
    const step = this.#next;
    const planned = this.#player.plans.length;
    await step?.play();
    this.#next = undefined;
    if (this.#player.plans.length === planned) return;
    const sprint = await this.#rehearsal.openSprint();
    if (sprint) this.#own.add(sprint.sprint.id);
  }

  /** Who has written since this was asked last, by their ids in the scenario. */
  takeWriters(): string[] {
    const wrote = [...this.#wrote];
    this.#wrote = new Set();
    return wrote;
  }

  async #playEvent(event: ScenarioEvent, play: (event: ScenarioEvent) => Promise<void>): Promise<void> {
    const before = await this.#said(event.on);
    if (before && !this.#own.has(before.sprint.id)) return;
    const rest = before ? this.#withoutVisitors(event, before) : event;
    if (!rest) return;
    await play(rest);
    if (event.by !== undefined) this.#wrote.add(event.by);
    const known = new Set(before && idsIn(before));
    const after = await this.#said(event.on);
    for (const id of after ? idsIn(after) : []) if (!known.has(id)) this.#own.add(id);
  }

  /** What is left of the event without what the visitor has seen to; undefined when nothing is. */
  #withoutVisitors(event: ScenarioEvent, said: Said): ScenarioEvent | undefined {
    const { facts, visitorsDay } = this.#visitors(event, said);
    const states = statesOf(said.records);
    const isVisitors = (key: string): boolean => {
      const number = this.#player.cardNumber(key);
      const state = states.find(({ card }) => card.number === number);
      const latest = said.records.facts.filter(({ cardId }) => cardId === state?.card.id).at(-1);
      const isOver = state !== undefined && (state.finished || state.droppedOn !== undefined);
      return (
        facts.some(({ cardId, day }) => cardId === state?.card.id && day === event.on) ||
        (isOver && latest !== undefined && facts.includes(latest))
      );
    };
    const isAnswer = event.answer !== undefined || event.away === true;
    if (isAnswer && visitorsDay) return undefined;
    if (event.answer) {
      const answer = event.answer.filter(({ card }) => !isVisitors(card));
      return answer.length > 0 ? { ...event, answer } : undefined;
    }
    const card = Object.values(event).find((value) => typeof value === 'object' && 'card' in value)?.card;
    return card !== undefined && isVisitors(card) ? undefined : event;
  }

  /** What the visitor said in the sprint, and whether they met the day of the event's member as a whole. */
  #visitors(event: ScenarioEvent, { records, prompts }: Said) {
    const facts = records.facts.filter(({ id }) => !this.#own.has(id));
    const userId = event.by === undefined ? undefined : this.#rehearsal.cast.userIdOf(event.by);
    const met = prompts.find((prompt) => prompt.userId === userId && !this.#own.has(promptId(prompt)));
    const isMet = met?.state === 'unchanged' || met?.state === 'away';
    const hasAnswered = facts.some(({ memberId, day }) => memberId === userId && day === event.on);
    return { facts, visitorsDay: isMet || (event.away === true && hasAnswered) };
  }

  async #said(day: string): Promise<Said | undefined> {
    const open = await this.#rehearsal.openSprint();
    if (!open) return undefined;
    const { store } = this.#rehearsal.deps;
    const prompts = await store.read((read) => read.promptsOf([{ sprintId: open.sprint.id, day }]));
    return { ...open, prompts };
  }
}

function idsIn({ records, prompts }: Said): string[] {
  const ids = records.facts.map(({ id }: RecordedFact) => id);
  return [...ids, ...prompts.filter(({ state }) => state !== 'asked').map(promptId)];
}

/** A prompt that is met in another way counts as another. */
function promptId({ sprintId, userId, day, state }: Prompt): string {
  return [sprintId, userId, day, state].join('/');
}
