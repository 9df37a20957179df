/** Guesses which subcommand somebody meant, from the list of commands. */
import { COMMANDS } from './commands.ts';

/** Longer words may hold more slips. */
const LETTERS_PER_SLIP = 3;

/** The subcommand nearest to what was typed; undefined when none is near. */
export function nearestCommandWord(typed: string): string | undefined {
  const wanted = typed.trim().toLowerCase().slice(0, 40);
  if (wanted === '') return undefined;
  const byDistance = COMMANDS.map(({ word }) => ({ word, slips: slipsBetween(wanted, word) })).sort(
    (a, b) => a.slips - b.slips,
  );
  const nearest = byDistance[0];
  if (!nearest) return undefined;
  const isBeginning = wanted.length >= 2 && nearest.word.startsWith(wanted);
  const mostSlips = Math.max(1, Math.floor(nearest.word.length / LETTERS_PER_SLIP));
  if (nearest.slips <= mostSlips || isBeginning) return nearest.word;
  return wanted.length < 2 ? undefined : COMMANDS.find(({ word }) => word.startsWith(wanted))?.word;
}

/**
 * How many letters must be put in, left out, replaced, or swapped with their neighbour to make one word of
 * the other (optimal string alignment distance).
 */
function slipsBetween(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  const at = (i: number, j: number): number => rows[i]?.[j] ?? Number.POSITIVE_INFINITY;
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    rows.push(row);
    for (let j = 1; j <= b.length; j += 1) {
      const replaced = at(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const isSwapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swapped = isSwapped ? at(i - 2, j - 2) + 1 : Number.POSITIVE_INFINITY;
      row.push(Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, replaced, swapped));
    }
  }
  return at(a.length, b.length);
}
