/** Counts the work in hand, so that a stop can wait for it. */
export class RunningWork {
  readonly #running = new Set<Promise<unknown>>();

  get count(): number {
    return this.#running.size;
  }

  /** Runs the work and remembers it until it ends; what it throws goes to the caller. */
  async track<T>(work: () => Promise<T>): Promise<T> {
    const promise = work();
    this.#running.add(promise);
    try {
      return await promise;
    } finally {
      this.#running.delete(promise);
    }
  }

  /**
   * Waits until nothing runs, new work included, but no longer than `limitMs`.
   *
   * @returns false when something still runs.
   */
  async settled(limitMs: number): Promise<boolean> {
    let timer: NodeJS.Timeout | undefined;
    const tooLate = new Promise<'late'>((resolve) => {
      timer = setTimeout(() => resolve('late'), limitMs);
    });
    try {
      while (this.#running.size > 0) {
        const outcome = await Promise.race([Promise.allSettled([...this.#running]), tooLate]);
        if (outcome === 'late') return false;
      }
      return true;
    } finally {
      clearTimeout(timer);
    }
  }
}
