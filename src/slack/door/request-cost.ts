/**
 * What a request costs of a person's allowance. Charts to draw and files to read or write cost the bot far more than
 * anything else. Must not decide whether it may be done.
 */
import { ACTIONS, COMMAND, FORMS } from '../ids.ts';
import { parseCommand } from '../listeners/parse-command.ts';
import { plainWords } from '../plain-words.ts';
import { buttonPress, formSubmission, homeOpened, messageEvent, slashCommand } from './incoming.ts';

const LIGHT = 1;
const HEAVY = 5;

const HEAVY_WORDS: ReadonlySet<string | undefined> = new Set([
  'status',
  'range',
  'odds',
  'forecast',
  'history',
  'export',
  'import',
  'privacy',
]);
const HEAVY_ACTIONS: ReadonlySet<string | undefined> = new Set([
  ACTIONS.showStatus,
  ACTIONS.shareStatus,
  ACTIONS.showOdds,
  ACTIONS.showRange,
  ACTIONS.showHistory,
  ACTIONS.shareAdvice,
  ACTIONS.exportSprints,
  ACTIONS.sendMyCopy,
]);
const HEAVY_FORMS: ReadonlySet<string> = new Set([FORMS.import, FORMS.range, FORMS.forecast]);

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
    const isHeavy = HEAVY_ACTIONS.has(actions[0]?.action_id);
    return { workspaceId: team?.id ?? '', userId: user.id, cost: isHeavy ? HEAVY : LIGHT };
  }
  const form = formSubmission.safeParse(body);
  if (form.success) {
    const { user, team, view } = form.data;
    const cost = HEAVY_FORMS.has(view.callback_id) ? HEAVY : LIGHT;
    return { workspaceId: team?.id ?? '', userId: user.id, cost };
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
  const { word } = parseCommand(
    words.toLowerCase().startsWith(COMMAND) ? words.slice(COMMAND.length) : words,
  );
  return HEAVY_WORDS.has(word) ? HEAVY : LIGHT;
}
