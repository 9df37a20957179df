/** What a team tries and tried, and what became of it. Everybody who reads the team's numbers may look; facilitators decide. */
import { memberShareOf } from '../../sprint/work-calendar.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { directPost } from '../posting/post-kinds.ts';
import type { NewPost } from '../posting/posts.ts';
import { Refusal } from '../refusal.ts';
import {
  audienceAt,
  facilitatorsOrMembers,
  type Membership,
  membershipAt,
  membershipInTeam,
  type Place,
  requireFacilitator,
  todayOf,
} from '../team/place.ts';
import type { Actor, Sprint, Team } from '../team/team.ts';
import { type Experiment, isOpen, isSameText, type Outcome } from './experiment.ts';
import { triedIn } from './experiment-results.ts';

/** After so many sprints a facilitator is asked what becomes of what the team tries. */
const ASKED_AFTER_SPRINTS = 3;

export interface ExperimentList {
  readonly team: Team;
  /** Oldest first. */
  readonly experiments: readonly Experiment[];
  readonly askerIsFacilitator: boolean;
}

export async function listExperiments(
  deps: AppDependencies,
  actor: Actor,
  place: Place,
): Promise<ExperimentList> {
  return deps.store.transaction(async ({ read }) => {
    const { team, isFacilitator } = await audienceAt(read, actor, place);
    return { team, experiments: await read.experimentsOf(team.id), askerIsFacilitator: isFacilitator };
  });
}

/** One by its id, or as somebody calls it: its number in the list, or its text or the beginning of it. */
type EndInput = { readonly outcome: Outcome } & (
  | { readonly experimentId: string }
  | { readonly place: Place; readonly reference: string }
);

export interface EndedExperiment {
  readonly team: Team;
  readonly experiment: Experiment;
  readonly outcome: Outcome;
}

/** @throws Refusal `no-such-experiment`, `experiment-over`, `not-a-facilitator` */
export async function endExperiment(
  deps: AppDependencies,
  actor: Actor,
  input: EndInput,
): Promise<EndedExperiment> {
  return deps.store.transaction(async (tx) => {
    const { membership, named } = await found(tx, actor, input);
    requireFacilitator(membership, 'end-experiment');
    const { team } = membership;
    await tx.lock.team(team.id);
    const experiments = await tx.read.experimentsOf(team.id);
    const open = experiments.filter(isOpen);
    const experiment =
      named === undefined
        ? calledSo(open, 'reference' in input ? input.reference : '')
        : experiments.find(({ id }) => id === named);
    if (!experiment) throw new Refusal('no-such-experiment', { open: open.map(({ text }) => text) });
    if (experiment.ended) throw new Refusal('experiment-over', { text: experiment.text });
    const ended = await endNow(tx, experiment, input.outcome, actor, deps.clock.now());
    return { team, experiment: ended, outcome: input.outcome };
  });
}

/** Ends it, and brings the question about it up to date. The team must be locked. */
export async function endNow(
  tx: Transaction,
  experiment: Experiment,
  how: Outcome,
  { userId: by }: Actor,
  at: Date,
): Promise<Experiment> {
  const ended = { how, by, at };
  await tx.write.experiments.end(experiment.id, ended);
  for (const sprint of await tx.read.sprintsOf(experiment.teamId)) {
    const wasTried = triedIn(sprint, [experiment]).length > 0;
    if (wasTried) await tx.write.posts.refreshSent(sprint.id, 'experiment-question');
  }
  return { ...experiment, ended };
}

async function found(
  tx: Transaction,
  actor: Actor,
  input: EndInput,
): Promise<{ readonly membership: Membership; readonly named: string | undefined }> {
  if ('place' in input) {
    return { membership: await membershipAt(tx.read, actor, input.place), named: undefined };
  }
  const teamId = await tx.read.teamIdOfExperiment(input.experimentId);
  return { membership: await membershipInTeam(tx.read, actor, teamId ?? ''), named: input.experimentId };
}

function calledSo(open: readonly Experiment[], reference: string): Experiment | undefined {
  const called = reference.replace(/\s+/g, ' ').trim();
  if (called === '') return open.length === 1 ? open[0] : undefined;
  const same = open.find(({ text }) => isSameText(text, called));
  if (same) return same;
  if (/^\d{1,3}$/.test(called)) return open[Number(called) - 1];
  const beginning = open.filter(({ text }) => text.toLowerCase().startsWith(called.toLowerCase()));
  return beginning.length === 1 ? beginning[0] : undefined;
}

/**
 * One question for each experiment of which this is the third verdict: to the facilitator who kept it, else to the first by
 * name; who is off today is passed over unless all are.
 *
 * @param closed the sprint that has just closed for the first time
 */
export async function experimentQuestions(tx: Transaction, team: Team, closed: Sprint): Promise<NewPost[]> {
  const all = await tx.read.experimentsOf(team.id);
  const open = triedIn(closed, all);
  if (open.length === 0) return [];
  const sprints = await tx.read.sprintsOf(team.id);
  const due = open.filter(
    (one) => sprints.filter((sprint) => triedIn(sprint, [one]).length > 0).length === ASKED_AFTER_SPRINTS,
  );
  const people = (await tx.read.membersOf(team.id)).filter(({ isActive }) => isActive);
  const today = todayOf(team, closed.closedAt ?? new Date(0));
  const isThere = (userId: string): boolean =>
    people.some((own) => own.userId === userId && memberShareOf(team, own, today) > 0);
  const facilitators = facilitatorsOrMembers(people);
  return due.flatMap(({ id, begunBy }) => {
    const inLine = [...facilitators].sort((a, b) => Number(b === begunBy) - Number(a === begunBy));
    const asked = inLine.find(isThere) ?? inLine[0];
    const about = { kind: 'experiment-question', sprintId: closed.id, reason: id } as const;
    return asked === undefined ? [] : [directPost(team, asked, about)];
  });
}
