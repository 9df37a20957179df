/** In direct messages, somebody on several teams names the one that is meant: `status Tugboats`, `drop Tugboats: 3`. */
import { Refusal } from '../../app/refusal.ts';
import type { Caller } from '../commands/command.ts';
import type { ListenerContext } from './listener-context.ts';

/**
 * Does the work at the caller's place, or for the team that the words name where that place says of none.
 *
 * @param words what was typed after the command
 */
export async function forTeamNamed<T>(
  { useCases }: ListenerContext,
  caller: Caller,
  words: string,
  work: (caller: Caller, words: string) => Promise<T>,
): Promise<T> {
  try {
    return await work(caller, words);
  } catch (error) {
    // A command that takes no name may be refused for it before its team is looked for.
    if (!(error instanceof Refusal) || !caller.place.isDirect || words === '') throw error;
    const { teams } = await useCases.overview(caller.actor, caller.place);
    const [named] = teams
      .flatMap(({ team }) => {
        const rest = withoutName(words, team.name);
        return rest === undefined ? [] : [{ team, rest }];
      })
      // Of `Tugboats` and `Tugboats North` the longer one.
      .sort((a, b) => b.team.name.length - a.team.name.length);
    if (!named || teams.length === 1) throw error;
    const place = { channelId: named.team.channelId, isDirect: false };
    return work({ ...caller, place }, named.rest);
  }
}

/** The words without the name at their beginning or end; undefined when it stands at neither. */
function withoutName(words: string, name: string): string | undefined {
  const [given, wanted] = [words.trim(), name.toLowerCase()];
  const lower = given.toLowerCase();
  // A few letters are written at another length in small ones.
  if (lower.length !== given.length || !lower.includes(wanted)) return undefined;
  if (lower === wanted) return '';
  const next = given[wanted.length] ?? '';
  if (lower.startsWith(wanted) && ' :,'.includes(next))
    return given.slice(wanted.length).replace(/^[ :,]+/, '');
  const before = given[given.length - wanted.length - 1] ?? '';
  return lower.endsWith(wanted) && before === ' ' ? given.slice(0, -wanted.length).trimEnd() : undefined;
}
