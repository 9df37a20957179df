/** The slash command: acknowledged at once, answered after. */
import type { App, RespondFn } from '@slack/bolt';
import { Refusal } from '../../app/refusal.ts';
import type { Place } from '../../app/team/place.ts';
import { type Caller, showFirstForm } from '../commands/command.ts';
import { parseCommand } from '../commands/commands.ts';
import { nearestCommandWord } from '../commands/nearest-command.ts';
import { slashCommand } from '../door/incoming.ts';
import { plainWords, wordsWithLinks } from '../plain-words.ts';
import { overviewMessage } from '../views/overview.ts';
import { answerOnce, readAndAnswerOnce, triggerKey } from './answer-once.ts';
import { type Asker, placeOf, tellsOnly } from './asker.ts';
import { contextOf, type ListenerContext } from './listener-context.ts';
import { withNames } from './mentioned-names.ts';
import { forTeamNamed } from './team-named.ts';

export function listenToCommand(app: App): void {
  app.command(/.*/, async ({ ack, body, respond, context: bolt }) => {
    await ack();
    const context = contextOf(bolt);
    const sent = slashCommand.safeParse(body);
    if (!sent.success) return;
    const { user_id, channel_id, trigger_id, response_url, text } = sent.data;
    const actor = { workspaceId: context.workspaceId, userId: user_id };
    const tell = tellsOnly(
      context,
      actor,
      channel_id,
      response_url === undefined ? undefined : (respond as RespondFn),
    );
    const caller = {
      actor,
      place: placeOf(channel_id),
      replyTo: channel_id,
      triggerId: trigger_id,
      tell,
      replace: tell,
    };
    const words = plainWords(text);
    const { takesLinks } = parseCommand(words).command ?? {};
    await runCommand(context, caller, takesLinks ? wordsWithLinks(text) : words, triggerKey(trigger_id));
  });
}

/** @param text what was typed after the command */
export async function runCommand(
  context: ListenerContext,
  asker: Asker & { readonly place: Place },
  text: string,
  eventKey: string | undefined,
): Promise<void> {
  const { command, rest } = parseCommand(text);
  const during = `command ${command?.word ?? (rest === '' ? 'alone' : 'unknown')}`;
  const caller: Caller = { ...asker, showOverview: () => tellOverview(context, asker) };
  if (command?.read) {
    const { read } = command;
    return readAndAnswerOnce(context, caller, during, eventKey, () =>
      forTeamNamed(context, caller, rest, (there) => read(context, there)),
    );
  }
  await answerOnce(context, caller, during, eventKey, async () => {
    if (command) {
      const { run = (_, there) => showFirstForm(command, context, there) } = command;
      const words = command.takesPeople ? rest : await withNames(context, rest);
      return forTeamNamed(context, caller, words, (there, said) => run(context, there, said));
    }
    if (rest === '') return caller.showOverview();
    const typed = rest.split(/\s+/)[0] ?? rest;
    throw new Refusal('unknown-command', { word: typed, near: nearestCommandWord(rest) });
  });
}

/** The command alone: what the caller can do now. */
async function tellOverview(
  { useCases }: ListenerContext,
  { actor, place, tell }: Asker & { readonly place: Place },
): Promise<void> {
  const here = place.isDirect ? undefined : place.channelId;
  await tell(overviewMessage(await useCases.overview(actor, place), here));
}
