/** What goes with every answer that tells a trend (design: numbers about work and people). */
export const PEOPLE_CAUTION =
  'These numbers are about the team’s plan, not about people: do not use them to appraise anyone or to compare teams.';

/** What everyone should know before the bot is switched on. */
export const CAUTION = [
  PEOPLE_CAUTION,
  'Asking people daily about their work may be regulated where you are. Before you switch this on, look into local law and works agreements, and ask whoever is responsible for data protection.',
].join(' ');
