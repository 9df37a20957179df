/** What took long to make, kept from one answer to the next: as much as was said, and the longest unused goes first. */

/** A version of a past may come back once its rows are forgotten, a day later (`dropOldRecords`); by then nobody remembers it. */
const KEPT_MS = 12 * 3_600_000;

/** All that the value was made from is part of its key, if only as a version, so what is out of date is not found again. */
export class Memory<Value> {
  /** In the order of their last use. */
  readonly #kept = new Map<string, { readonly value: Value; readonly sinceMs: number }>();

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
    const entry = isFresh ? known : { value: await make(), sinceMs: nowMs };
    if (key !== undefined && (isFresh || mayKeep())) this.#keepAsLatest(key, entry);
    return entry.value;
  }

  clear(): void {
    this.#kept.clear();
    this.#weight = 0;
  }

  #keepAsLatest(key: string, entry: { readonly value: Value; readonly sinceMs: number }): void {
    this.#forget(key);
    this.#kept.set(key, entry);
    this.#weight += this.#weightOf(entry.value);
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
    this.#weight -= this.#weightOf(entry.value);
  }
}
