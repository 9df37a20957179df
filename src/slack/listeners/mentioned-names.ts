/**
 * Names of those whom a text mentions. What people type freely is kept and shown as text, in which a mention would be an id
 * that nobody can read, and must not call anybody each time it is shown.
 */
import type { Directory } from '../../app/ports/app-dependencies.ts';
import { say } from '../../words/say.ts';

const MENTION = /<@([A-Z0-9]+)>/g;

interface Where {
  readonly workspaceId: string;
  readonly directory: Directory;
}

/** `waiting for @Ana` for `waiting for <@U1>`. */
export function withNames(where: Where, words: string): Promise<string> {
  return withoutMentions(where, words, (name) => `@${name}`);
}

/** The text with something readable in place of each mention; where the platform doesn't tell the name, no name. */
export async function withoutMentions(
  { workspaceId, directory }: Where,
  text: string,
  shown: (name: string) => string = (name) => name,
): Promise<string> {
  const ids = new Set([...text.matchAll(MENTION)].map(([, id]) => id as string));
  if (ids.size === 0) return text;
  const named = [...ids].map(async (id): Promise<[string, string]> => {
    const profile = await directory.profile(workspaceId, id).catch(() => undefined);
    const isNamed = profile !== undefined && profile.name !== id;
    return [id, isNamed ? shown(profile.name) : say('refusal-a-colleague')];
  });
  const names = new Map(await Promise.all(named));
  return text.replace(MENTION, (_, id: string) => names.get(id) as string);
}
