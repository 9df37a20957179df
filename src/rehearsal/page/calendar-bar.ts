/** The simulated calendar: shows the team's date and time, and moves it on. */
import type { PageState } from '../stand-in/page-state.ts';
import { whileBusy } from './button-elements.ts';
import { type Desk, zoneOf } from './desk.ts';
import { byId, element } from './dom.ts';
import { longDate, shortDate, timeOfDay } from './format-date.ts';
import { forward, type Span } from './page-api.ts';

const STEPS: [string, Span][] = [
  ['forward-hour', 'hour'],
  ['forward-day', 'day'],
  ['forward-close', 'close'],
];

export class CalendarBar {
  readonly #bar = byId('calendar', HTMLElement);
  readonly #clock = byId('clock', HTMLElement);
  readonly #said = byId('calendar-said', HTMLElement);
  #clockText = '';

  /** @param arrive shows the new state, and the place where something happened */
  constructor(arrive: (place: string | undefined) => Promise<void>) {
    for (const [id, span] of STEPS) {
      const button = byId(id, HTMLButtonElement);
      button.addEventListener('click', () =>
        this.#run(button, async () => {
          const { did, place } = await forward(span);
          await arrive(place);
          return did;
        }),
      );
    }
  }

  draw(desk: Desk, state: PageState): void {
    const now = new Date(state.now);
    const zone = zoneOf(desk, state);
    const text = `${longDate(now, zone)} ${timeOfDay(now, zone)}`;
    if (text !== this.#clockText) {
      this.#clockText = text;
      this.#clock.replaceChildren(
        element('span', { class: 'clock-time' }, [timeOfDay(now, zone)]),
        element('span', { class: 'clock-date long' }, [longDate(now, zone)]),
        element('span', { class: 'clock-date short' }, [shortDate(now, zone)]),
        element('span', { class: 'clock-zone' }, [zone.replaceAll('_', ' ')]),
      );
      this.#clock.setAttribute('datetime', now.toISOString());
    }
    this.#bar.classList.toggle('still', !desk.about);
  }

  async #run(button: HTMLButtonElement, work: () => Promise<string>): Promise<void> {
    if (this.#bar.getAttribute('aria-busy') === 'true') return;
    this.#bar.setAttribute('aria-busy', 'true');
    this.#say('The calendar moves on …', false);
    await whileBusy(button, async () => {
      try {
        this.#say(await work(), false);
      } catch (error) {
        this.#say(error instanceof Error ? error.message : String(error), true);
      }
    });
    this.#bar.removeAttribute('aria-busy');
  }

  #say(words: string, isProblem: boolean): void {
    this.#said.textContent = words;
    this.#said.classList.toggle('error', isProblem);
  }
}
