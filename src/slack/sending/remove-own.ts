/** Deletes the bot's own messages in a conversation, a part at a time. */
import type { WebClient } from '@slack/web-api';
import type { RemovalStep } from '../../app/ports/messenger.ts';
import type { DeliveryFailure } from '../../app/posting/delivery-failure.ts';
import { toDeliveryFailure } from './delivery-errors.ts';

/** The platform allows about 50 deletions a minute in a workspace (docs.slack.dev/apis/web-api/rate-limits, tier 3). */
const MOST_A_STEP = 40;
const PAGE = 100;

/**
 * Looks at one page of messages, the latest first, and deletes what the bot wrote.
 *
 * @param beforeTs only what is older
 * @throws DeliveryFailure when the page can't be read
 */
export async function removeOwnMessages(
  client: WebClient,
  botUserId: string,
  channelId: string,
  beforeTs: string,
): Promise<RemovalStep> {
  const page = await client.conversations
    .history({ channel: channelId, limit: PAGE, latest: beforeTs })
    .catch((error: unknown) => {
      throw toDeliveryFailure(error);
    });
  const step = { removed: 0, left: 0, beforeTs, isDone: false };
  for (const { ts, user } of page.messages ?? []) {
    if (ts === undefined) continue;
    if (user === botUserId) {
      if (step.removed + step.left >= MOST_A_STEP) return step;
      const failure = await client.chat.delete({ channel: channelId, ts }).then(
        () => undefined,
        (error: unknown) => toDeliveryFailure(error),
      );
      if (failure && !isRefused(failure)) return step;
      if (!failure) step.removed += 1;
      else if (failure.code !== 'message_not_found') step.left += 1;
    }
    step.beforeTs = ts;
  }
  return { ...step, isDone: !page.has_more };
}

/** For this message, whenever it is asked again. */
function isRefused({ kind, because }: DeliveryFailure): boolean {
  return kind === 'refused' && because !== 'token-gone';
}
