/**
 * The box to write in. A line that begins with a slash is sent as a command, anything else as a message.
 * What was typed is kept for each member and place until it has been sent and taken.
 */
import type { Outcome } from '../stand-in/page-state.ts';
import { type Desk, HOME } from './desk.ts';
import { byId, element } from './dom.ts';
import { sendCommand, sendMessage } from './page-api.ts';

/** The platform takes none in threads. */
const NO_COMMAND_HERE: Outcome = {
  ok: false,
  reason: 'Commands don’t work in threads. Write @loadline and the words instead, such as @loadline status.',
};

export class Composer {
  readonly #form = byId('composer', HTMLFormElement);
  readonly #box = byId('composer-box', HTMLTextAreaElement);
  readonly #examples = byId('examples', HTMLElement);
  readonly #drafts = new Map<string, string>();
  readonly #desk: Desk;
  readonly #settle: (work: Promise<Outcome>) => Promise<boolean>;
  #shown = '';

  constructor(desk: Desk, settle: (work: Promise<Outcome>) => Promise<boolean>) {
    this.#desk = desk;
    this.#settle = settle;
    this.#form.addEventListener('submit', (event) => {
      event.preventDefault();
      void this.#send();
    });
    this.#box.addEventListener('input', () => this.#typed());
    this.#box.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter' || event.shiftKey || event.isComposing) return;
      event.preventDefault();
      void this.#send();
    });
  }

  /** Shows the draft of the place, and the examples. */
  draw(): void {
    this.#form.hidden = this.#desk.place === HOME;
    const shown = `${this.#desk.me}/${this.#desk.place}/${this.#desk.thread ?? ''}`;
    if (shown !== this.#shown) {
      this.#shown = shown;
      this.#box.value = this.#drafts.get(shown) ?? '';
      this.#typed();
    }
    const { about, place = '' } = this.#desk;
    const examples = about?.examplesAt?.[place] ?? about?.examples ?? [];
    const offered = examples.join('\n');
    if (this.#examples.dataset.offered === offered) return;
    this.#examples.dataset.offered = offered;
    this.#examples.replaceChildren(...examples.map((text) => this.#example(text)));
  }

  #example(text: string): HTMLElement {
    const button = element('button', { type: 'button', class: 'example' }, [text], {
      click: () => {
        this.#box.value = text;
        this.#typed();
        this.#box.focus();
      },
    });
    return element('li', {}, [button]);
  }

  #typed(): void {
    this.#drafts.set(this.#shown, this.#box.value);
    const lines = this.#box.value.split('\n').length;
    this.#box.rows = Math.min(Math.max(lines, 1), 8);
  }

  async #send(): Promise<void> {
    const text = this.#box.value.trim();
    const { me, place, thread } = this.#desk;
    if (text === '' || !me || !place || this.#form.getAttribute('aria-busy') === 'true') return;
    const draft = this.#shown;
    this.#form.setAttribute('aria-busy', 'true');
    const sent = !text.startsWith('/')
      ? sendMessage(me, place, text, thread)
      : thread === undefined
        ? sendCommand(me, place, text)
        : Promise.resolve(NO_COMMAND_HERE);
    const taken = await this.#settle(sent);
    this.#form.removeAttribute('aria-busy');
    if (!taken) return;
    this.#drafts.delete(draft);
    if (this.#shown === draft && this.#box.value.trim() === text) {
      this.#box.value = '';
      this.#typed();
    }
  }
}
