/** Tells people who listen rather than look which messages have come in for the member they are. */
import type { PageState, SeenMessage } from '../stand-in/page-state.ts';
import { placeName } from './crew.ts';
import { nameOf } from './desk.ts';
import { element } from './dom.ts';
import { fileWords } from './file-elements.ts';

/** Longer texts are cut when announced; the message itself can be read in full. */
const SPOKEN_LENGTH = 400;
const KEPT_LINES = 5;

export class Announcer {
  readonly #region: HTMLElement;
  readonly #heardTs = new Map<string, number>();

  constructor(region: HTMLElement) {
    this.#region = region;
  }

  /** Announces what is new since the last state of the same member; a first state is not read out. */
  hear(state: PageState): void {
    const all = Object.values(state.messages).flat();
    const newest = Math.max(0, ...all.map((message) => Number(message.ts)));
    const heard = this.#heardTs.get(state.me.id);
    this.#heardTs.set(state.me.id, newest);
    if (heard === undefined) return;
    const fresh = all.filter((message) => Number(message.ts) > heard && message.user !== state.me.id);
    for (const message of fresh) this.say(spoken(message, state));
  }

  say(words: string): void {
    this.#region.append(element('p', {}, [words]));
    while (this.#region.childElementCount > KEPT_LINES) this.#region.firstElementChild?.remove();
  }
}

function spoken(message: SeenMessage, state: PageState): string {
  const author = nameOf(state.users.find((user) => user.id === message.user)) ?? 'Somebody';
  const channel = state.channels.find((place) => place.id === message.channel);
  const where = channel ? ` in ${placeName(channel)}` : '';
  const files = fileWords(message).map((words) => ` ${words}.`);
  return `${author}${where}: ${message.text.slice(0, SPOKEN_LENGTH)}${files.join('')}`;
}
