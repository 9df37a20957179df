/**
 * When a member is asked, where they want another time than the team's. It counts for all of their teams, so that one message
 * can ask about all of them. It lies on the team's working day, an hour before closing time at the latest: the last call comes
 * then. A reminder follows as long after it as it follows the team's.
 */
import { isTimeZone, timeTyped } from '../clock/local-time.ts';
import { fitsWorkingDay, latestOwnPrompt, type OwnPrompt } from '../clock/prompt-time.ts';
import { resetClockOf } from '../clock/sprint-clock.ts';
import { lockedOwnTeams } from '../days-off/say-days-off.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { Refusal, refuseIfAny } from '../refusal.ts';
import { todayOf } from './place.ts';
import type { Actor, Team } from './team.ts';

export interface OwnPromptSetting {
  /** The teams that it counts for. */
  readonly teams: readonly Team[];
  /** Undefined: each team's time. */
  readonly ownPrompt: OwnPrompt | undefined;
  /** What the zone is taken for where none is said. */
  readonly timeZone: string;
}

/** As typed. */
interface OwnPromptInput {
  /** Empty: the team's time. */
  readonly at: string;
  /** Empty: the one that the person had before, else that of their profile. */
  readonly timeZone: string;
}

/** @throws Refusal `no-work-to-be-off`, `no-team-of-yours` */
export async function ownPromptForm(deps: AppDependencies, actor: Actor): Promise<OwnPromptSetting> {
  const profileZone = await zoneOfProfile(deps, actor);
  return deps.store.transaction(async (tx) => {
    const own = await lockedOwnTeams(tx, actor);
    const [first] = own;
    if (!first) throw await noWork(tx.read.teamsOf(actor));
    const { ownPrompt } = first.member;
    const timeZone = ownPrompt?.timeZone ?? profileZone ?? first.team.timeZone;
    return { teams: own.map(({ team }) => team), ownPrompt, timeZone };
  });
}

/** @throws Refusal `bad-input` (at, timeZone), `no-work-to-be-off`, `no-team-of-yours` */
export async function chooseOwnPrompt(
  deps: AppDependencies,
  actor: Actor,
  input: OwnPromptInput,
): Promise<OwnPromptSetting> {
  const typedAt = input.at.trim();
  const typedZone = input.timeZone.trim();
  const at = timeTyped(typedAt);
  const isTeamTime = typedAt === '';
  const isZone = typedZone === '' || isTimeZone(typedZone);
  refuseIfAny([
    ...(at || isTeamTime ? [] : [{ field: 'at', problem: { code: 'no-time', example: '10:30' } as const }]),
    ...(isZone || isTeamTime ? [] : [{ field: 'timeZone', problem: { code: 'no-time-zone' } as const }]),
  ]);
  const before = await ownPromptForm(deps, actor);
  const timeZone = typedZone === '' ? before.timeZone : typedZone;
  const ownPrompt = at === undefined ? undefined : { at, timeZone };
  return deps.store.transaction(async (tx) => {
    const now = deps.clock.now();
    const own = await lockedOwnTeams(tx, actor);
    const unfit = ownPrompt && own.find(({ team }) => !fitsWorkingDay(team, ownPrompt, todayOf(team, now)));
    if (unfit) {
      const { name, timeZone: teamZone } = unfit.team;
      const latest = latestOwnPrompt(unfit.team);
      refuseIfAny([
        { field: 'at', problem: { code: 'prompt-too-late', team: name, latest, zone: teamZone } },
      ]);
    }
    for (const { team, member } of own) {
      const changed = { ...member, ownPrompt };
      await tx.write.teams.saveMembers(team.id, [changed]);
      await resetClockOf(tx, team, changed, now);
    }
    return { teams: own.map(({ team }) => team), ownPrompt, timeZone };
  });
}

async function zoneOfProfile(
  { directory }: Pick<AppDependencies, 'directory'>,
  { workspaceId, userId }: Actor,
): Promise<string | undefined> {
  const profile = await directory.profile(workspaceId, userId).catch(() => undefined);
  return profile?.timeZone !== undefined && isTimeZone(profile.timeZone) ? profile.timeZone : undefined;
}

async function noWork(teams: Promise<readonly Team[]>): Promise<Refusal> {
  return (await teams).length === 0
    ? new Refusal('no-team-of-yours', {})
    : new Refusal('no-work-to-be-off', {});
}
