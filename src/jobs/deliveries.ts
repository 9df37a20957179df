/**
 * The delivery worker's handler: delivers one post and logs for the operator what went wrong. A post that
 * failed for the last time is set aside by the queue; this is where it is said aloud.
 */
import type { DeliveryOutcome } from '../app/posting/deliver.ts';
import { withNewReference } from '../reference.ts';
import type { JobLog } from './clock.ts';

/** Who counts what becomes of deliveries that did not succeed. */
interface DeliveryMeter {
  deliveryRetried(reason: 'failed' | 'postponed'): void;
  deliveryGivenUp(): void;
}

/**
 * @param deliver delivers the post with this id.
 * @returns a handler for the queue; it rethrows, so that the queue tries again.
 */
export function deliveryHandler(
  deliver: (postId: string, isLast: boolean) => Promise<DeliveryOutcome>,
  log: JobLog,
  meter?: DeliveryMeter,
): (postId: string, attempt: { readonly isLast: boolean }) => Promise<DeliveryOutcome> {
  const attempt = async (postId: string, isLast: boolean): Promise<DeliveryOutcome> => {
    try {
      const outcome = await deliver(postId, isLast);
      if ('retryAfterMs' in outcome) meter?.deliveryRetried('postponed');
      else if (outcome.refusedWith !== undefined) {
        log.error({ postId, code: outcome.refusedWith }, 'post set aside: the platform will never take it');
      }
      return outcome;
    } catch (err) {
      const message = isLast
        ? 'post given up: it failed for the last time'
        : 'post not delivered yet; it is tried again';
      log.error({ err, postId }, message);
      if (isLast) meter?.deliveryGivenUp();
      else meter?.deliveryRetried('failed');
      throw err;
    }
  };
  return (postId, { isLast }) => withNewReference(() => attempt(postId, isLast));
}
