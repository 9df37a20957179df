/** The help, made from the command table. */
import { COMMANDS, type CommandAudience, type CommandDeclaration } from '../command-table.ts';
import { ACTIONS, COMMAND } from '../ids.ts';
import { actions, bold, button, code, context, lead, section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';

const AUDIENCES: readonly { readonly who: CommandAudience; readonly title: string }[] = [
  { who: 'member', title: 'For everyone on the team' },
  { who: 'team-and-owner', title: 'For everyone on the team and its product owner' },
  { who: 'product-owner', title: 'For product owners and facilitators' },
  { who: 'facilitator', title: 'For facilitators' },
  { who: 'anyone', title: 'For anyone' },
];

export function helpMessage(): MessageView {
  return messageView([
    lead('What you can ask of Loadline'),
    section(
      `Each working day of a sprint I ask you in a direct message what is left on your cards; a click or a number is enough. ${code(COMMAND)} alone shows what you can do now. Words after it do more:`,
    ),
    ...AUDIENCES.map(({ who, title }) => section([bold(title), ...commandLines(who)].join('\n'))),
    actions([button('What is stored about me', { actionId: ACTIONS.showPrivacy, value: 'me' })]),
    context(
      'The channel sees the team’s sums and its cards, never who answered what. [ ] marks what may be left out.',
    ),
  ]);
}

function commandLines(who: CommandAudience): string[] {
  return (COMMANDS as readonly CommandDeclaration[])
    .filter((command) => command.who === who)
    .map(commandLine);
}

function commandLine({ usage, summary, examples, word }: CommandDeclaration): string {
  const telling = examples.filter((example) => example !== word);
  const examplesWords =
    telling.length === 0
      ? ''
      : ` For example ${telling.map((example) => code(`${COMMAND} ${example}`)).join(' or ')}.`;
  return `• ${code(`${COMMAND} ${usage}`)}: ${summary}${examplesWords}`;
}
