/** Keeps what a team agreed to try. For facilitators. */
import { randomUUID } from 'node:crypto';
import { RATIO_IDS, type RatioId } from '../../sprint/sprint-ratios.ts';
import { type VerdictContent, verdictContent } from '../closing/verdict-content.ts';
import { pastSprints } from '../history/team-history.ts';
import type { InputProblem } from '../input-problem.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { Refusal, refuseIfAny } from '../refusal.ts';
import {
  type Membership,
  membershipAt,
  membershipInTeam,
  type Place,
  requireFacilitator,
  sprintForMember,
} from '../team/place.ts';
import type { Actor, Team } from '../team/team.ts';
import { endNow } from './end-experiment.ts';
import {
  DIRECTIONS,
  type Direction,
  EXPERIMENT_TEXT_MAX_LENGTH,
  type Experiment,
  isOpen,
  isSameText,
} from './experiment.ts';

/** More than anybody can keep in mind, and as many as fit in a message. */
const MOST_OPEN_EXPERIMENTS = 10;

export interface TryForm {
  readonly team: Team;
  /** Of the sprint below whose verdict the form is opened; undefined for others. */
  readonly verdict: VerdictContent | undefined;
  readonly open: readonly Experiment[];
  /** Undefined: nothing that is being tried gives way to it. */
  readonly changing?: Experiment | undefined;
}

/** What the form begins with. @throws Refusal `not-a-facilitator`, `experiment-over` */
export async function tryForm(
  deps: AppDependencies,
  actor: Actor,
  reference: { readonly place: Place } | { readonly sprintId: string } | { readonly experimentId: string },
): Promise<TryForm> {
  return deps.store.transaction(async (tx) => {
    if ('experimentId' in reference) {
      const teamId = await tx.read.teamIdOfExperiment(reference.experimentId);
      const found = await membershipInTeam(tx.read, actor, teamId ?? '');
      requireFacilitator(found, 'try');
      const changing = await stillOpen(tx, found, reference.experimentId);
      return { team: found.team, verdict: undefined, open: await openExperiments(tx, found), changing };
    }
    if ('place' in reference) {
      const found = await membershipAt(tx.read, actor, reference.place);
      requireFacilitator(found, 'try');
      return { team: found.team, verdict: undefined, open: await openExperiments(tx, found) };
    }
    const found = await sprintForMember(tx.read, actor, reference.sprintId);
    requireFacilitator(found, 'try');
    const { team, sprint } = found;
    const isClosed = sprint.state === 'closed' && (await tx.read.latestResult(sprint.id)) !== undefined;
    const verdict = isClosed ? await verdictContent(tx, team, sprint, deps.clock.now()) : undefined;
    return { team, verdict, open: await openExperiments(tx, found) };
  });
}

/** As typed and chosen. */
interface TryInput {
  readonly teamId: string;
  readonly text: string;
  readonly ratio: string;
  readonly direction: string;
  /** The experiment that gives way to it. */
  readonly changes?: string | undefined;
}

export interface Tried {
  readonly team: Team;
  readonly experiment: Experiment;
}

/** @throws Refusal `bad-input` (text, ratio, direction), `not-a-facilitator`, `experiment-over`, `no-such-experiment` */
export async function tryExperiment(deps: AppDependencies, actor: Actor, input: TryInput): Promise<Tried> {
  return deps.store.transaction(async (tx) => {
    const found = await membershipInTeam(tx.read, actor, input.teamId);
    requireFacilitator(found, 'try');
    const { team } = found;
    await tx.lock.team(team.id);
    const text = input.text.replace(/\s+/g, ' ').trim();
    const changing = input.changes === undefined ? undefined : await stillOpen(tx, found, input.changes);
    const others = (await openExperiments(tx, found)).filter(({ id }) => id !== changing?.id);
    refuseIfAny([
      ...textProblems(text, others),
      ...(isRatio(input.ratio) ? [] : [{ field: 'ratio', problem: { code: 'try-ratio' } } as const]),
      ...(isDirection(input.direction)
        ? []
        : [{ field: 'direction', problem: { code: 'try-direction' } } as const]),
    ]);
    const now = deps.clock.now();
    if (changing) await endNow(tx, changing, 'change', actor, now);
    const reopened = (await tx.read.openSprintsOf(team.id)).find(({ closedAt }) => closedAt !== undefined);
    const experiment: Experiment = {
      id: randomUUID(),
      teamId: team.id,
      text,
      ratio: input.ratio as RatioId,
      direction: input.direction as Direction,
      begunBy: actor.userId,
      begunAt: now,
      afterSprintId: reopened?.id ?? (await pastSprints(tx, team)).at(-1)?.sprintId,
      ended: undefined,
    };
    await tx.write.experiments.begin(experiment);
    return { team, experiment };
  });
}

function textProblems(text: string, open: readonly Experiment[]): InputProblem[] {
  const field = 'text';
  if (text === '') return [{ field, problem: { code: 'try-text-missing' } }];
  if (text.length > EXPERIMENT_TEXT_MAX_LENGTH) {
    return [{ field, problem: { code: 'try-text-length', most: EXPERIMENT_TEXT_MAX_LENGTH } }];
  }
  if (open.some((one) => isSameText(one.text, text))) return [{ field, problem: { code: 'try-already' } }];
  if (open.length < MOST_OPEN_EXPERIMENTS) return [];
  return [{ field, problem: { code: 'try-many', most: MOST_OPEN_EXPERIMENTS } }];
}

async function stillOpen(tx: Transaction, { team }: Membership, experimentId: string): Promise<Experiment> {
  const experiments = await tx.read.experimentsOf(team.id);
  const found = experiments.find(({ id }) => id === experimentId);
  if (!found) {
    const open = experiments.filter(isOpen).map(({ text }) => text);
    throw new Refusal('no-such-experiment', { open });
  }
  if (found.ended) throw new Refusal('experiment-over', { text: found.text });
  return found;
}

async function openExperiments(tx: Transaction, { team }: Membership): Promise<Experiment[]> {
  return (await tx.read.experimentsOf(team.id)).filter(isOpen);
}

function isRatio(typed: string): typed is RatioId {
  return (RATIO_IDS as readonly string[]).includes(typed);
}

function isDirection(typed: string): typed is Direction {
  return (DIRECTIONS as readonly string[]).includes(typed);
}
