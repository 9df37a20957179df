/** Chooses what velocity growth is measured by. Verdicts that were posted keep their numbers. */

import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { Refusal } from '../refusal.ts';
import {
  membershipAt,
  membershipBy,
  membershipInTeam,
  type Place,
  requireFacilitator,
  type TeamReference,
} from '../team/place.ts';
import type { Actor, BaselineRule, Team } from '../team/team.ts';
import { baselineOfPast, canBeBaseline } from './baseline-of.ts';
import { type ClosedSprintReference, closedSprint } from './closed-sprint.ts';
import type { PastSprint } from './past-sprint.ts';
import { pastSprints } from './team-history.ts';

/** With the choice of the first one, as many as a list of choices can hold; older ones can be named in the command. */
const SPRINTS_OFFERED = 99;
const ACT = 'choose-baseline';

/** A closed sprint in which something was finished. */
export type BaselineChoice = Pick<PastSprint, 'sprintId' | 'name' | 'startsOn' | 'endsOn'> & {
  readonly velocityPoints: number;
};

type Measured = PastSprint & BaselineChoice;

/** The median of the team's first three sprints with a velocity. */
export interface MedianChoice {
  readonly rule: 'first-three';
  /** Undefined before there are three. */
  readonly velocityPoints: number | undefined;
}

export interface BaselineForm {
  readonly team: Team;
  /** The sprints that may be named, the latest first; at least one. */
  readonly choices: readonly BaselineChoice[];
  /** The sprint that is the baseline when none is named. */
  readonly first: BaselineChoice;
  readonly median: MedianChoice;
  /** The one that is named now; undefined: those of the team's rule. */
  readonly named: BaselineChoice | undefined;
  /** Sprints that are too old for the list. */
  readonly leftOut: number;
}

export interface BaselineNamed {
  readonly team: Team;
  readonly baseline: BaselineChoice | MedianChoice;
  /** Whether it is the team's first sprint. */
  readonly isFirst: boolean;
  /** What it was until now; undefined when nothing changed. */
  readonly before: BaselineChoice | MedianChoice | undefined;
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
      median: medianOf(team, choices),
      named: choices.find(({ sprintId }) => sprintId === team.baselineSprintId),
      leftOut: Math.max(0, choices.length - SPRINTS_OFFERED),
    };
  });
}

/**
 * @param input a rule: from now on the first sprint, or the median of the first three, even if those become other ones.
 * @throws Refusal `not-a-facilitator`, `no-closed-sprint`, `no-such-sprint`, `sprint-not-closed`, `no-velocity`, and
 * those of finding the team.
 */
export async function nameBaseline(
  deps: AppDependencies,
  actor: Actor,
  input: TeamReference & { readonly sprint: ClosedSprintReference | BaselineRule },
): Promise<BaselineNamed> {
  return deps.store.transaction(async (tx) => {
    const found = await membershipBy(tx.read, actor, input);
    await tx.lock.team(found.team.id);
    // As it is under the lock: what other forms set must not be taken back.
    const membership = await membershipInTeam(tx.read, actor, found.team.id);
    requireFacilitator(membership, ACT);
    const before = membership.team;
    const { past, choices, first } = await choicesOf(tx, before);
    const { sprint: wanted } = input;
    const isRule = wanted === 'first' || wanted === 'first-three';
    const meant = isRule ? first : await closedSprint(tx.read, before, past, wanted);
    const named = choices.find(({ sprintId }) => sprintId === meant.sprintId);
    if (!named) {
      throw new Refusal('no-velocity', { sprintName: meant.name, finishedPoints: meant.velocityPoints });
    }
    const team: Team = isRule
      ? { ...before, baselineSprintId: undefined, baselineRule: wanted }
      : { ...before, baselineSprintId: named.sprintId };
    const isChanged =
      team.baselineSprintId !== before.baselineSprintId || team.baselineRule !== before.baselineRule;
    if (isChanged) await tx.write.teams.save(team);
    const [until, baseline] = [meantBy(before, choices), meantBy(team, choices)];
    const isSame = sprintIdOf(until) === sprintIdOf(baseline);
    return {
      team,
      baseline,
      isFirst: sprintIdOf(baseline) === first.sprintId,
      before: isSame ? undefined : until,
      latest: latestOf(choices, until, baseline),
    };
  });
}

/** What velocity growth is measured by. @param choices at least one */
function meantBy(team: Team, choices: readonly Measured[]): BaselineChoice | MedianChoice {
  const { from, sprintId } = baselineOfPast(team, choices) ?? {};
  const sprint = sprintId === undefined ? undefined : choices[from ?? 0];
  return sprint ?? medianOf(team, choices);
}

function medianOf(team: Team, choices: readonly Measured[]): MedianChoice {
  const rule = 'first-three';
  const found = baselineOfPast({ ...team, baselineSprintId: undefined, baselineRule: rule }, choices);
  return { rule, velocityPoints: found?.baseline.velocityPoints };
}

function sprintIdOf(meant: BaselineChoice | MedianChoice): string | undefined {
  return 'sprintId' in meant ? meant.sprintId : undefined;
}

async function choicesOf(
  tx: Transaction,
  team: Team,
): Promise<{ past: readonly PastSprint[]; choices: Measured[]; first: Measured }> {
  const past = await pastSprints(tx, team);
  const choices = past.filter((sprint): sprint is Measured => canBeBaseline(sprint));
  const [first] = choices;
  if (!first) throw new Refusal('no-closed-sprint', { teamName: team.name, withVelocity: true });
  return { past, choices, first };
}

function latestOf(
  choices: readonly BaselineChoice[],
  before: BaselineChoice | MedianChoice,
  after: BaselineChoice | MedianChoice,
): BaselineNamed['latest'] {
  const latest = choices.at(-1);
  const [then, now] = [before.velocityPoints, after.velocityPoints];
  if (!latest || latest.sprintId === sprintIdOf(after) || !then || !now) return undefined;
  return {
    name: latest.name,
    growthBefore: latest.velocityPoints / then,
    growthAfter: latest.velocityPoints / now,
  };
}
