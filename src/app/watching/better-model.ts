/**
 * Which model speaks of a running sprint: that of sums, or that of cards, whichever has been nearer in the team's own past
 * sprints. With few of them it is that of sums.
 */
import type { OpenCard } from '../../forecast/card-evenings.ts';
import { queueLengths } from '../../forecast/card-evenings.ts';
import type { EndedCards } from '../../forecast/card-projection.ts';
import {
  byCards,
  type ContestCase,
  contestCases,
  LEAST_CONTEST_SPRINTS,
  speaker,
} from '../../forecast/contest.ts';
import type { Day } from '../../sprint/calendar.ts';
import { isOpenCard, type SprintCardState } from '../cards/card-line.ts';
import { ONLY_TEACH } from '../history/own-record.ts';
import { watchedSprints } from '../history/watched-sprint.ts';
import { letOthersTurn } from '../let-others-turn.ts';
import { Memory } from '../memory.ts';
import type { Transaction } from '../ports/store.ts';
import type { SprintProjection } from './sprint-projection.ts';

/** About a year of fortnights: what a team keeps details of. */
const MOST_SPRINTS = 26;

export interface Speaker {
  readonly model: 'sums' | 'cards';
  /** Past sprints on which both were scored. */
  readonly sprints: number;
}

export interface SpokenProjection extends SprintProjection {
  /** Undefined: too few past sprints to choose; then it is the model of sums. */
  readonly speaker: Speaker | undefined;
}

/** What a team's own past says of both models at that share of the working days. */
interface Contest {
  readonly speaker: Speaker;
  /** Open cards of the past sprints, and whether they were finished. */
  readonly open: readonly EndedCards[];
}

/** Open cards of past sprints in memory: some ten megabytes. */
const MOST_OPEN_CARDS = 100_000;

/** To read the past and to score both models takes longer than all the rest of a status. */
const contests = new Memory<Contest | undefined>(
  MOST_OPEN_CARDS,
  (contest) => 1 + (contest?.open.reduce((sum, { length }) => sum + length, 0) ?? 0),
);

/** Undefined: there are too few past sprints to choose by. */
async function contestOf(
  tx: Transaction,
  teamId: string,
  elapsedShare: number,
): Promise<Contest | undefined> {
  const kept = await tx.read.watchedSprintsOf(teamId, MOST_SPRINTS);
  if (kept.length < ONLY_TEACH + LEAST_CONTEST_SPRINTS) return undefined;
  const past = watchedSprints(kept, elapsedShare);
  const cases: ContestCase[] = [];
  for (const one of contestCases(past, ONLY_TEACH)) {
    cases.push(one);
    await letOthersTurn();
  }
  if (cases.length < LEAST_CONTEST_SPRINTS) return undefined;
  const model = speaker(cases);
  return {
    speaker: { model, sprints: cases.length },
    // The model of sums asks nothing of them.
    open: model === 'sums' ? [] : past.map(({ open }) => open),
  };
}

/**
 * @param days the sprint's working days
 * @param on today
 * @param pastVersion of the workspace's past, read before in the same transaction; undefined: nothing is kept
 */
export async function byBetterModel(
  tx: Transaction,
  sums: SprintProjection,
  states: readonly SprintCardState[],
  {
    teamId,
    pastVersion,
    elapsedShare,
    days,
    on,
  }: {
    readonly teamId: string;
    readonly pastVersion: string | undefined;
    readonly elapsedShare: number;
    readonly days: readonly Day[];
    readonly on: Day;
  },
): Promise<SpokenProjection> {
  const contest = await contests.get(pastVersion && JSON.stringify([pastVersion, teamId, elapsedShare]), () =>
    contestOf(tx, teamId, elapsedShare),
  );
  if (!contest) return { ...sums, speaker: undefined };
  const spoken = { ...sums, speaker: contest.speaker };
  if (contest.speaker.model === 'sums') return spoken;
  const distribution = byCards(contest.open, sums.now, openCards(states, days, on), sums.distribution);
  return {
    ...spoken,
    distribution,
    meanPoints: distribution.meanPoints,
    medianPoints: distribution.quantile(0.5),
    narrow: { low: distribution.quantile(0.25), high: distribution.quantile(0.75) },
    wide: { low: distribution.quantile(0.1), high: distribution.quantile(0.9) },
  };
}

/** The open cards as they were on the evening before, with what was said today. */
function openCards(states: readonly SprintCardState[], days: readonly Day[], on: Day): OpenCard[] {
  const open = states.filter(isOpenCard);
  const queuePoints = queueLengths(
    open.map(({ leftPoints, card }) => ({ leftPoints, queues: card.ownerIds })),
  );
  return open.map(({ card, entries, leftPoints, workedPoints, blocks }, i) => {
    const moves = entries.filter((entry) => entry.workedPoints > 0).map(({ answer }) => answer.day);
    const moved = moves.sort().at(-1);
    return {
      estimatePoints: card.estimatePoints,
      leftPoints,
      isBegun: workedPoints > 0,
      unmovedDays: days.filter(
        (day) => (moved === undefined ? day >= card.enteredOn : day > moved) && day < on,
      ).length,
      isBlocked: blocks.length > 0 && blocks.at(-1)?.until === undefined,
      queuePoints: queuePoints[i] as number,
    };
  });
}
