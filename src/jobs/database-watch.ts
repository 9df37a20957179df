/**
 * Knows whether the database takes anything in, and whether its clock agrees with this machine's. Looks by itself at every
 * tick, so that the operator hears of it before people do, and again when somebody asks for the bot's health.
 */
import type { StoreTroubleCode } from '../app/ports/store-trouble.ts';
import type { JobLog } from './clock.ts';

/** What a database says of itself; rejects when it does not answer. */
export type LookAtDatabase = (how: 'reading' | 'writing') => Promise<{
  readonly trouble: StoreTroubleCode | undefined;
  readonly clockAheadMs: number;
}>;

/** Beyond this the platform's requests are refused, and prompts go out at the wrong time. */
const CLOCK_FAR_OFF_MS = 300_000;
/** Whoever asks for the health gives up after two seconds (deploy/), and should hear why. A frozen server takes forty to be given up. */
const ANSWERS_WITHIN_MS = 1_500;
const NO_ANSWER = ['the database does not answer'];
/** While a trouble lasts, the log says so again after this time. */
const SAID_AGAIN_MS = 600_000;

type Trouble = StoreTroubleCode | 'clocks-differ';

/** For the log and the health routes: what is the case, and what to do. */
const WORDS: Readonly<Record<Trouble, readonly [is: string, then: string]>> = {
  'database-full': [
    'the database has no room',
    'Make room on its disk. Until then nothing is recorded, people are told so, and all goes on by itself afterwards.',
  ],
  'database-read-only': [
    'the database is read-only',
    'Point DATABASE_URL at the primary, or end the failover. Until then nothing is recorded, people are told so, and all goes on by itself afterwards.',
  ],
  'database-busy': [
    'the database has no connection left',
    'Raise max_connections of the server, or stop what uses them up. The bot goes on by itself afterwards.',
  ],
  'clocks-differ': [
    'the clocks of this machine and of the database differ by more than five minutes',
    'Set both by a time service. Until then prompts may come early or late.',
  ],
};

interface DatabaseWatch {
  /** For each tick. Never throws. */
  look(): Promise<void>;
  /** What keeps the bot from working, a phrase each. */
  problems(): Promise<readonly string[]>;
}

/**
 * @param nowMs a clock that is not set back
 * @param looked is told whenever the database has answered
 */
export function watchDatabase(
  ask: LookAtDatabase,
  log: JobLog,
  nowMs: () => number = () => performance.now(),
  looked: (takesIn: boolean) => void = () => undefined,
): DatabaseWatch {
  const saidMs = new Map<Trouble, number>();
  /** The look of those who ask for the health; asked once at a time, however long it takes. */
  let underWay: Promise<readonly string[]> | undefined;

  async function troubles(how: 'reading' | 'writing'): Promise<Trouble[]> {
    const { trouble, clockAheadMs } = await ask(how);
    looked(trouble === undefined);
    const isFarOff = Math.abs(clockAheadMs) >= CLOCK_FAR_OFF_MS;
    const found: Trouble[] = [...(trouble ? [trouble] : []), ...(isFarOff ? ['clocks-differ' as const] : [])];
    for (const code of found) sayOnceAWhile(code, clockAheadMs);
    for (const code of saidMs.keys()) {
      if (found.includes(code)) continue;
      saidMs.delete(code);
      log.info({ event: code, over: true }, `No longer so: ${WORDS[code][0]}.`);
    }
    return found;
  }

  function sayOnceAWhile(code: Trouble, clockAheadMs: number): void {
    if (nowMs() - (saidMs.get(code) ?? Number.NEGATIVE_INFINITY) < SAID_AGAIN_MS) return;
    saidMs.set(code, nowMs());
    const [is, then] = WORDS[code];
    const byHow = code === 'clocks-differ' ? { aheadSeconds: Math.round(clockAheadMs / 1_000) } : {};
    log.error({ event: code, ...byHow }, `${is[0]?.toUpperCase()}${is.slice(1)}. ${then}`);
  }

  return {
    // One that does not answer fails the tick, which is logged.
    look: () => troubles('writing').then(ignore, ignore),
    problems() {
      underWay ??= troubles('reading')
        .then(
          (found) => found.map((code) => WORDS[code][0]),
          () => NO_ANSWER,
        )
        .finally(() => {
          underWay = undefined;
        });
      return inTime(underWay);
    },
  };
}

async function inTime(problems: Promise<readonly string[]>): Promise<readonly string[]> {
  let limit: NodeJS.Timeout | undefined;
  const late = new Promise<readonly string[]>((resolve) => {
    limit = setTimeout(() => resolve(NO_ANSWER), ANSWERS_WITHIN_MS);
  });
  return Promise.race([problems, late]).finally(() => clearTimeout(limit));
}

function ignore(): undefined {
  return undefined;
}
