/** What took long to make, kept from one answer to the next: as much as was said, and the longest unused goes first. */

/** A version of a past may come back once its rows are forgotten, a day later (`dropOldRecords`); by then nobody remembers it. */
const KEPT_MS = 12 * 3_600_000;

interface Kept<Value> {
  readonly value: Value;
  readonly sinceMs: number;
  readonly weight: number;
}

/** All that the value was made from is part of its key, if only as a version, so what is out of date is not found again. */
export class Memory<Value> {
  /** In the order of their last use. */
  readonly #kept = new Map<string, Kept<Value>>();

  readonly #most: number;
  readonly #weightOf: (value: Value) => number;
  #weight = 0;

  /**
   * @param most of all that is kept, the weights together
   * @param weightOf left out: each weighs 1
   */
  constructor(most: number, weightOf: (value: Value) => number = () => 1) {
    this.#most = most;
    this.#weightOf = weightOf;
  }

  /**
   * What is kept under the key, else made now.
   *
   * @param key undefined: nothing is kept
   * @param mayKeep asked once it is made
   */
  async get(
    key: string | undefined,
    make: () => Promise<Value>,
    mayKeep: () => boolean = () => true,
  ): Promise<Value> {
    const known = key === undefined ? undefined : this.#kept.get(key);
    const nowMs = performance.now();
    const isFresh = known !== undefined && nowMs - known.sinceMs < KEPT_MS;
    if (isFresh) {
      this.#keepAsLatest(key as string, known);
      return known.value;
    }
    const value = await make();
    // Weighed before anything is kept: one that can't be, as of a damaged row, must not spoil what is kept for others.
    const weight = this.#weightOf(value);
    if (key !== undefined && Number.isFinite(weight) && mayKeep()) {
      this.#keepAsLatest(key, { value, sinceMs: nowMs, weight });
    }
    return value;
  }

  clear(): void {
    this.#kept.clear();
    this.#weight = 0;
  }

  #keepAsLatest(key: string, entry: Kept<Value>): void {
    this.#forget(key);
    this.#kept.set(key, entry);
    this.#weight += entry.weight;
    // One that is too heavy by itself goes as well.
    for (const oldest of this.#kept.keys()) {
      if (this.#weight <= this.#most) return;
      this.#forget(oldest);
    }
  }

  #forget(key: string): void {
    const entry = this.#kept.get(key);
    if (!entry) return;
    this.#kept.delete(key);
    this.#weight -= entry.weight;
  }
}
