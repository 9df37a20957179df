/**
 * Runs what is heavy in a thread of its own, which is stopped when it takes too long or too much memory: the bot goes on
 * answering meanwhile, and nothing that people give can hold it up. The script of a thread answers with `answering.ts`.
 */
import { Worker } from 'node:worker_threads';

/** The thread was stopped because it took more than it may. */
export class TooMuch extends Error {
  override readonly name = 'TooMuch';
  readonly code = 'too-much';
}

export interface ThreadLimits {
  /** Of what the thread keeps alive; buffers come on top. */
  readonly memoryMb: number;
  /** Of each answer. */
  readonly timeoutMs: number;
  /** While nobody asks it, it ends as soon as another thread is started: so the two never take their memory at once. */
  readonly givesWay?: boolean;
}

/** Those that give way. */
const givingWay = new Set<Thread>();

/** What a thread says to a question. */
export type Said = { readonly answer: unknown } | { readonly error: Error & { readonly code?: unknown } };

/** A thread may use no more for its stack and its young objects than this. */
const YOUNG_MB = 16;

export class Thread {
  readonly #worker: Worker;
  readonly #timeoutMs: number;
  #failed: Error | undefined;
  #settle: ((said: Said) => void) | undefined;

  constructor(script: URL, { memoryMb, timeoutMs, givesWay = false }: ThreadLimits) {
    for (const other of givingWay) if (!other.#settle) void other.stop();
    if (givesWay) givingWay.add(this);
    this.#timeoutMs = timeoutMs;
    this.#worker = new Worker(script, {
      execArgv: ['--disable-warning=ExperimentalWarning'],
      resourceLimits: { maxOldGenerationSizeMb: memoryMb, maxYoungGenerationSizeMb: YOUNG_MB },
    });
    this.#worker.on('message', (said: Said) => this.#end(said));
    this.#worker.on('error', (error: NodeJS.ErrnoException) =>
      this.#fail(error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? new TooMuch() : error),
    );
    this.#worker.on('exit', () => this.#fail(new Error('the thread has ended')));
  }

  /** Whether it can be asked. */
  get isAlive(): boolean {
    return this.#failed === undefined;
  }

  /**
   * Asks one question after the other; nobody may ask before the answer has come.
   *
   * @param given buffers that the thread gets in place of this one
   * @throws TooMuch when it had to be stopped; what the thread threw, with its code
   */
  async ask<T>(question: unknown, given: readonly ArrayBuffer[] = []): Promise<T> {
    if (this.#settle) throw new TypeError('the thread is asked before it has answered');
    if (this.#failed) throw this.#failed;
    const { promise, resolve } = Promise.withResolvers<Said>();
    this.#settle = resolve;
    const timer = setTimeout(() => void this.stop(new TooMuch()), this.#timeoutMs);
    this.#worker.ref();
    try {
      this.#worker.postMessage(question, given);
      const said = await promise;
      if ('error' in said) throw said.error;
      return said.answer as T;
    } finally {
      this.#settle = undefined;
      clearTimeout(timer);
      // A process that has nothing else to do may end.
      this.#worker.unref();
    }
  }

  /** Ends it, whatever it does. */
  async stop(why: Error = new Error('the thread was stopped')): Promise<void> {
    this.#fail(why);
    await this.#worker.terminate();
  }

  #fail(error: Error): void {
    this.#failed ??= error;
    givingWay.delete(this);
    this.#end({ error: this.#failed });
  }

  #end(said: Said): void {
    this.#settle?.(said);
  }
}

/** For a thread that is started for one piece of work and ended with it. */
export async function withThread<T>(
  script: URL,
  limits: ThreadLimits,
  use: (thread: Thread) => Promise<T>,
): Promise<T> {
  const thread = new Thread(script, limits);
  try {
    return await use(thread);
  } finally {
    await thread.stop();
  }
}
