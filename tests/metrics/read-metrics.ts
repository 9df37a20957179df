/** Reads one value out of what the metrics say, as a collector of metrics would. */
import type { Registry } from 'prom-client';

/** @returns undefined when there is no such series. */
export async function figureOf(
  register: Registry,
  name: string,
  labels: Readonly<Record<string, string>> = {},
): Promise<number | undefined> {
  return figureIn(await register.metrics(), name, labels);
}

export function figureIn(
  text: string,
  name: string,
  labels: Readonly<Record<string, string>> = {},
): number | undefined {
  for (const line of text.split('\n')) {
    const [, given, inBraces = '', value] = /^([a-z_]+)(?:\{(.*)\})? (\S+)$/i.exec(line) ?? [];
    if (given !== name) continue;
    const has = Object.fromEntries(
      [...inBraces.matchAll(/(\w+)="([^"]*)"/g)].map(([, key, is]) => [key, is]),
    );
    if (Object.entries(labels).every(([key, is]) => has[key] === is)) return Number(value);
  }
  return undefined;
}
