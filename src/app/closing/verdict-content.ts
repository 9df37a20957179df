/** The verdict as it is posted, from the stored numbers. */
import type { Day } from '../../sprint/calendar.ts';
import type { CoachingNote, CoachingNoteId } from '../../sprint/coaching-note.ts';
import { type Cause, type GoodSign, whatWentWell } from '../../sprint/evidence.ts';
import type { Scale } from '../../sprint/scale.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import type { Thresholds } from '../../sprint/thresholds.ts';
import { type CardLine, cardLine, type SprintCardState, sharedNote, statesOf } from '../cards/card-line.ts';
import { lastDayOf, reopenUntil, sprintDays } from '../clock/sprint-clock.ts';
import { type ExperimentResult, experimentResults } from '../experiments/experiment-results.ts';
import { workTimeOf } from '../history/past-sprint-at-closing.ts';
import { letOthersTurn } from '../let-others-turn.ts';
import { type ListedPlanChange, listedPlanChanges } from '../planning/listed-plan-changes.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import type { GoalOutcome, RecordedFact, Sprint, SprintHeading, SprintRecords, Team } from '../team/team.ts';
import {
  causesOf,
  type LeadingNoteId,
  leadingNote,
  type SprintSeen,
  supportedNotes,
} from './leading-note.ts';
import { type NotesHistory, notesHistory } from './note-history.ts';
import { overtakenIn } from './overtaken-cards.ts';

/** Words that a member gave for a card. */
export interface SaidOfCard {
  readonly cardId: string;
  readonly day: Day;
  readonly about: 'growth' | 'block';
  readonly note: string;
}

interface NextSprint extends Pick<Sprint, 'name' | 'startsOn'> {
  /** What this sprint has finished after all, though it was planned there with points. */
  readonly overtaken: readonly CardLine[];
}

export interface VerdictContent extends SprintHeading {
  readonly summary: SprintSummary;
  /** Those of the summary that the team's history supports. */
  readonly notes: readonly CoachingNote[];
  readonly leadingNoteId: LeadingNoteId;
  /** What the ledger shows about each note. */
  readonly causes: ReadonlyMap<CoachingNoteId, readonly Cause[]>;
  /** What the team's history says about the notes. */
  readonly history: NotesHistory;
  /** Of a kept sprint; the most telling first. */
  readonly wentWell: readonly GoodSign[];
  readonly thresholds: Thresholds;
  readonly scale: Scale;
  readonly cards: readonly CardLine[];
  /** Reasons given for dropped cards, by card id. */
  readonly dropReasons: ReadonlyMap<string, string>;
  /** What was said of cards that grew or were blocked, by card and day; without who said it. */
  readonly said: readonly SaidOfCard[];
  /** What was corrected in the plan, in order. */
  readonly planChanges: readonly ListedPlanChange[];
  /** Of what was being tried, in the order in which it began. */
  readonly experiments: readonly ExperimentResult[];
  /** Undefined while nobody has said whether the goal was met. */
  readonly goalOutcome: GoalOutcome | undefined;
  readonly cancelled: boolean;
  readonly reopened: 'never' | 'open' | 'closed-again';
  /** Until when the facilitator may reopen it; undefined when that is past or impossible. */
  readonly reopenUntil: Date | undefined;
  /** Where it was closed before its time: the day, and no longer the last one that was planned. */
  readonly closedEarlyOn: Day | undefined;
  /** The sprint that follows, where it is planned already. */
  readonly nextSprint: NextSprint | undefined;
  /** How many versions of the numbers have been posted. */
  readonly version: number;
}

/** @throws when the sprint has no result; only finished sprints and reopened ones have one. */
export async function verdictContent(
  tx: Transaction,
  team: Team,
  sprint: Sprint,
  now: Date,
): Promise<VerdictContent> {
  const result = await tx.read.latestResult(sprint.id);
  if (!result) throw new Error(`sprint ${sprint.id} has no result to post`);
  const records = await tx.read.recordsOf(sprint.id);
  const drops = records.facts.filter(({ kind }) => kind === 'drop');
  const until = reopenUntil(team, sprint);
  const { summary } = result;
  const history = await notesHistory(tx, team, sprint, summary);
  const notes = supportedNotes(summary, history);
  const states = statesOf(records);
  await letOthersTurn();
  const days = sprintDays(team, sprint);
  const lastDay = lastDayOf(team, sprint, states);
  const seen = await seenOf(tx.read, team, sprint, states);
  return {
    team,
    sprint,
    summary,
    notes,
    history,
    leadingNoteId: leadingNote(summary.verdict, notes, history),
    causes: new Map(notes.map(({ id }) => [id, causesOf(id, seen)])),
    wentWell: summary.verdict.verdict === 'kept' ? whatWentWell(states, days) : [],
    thresholds: team.thresholds,
    scale: team.scale,
    cards: states.map(cardLine),
    dropReasons: new Map(drops.map(({ cardId, note }) => [cardId, note])),
    said: saidOfCards(states, records.facts),
    planChanges: await listedPlanChanges(tx.read, sprint.id, records),
    experiments: await experimentResults(tx, team, sprint, summary),
    goalOutcome: sprint.goalOutcome,
    cancelled: sprint.state === 'cancelled',
    reopened: sprint.reopenedAt === undefined ? 'never' : sprint.state === 'open' ? 'open' : 'closed-again',
    reopenUntil: sprint.state === 'closed' && until && until > now ? until : undefined,
    closedEarlyOn: lastDay < sprint.endsOn ? lastDay : undefined,
    nextSprint: await sprintAfter(tx.read, sprint, records),
    version: result.version,
  };
}

async function sprintAfter(
  read: Reading,
  { teamId, startsOn }: Sprint,
  records: SprintRecords,
): Promise<NextSprint | undefined> {
  const later = (await read.openSprintsOf(teamId)).filter((sprint) => sprint.startsOn > startsOn);
  const next = later.toSorted((a, b) => (a.startsOn < b.startsOn ? -1 : 1))[0];
  if (!next) return undefined;
  const overtaken = overtakenIn(next, statesOf(await read.recordsOf(next.id)), records);
  return { name: next.name, startsOn: next.startsOn, overtaken: overtaken.map(cardLine) };
}

/** What the ledger of a sprint that is over shows, up to the day on which it was closed. */
export async function seenOf(
  read: Reading,
  team: Team,
  sprint: Sprint,
  states: readonly SprintCardState[],
): Promise<SprintSeen> {
  const lastDay = lastDayOf(team, sprint, states);
  const days = sprintDays(team, sprint).filter((day) => day <= lastDay);
  return { states, days, scale: team.scale, time: await workTimeOf(read, team, sprint, days) };
}

/** Without private notes. */
export function saidOfCards(
  states: readonly SprintCardState[],
  facts: readonly RecordedFact[],
): SaidOfCard[] {
  return states.flatMap(({ card, entries }) => {
    const grown = entries
      .filter(({ growthPoints }) => growthPoints !== 0)
      .map(({ answer }) => ({ about: 'growth' as const, fact: answer as RecordedFact }));
    const blocked = facts
      .filter(({ kind, cardId }) => kind === 'blocked' && cardId === card.id)
      .map((fact) => ({ about: 'block' as const, fact }));
    return [...grown, ...blocked]
      .map(({ about, fact }) => ({ cardId: card.id, day: fact.day, about, note: sharedNote(fact.note) }))
      .filter(({ note }) => note !== '')
      .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
  });
}
