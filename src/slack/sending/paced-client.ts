/**
 * A client of one workspace that keeps to what the platform asks for: once a method must wait, it is not called
 * again before the time is over. Other methods go on, and so do other workspaces, which have clients of their own.
 */
import type { WebAPICallResult } from '@slack/web-api';
import { WebClient } from '@slack/web-api';
import { DeliveryFailure } from '../../app/posting/delivery-failure.ts';
import { toDeliveryFailure } from './delivery-errors.ts';

export class PacedClient extends WebClient {
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
