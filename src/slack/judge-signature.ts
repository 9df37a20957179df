/**
 * Tells the platform's own requests from others by their signature.
 * Scheme: docs.slack.dev/authentication/verifying-requests-from-slack.
 */
import { createHmac, timingSafeEqual } from 'node:crypto';

/** How far a request's time may be from ours, in either direction. */
export const CLOCK_TOLERANCE_SECONDS = 300;

export type SignatureVerdict = 'genuine' | 'unsigned' | 'stale' | 'from the future' | 'forged';

export interface SignedRequest {
  readonly signingSecret: string;
  /** Header `x-slack-request-timestamp`. */
  readonly timestamp: string | undefined;
  /** Header `x-slack-signature`. */
  readonly signature: string | undefined;
  /** Byte for byte as it came. */
  readonly rawBody: Uint8Array;
  readonly nowMs: number;
}

export function judgeSignature(request: SignedRequest): SignatureVerdict {
  const { timestamp, signature } = request;
  if (timestamp === undefined || signature === undefined || !/^\d{1,12}$/.test(timestamp)) return 'unsigned';
  const ageSeconds = Math.floor(request.nowMs / 1000) - Number(timestamp);
  if (ageSeconds > CLOCK_TOLERANCE_SECONDS) return 'stale';
  if (ageSeconds < -CLOCK_TOLERANCE_SECONDS) return 'from the future';
  const hmac = createHmac('sha256', request.signingSecret).update(`v0:${timestamp}:`).update(request.rawBody);
  const expected = Buffer.from(`v0=${hmac.digest('hex')}`);
  const received = Buffer.from(signature);
  return received.length === expected.length && timingSafeEqual(received, expected) ? 'genuine' : 'forged';
}
