/** The panel that shows a first visitor what to try. Once closed, it stays closed for this rehearsal. */

import { byId, element } from './dom.ts';
import type { About } from './page-api.ts';

export class HintPanel {
  readonly #panel = byId('hint', HTMLElement);
  readonly #list = byId('hint-lines', HTMLElement);
  readonly #opener = byId('hint-open', HTMLButtonElement);
  #key = '';

  constructor() {
    byId('hint-close', HTMLButtonElement).addEventListener('click', () => this.#show(false));
    this.#opener.addEventListener('click', () => this.#show(Boolean(this.#panel.hidden)));
  }

  draw(about: About | undefined): void {
    const lines = (about?.hint ?? '').split('\n').filter((line) => line.trim() !== '');
    const key = `loadline-hint:${about?.scenario}:${lines.join('\n')}`;
    if (key === this.#key) return;
    this.#key = key;
    this.#opener.hidden = lines.length === 0;
    this.#list.replaceChildren(...lines.map((line) => element('li', {}, [line])));
    this.#reveal(lines.length > 0 && !this.#wasClosed());
  }

  #show(open: boolean): void {
    this.#reveal(open);
    // In a narrow window the opener is in lists that are closed.
    const isSeen = this.#opener.checkVisibility();
    if (!open) (isSeen ? this.#opener : byId('side-open', HTMLElement)).focus();
    try {
      localStorage.setItem(this.#key, open ? 'open' : 'closed');
    } catch {
      // A browser that keeps nothing shows the panel at every visit: a small nuisance, no failure.
    }
  }

  #reveal(open: boolean): void {
    this.#panel.hidden = !open;
    this.#opener.setAttribute('aria-expanded', String(open));
  }

  #wasClosed(): boolean {
    try {
      return localStorage.getItem(this.#key) === 'closed';
    } catch {
      return false;
    }
  }
}
