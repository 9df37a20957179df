/** The help: what somebody in a role uses most, in five lines, and behind a button all that the commands can do. */
import type { Overview } from '../../app/watching/overview.ts';
import { type MessageId, markup, mrkdwn, say } from '../../words/say.ts';
import { type Command, type CommandAudience, dashed } from '../commands/command.ts';
import { ACTIONS } from '../ids.ts';
import { actions, bold, button, context, lead, section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';

type Id<Prefix extends string> = Extract<MessageId, `${Prefix}${string}`>;
type HelpedRole = Id<'help-title-'> extends `help-title-${infer Role}` ? Role : never;
type HelpedWord = Id<'help-line-'> extends `help-line-${infer Word}` ? Word : never;

/** What each uses most. */
export const USED_MOST: Readonly<Record<HelpedRole, readonly HelpedWord[]>> = {
  member: ['answer', 'status', 'pull', 'blocked', 'off'],
  facilitator: ['plan', 'range', 'status', 'edit', 'history'],
  'product-owner': ['status', 'drop', 'goal', 'forecast', 'value'],
  outside: ['setup', 'privacy'],
};

/** In this order. */
const AUDIENCES: readonly CommandAudience[] = [
  'member',
  'team-and-owner',
  'product-owner',
  'facilitator',
  'anyone',
];

export function helpMessage({ teams }: Pick<Overview, 'teams'>): MessageView {
  const role = teams.some(({ isFacilitator }) => isFacilitator)
    ? 'facilitator'
    : teams.some(({ isProductOwner }) => isProductOwner)
      ? 'product-owner'
      : teams.length > 0
        ? 'member'
        : 'outside';
  return messageView([
    lead(say(`help-title-${role}`)),
    section(USED_MOST[role].map((word) => mrkdwn(`help-line-${word}`)).join('\n')),
    context(mrkdwn('help-alone')),
    actions([
      button(say('help-all-button'), { actionId: ACTIONS.showAllCommands, value: 'all' }),
      button(say('overview-privacy-button'), { actionId: ACTIONS.showPrivacy, value: 'me' }),
    ]),
  ]);
}

/** The help about one command: how it is typed, and what it does. */
export function commandHelpMessage({ word }: Command): MessageView {
  return messageView([
    section(commandLine(dashed(word) as 'help')),
    actions([button(say('help-all-button'), { actionId: ACTIONS.showAllCommands, value: 'all' })]),
  ]);
}

export function allCommandsMessage(commands: readonly Command[]): MessageView {
  return messageView([
    lead(say('help-title')),
    section(mrkdwn('help-intro')),
    ...AUDIENCES.map((who) =>
      section([bold(mrkdwn(`help-${who}`)), ...commandLines(commands, who)].join('\n')),
    ),
    actions([button(say('overview-privacy-button'), { actionId: ACTIONS.showPrivacy, value: 'me' })]),
    context(mrkdwn('help-privacy')),
  ]);
}

function commandLines(commands: readonly Command[], who: CommandAudience): string[] {
  return commands
    .filter((command) => command.who === who)
    .map(({ word }) => commandLine(dashed(word) as 'help'));
}

function commandLine(id: 'help'): string {
  return mrkdwn('help-command', {
    usage: say(`command-${id}-usage`),
    summary: markup(`command-${id}-summary`),
  });
}
