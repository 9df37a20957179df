/** Whether two clocks agree. A bot whose clock is off refuses genuine requests and asks at the wrong time. */
import { type Finding, findingsOf } from './finding.ts';

const { ok, warning, mend } = findingsOf('clock');

/** Beyond this the platform's signed requests are refused (docs.slack.dev/authentication/verifying-requests-from-slack). */
const REFUSED_BEYOND_SECONDS = 300;
const NOTABLE_SECONDS = 30;

/** @param ownNow this machine's clock at the moment when the other one was read */
export function clockFinding(other: string, otherNow: Date, ownNow: Date): Finding {
  const skewSeconds = Math.round((ownNow.getTime() - otherNow.getTime()) / 1_000);
  const size = Math.abs(skewSeconds);
  const found = `This machine's clock is ${size} s ${skewSeconds < 0 ? 'behind' : 'ahead of'} that of ${other}.`;
  const how = 'Let a time service (NTP) set the clock of the machine that is off.';
  if (size >= REFUSED_BEYOND_SECONDS) return mend(found, how);
  return size > NOTABLE_SECONDS ? warning(found, how) : ok(`It agrees with that of ${other}.`);
}
