/**
 * What an operator has to be able to answer for: who let the bot in or took it out, who may lead a team, who took data
 * away or had it erased, and who was refused. Noted once it is done, for the log. Must hold ids only, and nothing that
 * people typed; docs/privacy.md lists every field.
 */
import { AsyncLocalStorage } from 'node:async_hooks';
import type { Reading, Store, Writing } from './ports/store.ts';
import { Refusal, type RefusalCode } from './refusal.ts';
import { facilitatorIdsOf } from './team/place.ts';
import type { Actor } from './team/team.ts';
import type { UseCases } from './use-cases.ts';
import { withPorts, writingBy } from './writing-by.ts';

/** Stable: operators search for these names. */
export const SECURITY_EVENTS = [
  'workspace-installed',
  'workspace-removed',
  'workspace-refused',
  'request-refused',
  'facilitators-changed',
  'data-exported',
  'person-erased',
  'team-ended',
  'team-resumed',
  'team-erased',
  'workspace-erased',
] as const;

interface SecurityEvent {
  readonly event: (typeof SECURITY_EVENTS)[number];
  /** Who did it: a person, the operator at the command line, the platform, or the bot by itself. */
  readonly by: 'person' | 'operator' | 'platform' | 'bot';
  readonly workspaceId: string;
  /** The person; undefined when it was none, or nobody knows. */
  readonly actorId?: string | undefined;
  readonly teamId?: string;
  /** Whom it happened to. */
  readonly personId?: string;
  /** Who became facilitator, and who no longer is one. */
  readonly added?: readonly string[];
  readonly removed?: readonly string[];
  /** Of a refusal. */
  readonly reason?: RefusalCode | 'not-installed' | 'not-allowed';
}

export type NoteSecurity = (event: SecurityEvent) => void;

const acting = new AsyncLocalStorage<Actor | 'operator'>();

/** What is done within the work is done by the operator. */
export function asOperator<T>(work: () => Promise<T>): Promise<T> {
  return acting.run('operator', work);
}

function byWhom(): Pick<SecurityEvent, 'by' | 'actorId'> {
  const actor = acting.getStore();
  if (actor === undefined) return { by: 'bot' };
  return actor === 'operator' ? { by: 'operator' } : { by: 'person', actorId: actor.userId };
}

/** A store that notes what is written, once it is committed. Changes nothing about it. */
export function notingStore(store: Store, note: NoteSecurity): Store {
  return {
    ...store,
    async transaction(work) {
      let events: SecurityEvent[] = [];
      const result = await store.transaction((tx) => {
        // The work may run again after a conflict; only its last run was committed.
        events = [];
        return work(writingBy(tx, (write) => notingWrites(tx.read, write, events)));
      });
      for (const event of events) note(event);
      return result;
    },
  };
}

function notingWrites(read: Reading, write: Writing, events: SecurityEvent[]): Writing {
  return withPorts(write, {
    teams: (teams) => ({
      ...teams,
      async save(team) {
        const before = await read.teamById(team.id);
        await teams.save(team);
        const wasEnded = before?.endedAt !== undefined;
        if (wasEnded === (team.endedAt !== undefined)) return;
        const event = wasEnded ? 'team-resumed' : 'team-ended';
        events.push({ event, ...byWhom(), workspaceId: team.workspaceId, teamId: team.id });
      },
      async saveMembers(teamId, members) {
        const before = facilitatorIdsOf(await read.membersOf(teamId));
        await teams.saveMembers(teamId, members);
        const added = members.filter(({ userId, isFacilitator, isActive }) => {
          return isFacilitator && isActive && !before.includes(userId);
        });
        const removed = members.filter(({ userId, isFacilitator, isActive }) => {
          return !(isFacilitator && isActive) && before.includes(userId);
        });
        if (added.length + removed.length === 0) return;
        const team = await read.teamById(teamId);
        if (!team) return;
        const ids = (some: typeof members) => some.map(({ userId }) => userId);
        events.push({
          event: 'facilitators-changed',
          ...byWhom(),
          workspaceId: team.workspaceId,
          teamId,
          added: ids(added),
          removed: ids(removed),
        });
      },
    }),
    people: (people) => ({
      ...people,
      async erase(person, names) {
        await people.erase(person, names);
        const { workspaceId, userId } = person;
        events.push({ event: 'person-erased', ...byWhom(), workspaceId, personId: userId });
      },
    }),
    retention: (retention) => ({
      ...retention,
      async eraseTeam(teamId) {
        const team = await read.teamById(teamId);
        const rows = await retention.eraseTeam(teamId);
        if (team) events.push({ event: 'team-erased', ...byWhom(), workspaceId: team.workspaceId, teamId });
        return rows;
      },
      async eraseWorkspace(workspaceId) {
        const rows = await retention.eraseWorkspace(workspaceId);
        const isSomething = Object.values(rows).some((count) => count > 0);
        if (isSomething) events.push({ event: 'workspace-erased', ...byWhom(), workspaceId });
        return rows;
      },
    }),
    installations: (installations) => ({
      ...installations,
      async save(installation) {
        await installations.save(installation);
        const { workspaceId, installedBy } = installation;
        events.push({ event: 'workspace-installed', by: 'person', workspaceId, actorId: installedBy });
      },
      async revoke(workspaceId, ...rest) {
        const isRevoked = await installations.revoke(workspaceId, ...rest);
        const by = acting.getStore() === 'operator' ? 'operator' : 'platform';
        if (isRevoked) events.push({ event: 'workspace-removed', by, workspaceId });
        return isRevoked;
      },
    }),
  });
}

/** Refusals for want of a right, and not because of what was typed or when. */
const WITHOUT_RIGHT: ReadonlySet<RefusalCode> = new Set([
  'guest-set-up',
  'no-team-of-yours',
  'not-a-facilitator',
  'not-a-goal-keeper',
  'not-a-member',
  'not-a-value-keeper',
  'not-card-owner',
  'outsider',
  'set-up-from-outside',
  'set-up-left-to-others',
]);

/** What hands data out that goes on elsewhere. */
const EXPORTS: readonly (keyof UseCases)[] = ['exportSprints', 'personalCopy'];

type Run = (actor: Actor, ...given: unknown[]) => Promise<unknown>;

/** The same use cases: who acts is known to the store, and what was refused or handed out is noted. */
export function notingUseCases(useCases: UseCases, note: NoteSecurity): UseCases {
  const noted = Object.entries(useCases).map(([name, run]) => [
    name,
    (actor: Actor, ...given: unknown[]) =>
      acting.run(actor, async () => {
        const { workspaceId } = actor;
        try {
          const result = await (run as Run)(actor, ...given);
          if (EXPORTS.includes(name as keyof UseCases)) {
            const { team } = Object(result) as { team?: { id: string } };
            const of = team ? { teamId: team.id } : { personId: actor.userId };
            note({ event: 'data-exported', ...byWhom(), workspaceId, ...of });
          }
          return result;
        } catch (error) {
          if (error instanceof Refusal && WITHOUT_RIGHT.has(error.code)) {
            note({ event: 'request-refused', ...byWhom(), workspaceId, reason: error.code });
          }
          throw error;
        }
      }),
  ]);
  return Object.freeze(Object.fromEntries(noted)) as UseCases;
}
