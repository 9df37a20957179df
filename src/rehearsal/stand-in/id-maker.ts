/** Makes ids that look like the platform's: a letter for the kind, then a running number in base 36. */
export class IdMaker {
  #count = 0;

  /** `next('V')` gives `V0000001AB`-like ids: unique within one stand-in, in order of making. */
  next(letter: string): string {
    this.#count += 1;
    return `${letter}${(36 ** 5 + this.#count).toString(36).toUpperCase().padStart(9, '0')}`;
  }

  /** A short id for a block or element that came without one. */
  nextShort(): string {
    this.#count += 1;
    return (36 ** 3 + this.#count).toString(36);
  }
}
