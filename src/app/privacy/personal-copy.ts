/** A copy of what is stored under a person's id, for that person. Must hold nothing of anybody else's. */
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { Refusal } from '../refusal.ts';
import type { Actor } from '../team/team.ts';
import { countOf } from './personal-data.ts';

export interface PersonalCopy {
  readonly fileName: string;
  /** JSON, UTF-8. */
  readonly bytes: Uint8Array;
  readonly records: number;
}

/** @throws Refusal `nothing-stored` */
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
