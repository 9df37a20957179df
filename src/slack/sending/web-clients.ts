/**
 * The two clients of the platform's Web API. They are apart because a client that must slow down holds
 * back its whole queue: a hundred prompts must not delay the form that somebody waits for. Neither sends a
 * call again by itself: after a dropped connection nobody knows whether it was carried out, and a post must
 * not appear twice.
 */
import { WebClient, type WebClientOptions } from '@slack/web-api';
import type { Logger } from '../../logger.ts';
import { boltLogger } from '../bolt-logger.ts';
import { PacedClient } from './paced-client.ts';

const INTERACTIVE_TIMEOUT_MS = 10_000;
const BULK_TIMEOUT_MS = 30_000;

export interface WebClientSettings {
  readonly botToken: string;
  readonly logger: Logger;
  /** The platform's own address when left out; a rehearsal gives its stand-in's. */
  readonly slackApiUrl?: string | undefined;
}

/** For what a person waits for: forms, replies, look-ups. */
export function interactiveClient(settings: WebClientSettings): WebClient {
  return new WebClient(settings.botToken, clientOptions(settings, INTERACTIVE_TIMEOUT_MS));
}

/** For posts: a method that must wait is not called before the time is over. */
export function bulkClient(settings: WebClientSettings): WebClient {
  return new PacedClient(settings.botToken, clientOptions(settings, BULK_TIMEOUT_MS));
}

function clientOptions({ logger, slackApiUrl }: WebClientSettings, timeoutMs: number): WebClientOptions {
  return {
    logger: boltLogger(logger),
    timeout: timeoutMs,
    retryConfig: { retries: 0 },
    rejectRateLimitedCalls: true,
    ...(slackApiUrl === undefined ? {} : { slackApiUrl }),
  };
}
