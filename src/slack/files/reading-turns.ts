/**
 * Who may have files read when. Reading takes memory and seconds, so there are two at once in a process, one of a person, and no
 * workspace may fill the queue: what goes beyond that is refused, with what to do, before anything is fetched. Each process
 * counts for itself.
 */
import { Refusal } from '../../app/refusal.ts';

export interface TurnLimits {
  readonly atOnce: number;
  /** Of those that are read at once; a larger one is read alone. */
  readonly bytesAtOnce: number;
  /** Those that wait. */
  readonly waiting: number;
  /** Of one workspace, being read or waiting; what is more than this alone goes when there is nothing else. */
  readonly bytesOfWorkspace: number;
}

export const TURN_LIMITS: TurnLimits = {
  atOnce: 2,
  bytesAtOnce: 20_000_000,
  waiting: 8,
  bytesOfWorkspace: 50_000_000,
};

export interface GivenBytes {
  readonly workspaceId: string;
  readonly userId: string;
  readonly bytes: number;
}

interface Turn extends GivenBytes {
  readonly begin: () => void;
}

export class ReadingTurns {
  readonly #limits: TurnLimits;
  readonly #reading = new Set<GivenBytes>();
  readonly #waiting: Turn[] = [];

  constructor(limits: TurnLimits = TURN_LIMITS) {
    this.#limits = limits;
  }

  /**
   * Runs the work when it is its turn.
   *
   * @throws Refusal `reading-yours`, `reading-others`
   */
  async take<T>(given: GivenBytes, work: () => Promise<T>): Promise<T> {
    this.#admit(given);
    const { promise, resolve } = Promise.withResolvers<void>();
    const turn: Turn = { ...given, begin: resolve };
    this.#waiting.push(turn);
    this.#next();
    await promise;
    try {
      return await work();
    } finally {
      this.#reading.delete(turn);
      this.#next();
    }
  }

  #admit({ workspaceId, userId, bytes }: GivenBytes): void {
    const all = [...this.#reading, ...this.#waiting];
    const here = all.filter((turn) => turn.workspaceId === workspaceId);
    if (here.some((turn) => turn.userId === userId)) throw new Refusal('reading-yours', {});
    const bytesHere = here.reduce((sum, turn) => sum + turn.bytes, 0);
    const isTooMuch = here.length > 0 && bytesHere + bytes > this.#limits.bytesOfWorkspace;
    if (isTooMuch || this.#waiting.length >= this.#limits.waiting) throw new Refusal('reading-others', {});
  }

  /** Of those who wait, the first of the workspaces that are being read for the least. */
  #next(): void {
    const reading = [...this.#reading];
    const load = ({ workspaceId }: Turn): number =>
      reading.filter((turn) => turn.workspaceId === workspaceId).length;
    const [next] = this.#waiting.toSorted((a, b) => load(a) - load(b));
    if (!next || reading.length >= this.#limits.atOnce) return;
    const bytes = reading.reduce((sum, turn) => sum + turn.bytes, next.bytes);
    if (reading.length > 0 && bytes > this.#limits.bytesAtOnce) return;
    this.#waiting.splice(this.#waiting.indexOf(next), 1);
    this.#reading.add(next);
    next.begin();
    this.#next();
  }
}
