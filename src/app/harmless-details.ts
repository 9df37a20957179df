/**
 * Refusals repeat what people typed, in sentences that mention people and show commands as code. What was typed must
 * be able to do neither, so its own marks for that give way to plain ones before the sentence is made.
 */
import { visibleText } from './visible-text.ts';

/** `<@U1>` becomes `@U1`, which mentions nobody; a backquote becomes an apostrophe; what can't be seen goes. */
export function harmless(typed: string): string {
  return visibleText(typed)
    .replace(/<@([A-Z0-9]+)(?:\|[^<>]*)?>/g, '@$1')
    .replaceAll('`', '’');
}

/** The same for every text in some details, at any depth. */
export function harmlessDetails<T>(details: T): T {
  if (typeof details === 'string') return harmless(details) as T;
  if (Array.isArray(details)) return details.map(harmlessDetails) as T;
  if (typeof details !== 'object' || details === null) return details;
  return Object.fromEntries(Object.entries(details).map(([key, held]) => [key, harmlessDetails(held)])) as T;
}
