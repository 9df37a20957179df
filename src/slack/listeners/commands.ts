/** The slash command: acknowledged at once, answered after. */
import type { App, RespondFn } from '@slack/bolt';
import { Refusal } from '../../app/refusal.ts';
import type { Place } from '../../app/team/place.ts';
import { type Caller, showFirstForm } from '../commands/command.ts';
import { COMMANDS, parseCommand } from '../commands/commands.ts';
import { slashCommand } from '../door/incoming.ts';
import { plainWords, wordsWithLinks } from '../plain-words.ts';
import { overviewMessage } from '../views/overview.ts';
import { answerOnce, readAndAnswerOnce, triggerKey } from './answer-once.ts';
import { type Asker, placeOf, tellsOnly } from './asker.ts';
import { contextOf, type ListenerContext } from './listener-context.ts';

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
    return readAndAnswerOnce(context, caller, during, eventKey, () => read(context, caller));
  }
  await answerOnce(context, caller, during, eventKey, async () => {
    if (command) {
      const { run = () => showFirstForm(command, context, caller) } = command;
      return run(context, caller, rest);
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

/** Longer words may hold more slips. */
const LETTERS_PER_SLIP = 3;
/** No command is nearly as long. */
const LONGEST_GUESSED = 40;

/** The longest beginning of what was typed that is looked at. */
const LOOKED_AT_LETTERS = 200;

/** The subcommand that is nearest to what was typed, or among its words; undefined when there is none. */
export function nearestCommandWord(typed: string): string | undefined {
  const words = typed.slice(0, LOOKED_AT_LETTERS).trim().toLowerCase().split(/\s+/);
  const [first = ''] = words;
  const found = nearestTo(words.join(' ')) ?? nearestTo(first);
  return found ?? words.map(lettersOf).find((word) => isCommandWord(word));
}

function lettersOf(word: string): string {
  return word.replaceAll(/[^\p{L}]/gu, '');
}

function isCommandWord(typed: string): boolean {
  return COMMANDS.some(({ word }) => word === typed);
}

/** @param wanted in small letters */
function nearestTo(wanted: string): string | undefined {
  if (wanted === '' || wanted.length > LONGEST_GUESSED) return undefined;
  const byDistance = COMMANDS.map(({ word }) => ({ word, slips: slipsBetween(wanted, word) })).sort(
    (a, b) => a.slips - b.slips,
  );
  const nearest = byDistance[0];
  if (!nearest) return undefined;
  const isBeginning = wanted.length >= 2 && nearest.word.startsWith(wanted);
  const mostSlips = Math.max(1, Math.floor(nearest.word.length / LETTERS_PER_SLIP));
  if (nearest.slips <= mostSlips || isBeginning) return nearest.word;
  return wanted.length < 2 ? undefined : COMMANDS.find(({ word }) => word.startsWith(wanted))?.word;
}

/**
 * How many letters must be put in, left out, replaced, or swapped with their neighbour to make one word of
 * the other (optimal string alignment distance).
 */
function slipsBetween(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  const at = (i: number, j: number): number => rows[i]?.[j] ?? Number.POSITIVE_INFINITY;
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    rows.push(row);
    for (let j = 1; j <= b.length; j += 1) {
      const replaced = at(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const isSwapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swapped = isSwapped ? at(i - 2, j - 2) + 1 : Number.POSITIVE_INFINITY;
      row.push(Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, replaced, swapped));
    }
  }
  return at(a.length, b.length);
}
