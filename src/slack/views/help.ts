/** The help, made from the commands. */
import { markup, mrkdwn, say } from '../../words/say.ts';
import { type Command, type CommandAudience, dashed } from '../commands/command.ts';
import { ACTIONS } from '../ids.ts';
import { actions, bold, button, context, lead, section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';

/** In this order. */
const AUDIENCES: readonly CommandAudience[] = [
  'member',
  'team-and-owner',
  'product-owner',
  'facilitator',
  'anyone',
];

export function helpMessage(commands: readonly Command[]): MessageView {
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
