/** One process of the bot, `src/main.js` as an operator starts it; started again whenever it is down, as a supervisor does. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createWriteStream, type WriteStream } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';

const MAIN = fileURLToPath(new URL('../../src/main.js', import.meta.url));
const SHIFT_CLOCK = new URL('./shift-clock.ts', import.meta.url).href;
/** How long a supervisor waits before it starts again what ended by itself. */
const START_AGAIN_MS = 500;

interface BotProcessOptions {
  readonly environment: Readonly<Record<string, string>>;
  readonly clockFile: string;
  readonly logFile: string;
  /** It ended though nobody had told it to; `wasReady`: whether it had come up before. */
  readonly onEndedByItself: (end: { readonly wasReady: boolean; readonly said: string }) => void;
}

export class BotProcess {
  readonly #options: BotProcessOptions;
  readonly #log: WriteStream;
  #child: ChildProcess | undefined;
  #port: number | undefined;
  #isWanted = false;
  #isTold = false;
  #isFrozen = false;
  #starts = 0;

  constructor(options: BotProcessOptions) {
    this.#options = options;
    this.#log = createWriteStream(options.logFile);
  }

  /** Where it takes requests; undefined while it is down or starting. */
  get port(): number | undefined {
    return this.#port;
  }

  get starts(): number {
    return this.#starts;
  }

  get isRunning(): boolean {
    return this.#child !== undefined;
  }

  start(): void {
    this.#isWanted = true;
    if (this.#child) return;
    this.#starts += 1;
    this.#isTold = false;
    const args = ['--disable-warning=ExperimentalWarning', '--import', SHIFT_CLOCK, MAIN];
    const child = spawn(process.execPath, args, {
      env: {
        PATH: process.env.PATH ?? '',
        ...this.#options.environment,
        CHAOS_CLOCK_FILE: this.#options.clockFile,
      },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    this.#child = child;
    let lastSaid = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding('utf8').on('data', (text: string) => {
        this.#log.write(text);
        lastSaid = (lastSaid + text).slice(-4_000);
        const ready = /^\{.*"Loadline is running".*$/m.exec(lastSaid)?.[0];
        if (ready && this.#port === undefined && this.#child === child && !this.#isTold) {
          this.#port = (JSON.parse(ready) as { port: number }).port;
        }
      });
    }
    child.once('exit', () => {
      const wasReady = this.#port !== undefined;
      this.#child = undefined;
      this.#port = undefined;
      if (this.#isTold) return;
      this.#options.onEndedByItself({ wasReady, said: lastSaid });
      setTimeout(() => this.#isWanted && this.start(), START_AGAIN_MS).unref();
    });
  }

  /** Ends it and leaves it down: as a power cut would, or as an operator would. */
  async end(signal: 'SIGKILL' | 'SIGTERM'): Promise<void> {
    this.#isWanted = false;
    const child = this.#child;
    if (!child) return;
    this.#isTold = true;
    this.#port = undefined;
    const exited = once(child, 'exit');
    if (this.#isFrozen) child.kill('SIGCONT');
    child.kill(signal);
    await exited;
  }

  /** The process is frozen and doesn't notice. */
  async freeze(forMs: number): Promise<void> {
    const child = this.#child;
    if (!child || this.#isFrozen) return;
    this.#isFrozen = true;
    child.kill('SIGSTOP');
    await wait(forMs);
    child.kill('SIGCONT');
    this.#isFrozen = false;
  }

  /** For an end of the whole run that nobody can wait for. */
  killNow(): void {
    this.#isWanted = false;
    this.#isTold = true;
    this.#child?.kill('SIGKILL');
  }
}
