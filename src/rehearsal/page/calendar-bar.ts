/** The simulated calendar: shows the team's date and time, moves it on, and plays the preloaded sprint. */
import type { PageState } from '../stand-in/page-state.ts';
import { whileBusy } from './button-elements.ts';
import { type Desk, zoneOf } from './desk.ts';
import { byId, element } from './dom.ts';
import { longDate, shortDate, timeOfDay } from './format-date.ts';
import { forward, playOn, type Span } from './page-api.ts';

const STEPS: [string, Span, string][] = [
  ['forward-hour', 'hour', 'An hour has passed.'],
  ['forward-day', 'day', 'A day has passed.'],
  ['forward-close', 'close', 'The calendar is at the sprint’s end.'],
];

export class CalendarBar {
  readonly #bar = byId('calendar', HTMLElement);
  readonly #clock = byId('clock', HTMLElement);
  readonly #said = byId('calendar-said', HTMLElement);
  readonly #play = byId('play-on', HTMLButtonElement);
  readonly #refresh: () => Promise<void>;
  #isDone = false;
  #clockText = '';

  constructor(refresh: () => Promise<void>) {
    this.#refresh = refresh;
    for (const [id, span, done] of STEPS) {
      const button = byId(id, HTMLButtonElement);
      button.addEventListener('click', () =>
        this.#run(button, 'The calendar moves on …', async () => {
          await forward(span);
          return done;
        }),
      );
    }
    this.#play.addEventListener('click', () =>
      this.#run(this.#play, 'The next step is being played …', async () => {
        const { did, done } = await playOn();
        this.#isDone = done;
        return did;
      }),
    );
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
    this.#play.hidden = !desk.about || (!desk.about.canPlayOn && !this.#isDone);
    this.#play.disabled = this.#isDone && !desk.about?.canPlayOn;
  }

  async #run(button: HTMLButtonElement, meanwhile: string, work: () => Promise<string>): Promise<void> {
    if (this.#bar.getAttribute('aria-busy') === 'true') return;
    this.#bar.setAttribute('aria-busy', 'true');
    this.#say(meanwhile, false);
    await whileBusy(button, async () => {
      try {
        const did = await work();
        await this.#refresh();
        this.#say(did, false);
      } catch (error) {
        this.#say(error instanceof Error ? error.message : String(error), true);
      }
    });
    this.#bar.removeAttribute('aria-busy');
    if (this.#isDone) this.#play.disabled = true;
  }

  #say(words: string, isProblem: boolean): void {
    this.#said.textContent = words;
    this.#said.classList.toggle('error', isProblem);
  }
}
