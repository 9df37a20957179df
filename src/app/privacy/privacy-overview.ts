/** What is stored about the person who asks: by kind, how much, from when to when, in which teams. Reads only. */
import type { Day } from '../../sprint/calendar.ts';
import { letOthersTurn } from '../let-others-turn.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { Refusal } from '../refusal.ts';
import type { Actor, Team } from '../team/team.ts';
import { countOf, PERSONAL_KINDS, type PersonalRecord, type PersonalSum } from './personal-data.ts';
import { erasedOn } from './promised-times.ts';

export interface PrivacyOverview {
  /** Kinds of which something is stored, in a fixed order. */
  readonly kinds: readonly PersonalSum[];
  /** The person's teams, past and present. */
  readonly teams: readonly KeepingTeam[];
}

/** How long a team keeps details; undefined: without end. One that was ended is erased as a whole on a day. */
export type KeepingTeam = Pick<Team, 'name' | 'retentionMonths'> & { readonly erasedOn?: Day };

/** For anybody: a person who is stored nowhere learns just that. */
export async function privacyOverview(deps: AppDependencies, actor: Actor): Promise<PrivacyOverview> {
  return deps.store.read(async (read) => {
    const sums = await read.personalSums(actor);
    const teams = await read.teamsOfPerson(actor);
    return {
      kinds: sums.map((sum) => ({
        ...sum,
        teamNames: sum.teamNames.toSorted((a, b) => a.localeCompare(b, 'en')),
      })),
      teams: teams.map((team) => ({
        name: team.name,
        retentionMonths: team.retentionMonths,
        ...(team.endedAt && { erasedOn: erasedOn(team, team.endedAt) }),
      })),
    };
  });
}

export interface PersonalCopy {
  readonly fileName: string;
  /** JSON, UTF-8. */
  readonly bytes: Uint8Array;
  readonly records: number;
}

/**
 * A copy of what is stored under a person's id, for that person. Must hold nothing of anybody else's.
 *
 * @throws Refusal `nothing-stored`
 */
export async function personalCopy(deps: AppDependencies, actor: Actor): Promise<PersonalCopy> {
  return deps.store.read(async (read) => {
    const records = countOf(await read.personalSums(actor));
    if (records === 0) throw new Refusal('nothing-stored', {});
    const { workspaceId, userId } = actor;
    const heading = { writtenAt: deps.clock.now().toISOString(), workspaceId, userId };
    const parts: Uint8Array[] = [];
    const add = (text: string) => parts.push(new TextEncoder().encode(text));
    add(JSON.stringify(heading, undefined, INDENT).slice(0, -'\n}'.length));
    for (const kind of PERSONAL_KINDS) {
      add(`,\n  "${kind}": [`);
      const all = await read.personalRecords(actor, kind);
      for (let i = 0; i < all.length; i += RECORDS_AT_ONCE) {
        add(`${i > 0 ? ',' : ''}${linesOf(all.slice(i, i + RECORDS_AT_ONCE))}`);
        await letOthersTurn();
      }
      add(all.length > 0 ? '\n  ]' : ']');
    }
    add('\n}\n');
    const bytes = Buffer.concat(parts);
    return { fileName: 'loadline-about-me.json', bytes, records };
  });
}

const INDENT = 2;
/** Between them others have their turn: somebody may own tens of thousands of cards. */
const RECORDS_AT_ONCE = 1_000;

/** As lines of a list within the whole, without its brackets. A line end within a text is written as a sign, so it is none. */
function linesOf(records: readonly PersonalRecord[]): string {
  return JSON.stringify(records, undefined, INDENT).slice(1, -'\n]'.length).replaceAll('\n', '\n  ');
}
