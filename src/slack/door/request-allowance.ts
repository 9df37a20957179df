/**
 * How much one person may ask for at a time. Each has an allowance that fills up again evenly; people never come near
 * its end, a script does. Must not grow with the number of people who have ever asked, nor hold anybody up.
 */

/** People remembered at one time; the one who has asked for nothing the longest is forgotten first. */
const MOST_PEOPLE = 20_000;
const MINUTE_MS = 60_000;

type Allowance =
  | { readonly isAllowed: true }
  | {
      readonly isAllowed: false;
      /** Whole seconds until the same request would be allowed; at least 1. */
      readonly waitSeconds: number;
      /** Whether it is the first refusal since something was last allowed. */
      readonly isFirst: boolean;
    };

interface Account {
  left: number;
  atMs: number;
  wasRefused: boolean;
}

export class RequestAllowance {
  readonly #perMinute: number;
  readonly #mostPeople: number;
  readonly #nowMs: () => number;
  /** In the order of their last request. */
  readonly #accounts = new Map<string, Account>();

  /**
   * @param perMinute what is given back in a minute, and what may be asked for at once after a rest
   * @param nowMs a clock that is not set back
   */
  constructor(perMinute: number, nowMs: () => number, mostPeople: number = MOST_PEOPLE) {
    this.#perMinute = perMinute;
    this.#mostPeople = mostPeople;
    this.#nowMs = nowMs;
  }

  get peopleCount(): number {
    return this.#accounts.size;
  }

  /** Takes a request of that cost from a person's allowance, or nothing when there is not enough left. */
  take(person: string, cost: number): Allowance {
    const account = this.#accountOf(person);
    if (account.left >= cost) {
      account.left -= cost;
      account.wasRefused = false;
      return { isAllowed: true };
    }
    const isFirst = !account.wasRefused;
    account.wasRefused = true;
    const waitMs = ((cost - account.left) / this.#perMinute) * MINUTE_MS;
    return { isAllowed: false, waitSeconds: Math.max(1, Math.ceil(waitMs / 1_000)), isFirst };
  }

  #accountOf(person: string): Account {
    const nowMs = this.#nowMs();
    const known = this.#accounts.get(person);
    const account = known ?? { left: this.#perMinute, atMs: nowMs, wasRefused: false };
    const givenBack = ((nowMs - account.atMs) / MINUTE_MS) * this.#perMinute;
    account.left = Math.min(this.#perMinute, account.left + givenBack);
    account.atMs = nowMs;
    this.#accounts.delete(person);
    this.#accounts.set(person, account);
    for (const [longestSilent] of this.#accounts) {
      if (this.#accounts.size <= this.#mostPeople) break;
      this.#accounts.delete(longestSilent);
    }
    return account;
  }
}
