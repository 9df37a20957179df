/**
 * Says what a failed call means for a post: whether it may have appeared, and whether to try again.
 * When in doubt it is `uncertain`: looking for a post that never appeared costs a call, posting twice
 * costs trust.
 */
import {
  SlackError,
  WebAPIHTTPError,
  WebAPIPlatformError,
  WebAPIRateLimitedError,
  WebAPIRequestError,
} from '@slack/web-api';
import { DeliveryFailure } from '../../app/posting/delivery-failure.ts';
import { codeOf, errorChain } from '../../error-chain.ts';
import { classOf } from './error-classes.ts';
import { NOT_CONNECTED } from './whole-call.ts';

const SLOW_DOWN = new Set(['ratelimited', 'rate_limited', 'message_limit_exceeded']);
/** When the platform asks to slow down without saying for how long. */
const DEFAULT_RETRY_AFTER_MS = 30_000;

/** The connection was never made, so nothing was carried out (codes of Node.js, and our own). */
const NEVER_CONNECTED = new Set([
  'ECONNREFUSED',
  'ENOTFOUND',
  'EAI_AGAIN',
  'ENETUNREACH',
  'EHOSTUNREACH',
  'ERR_TLS_CERT_ALTNAME_INVALID',
  NOT_CONNECTED,
]);

export function toDeliveryFailure(error: unknown): DeliveryFailure {
  if (error instanceof DeliveryFailure) return error;
  if (error instanceof WebAPIRateLimitedError) {
    return new DeliveryFailure('rate-limited', 'ratelimited', {
      retryAfterMs: error.retryAfter * 1000,
      cause: error,
    });
  }
  if (error instanceof WebAPIPlatformError) return fromPlatform(error);
  if (error instanceof WebAPIHTTPError) {
    const kind = error.statusCode >= 500 ? 'uncertain' : 'not-sent';
    return new DeliveryFailure(kind, `http_${error.statusCode}`, { cause: error });
  }
  if (error instanceof WebAPIRequestError) return fromConnection(error.original, error);
  // A 429 without a time to wait comes as a bare error that names it.
  if (error instanceof Error && !(error instanceof SlackError) && error.message.includes('Retry header')) {
    return new DeliveryFailure('rate-limited', 'ratelimited', {
      retryAfterMs: DEFAULT_RETRY_AFTER_MS,
      cause: error,
    });
  }
  return new DeliveryFailure('uncertain', 'unknown', { cause: error });
}

function fromPlatform(error: WebAPIPlatformError): DeliveryFailure {
  const code = error.data.error;
  const cause = error;
  // Anything but a plain code is a page from something in between, which may have passed the call on.
  if (typeof code !== 'string' || !/^[a-z_]{1,80}$/.test(code)) {
    return new DeliveryFailure('uncertain', 'unreadable_answer', { cause });
  }
  if (SLOW_DOWN.has(code)) {
    const seconds = error.data.response_metadata?.retryAfter;
    const retryAfterMs = seconds === undefined ? DEFAULT_RETRY_AFTER_MS : seconds * 1000;
    return new DeliveryFailure('rate-limited', code, { retryAfterMs, cause });
  }
  const errorClass = classOf(code);
  if (errorClass === 'platform-trouble') return new DeliveryFailure('uncertain', code, { cause });
  if (errorClass === undefined || errorClass === 'try-later') {
    return new DeliveryFailure('not-sent', code, { cause });
  }
  return new DeliveryFailure('refused', code, { because: errorClass, cause });
}

function fromConnection(original: Error, cause: Error): DeliveryFailure {
  const codes = connectionCodes(original);
  const neverConnected = codes.length > 0 && codes.every((code) => NEVER_CONNECTED.has(code));
  return new DeliveryFailure(neverConnected ? 'not-sent' : 'uncertain', codes[0] ?? original.name, { cause });
}

/** The codes of an error, its causes, and the attempts it sums up (one for each address of a host). */
function connectionCodes(error: unknown): string[] {
  for (const at of errorChain(error)) {
    if (at instanceof AggregateError && at.errors.length > 0) return at.errors.flatMap(connectionCodes);
    const code = codeOf(at);
    if (code !== undefined) return [code];
  }
  return [];
}
