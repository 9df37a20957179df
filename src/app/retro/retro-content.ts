/** What a retrospective needs of a sprint, gathered from the ledger: its days, the cards that taught something, questions. */
import {
  type Cause,
  type GoodSign,
  whenPulledIn,
  whereEstimatesWereOff,
  whereSurpriseCame,
  whyUnfinished,
} from '../../sprint/evidence.ts';
import { type TellingCard, tellingCards } from '../../sprint/telling-cards.ts';
import { type CardLine, cardLine, statesOf } from '../cards/card-line.ts';
import { eveningsOf } from '../clock/sprint-clock.ts';
import type { SprintSeen } from '../closing/leading-note.ts';
import { seenOf, type VerdictContent, verdictContent } from '../closing/verdict-content.ts';
import { type Experiment, isOpen } from '../experiments/experiment.ts';
import type { ExperimentResult } from '../experiments/experiment-results.ts';
import type { Transaction } from '../ports/store.ts';
import type { Sprint, SprintHeading, Team } from '../team/team.ts';
import { type TimelineDay, timelineOf } from './timeline.ts';

/** A fact of the ledger to which there is a question. */
export type RetroQuestion = Cause | GoodSign | { readonly code: 'no-plan' };

export interface RetroExperiment {
  readonly experiment: Experiment;
  /** Undefined when it was not tried in this sprint, and while the sprint runs. */
  readonly result: ExperimentResult | undefined;
}

export interface RetroContent extends SprintHeading {
  /** Undefined of a sprint that runs for the first time, was cancelled or was imported. */
  readonly verdict: VerdictContent | undefined;
  readonly timeline: readonly TimelineDay[];
  readonly cards: readonly CardLine[];
  readonly telling: readonly TellingCard[];
  /** Those that are being tried now, oldest first. */
  readonly experiments: readonly RetroExperiment[];
  /** The first is the one to begin with. */
  readonly questions: readonly RetroQuestion[];
}

const QUESTIONS = 2;

export async function retroContent(
  tx: Transaction,
  team: Team,
  sprint: Sprint,
  now: Date,
): Promise<RetroContent> {
  const records = await tx.read.recordsOf(sprint.id);
  const states = statesOf(records);
  const hasVerdict = sprint.state !== 'cancelled' && (await tx.read.latestResult(sprint.id)) !== undefined;
  const verdict = hasVerdict ? await verdictContent(tx, team, sprint, now) : undefined;
  const seen = await seenOf(tx.read, team, sprint, states);
  const open = (await tx.read.experimentsOf(team.id)).filter(isOpen);
  return {
    team,
    sprint,
    verdict,
    timeline: timelineOf(team, states, records.facts, await tx.read.planChangesOf(sprint.id)),
    cards: states.map(cardLine),
    telling: tellingCards(states, eveningsOf(team, sprint, now), team.scale),
    experiments: open.map((experiment) => ({
      experiment,
      result: verdict?.experiments.find((result) => result.experiment.id === experiment.id),
    })),
    questions: retroQuestions(seen, verdict),
  };
}

/**
 * Two questions, each about another side of the sprint: first what the verdict leads with, or what a kept sprint does well;
 * then what the ledger shows of unfinished work, surprise, work pulled in, and estimates, in that order.
 *
 * @param verdict undefined while the sprint runs: what is unfinished then says nothing yet
 */
export function retroQuestions(
  { states, days, scale, time }: SprintSeen,
  verdict: Pick<VerdictContent, 'leadingNoteId' | 'causes' | 'wentWell'> | undefined,
): RetroQuestion[] {
  const leading = verdict ? leadingEvidence(verdict) : [];
  const sides: readonly (readonly RetroQuestion[])[] = [
    verdict ? whyUnfinished(states, days, time) : [],
    whereSurpriseCame(states),
    // Without a commitment, nothing came before or after it was finished.
    states.some(({ card }) => card.origin === 'planned') ? whenPulledIn(states, days) : [],
    whereEstimatesWereOff(states, scale),
  ];
  const [first] = leading;
  const others = sides.filter((side) => !side.some(({ code }) => code === first?.code));
  const asked = [...leading.slice(0, 1), ...others.flatMap((side) => side.slice(0, 1))];
  // Where the ledger shows one side only, there may be more to ask about it.
  const more = [...leading, ...sides.flat()].filter((one) => !asked.some(({ code }) => code === one.code));
  return [...asked, ...more].slice(0, QUESTIONS);
}

function leadingEvidence({
  leadingNoteId,
  causes,
  wentWell,
}: Pick<VerdictContent, 'leadingNoteId' | 'causes' | 'wentWell'>): readonly RetroQuestion[] {
  if (leadingNoteId === 'no-plan') return [{ code: 'no-plan' }];
  if (leadingNoteId === 'went-well') return wentWell;
  return [...(causes.get(leadingNoteId) ?? []), ...wentWell];
}
