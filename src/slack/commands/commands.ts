/** All commands, in the order in which the help and the overview show them, and what is looked up in them. */
import { Refusal } from '../../app/refusal.ts';
import { ACTIONS, COMMAND, formId } from '../ids.ts';
import type { Asker } from '../listeners/asker.ts';
import type { ListenerContext } from '../listeners/listener-context.ts';
import { allCommandsMessage, commandHelpMessage, helpMessage } from '../views/help.ts';
import { forecast, history, odds, range } from './advice.ts';
import { answer } from './answer.ts';
import { assign, blocked, cards, drop, give, moving, pull, release, take, undrop } from './cards.ts';
import { buttonsOf, type Command, command, placeIn } from './command.ts';
import { off, works } from './days-off.ts';
import { edit } from './edit.ts';
import { experiments, tryIt } from './experiments.ts';
import { baseline, exportSprints, importRemove, importSprints, value } from './numbers.ts';
import { ask, digest, directVerdicts } from './personal.ts';
import { privacy } from './privacy.ts';
import { retro } from './retro.ts';
import { cancel, close, goal, plan, reopen } from './sprint.ts';
import { status } from './status.ts';
import { end, guest, leave, move, resume, setup, setupMeasures } from './team.ts';

const help = command({
  word: 'help',
  who: 'anyone',
  run: async (context, caller, rest) => {
    const { command: about } = parseCommand(rest);
    await (about ? caller.tell(commandHelpMessage(about)) : tellHelp(context, caller));
  },
  buttons: {
    [ACTIONS.showHelp]: { press: tellHelp },
    [ACTIONS.showAllCommands]: { press: (_context, presser) => presser.tell(allCommandsMessage(COMMANDS)) },
    [ACTIONS.showMore]: {
      press: async (context, { actor, tell }, value) => {
        const isShown = await context.refreshHome(actor, placeIn(value).channelId);
        if (!isShown) await tell(allCommandsMessage(COMMANDS));
      },
    },
  },
});

/** On the home page it is about all of a person's teams. */
async function tellHelp({ useCases }: ListenerContext, { actor, place, tell }: Asker): Promise<void> {
  const where = place ?? { channelId: actor.userId, isDirect: true };
  const found = await useCases.overview(actor, where).catch((error: unknown) => {
    if (error instanceof Refusal && error.code === 'outsider') return undefined;
    throw error;
  });
  // A person of another workspace has no role here.
  await tell(found ? helpMessage(found) : allCommandsMessage(COMMANDS));
}

export const COMMANDS: readonly Command[] = [
  answer,
  status,
  cards,
  pull,
  take,
  give,
  release,
  assign,
  blocked,
  moving,
  drop,
  undrop,
  off,
  works,
  ask,
  plan,
  range,
  odds,
  forecast,
  history,
  edit,
  guest,
  goal,
  close,
  cancel,
  reopen,
  value,
  baseline,
  tryIt,
  experiments,
  retro,
  digest,
  directVerdicts,
  importSprints,
  importRemove,
  exportSprints,
  setup,
  move,
  setupMeasures,
  end,
  resume,
  leave,
  privacy,
  help,
];

/** By `action_id`. */
export const BUTTONS = new Map(COMMANDS.flatMap(buttonsOf));

/** By `callback_id`. */
export const SHORTCUT_ACTIONS = new Map(COMMANDS.flatMap(({ shortcuts = {} }) => Object.entries(shortcuts)));

/** By `callback_id`. */
export const FORMS = new Map(
  COMMANDS.flatMap(({ forms = [] }) => forms).map((form) => [formId(form.name), form]),
);

interface ParsedCommand {
  /** Undefined when nothing was typed, or no known word. */
  readonly command: Command | undefined;
  /** What follows the word; all of it when no word is known. */
  readonly rest: string;
}

/** Longest first, so that `setup measures` is not taken for `setup`. */
const LONGEST_FIRST = [...COMMANDS].sort((a, b) => b.word.length - a.word.length);

/** The slash command may be written out where its words alone do. */
export function withoutSlash(text: string): string {
  return text.toLowerCase().startsWith(COMMAND) ? text.slice(COMMAND.length).trim() : text;
}

/** Separates the command's word from what follows. */
export function parseCommand(text: string): ParsedCommand {
  const typed = text.trim();
  const lower = typed.toLowerCase().replace(/\s+/g, ' ');
  const found = LONGEST_FIRST.find(({ word }) => lower === word || lower.startsWith(`${word} `));
  if (found === undefined) return { command: undefined, rest: typed };
  // As many words are taken off the front as the command has, however they were parted.
  const wordCount = found.word.split(' ').length;
  return { command: found, rest: typed.replace(new RegExp(`^(?:\\S+\\s*){${wordCount}}`), '').trim() };
}
