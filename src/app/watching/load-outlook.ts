/**
 * The mid-sprint reading: from the projection once the team has history, before that from the plain pace. It reads
 * the load, not the people who carry it.
 */
import { chanceOfAtLeast, type LoadedSprint, loadReading } from '../../forecast/load-signal.ts';
import { type LoadSignal, type Pace, paceOf } from '../../forecast/pace.ts';
import { pacedVelocity, paceShare } from '../../forecast/paced-velocity.ts';
import { type Amount, plannedAndProjected, planShare } from '../../forecast/planned-and-projected.ts';
import type { VelocityProjection } from '../../forecast/project-velocity.ts';
import { sprintSoFar } from '../../forecast/sprint-so-far.ts';
import type { Day } from '../../sprint/calendar.ts';
import { sprintTotals } from '../../sprint/totals.ts';
import { type Reason, reason } from '../../sprint/undefined-value.ts';
import { isOpenCard, type SprintCardState } from '../cards/card-line.ts';
import { sprintDays } from '../clock/sprint-clock.ts';
import type { SprintTime } from '../clock/sprint-time.ts';
import { letOthersTurn } from '../let-others-turn.ts';
import type { Transaction } from '../ports/store.ts';
import type { Team } from '../team/team.ts';
import { byBetterModel, type Speaker, type SpokenProjection } from './better-model.ts';
import { paceAhead } from './later-parts.ts';
import { plannedAmount } from './planned-amount.ts';
import {
  LEAST_OWN_SPRINTS,
  type SprintProjection,
  sprintProjection,
  whyNoTimeAhead,
} from './sprint-projection.ts';
import type { TeamSprint } from './team-sprint.ts';

/** Against rounding. */
const SLACK = 1e-9;
/** After so many working days without an answer nothing is said of the load. */
const SILENT_DAYS = 2;

export interface ProjectionReading
  extends Pick<
      VelocityProjection,
      'medianPoints' | 'narrow' | 'wide' | 'ownSprints' | 'alikeSprints' | 'watchedSprints'
    >,
    Pick<SprintProjection, 'othersLend'> {
  /** Undefined without a commitment: then there is nothing to keep. */
  readonly signal: LoadSignal | undefined;
  /** The chance (0 to 1) that the kept share reaches its floor. Undefined without a commitment. */
  readonly keepingChance: number | undefined;
  /** The chance (0 to 1) that everything in the sprint gets finished. */
  readonly allFinishedChance: number;
  /** Whether nothing less than everything keeps the commitment, as the cards are cut: then both chances are one. */
  readonly isAllNeeded: boolean;
  /** The floor of the kept share, to which the first chance goes. */
  readonly keptFloor: number;
  readonly finishedPoints: number;
  readonly cardPoints: number;
  /** Which model speaks. Missing: there was nothing to choose from yet, and it is that of sums. */
  readonly speaker?: Speaker | undefined;
}

export type LoadOutlook =
  | { readonly from: 'projection'; readonly reading: ProjectionReading }
  /** Too few closed sprints of the team's own. */
  | {
      readonly from: 'pace';
      readonly pace: Pace;
      readonly ownSprints: number;
      readonly neededSprints: number;
    }
  | { readonly from: 'nothing'; readonly because: Reason };

/**
 * @param on the day that it is for the team
 * @param pastVersion of the workspace's past, read before in the same transaction; left out: it is read now
 */
export async function loadOutlook(
  tx: Transaction,
  running: TeamSprint,
  time: SprintTime,
  on: Day,
  pastVersion?: string,
): Promise<LoadOutlook> {
  const { team, states } = running;
  const because =
    (await whyNothingAhead(tx, running, time, on)) ??
    (sprintSoFar(states).cardPoints === 0 ? reason('no-points') : undefined);
  if (because !== undefined) return { from: 'nothing', because };
  const version = pastVersion ?? (await tx.read.pastVersion(team.workspaceId));
  const projection = await sprintProjection(tx, team, states, time, version);
  if (projection.ownSprints < LEAST_OWN_SPRINTS) {
    const { ownSprints } = projection;
    return {
      from: 'pace',
      pace: paceOf({
        ...sprintTotals(states, team.scale),
        workingDaysGone: time.gone,
        workingDaysLeft: time.evenDaysLeft,
      }),
      ownSprints,
      neededSprints: LEAST_OWN_SPRINTS,
    };
  }
  const ahead = await outcomeAhead(tx, running, projection, time, on, version);
  await letOthersTurn();
  return {
    from: 'projection',
    reading: {
      ...projectionReading(ahead.spoken, ahead.velocityWith(0), team, states),
      speaker: ahead.spoken.speaker,
    },
  };
}

/** Why nothing is told of the sprint's end, whatever is known of earlier ones. Undefined: something is. */
export async function whyNothingAhead(
  tx: Transaction,
  running: TeamSprint,
  time: SprintTime,
  on: Day,
): Promise<Reason | undefined> {
  return whyNoTimeAhead(running.sprint, time, on) ?? whyNothingSaid(tx, running, time, on);
}

/** Where nobody has answered for days, it isn't known what was done: neither pace nor history can speak of it. */
async function whyNothingSaid(
  tx: Transaction,
  { team, sprint, states }: TeamSprint,
  time: SprintTime,
  on: Day,
): Promise<Reason | undefined> {
  if (time.gone < SILENT_DAYS || states.some(({ entries }) => entries.length > 0)) return undefined;
  const days = sprintDays(team, sprint).filter((day) => day <= on);
  const prompts = await tx.read.promptsOf(days.map((day) => ({ sprintId: sprint.id, day })));
  const isAnswered = prompts.some(({ state }) => state === 'answered' || state === 'unchanged');
  return prompts.length === 0 || isAnswered ? undefined : reason('nobody-answered');
}

interface OutcomeAhead {
  readonly spoken: SpokenProjection;
  /** The points finished by the end, if the sprint held so many points more, pulled in now. */
  readonly velocityWith: (morePoints: number) => Amount;
}

/** What the sprint will have finished, as the better model has it, the team's pace and, in its first days, its planning. */
export async function outcomeAhead(
  tx: Transaction,
  running: TeamSprint,
  projection: SprintProjection,
  time: Pick<SprintTime, 'elapsedShare' | 'total' | 'memberDays'>,
  on: Day,
  pastVersion: string | undefined,
): Promise<OutcomeAhead> {
  const { team, sprint, states } = running;
  const { elapsedShare } = time;
  const spoken = await byBetterModel(tx, projection, states, {
    teamId: team.id,
    pastVersion,
    elapsedShare,
    days: sprintDays(team, sprint),
    on,
  });
  const planned = planShare(elapsedShare) > 0 ? await plannedAmount(tx, running, pastVersion) : undefined;
  await letOthersTurn();
  const pace = await paceAhead(tx, running, time, pastVersion);
  const share = paceShare(planned ? planShare(elapsedShare) : 0);
  const plannedOpenPoints = estimatesOf(states.filter(isOpenCard).filter(isCommitted));
  const distributionWith = spokenWith(spoken);
  return {
    spoken,
    velocityWith: (morePoints) => {
      const now = { ...spoken.now, cardPoints: spoken.now.cardPoints + morePoints, plannedOpenPoints };
      const paced = pacedVelocity(distributionWith(morePoints), now, pace, share);
      return plannedAndProjected(paced, planned, { finishedPoints: now.finishedPoints, elapsedShare });
    },
  };
}

/** The model of cards only knows the cards that are there: what more points would change, the model of sums says. */
function spokenWith({
  speaker,
  distribution,
  distributionWith,
  now,
}: SpokenProjection): OutcomeAhead['velocityWith'] {
  if (speaker?.model !== 'cards') return distributionWith;
  const bySums = chanceOfAtLeast(distributionWith(0), now.cardPoints);
  const factor = bySums === 0 ? 0 : chanceOfAtLeast(distribution, now.cardPoints) / bySums;
  return (morePoints) => {
    if (morePoints === 0) return distribution;
    const { cdf } = distributionWith(morePoints);
    return { cdf: (points) => 1 - Math.min(1, factor * (1 - cdf(points))) };
  };
}

/** @param velocity from which the chances come */
function projectionReading(
  projection: SprintProjection,
  velocity: Amount,
  { thresholds }: Pick<Team, 'thresholds'>,
  states: readonly SprintCardState[],
): ProjectionReading {
  const { medianPoints, narrow, wide, ownSprints, alikeSprints, watchedSprints, othersLend, now } =
    projection;
  const loaded = loadedSprint(states, thresholds.keptShareAtLeast);
  const { signal, keepingChance, allFinishedChance, isAllNeeded } = loadReading(velocity, loaded);
  const isPlanned = hasPlan(states);
  return {
    signal: isPlanned ? signal : undefined,
    keepingChance: isPlanned ? keepingChance : undefined,
    allFinishedChance,
    isAllNeeded,
    keptFloor: thresholds.keptShareAtLeast,
    medianPoints,
    narrow,
    wide,
    ownSprints,
    alikeSprints,
    watchedSprints,
    othersLend,
    finishedPoints: now.finishedPoints,
    cardPoints: now.cardPoints,
  };
}

/** A sprint's cards, seen from its floor of the kept share: dropped ones count in the commitment only. */
export function loadedSprint(states: readonly SprintCardState[], floor: number): LoadedSprint {
  const inSprint = states.filter(({ droppedOn }) => droppedOn === undefined);
  const finished = inSprint.filter((state) => state.finished);
  // 0.8 × 35 is a hair above 28, which must not ask for half a point more.
  const neededPoints = Math.ceil(floor * estimatesOf(states.filter(isCommitted)) * 2 - SLACK) / 2;
  return {
    sizes: inSprint.map(({ card }) => card.estimatePoints),
    finishedPoints: estimatesOf(finished),
    open: inSprint.filter(isOpenCard).map((state) => ({
      estimatePoints: state.card.estimatePoints,
      isCommitted: isCommitted(state),
      isBegun: state.workedPoints > 0,
    })),
    missingPoints: neededPoints - estimatesOf(finished.filter(isCommitted)),
  };
}

/** Whether there is a commitment to keep. */
export function hasPlan(states: readonly SprintCardState[]): boolean {
  return states.some((state) => isCommitted(state) && state.card.estimatePoints > 0);
}

function isCommitted({ card }: SprintCardState): boolean {
  return card.origin === 'planned';
}

function estimatesOf(states: readonly SprintCardState[]): number {
  return states.reduce((total, { card }) => total + card.estimatePoints, 0);
}
