/**
 * The subcommands of the slash command, declared once: the listener, the help and the hint after a
 * mistyped word all read them here. Declarations only.
 */

/** Who may use it; the use cases decide, this is for the help. */
export type CommandAudience = 'anyone' | 'member' | 'team-and-owner' | 'product-owner' | 'facilitator';

export interface CommandDeclaration {
  /** What is typed after the command; the longest match wins (`setup measures` before `setup`). */
  readonly word: string;
  /** The word with what may follow it; `[…]` may be left out. */
  readonly usage: string;
  /** What it does, as one sentence. */
  readonly summary: string;
  readonly who: CommandAudience;
  /** What one may type after the command, to the letter. */
  readonly examples: readonly string[];
}

export const COMMANDS = [
  {
    word: 'answer',
    usage: 'answer [day | card: left]',
    summary:
      'Say what is left on your cards, today or on an earlier day of the sprint; in a form or in words.',
    who: 'member',
    examples: ['answer', 'answer 2026-11-04', 'answer 3: 2 worked 1'],
  },
  {
    word: 'cards',
    usage: 'cards [first number]',
    summary: 'List the cards of the sprint, all of them or from one number on.',
    who: 'member',
    examples: ['cards', 'cards 40'],
  },
  {
    word: 'status',
    usage: 'status',
    summary: 'See how the sprint stands. Only you see it, unless you share it.',
    who: 'member',
    examples: ['status'],
  },
  {
    word: 'pull',
    usage: 'pull [title, estimate, @owner]',
    summary: 'Bring in a card after planning.',
    who: 'member',
    examples: ['pull', 'pull Repair the tide gauge, 3, @ana'],
  },
  {
    word: 'take',
    usage: 'take card',
    summary: 'Take a share in a card: you become one of its owners.',
    who: 'member',
    examples: ['take 3', 'take LP-7'],
  },
  {
    word: 'drop',
    usage: 'drop [card reason]',
    summary: 'Take a card out of the sprint, with a reason.',
    who: 'member',
    examples: ['drop', 'drop 3 no longer wanted'],
  },
  {
    word: 'reopen',
    usage: 'reopen [card]',
    summary: 'Open a finished card again; without a card, open the closed sprint again for corrections.',
    who: 'member',
    examples: ['reopen 3', 'reopen'],
  },
  {
    word: 'range',
    usage: 'range [first day] [last day] [N away]',
    summary:
      'See how much to commit to in the coming sprint; N is the days off and away of all members together.',
    who: 'team-and-owner',
    examples: ['range', 'range 2026-11-30 2026-12-11 6 away', 'range 2.5 away'],
  },
  {
    word: 'odds',
    usage: 'odds',
    summary: 'See which sizes of card tend to hold surprise work.',
    who: 'team-and-owner',
    examples: ['odds'],
  },
  {
    word: 'forecast',
    usage: 'forecast [points] [growing N]',
    summary: 'See when a body of work will be finished; N is by how many points it grows with each sprint.',
    who: 'team-and-owner',
    examples: ['forecast', 'forecast 120', 'forecast 120 growing 5'],
  },
  {
    word: 'history',
    usage: 'history',
    summary: 'See the team’s own trend: each ratio, what is usual, and what is a signal.',
    who: 'team-and-owner',
    examples: ['history'],
  },
  {
    word: 'plan',
    usage: 'plan',
    summary: 'Plan the next sprint and commit to its cards.',
    who: 'facilitator',
    examples: ['plan'],
  },
  {
    word: 'close',
    usage: 'close',
    summary: 'Close the sprint now, before its closing time.',
    who: 'facilitator',
    examples: ['close'],
  },
  {
    word: 'cancel',
    usage: 'cancel',
    summary: 'Cancel the sprint. Its numbers are kept, and never count as history.',
    who: 'facilitator',
    examples: ['cancel'],
  },
  {
    word: 'value',
    usage: 'value [sprint:] [number]',
    summary:
      'Record what a closed sprint was worth, as one number in a unit of your choice: revenue, users, anything.',
    who: 'product-owner',
    examples: ['value', 'value 1200', 'value Harbour 12: 1200'],
  },
  {
    word: 'baseline',
    usage: 'baseline [sprint | first]',
    summary: 'Choose the closed sprint that velocity growth is measured by.',
    who: 'facilitator',
    examples: ['baseline', 'baseline Harbour 3', 'baseline first'],
  },
  {
    word: 'import',
    usage: 'import',
    summary: 'Bring in past sprints from a spreadsheet or an export; you see what would be imported first.',
    who: 'facilitator',
    examples: ['import'],
  },
  {
    word: 'export',
    usage: 'export',
    summary: 'Get the team’s sprints, cards, answers and changes as files, without who said what.',
    who: 'facilitator',
    examples: ['export'],
  },
  {
    word: 'setup',
    usage: 'setup',
    summary: 'Set up a team in its channel, or change its people and times.',
    who: 'anyone',
    examples: ['setup'],
  },
  {
    word: 'setup measures',
    usage: 'setup measures',
    summary: 'Change closing time, reminder, planning scale and thresholds.',
    who: 'facilitator',
    examples: ['setup measures'],
  },
  {
    word: 'privacy',
    usage: 'privacy',
    summary: 'See what is stored about you, get a copy of it, or have it erased.',
    who: 'anyone',
    examples: ['privacy'],
  },
  {
    word: 'help',
    usage: 'help',
    summary: 'Show this list.',
    who: 'anyone',
    examples: ['help'],
  },
] as const satisfies readonly CommandDeclaration[];

export type CommandWord = (typeof COMMANDS)[number]['word'];
