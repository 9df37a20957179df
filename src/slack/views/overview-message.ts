/** The reply to the command alone: what the caller can do now. */
import type { Overview } from '../../app/watching/overview.ts';
import { lead } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';
import { overviewBlocks } from './overview-blocks.ts';

const MAX_BLOCKS = 49;

/** @param hereChannelId the channel in which the command was typed; undefined in direct messages. */
export function overviewMessage(overview: Overview, hereChannelId?: string): MessageView {
  return messageView([
    lead('What you can do now'),
    ...overviewBlocks(overview, { hereChannelId, maxBlocks: MAX_BLOCKS }),
  ]);
}
