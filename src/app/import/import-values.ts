/**
 * Records what several sprints were worth, from a file: first shows each value and every bad line, then records what was
 * shown. A value that is there already is replaced, as when it is typed.
 */
import type { GivenFile } from '../csv/given-file.ts';
import { lockedAudience } from '../history/closed-sprint.ts';
import type { ValuedSprint } from '../history/past-sprint.ts';
import { requireValueKeeper } from '../history/record-value.ts';
import { pastSprints } from '../history/team-history.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { Refusal } from '../refusal.ts';
import { type Audience, audienceInTeam } from '../team/place.ts';
import type { Actor, Team } from '../team/team.ts';
import type { ValuesReading } from './values-reading.ts';

interface ValuesInput {
  readonly teamId: string;
  readonly file: GivenFile;
  /** The fingerprint of the preview that was seen; undefined when none was. */
  readonly seen: string | undefined;
}

export type ValuesPreview = ValuesReading & { readonly team: Team };

export type ValuesOutcome =
  | { readonly kind: 'preview'; readonly preview: ValuesPreview }
  | { readonly kind: 'recorded'; readonly recorded: Pick<ValuesPreview, 'team' | 'values' | 'same'> };

/** @throws Refusal `not-a-value-keeper`, `no-closed-sprint`, `file-unreadable`, and those of finding the team. */
export async function importValues(
  deps: AppDependencies,
  actor: Actor,
  { teamId, file, seen }: ValuesInput,
): Promise<ValuesOutcome> {
  const before = await deps.store.transaction(async (tx) =>
    valuedSprints(tx, await audienceInTeam(tx.read, actor, teamId)),
  );
  // A large file takes seconds, in which no transaction may be open.
  const read = await deps.files.values({ file, sprints: before.sprints });
  const preview = { team: before.team, ...read };
  if (preview.values.length === 0 || seen !== preview.fingerprint) return { kind: 'preview', preview };
  return deps.store.transaction(async (tx) => {
    // Locked, so that nobody records between the last look and the recording.
    const { team, sprints } = await valuedSprints(tx, await lockedAudience(tx, actor, { teamId }));
    if (JSON.stringify(sprints) !== JSON.stringify(before.sprints)) return { kind: 'preview', preview };
    const at = deps.clock.now();
    for (const { sprint, value } of preview.values) {
      const { sprintId } = sprint;
      await tx.write.history.recordValue({ sprintId, value, byUserId: actor.userId, at });
      await tx.write.posts.refreshSent(sprintId, 'value-question');
    }
    const { values, same } = preview;
    return { kind: 'recorded', recorded: { team, values, same } };
  });
}

async function valuedSprints(
  tx: Transaction,
  audience: Audience,
): Promise<{ readonly team: Team; readonly sprints: readonly ValuedSprint[] }> {
  requireValueKeeper(audience);
  const { team } = audience;
  const past = await pastSprints(tx, team);
  if (past.length === 0) throw new Refusal('no-closed-sprint', { teamName: team.name, withVelocity: false });
  return {
    team,
    sprints: past.map(({ sprintId, name, startsOn, endsOn, recordedValue }) => ({
      sprintId,
      name,
      startsOn,
      endsOn,
      recordedValue,
    })),
  };
}
