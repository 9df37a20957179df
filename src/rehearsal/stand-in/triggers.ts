/**
 * Short-lived permissions that come with an interaction: triggers open a form (3 s, one use), response URLs
 * answer in place (30 min, 5 uses). Real time, given as data. docs.slack.dev/interactivity/handling-user-interaction
 */

/** How long the platform lets a form be opened after an interaction. */
export const TRIGGER_LIFE_MS = 3_000;
const RESPONSE_URL_LIFE_MS = 30 * 60_000;
const RESPONSE_URL_USES = 5;

interface Trigger {
  userId: string;
  madeAtMs: number;
  used: boolean;
}

type TriggerError = 'invalid_trigger_id' | 'expired_trigger_id' | 'exchanged_trigger_id';

export class Triggers {
  readonly #nowMs: () => number;
  readonly #lifeMs: number;
  readonly #known = new Map<string, Trigger>();

  constructor(nowMs: () => number, lifeMs: number) {
    this.#nowMs = nowMs;
    this.#lifeMs = lifeMs;
  }

  make(userId: string): string {
    const id = `${this.#known.size + 1}.${Math.floor(this.#nowMs())}.${crypto.randomUUID().replaceAll('-', '')}`;
    this.#known.set(id, { userId, madeAtMs: this.#nowMs(), used: false });
    return id;
  }

  /** Uses a trigger up. An expired one says so even if it was used before. */
  exchange(id: string): { userId: string } | { error: TriggerError } {
    const trigger = this.#known.get(id);
    if (!trigger) return { error: 'invalid_trigger_id' };
    if (this.#nowMs() - trigger.madeAtMs > this.#lifeMs) return { error: 'expired_trigger_id' };
    if (trigger.used) return { error: 'exchanged_trigger_id' };
    trigger.used = true;
    return { userId: trigger.userId };
  }
}

/** Where an answer through a response URL belongs. */
export interface ResponsePlace {
  userId: string;
  channelId: string;
  /** The message that was acted on; undefined for a command. */
  ts: string | undefined;
}

export class ResponseUrls {
  readonly #nowMs: () => number;
  readonly #known = new Map<string, { place: ResponsePlace; madeAtMs: number; uses: number }>();

  constructor(nowMs: () => number) {
    this.#nowMs = nowMs;
  }

  /** @returns the key at the end of the URL. */
  make(place: ResponsePlace): string {
    const key = crypto.randomUUID();
    this.#known.set(key, { place, madeAtMs: this.#nowMs(), uses: 0 });
    return key;
  }

  use(key: string): ResponsePlace | { error: 'invalid_url' | 'expired_url' | 'used_url' } {
    const entry = this.#known.get(key);
    if (!entry) return { error: 'invalid_url' };
    if (this.#nowMs() - entry.madeAtMs > RESPONSE_URL_LIFE_MS) return { error: 'expired_url' };
    if (entry.uses >= RESPONSE_URL_USES) return { error: 'used_url' };
    entry.uses += 1;
    return entry.place;
  }
}
