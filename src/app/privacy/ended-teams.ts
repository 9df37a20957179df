/**
 * What becomes of teams that nobody uses any more, so that nothing of theirs is kept for ever: those that were ended, those
 * whose workspace removed the bot, and those that came to an end without anybody saying so. Any number of processes may do
 * this at the same time, and again; one batch a call.
 */
import { subDays } from 'date-fns/subDays';
import { subMonths } from 'date-fns/subMonths';
import { dayAt } from '../clock/local-time.ts';
import { endQuietly } from '../closing/end-sprint.ts';
import { failAtOnce, type NotePassedOver, oneByOne, portions } from '../in-portions.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { endTeamNow } from '../team/end-team.ts';
import type { Team } from '../team/team.ts';
import { DAYS_UNTIL_FINAL, DAYS_WITHOUT_CHANNEL, MONTHS_IDLE } from './promised-times.ts';
import { reduceSprints } from './reduce-sprints.ts';

type TimedPorts = Pick<AppDependencies, 'store' | 'clock'>;
type Ports = TimedPorts & Pick<AppDependencies, 'directory'>;

const SPRINTS_BATCH = 20;
/** A team is erased whole; its transaction has to end some time. */
const TEAMS_BATCH = 1;

/**
 * All that is let go once a day: what ended is closed, reduced and erased, and what is old everywhere else. One batch.
 *
 * @param note hears of what can't be let go now, which holds up nothing else
 * @returns how much was done; 0: nothing is left to do now
 */
export async function letGoOfOld(ports: Ports, note: NotePassedOver = failAtOnce): Promise<number> {
  for (const batch of [endForgottenTeams, closeLeftOpen, eraseEnded, reduceSprints, dropEmptyWorkspaces]) {
    const done = await batch(ports, note);
    if (done > 0) return done;
  }
  return 0;
}

/**
 * Ends the teams whose channel stays closed to the bot, by the platform's word of today, and those that have had no sprint
 * for long.
 */
export async function endForgottenTeams(
  { store, clock, directory }: Ports,
  note: NotePassedOver = failAtOnce,
): Promise<number> {
  const now = clock.now();
  const { closed, idle } = await store.read(async (read) => ({
    closed: await read.teamsWithoutChannel(subDays(now, DAYS_WITHOUT_CHANNEL)),
    idle: await read.idleTeams(subMonths(now, MONTHS_IDLE)),
  }));
  const goneOn = async ({ id, workspaceId, channelId }: Team): Promise<void> => {
    const channel = await directory.channel(workspaceId, channelId).then(
      (found) => ({ isOpen: found !== undefined && !found.isArchived }),
      () => undefined,
    );
    // Without an answer nothing is decided; tomorrow it is asked again.
    if (!channel) return;
    await store.transaction(async (tx) => {
      await tx.lock.team(id);
      const team = await tx.read.teamById(id);
      if (team?.channelId !== channelId || team.endedAt) return;
      if (channel.isOpen) await tx.write.teams.noteChannelOpen(id);
      else await endTeamNow(tx, team, now);
    });
    done += 1;
  };
  const endIdle = async ({ id }: Team): Promise<void> => {
    await store.transaction(async (tx) => {
      await tx.lock.team(id);
      const team = await tx.read.teamById(id);
      if (team && !team.endedAt) await endTeamNow(tx, team, now, { kind: 'team-idle', teamId: id });
    });
    done += 1;
  };
  let done = 0;
  const idOf = ({ id }: Team): string => id;
  await oneByOne(store, closed, { work: goneOn, idOf, note });
  await oneByOne(store, idle, { work: endIdle, idOf, note });
  return done;
}

/** Closes the sprints that were open when their team ended. Nobody hears of it: nobody is there. */
async function closeLeftOpen({ store, clock }: TimedPorts, note: NotePassedOver): Promise<number> {
  const next = portions(
    store,
    SPRINTS_BATCH,
    ({ portion, claimed }) =>
      store.transaction(async (tx) => {
        const now = clock.now();
        const left = await tx.claim.sprintsOfEnded(now, portion);
        claimed(left.map(({ sprint }) => sprint.id));
        for (const { team, sprint, endedAt } of left) {
          await tx.lock.team(team.id);
          // One that was cut short measures nothing that a later plan could be made by.
          const isWhole = sprint.closedAt !== undefined || sprint.endsOn <= dayAt(endedAt, team.timeZone);
          await endQuietly(tx, team, sprint, now, isWhole ? 'closed' : 'cancelled');
        }
        return left.length;
      }),
    note,
  );
  return next();
}

async function eraseEnded({ store, clock }: TimedPorts, note: NotePassedOver): Promise<number> {
  const next = portions(
    store,
    TEAMS_BATCH,
    ({ portion, claimed }) =>
      store.transaction(async (tx) => {
        const due = await tx.claim.teamsToErase(clock.now(), portion);
        claimed(due.map(({ id }) => id));
        for (const { id } of due) await tx.write.retention.eraseTeam(id);
        return due.length;
      }),
    note,
  );
  return next();
}

async function dropEmptyWorkspaces({ store, clock }: TimedPorts): Promise<number> {
  const removedBefore = subDays(clock.now(), DAYS_UNTIL_FINAL);
  return store.transaction((tx) => tx.write.retention.dropEmptyWorkspaces(removedBefore));
}
