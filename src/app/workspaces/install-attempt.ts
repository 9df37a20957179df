/**
 * Installations under way: somebody's browser leaves for the platform and comes back. What comes back must be what left,
 * from the same browser, within ten minutes. Nothing is stored, so that opening a page fills no database; any replica
 * with the same secret can tell. That a code serves only once is the platform's business.
 */

import { createHmac, hkdfSync, randomBytes, timingSafeEqual } from 'node:crypto';

/** How long somebody may take to agree on the platform. */
export const ATTEMPT_LIFE_MS = 10 * 60_000;

const SECRET_BYTES = 32;
/** The key signs nothing else. */
const PURPOSE = 'loadline install state';

interface BegunAttempt {
  /** Travels through the platform's addresses: `TIME.SIGNATURE`. */
  readonly state: string;
  /** Stays with the browser. */
  readonly browserKey: string;
}

interface InstallAttempts {
  begin(now: Date): BegunAttempt;
  /** Whether the state is this browser's, and in time. */
  isUnderWay(attempt: BegunAttempt, now: Date): boolean;
}

/** @param secret the app's own, which all replicas have */
export function installAttempts(secret: string): InstallAttempts {
  const key = Buffer.from(hkdfSync('sha256', secret, '', PURPOSE, SECRET_BYTES));
  const signed = (time: string, browserKey: string): string =>
    createHmac('sha256', key).update(`${time}.${browserKey}`).digest('base64url');
  return {
    begin(now) {
      const time = String(now.getTime() + ATTEMPT_LIFE_MS);
      const browserKey = randomBytes(SECRET_BYTES).toString('base64url');
      return { state: `${time}.${signed(time, browserKey)}`, browserKey };
    },
    isUnderWay({ state, browserKey }, now) {
      const [, time, signature] = /^(\d{1,16})\.([\w-]{43})$/.exec(state) ?? [];
      if (time === undefined || signature === undefined) return false;
      const isOurs = timingSafeEqual(Buffer.from(signature), Buffer.from(signed(time, browserKey)));
      return isOurs && now.getTime() < Number(time);
    },
  };
}
