/** Whether two clocks agree. A bot whose clock is wrong refuses genuine requests and asks at the wrong time. */
import type { Finding } from './finding.ts';

/** Beyond this the platform's signed requests are refused (docs.slack.dev/authentication/verifying-requests-from-slack). */
const REFUSED_BEYOND_SECONDS = 300;
const NOTABLE_SECONDS = 30;

/** @param ownNow this machine's clock at the moment when the other one was read */
export function clockFinding(other: 'database' | 'platform', otherNow: Date, ownNow: Date): Finding {
  const skewSeconds = Math.round((ownNow.getTime() - otherNow.getTime()) / 1_000);
  const seconds = Math.abs(skewSeconds);
  if (seconds <= NOTABLE_SECONDS) return { code: 'clock-agrees', other };
  const direction = skewSeconds < 0 ? 'behind' : 'ahead';
  const code = seconds >= REFUSED_BEYOND_SECONDS ? 'clock-far-off' : 'clock-off';
  return { code, other, seconds, direction };
}
