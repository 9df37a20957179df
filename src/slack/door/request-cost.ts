/**
 * What a request costs of a person's allowance, as its command declares it. Must not decide whether it may be done.
 */
import type { Cost } from '../commands/command.ts';
import { BUTTONS, FORMS, parseCommand } from '../commands/commands.ts';
import { COMMAND } from '../ids.ts';
import { plainWords } from '../plain-words.ts';
import { buttonPress, formSubmission, homeOpened, messageEvent, slashCommand } from './incoming.ts';

const LIGHT = 1;
const HEAVY = 5;

function costOf(asked: { readonly cost?: Cost } | undefined): number {
  return asked?.cost === 'heavy' ? HEAVY : LIGHT;
}

export interface AskedFor {
  readonly workspaceId: string;
  readonly userId: string;
  readonly cost: number;
}

/** @returns undefined for what no person asks for, and for what no listener does anything about */
export function askedFor(body: unknown): AskedFor | undefined {
  const command = slashCommand.safeParse(body);
  if (command.success) {
    const { team_id, user_id, text } = command.data;
    return { workspaceId: team_id, userId: user_id, cost: costOfWords(text) };
  }
  const press = buttonPress.safeParse(body);
  if (press.success) {
    const { user, team, view, actions } = press.data;
    if (view?.type === 'modal') return undefined;
    const cost = costOf(BUTTONS.get(actions[0]?.action_id ?? ''));
    return { workspaceId: team?.id ?? '', userId: user.id, cost };
  }
  const form = formSubmission.safeParse(body);
  if (form.success) {
    const { user, team, view } = form.data;
    return { workspaceId: team?.id ?? '', userId: user.id, cost: costOf(FORMS.get(view.callback_id)) };
  }
  const home = homeOpened.safeParse(body);
  if (home.success) {
    return { workspaceId: home.data.team_id, userId: home.data.event.user, cost: LIGHT };
  }
  const message = messageEvent.safeParse(body);
  if (!message.success) return undefined;
  // Not what bots write, this one included: nobody would be answered.
  const { user, bot_id, channel_type, text } = message.data.event;
  if (user === undefined || bot_id !== undefined || channel_type !== 'im') return undefined;
  return { workspaceId: message.data.team_id, userId: user, cost: costOfWords(text ?? '') };
}

function costOfWords(text: string): number {
  const words = plainWords(text);
  const { command } = parseCommand(
    words.toLowerCase().startsWith(COMMAND) ? words.slice(COMMAND.length) : words,
  );
  return costOf(command);
}
