import type { WebClient } from '@slack/web-api';
import { DeliveryFailure } from '../../app/posting/delivery-failure.ts';

/**
 * Opens the direct messages with a person. Most calls take the person's id instead; files and histories don't.
 *
 * @returns the id of the conversation
 * @throws DeliveryFailure `not-sent` with `unreadable_answer`; what the client throws
 */
export async function directConversation(client: WebClient, userId: string): Promise<string> {
  const { channel } = await client.conversations.open({ users: userId });
  if (!channel?.id) throw new DeliveryFailure('not-sent', 'unreadable_answer');
  return channel.id;
}
