/**
 * The two clients of the platform's Web API. They are apart because a client that must slow down holds
 * back its whole queue: a hundred prompts must not delay the form that somebody waits for. Neither sends a
 * call again when nobody knows whether it was carried out, as after a dropped connection: a post must not appear twice.
 */
import { setTimeout as wait } from 'node:timers/promises';
import { type WebAPICallResult, WebClient, type WebClientOptions } from '@slack/web-api';
import { DeliveryFailure } from '../../app/posting/delivery-failure.ts';
import type { Logger } from '../../logger.ts';
import { boltLogger } from '../bolt-logger.ts';
import { toDeliveryFailure } from './delivery-errors.ts';
import { wholeCalls } from './whole-call.ts';

const INTERACTIVE_TIMEOUT_MS = 10_000;
const BULK_TIMEOUT_MS = 30_000;
/** A person waits so long for an answer that the platform puts off, and so often. */
const PUT_OFF_MAX_MS = 3_000;
const PUT_OFF_MAX_TIMES = 5;

export interface WebClientSettings {
  readonly botToken: string;
  readonly logger: Logger;
  /** The platform's own address when left out; a rehearsal gives its stand-in's. */
  readonly slackApiUrl?: string | undefined;
}

/** For what a person waits for: forms, replies, look-ups. */
export function interactiveClient(settings: WebClientSettings): WebClient {
  return new PatientClient(settings.botToken, clientOptions(settings, INTERACTIVE_TIMEOUT_MS));
}

/** For posts: a method that must wait is not called before the time is over. */
export function bulkClient(settings: WebClientSettings): WebClient {
  return new PacedClient(settings.botToken, clientOptions(settings, BULK_TIMEOUT_MS));
}

function clientOptions({ logger, slackApiUrl }: WebClientSettings, timeoutMs: number): WebClientOptions {
  return {
    logger: boltLogger(logger),
    fetch: wholeCalls(timeoutMs),
    retryConfig: { retries: 0 },
    rejectRateLimitedCalls: true,
    ...(slackApiUrl === undefined ? {} : { slackApiUrl }),
  };
}

/** Calls again what the platform puts off for a moment, as it does with an answer to each of two quick messages. */
class PatientClient extends WebClient {
  override async apiCall(method: string, options?: Record<string, unknown>): Promise<WebAPICallResult> {
    for (let times = 0; ; times += 1) {
      try {
        return await super.apiCall(method, options);
      } catch (error) {
        const { kind, retryAfterMs = Number.POSITIVE_INFINITY } = toDeliveryFailure(error);
        const isShort = kind === 'rate-limited' && retryAfterMs <= PUT_OFF_MAX_MS;
        if (!isShort || times === PUT_OFF_MAX_TIMES) throw error;
        await wait(retryAfterMs);
      }
    }
  }
}

/**
 * A client of one workspace that keeps to what the platform asks for: once a method must wait, it is not called
 * again before the time is over. Other methods go on, and so do other workspaces, which have clients of their own.
 */
class PacedClient extends WebClient {
  /** By method, until when it waits, by the clock that never jumps. */
  readonly #waitsUntilMs = new Map<string, number>();

  /** @throws DeliveryFailure `rate-limited`, without a call, while the method waits; else what the client throws */
  override async apiCall(method: string, options?: Record<string, unknown>): Promise<WebAPICallResult> {
    const waitMs = (this.#waitsUntilMs.get(method) ?? 0) - performance.now();
    if (waitMs > 0) {
      throw new DeliveryFailure('rate-limited', 'ratelimited', { retryAfterMs: Math.ceil(waitMs) });
    }
    try {
      return await super.apiCall(method, options);
    } catch (error) {
      const { kind, retryAfterMs = 0 } = toDeliveryFailure(error);
      if (kind === 'rate-limited') this.#waitsUntilMs.set(method, performance.now() + retryAfterMs);
      throw error;
    }
  }
}
