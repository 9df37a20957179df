/**
 * The delivery worker's handler: delivers one post and tells the operator what went wrong. A post that
 * failed for the last time is set aside by the queue; this is where it is said aloud.
 */
import type { DeliveryOutcome } from '../app/deliver.ts';
import type { JobLog } from './clock.ts';

/**
 * @param deliver delivers the post with this id.
 * @returns a handler for the queue; it rethrows, so that the queue tries again.
 */
export function deliveryHandler(
  deliver: (postId: string) => Promise<DeliveryOutcome>,
  log: JobLog,
): (postId: string, attempt: { readonly isLast: boolean }) => Promise<DeliveryOutcome> {
  return async (postId, { isLast }) => {
    try {
      return await deliver(postId);
    } catch (err) {
      const message = isLast
        ? 'post given up: it failed for the last time'
        : 'post not delivered yet; it is tried again';
      log.error({ err, postId }, message);
      throw err;
    }
  };
}
