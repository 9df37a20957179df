/** The variables that the bot reads, from its own source: what deploy files set must be among them. */
import { readFile } from 'node:fs/promises';

const SOURCE = new URL('../../src/config.ts', import.meta.url);

/** Read by the programs around the bot. */
const OTHERS = ['NODE_ENV', 'NODE_OPTIONS', 'MALLOC_ARENA_MAX', 'MALLOC_MMAP_THRESHOLD_'];

export async function knownSettings(): Promise<ReadonlySet<string>> {
  const source = await readFile(SOURCE, 'utf8');
  const named = [...source.matchAll(/^\s*([A-Z_]{4,}):|\{ ([A-Z_]{4,}): /gm)].map(([, a, b]) => a ?? b ?? '');
  return new Set([...named, ...OTHERS]);
}

/** `NAME_FILE` is `NAME` in a file. */
export function settingOf(variable: string): string {
  return variable.replace(/_FILE$/, '');
}

/** How long a stop may take, as the code says; what ends the process from outside must wait longer. */
export async function stopLimitSeconds(): Promise<number> {
  const source = await readFile(new URL('../../src/run-bot.ts', import.meta.url), 'utf8');
  const [, limitMs] = /const STOP_LIMIT_MS = ([\d_]+);/.exec(source) ?? [];
  return Number(limitMs?.replaceAll('_', '')) / 1_000;
}
