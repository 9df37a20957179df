/** The slash command: acknowledged at once, answered after. */
import type { App, RespondFn } from '@slack/bolt';
import { Refusal } from '../../app/refusal.ts';
import type { CommandWord } from '../command-table.ts';
import { slashCommand } from '../door/incoming.ts';
import { nearestCommandWord } from '../nearest-command.ts';
import { plainWords } from '../plain-words.ts';
import { placeOf } from './asker.ts';
import {
  type Caller,
  COMMAND_HANDLERS,
  READING_HANDLERS,
  type ReadingWord,
  tellOverview,
} from './command-handlers.ts';
import { contextOf } from './context-of.ts';
import { guarded, guardedReading, triggerKey } from './guarded.ts';
import type { ListenerContext } from './listener-context.ts';
import { parseCommand } from './parse-command.ts';
import { tellsOnly } from './responses.ts';

export function listenToCommand(app: App): void {
  app.command(/.*/, async ({ ack, body, respond, context: bolt }) => {
    await ack();
    const context = contextOf(bolt);
    const sent = slashCommand.safeParse(body);
    if (!sent.success) return;
    const { team_id, user_id, channel_id, trigger_id, response_url, text } = sent.data;
    const actor = { workspaceId: team_id, userId: user_id };
    const tell = tellsOnly(
      context,
      actor,
      channel_id,
      response_url === undefined ? undefined : (respond as RespondFn),
    );
    const caller: Caller = {
      actor,
      place: placeOf(channel_id),
      replyTo: channel_id,
      triggerId: trigger_id,
      tell,
      replace: tell,
    };
    await runCommand(context, caller, plainWords(text), triggerKey(trigger_id));
  });
}

/** @param text what was typed after the command */
export async function runCommand(
  context: ListenerContext,
  caller: Caller,
  text: string,
  eventKey: string | undefined,
): Promise<void> {
  const { word, rest } = parseCommand(text);
  const during = `command ${word ?? (rest === '' ? 'alone' : 'unknown')}`;
  if (isReading(word)) {
    return guardedReading(context, caller, during, eventKey, () => READING_HANDLERS[word](context, caller));
  }
  await guarded(context, caller, during, eventKey, async () => {
    if (word !== undefined) return COMMAND_HANDLERS[word](context, caller, rest);
    if (rest === '') return tellOverview(context, caller);
    const typed = rest.split(/\s+/)[0] ?? rest;
    throw new Refusal('unknown-command', { word: typed, near: nearestCommandWord(rest) });
  });
}

function isReading(word: CommandWord | undefined): word is ReadingWord {
  return word !== undefined && Object.hasOwn(READING_HANDLERS, word);
}
