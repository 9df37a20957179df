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
  // Nothing but an answer begins with a number: `41: 3`.
  const { command, rest } = parseCommand(/^\s*#?\d/.test(text) ? `answer ${text}` : text);
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

/**
 * Does the work at the caller's place, or for the team that the words name where that place says of none: in direct messages,
 * somebody on several teams writes `status Tugboats` or `drop Tugboats: 3`.
 *
 * @param words what was typed after the command
 */
async function forTeamNamed<T>(
  { useCases }: ListenerContext,
  caller: Caller,
  words: string,
  work: (caller: Caller, words: string) => Promise<T>,
): Promise<T> {
  try {
    return await work(caller, words);
  } catch (error) {
    // A command that takes no name may be refused for it before its team is looked for.
    if (!(error instanceof Refusal) || !caller.place.isDirect || words === '') throw error;
    const { teams } = await useCases.overview(caller.actor, caller.place);
    const [named] = teams
      .flatMap(({ team }) => {
        const rest = withoutName(words, team.name);
        return rest === undefined ? [] : [{ team, rest }];
      })
      // Of `Tugboats` and `Tugboats North` the longer one.
      .sort((a, b) => b.team.name.length - a.team.name.length);
    if (!named || teams.length === 1) throw error;
    const place = { channelId: named.team.channelId, isDirect: false };
    return work({ ...caller, place }, named.rest);
  }
}

/** `take 4 in Dredgers` */
const BEFORE_NAME = /(?:^| )(?:in|for|of|on|at|from)$/i;

/** The words without the name at their beginning or end; undefined when it stands at neither. */
function withoutName(words: string, name: string): string | undefined {
  const [given, wanted] = [words.trim(), name.toLowerCase()];
  const lower = given.toLowerCase();
  // A few letters are written at another length in small ones.
  if (lower.length !== given.length || !lower.includes(wanted)) return undefined;
  if (lower === wanted) return '';
  const next = given[wanted.length] ?? '';
  if (lower.startsWith(wanted) && ' :,'.includes(next))
    return given.slice(wanted.length).replace(/^[ :,]+/, '');
  const before = given[given.length - wanted.length - 1] ?? '';
  if (!lower.endsWith(wanted) || before !== ' ') return undefined;
  return given.slice(0, -wanted.length).trimEnd().replace(BEFORE_NAME, '');
}
