/** Turns a trouble of the schedule into what the stand-in does with one call of the bot. */
import type { Fault as StandInFault } from '../../src/rehearsal/stand-in/stand-in-options.ts';
import type { ApiTrouble } from './fault-schedule.ts';
import type { SeededRandom } from './seeded-random.ts';

/** Longer than any client of the bot waits. */
const NO_ANSWER_MS = 32_000;

interface Window {
  readonly methods: readonly string[];
  readonly share: number;
  readonly trouble: ApiTrouble;
}

export class ApiFaults {
  readonly #random: SeededRandom;
  readonly #windows = new Set<Window>();
  #count = 0;

  constructor(random: SeededRandom) {
    this.#random = random;
  }

  /** How many calls went wrong so far. */
  get count(): number {
    return this.#count;
  }

  /** @param window `methods` empty: all of them; @returns what ends it */
  begin(window: Window): () => void {
    this.#windows.add(window);
    return () => void this.#windows.delete(window);
  }

  faultFor(method: string): StandInFault | undefined {
    // A start asks who the bot is; that it refuses to come up without an answer is tested elsewhere.
    if (method === 'auth.test') return undefined;
    for (const { methods, share, trouble } of this.#windows) {
      if (methods.length > 0 && !methods.includes(method)) continue;
      if (!this.#random.chance(share)) continue;
      this.#count += 1;
      return faultOf(trouble);
    }
    return undefined;
  }
}

function faultOf(trouble: ApiTrouble): StandInFault {
  switch (trouble.kind) {
    case 'slow-down':
      return {
        status: 429,
        headers: { 'retry-after': String(trouble.retryAfterSeconds) },
        body: { ok: false, error: 'ratelimited' },
      };
    case 'error-before':
      return { status: 500, body: { ok: false, error: 'internal_error' } };
    case 'error-after':
      return { status: 500, body: { ok: false, error: 'internal_error' }, applied: true };
    case 'cut-before':
      return { dropConnection: 'before' };
    case 'cut-after':
      return { dropConnection: 'after' };
    case 'no-answer':
      return { answerDelayMs: NO_ANSWER_MS };
    case 'slow':
      return { delayMs: trouble.delayMs };
  }
}
