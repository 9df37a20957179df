/**
 * The subcommands of the slash command, declared once: the listener, the help and the hint after a
 * mistyped word all read them here. Declarations only.
 */

/** Who may use it; the use cases decide, this is for the help. */
export type CommandAudience = 'anyone' | 'member' | 'team-and-owner' | 'product-owner' | 'facilitator';

export interface CommandDeclaration {
  /** What is typed after the command; the longest match wins (`setup measures` before `setup`). */
  readonly word: string;
  readonly who: CommandAudience;
}

export const COMMANDS = [
  { word: 'answer', who: 'member' },
  { word: 'cards', who: 'member' },
  { word: 'status', who: 'member' },
  { word: 'pull', who: 'member' },
  { word: 'take', who: 'member' },
  { word: 'drop', who: 'member' },
  { word: 'reopen', who: 'member' },
  { word: 'range', who: 'team-and-owner' },
  { word: 'odds', who: 'team-and-owner' },
  { word: 'forecast', who: 'team-and-owner' },
  { word: 'history', who: 'team-and-owner' },
  { word: 'plan', who: 'facilitator' },
  { word: 'close', who: 'facilitator' },
  { word: 'cancel', who: 'facilitator' },
  { word: 'value', who: 'product-owner' },
  { word: 'baseline', who: 'facilitator' },
  { word: 'import', who: 'facilitator' },
  { word: 'export', who: 'facilitator' },
  { word: 'setup', who: 'anyone' },
  { word: 'setup measures', who: 'facilitator' },
  { word: 'privacy', who: 'anyone' },
  { word: 'help', who: 'anyone' },
] as const satisfies readonly CommandDeclaration[];

export type CommandWord = (typeof COMMANDS)[number]['word'];
