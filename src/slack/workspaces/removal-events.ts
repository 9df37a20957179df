/** Hears that a workspace removed the bot, or took its token back. Goes before the listeners: they need a token. */
import type { AnyMiddlewareArgs, Middleware } from '@slack/bolt';
import { removalEvent } from '../door/incoming.ts';
import type { Removals } from './removals.ts';

export function removalEvents(removals: Removals): Middleware<AnyMiddlewareArgs> {
  return async ({ body, next }) => {
    const sent = removalEvent.safeParse(body);
    if (!sent.success) return next();
    const { team_id, event, event_time } = sent.data;
    // Tokens of people are of no use here, so the bot has none that could be taken back.
    if (event.type === 'tokens_revoked' && event.tokens.bot.length === 0) return;
    await removals.wasRemoved(team_id, new Date(event_time * 1_000));
  };
}
