/** Numbers of lines as people find them. */
import { listed } from './sprint-words.ts';

/** More are not looked up one by one. */
const RUNS_NAMED = 12;

/** `line 7`, `lines 3, 5 to 9 and 12`. @param numbers at least one, rising */
export function lineNumberWords(numbers: readonly number[]): string {
  const unique = [...new Set(numbers)];
  if (unique.length === 1) return `line ${unique[0]}`;
  const runs: [number, number][] = [];
  for (const number of unique) {
    const last = runs.at(-1);
    if (last && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  const named = runs
    .slice(0, RUNS_NAMED)
    .flatMap(([from, to]) =>
      to === from + 1 ? [`${from}`, `${to}`] : [from === to ? `${from}` : `${from} to ${to}`],
    );
  const more = runs.slice(RUNS_NAMED).reduce((sum, [from, to]) => sum + to - from + 1, 0);
  return `lines ${listed([...named, ...(more > 0 ? [`${more} more`] : [])])}`;
}
