/** What is stored about the person who asks: by kind, how much, from when to when, in which teams. Reads only. */
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { Refusal } from '../refusal.ts';
import type { Actor, Team } from '../team/team.ts';
import {
  countOf,
  PERSONAL_KINDS,
  type PersonalData,
  type PersonalKind,
  type PersonalRecord,
} from './personal-data.ts';

export interface StoredKind {
  readonly kind: PersonalKind;
  /** 1 or more. */
  readonly count: number;
  /** ISO days; undefined where the kind has none. */
  readonly from: string | undefined;
  readonly to: string | undefined;
  readonly teamNames: readonly string[];
}

export interface PrivacyOverview {
  /** Kinds of which something is stored, in a fixed order. */
  readonly kinds: readonly StoredKind[];
  /** The person's teams, past and present, with how long each keeps details; undefined: without end. */
  readonly teams: readonly Pick<Team, 'name' | 'retentionMonths'>[];
}

/** For anybody: a person who is stored nowhere learns just that. */
export async function privacyOverview(deps: AppDependencies, actor: Actor): Promise<PrivacyOverview> {
  return deps.store.read(async (read) => {
    const data = await read.personalData(actor);
    const teams = await read.teamsOfPerson(actor);
    return {
      kinds: storedKinds(data),
      teams: teams.map(({ name, retentionMonths }) => ({ name, retentionMonths })),
    };
  });
}

function storedKinds(data: PersonalData): StoredKind[] {
  return PERSONAL_KINDS.flatMap((kind) => {
    const records = data[kind];
    if (records.length === 0) return [];
    const days = records.flatMap(({ on }) => (on === null ? [] : [on.slice(0, 10)])).sort();
    return [{ kind, count: records.length, from: days[0], to: days.at(-1), teamNames: teamNamesOf(records) }];
  });
}

function teamNamesOf(records: readonly PersonalRecord[]): string[] {
  return [...new Set(records.flatMap(({ team }) => (team === null ? [] : [team])))].sort((a, b) =>
    a.localeCompare(b, 'en'),
  );
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
  const data = await deps.store.read((read) => read.personalData(actor));
  const records = countOf(data);
  if (records === 0) throw new Refusal('nothing-stored', {});
  const copy = {
    writtenAt: deps.clock.now().toISOString(),
    workspaceId: actor.workspaceId,
    userId: actor.userId,
    ...data,
  };
  const bytes = new TextEncoder().encode(`${JSON.stringify(copy, undefined, 2)}\n`);
  return { fileName: 'loadline-about-me.json', bytes, records };
}
