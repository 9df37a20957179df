/** Changes how a team works and is measured: its settings and its thresholds. */
import {
  canBeOff,
  THRESHOLDS,
  type ThresholdName,
  type Thresholds,
  thresholdsFrom,
  whyNotThresholds,
} from '../../sprint/thresholds.ts';
import { resetClocks } from '../clock/sprint-clock.ts';
import type { InputProblem } from '../input-problem.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { refuseIfAny } from '../refusal.ts';
import { membershipAt, membershipInTeam, type Place, requireFacilitator } from './place.ts';
import { mapSettings, type SettingName } from './settings.ts';
import type { Actor, Team } from './team.ts';
import { tellOfChanges } from './tell-of-changes.ts';

/** Everything as it was typed. */
export type MeasuresInput = Readonly<Record<SettingName, string>> & {
  readonly teamId: string;
  /** In percent. */
  readonly thresholds: Readonly<Record<ThresholdName, string>>;
};

/** The team whose scale, thresholds and times are about to be changed. */
export async function measuresForm(deps: AppDependencies, actor: Actor, place: Place): Promise<Team> {
  return deps.store.read(async (read) => {
    const membership = await membershipAt(read, actor, place);
    requireFacilitator(membership, 'change-measures');
    return membership.team;
  });
}

/** @throws Refusal `bad-input`, `not-a-facilitator`. */
export async function setMeasures(deps: AppDependencies, actor: Actor, input: MeasuresInput): Promise<Team> {
  const problems: InputProblem[] = [];
  const settings = mapSettings(({ read, usual }, name) => {
    const made = read(input[name]);
    if ('value' in made) return made.value;
    problems.push({ field: name, problem: made.problem });
    return usual;
  });
  const thresholds = thresholdsFrom((name) => {
    const typed = input.thresholds[name].trim();
    if (typed === '' && canBeOff(name)) return undefined;
    const share = parsePercent(typed);
    const { usual, most } = THRESHOLDS[name];
    if (share !== undefined && share <= most) return share;
    const problem = { code: 'no-percentage', most: most * 100, example: (usual ?? 2) * 100 } as const;
    problems.push({ field: name, problem });
    return usual;
  });
  refuseIfAny(problems);
  refuseIfAny(conflictsIn(thresholds));
  return deps.store.transaction(async (tx) => {
    await tx.lock.team(input.teamId);
    const membership = await membershipInTeam(tx.read, actor, input.teamId);
    requireFacilitator(membership, 'change-measures');
    const team: Team = {
      ...membership.team,
      ...settings,
      thresholds,
    };
    await tx.write.teams.save(team);
    const { team: before, members: people } = membership;
    await tellOfChanges(tx, { team: before, people }, { team, people }, actor.userId);
    const now = deps.clock.now();
    await resetClocks(tx, team, now);
    const open = team.weeklyLine ? await tx.read.openSprintsOf(team.id) : [];
    await tx.write.watches.begin(
      open.map(({ id }) => id),
      now,
    );
    return team;
  });
}

/** Moves the decimal point in the text rather than dividing, so that 33.3 becomes exactly what 0.333 is. */
function parsePercent(text: string): number | undefined {
  const match = /^(\d{1,4}(?:[.,]\d+)?)\s*%?$/.exec(text);
  return match ? Number(`${(match[1] as string).replace(',', '.')}e-2`) : undefined;
}

function conflictsIn(thresholds: Thresholds): InputProblem[] {
  const problem = whyNotThresholds(thresholds);
  if (!problem) return [];
  const isOfAccuracy = thresholds.estimateAccuracyAtLeast > thresholds.estimateAccuracyAtMost;
  return [{ field: isOfAccuracy ? 'estimateAccuracyAtLeast' : 'velocityGrowthFirstMark', problem }];
}
