/** What a check found. Knows no check and prints nothing. */

/** `ok`: as it should be. `warning`: the bot runs, but look at it. `mend`: something will not work. */
export type Level = 'ok' | 'warning' | 'mend';

export interface Finding {
  readonly check: string;
  readonly level: Level;
  /** What was found, in a sentence or a phrase. Never a secret. */
  readonly found: string;
  /** What to do about it; undefined when all is well. */
  readonly mend?: string;
}

/** Makes the findings of one check. */
export function findingsOf(check: string) {
  return {
    ok: (found: string): Finding => ({ check, level: 'ok', found }),
    warning: (found: string, mend: string): Finding => ({ check, level: 'warning', found, mend }),
    mend: (found: string, mend: string): Finding => ({ check, level: 'mend', found, mend }),
  };
}

/** Splits a sentence of the start-up checks, "what is wrong: what to do", at its first colon. */
export function splitSentence(sentence: string): { found: string; mend: string } {
  const [, found, mend] = /^(.*?): (.+)$/s.exec(sentence) ?? [];
  if (found === undefined || mend === undefined) return { found: sentence, mend: 'See the sentence itself.' };
  return { found: `${found}.`, mend: `${mend[0]?.toUpperCase()}${mend.slice(1)}` };
}
