/**
 * Separates the platform's own requests from others by their signature.
 * Scheme: docs.slack.dev/authentication/verifying-requests-from-slack.
 */
import { createHmac, timingSafeEqual } from 'node:crypto';

/** How far a request's time may be from ours, in either direction. */
export const CLOCK_TOLERANCE_SECONDS = 300;

type SignatureVerdict = 'genuine' | 'unsigned' | 'stale' | 'from the future' | 'forged';

interface SignatureHeaders {
  /** Header `x-slack-request-timestamp`. */
  readonly timestamp: string | undefined;
  /** Header `x-slack-signature`. */
  readonly signature: string | undefined;
  readonly nowMs: number;
}

interface SignedRequest extends SignatureHeaders {
  readonly signingSecret: string;
  /** Byte for byte as it came. */
  readonly rawBody: Uint8Array;
}

/** What the headers say by themselves, so that a stranger's body need not even be read. */
export function judgeHeaders(headers: SignatureHeaders): Exclude<SignatureVerdict, 'genuine'> | 'plausible' {
  const { timestamp, signature, nowMs } = headers;
  if (timestamp === undefined || signature === undefined || !/^\d{1,12}$/.test(timestamp)) return 'unsigned';
  const ageSeconds = Math.floor(nowMs / 1000) - Number(timestamp);
  if (ageSeconds > CLOCK_TOLERANCE_SECONDS) return 'stale';
  if (ageSeconds < -CLOCK_TOLERANCE_SECONDS) return 'from the future';
  return /^v0=[0-9a-f]{64}$/.test(signature) ? 'plausible' : 'forged';
}

export function judgeSignature(request: SignedRequest): SignatureVerdict {
  const verdict = judgeHeaders(request);
  if (verdict !== 'plausible') return verdict;
  const hmac = createHmac('sha256', request.signingSecret);
  hmac.update(`v0:${request.timestamp}:`).update(request.rawBody);
  const expected = Buffer.from(`v0=${hmac.digest('hex')}`);
  const received = Buffer.from(request.signature ?? '');
  return received.length === expected.length && timingSafeEqual(received, expected) ? 'genuine' : 'forged';
}
