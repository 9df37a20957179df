/** Counts the memory that unfinished requests hold together. Must not make anybody wait: there is room, or there is not. */
export class BodyRoom {
  readonly #limitBytes: number;
  #takenBytes = 0;

  constructor(limitBytes: number) {
    this.#limitBytes = limitBytes;
  }

  /** @returns false, and takes nothing, when there is not that much room left. */
  take(bytes: number): boolean {
    if (this.#takenBytes + bytes > this.#limitBytes) return false;
    this.#takenBytes += bytes;
    return true;
  }

  giveBack(bytes: number): void {
    this.#takenBytes -= bytes;
  }

  get takenBytes(): number {
    return this.#takenBytes;
  }
}
