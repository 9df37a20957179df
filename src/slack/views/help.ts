/** The help, made from the commands. */
import { markup, mrkdwn, say } from '../../words/say.ts';
import { COMMANDS, type CommandAudience, type CommandWord } from '../command-table.ts';
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

export function helpMessage(): MessageView {
  return messageView([
    lead(say('help-title')),
    section(mrkdwn('help-intro')),
    ...AUDIENCES.map((who) => section([bold(mrkdwn(`help-${who}`)), ...commandLines(who)].join('\n'))),
    actions([button(say('overview-privacy-button'), { actionId: ACTIONS.showPrivacy, value: 'me' })]),
    context(mrkdwn('help-privacy')),
  ]);
}

function commandLines(who: CommandAudience): string[] {
  return COMMANDS.filter((command) => command.who === who).map(({ word }) => commandLine(word));
}

function commandLine(word: CommandWord): string {
  const id = word === 'setup measures' ? 'setup-measures' : word;
  return mrkdwn('help-command', {
    usage: say(`command-${id}-usage`),
    summary: markup(`command-${id}-summary`),
  });
}
