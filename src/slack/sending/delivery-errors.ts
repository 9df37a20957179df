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

/** The platform answered, but may have carried the call out (docs.slack.dev/reference/methods/chat.postMessage). */
const MAYBE_DONE = new Set(['fatal_error', 'internal_error', 'service_unavailable']);

/** Trying again is useless until somebody changes something: a place, a person, a token, the bot itself. */
const USELESS = new Set([
  'channel_not_found',
  'not_in_channel',
  'is_archived',
  'restricted_action',
  'restricted_action_read_only_channel',
  'messages_tab_disabled',
  'cannot_dm_bot',
  'user_not_found',
  'user_not_visible',
  'user_disabled',
  'users_not_found',
  'account_inactive',
  'token_revoked',
  'token_expired',
  'invalid_auth',
  'not_authed',
  'no_permission',
  'org_login_required',
  'team_access_not_granted',
  'missing_scope',
  'not_allowed_token_type',
  'ekm_access_denied',
  'accesslimited',
  'invalid_blocks',
  'invalid_blocks_format',
  'invalid_arguments',
  'invalid_metadata_format',
  'invalid_metadata_schema',
  'metadata_too_large',
  'msg_too_long',
  'msg_blocks_too_long',
  'no_text',
  'message_not_found',
  'cant_update_message',
  'edit_window_closed',
  'unknown_method',
]);

const SLOW_DOWN = new Set(['ratelimited', 'rate_limited', 'message_limit_exceeded']);
/** When the platform asks to slow down without saying for how long. */
const DEFAULT_RETRY_AFTER_MS = 30_000;

/** The connection was never made, so nothing was carried out (Node.js `errno` and undici codes). */
const NEVER_CONNECTED = new Set([
  'ECONNREFUSED',
  'ENOTFOUND',
  'EAI_AGAIN',
  'ENETUNREACH',
  'EHOSTUNREACH',
  'ERR_TLS_CERT_ALTNAME_INVALID',
  'UND_ERR_CONNECT_TIMEOUT',
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

/** For steps that come before a post, such as an upload: the post was not sent in any case. */
export function toFailureBeforePost(error: unknown): DeliveryFailure {
  const failure = toDeliveryFailure(error);
  if (failure.kind !== 'uncertain') return failure;
  return new DeliveryFailure('not-sent', failure.code, { cause: error });
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
  if (MAYBE_DONE.has(code)) return new DeliveryFailure('uncertain', code, { cause });
  return new DeliveryFailure(USELESS.has(code) ? 'refused' : 'not-sent', code, { cause });
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
