/** Names the sprint that velocity growth is measured by. Verdicts that were posted keep their numbers. */

import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { Refusal } from '../refusal.ts';
import { membershipAt, membershipInTeam, type Place, requireFacilitator } from '../team/place.ts';
import type { Actor, Team } from '../team/team.ts';
import { type ClosedSprintReference, closedSprint, type TeamReference } from './closed-sprint.ts';
import { baselineIndex, canBeBaseline } from './growth-of-past.ts';
import type { PastSprint } from './past-sprint.ts';
import { pastSprints } from './team-history.ts';

/** With the choice of the first one, as many as a list of choices can hold; older ones can be named in the command. */
const SPRINTS_OFFERED = 99;
const ACT = 'choose-baseline';

/** A closed sprint in which something was finished. */
export type BaselineChoice = Pick<PastSprint, 'sprintId' | 'name' | 'startsOn' | 'endsOn'> & {
  readonly velocityPoints: number;
};

export interface BaselineForm {
  readonly team: Team;
  /** The sprints that may be named, the latest first; at least one. */
  readonly choices: readonly BaselineChoice[];
  /** The sprint that is the baseline when none is named. */
  readonly first: BaselineChoice;
  /** The one that is named now; undefined: the first. */
  readonly named: BaselineChoice | undefined;
  /** Sprints that are too old for the list. */
  readonly leftOut: number;
}

export interface BaselineNamed {
  readonly team: Team;
  readonly baseline: BaselineChoice;
  /** Whether it is the one that counts when none is named. */
  readonly isFirst: boolean;
  /** The sprint that it was until now; undefined when nothing changed. */
  readonly before: BaselineChoice | undefined;
  /** The latest sprint with a velocity, and its velocity growth before and after; undefined when it is the baseline. */
  readonly latest:
    | { readonly name: string; readonly growthBefore: number; readonly growthAfter: number }
    | undefined;
}

/** @throws Refusal `not-a-facilitator`, `no-closed-sprint`, and those of finding the team. */
export async function baselineForm(deps: AppDependencies, actor: Actor, place: Place): Promise<BaselineForm> {
  return deps.store.transaction(async (tx) => {
    const membership = await membershipAt(tx.read, actor, place);
    requireFacilitator(membership, ACT);
    const { team } = membership;
    const { choices, first } = await choicesOf(tx, team);
    return {
      team,
      choices: choices.slice(-SPRINTS_OFFERED).reverse(),
      first,
      named: choices.find(({ sprintId }) => sprintId === team.baselineSprintId),
      leftOut: Math.max(0, choices.length - SPRINTS_OFFERED),
    };
  });
}

/**
 * @param input `first`: from now on the first closed sprint with a velocity, even if that becomes another one.
 * @throws Refusal `not-a-facilitator`, `no-closed-sprint`, `no-such-sprint`, `sprint-not-closed`, `no-velocity`, and
 * those of finding the team.
 */
export async function nameBaseline(
  deps: AppDependencies,
  actor: Actor,
  input: TeamReference & { readonly sprint: ClosedSprintReference | 'first' },
): Promise<BaselineNamed> {
  return deps.store.transaction(async (tx) => {
    const found =
      'place' in input
        ? await membershipAt(tx.read, actor, input.place)
        : await membershipInTeam(tx.read, actor, input.teamId);
    await tx.lock.team(found.team.id);
    // As it is under the lock: what other forms set must not be taken back.
    const membership = await membershipInTeam(tx.read, actor, found.team.id);
    requireFacilitator(membership, ACT);
    const before = membership.team;
    const { past, choices, first } = await choicesOf(tx, before);
    const meant = input.sprint === 'first' ? first : await closedSprint(tx.read, before, past, input.sprint);
    const baseline = choices.find(({ sprintId }) => sprintId === meant.sprintId);
    if (!baseline) {
      throw new Refusal('no-velocity', { sprintName: meant.name, finishedPoints: meant.velocityPoints });
    }
    const team = { ...before, baselineSprintId: input.sprint === 'first' ? undefined : baseline.sprintId };
    if (team.baselineSprintId !== before.baselineSprintId) await tx.write.teams.save(team);
    const until = choices[baselineIndex(before, choices) ?? 0] ?? first;
    return {
      team,
      baseline,
      isFirst: baseline.sprintId === first.sprintId,
      before: until.sprintId === baseline.sprintId ? undefined : until,
      latest: latestOf(choices, until, baseline),
    };
  });
}

async function choicesOf(
  tx: Transaction,
  team: Team,
): Promise<{ past: PastSprint[]; choices: BaselineChoice[]; first: BaselineChoice }> {
  const past = await pastSprints(tx, team);
  const choices = past.filter((sprint): sprint is PastSprint & BaselineChoice => canBeBaseline(sprint));
  const [first] = choices;
  if (!first) throw new Refusal('no-closed-sprint', { teamName: team.name, withVelocity: true });
  return { past, choices, first };
}

function latestOf(
  choices: readonly BaselineChoice[],
  before: BaselineChoice,
  after: BaselineChoice,
): BaselineNamed['latest'] {
  const latest = choices.at(-1);
  if (!latest || latest.sprintId === after.sprintId) return undefined;
  return {
    name: latest.name,
    growthBefore: latest.velocityPoints / before.velocityPoints,
    growthAfter: latest.velocityPoints / after.velocityPoints,
  };
}
