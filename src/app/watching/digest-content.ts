/** A sprint on a morning, for a facilitator: cards and sums, never people. */
import type { LoadSignal } from '../../forecast/pace.ts';
import { type Day, dayPlus } from '../../sprint/calendar.ts';
import { type CardLine, cardLine, isOpenCard, type SprintCardState, statesOf } from '../cards/card-line.ts';
import { instantOf } from '../clock/local-time.ts';
import { sprintDays } from '../clock/sprint-clock.ts';
import { sprintTime } from '../clock/sprint-time.ts';
import type { Transaction } from '../ports/store.ts';
import type { Member, Sprint, SprintRecords, Team } from '../team/team.ts';
import { loadOutlook } from './load-outlook.ts';
import { answerCounts, type StatusContent, statusContent } from './status-content.ts';
import { signalOf } from './watch.ts';

/** Working days without a change after which a card is named. */
const STILL_DAYS = 3;

export interface DigestContent {
  readonly status: StatusContent;
  readonly surpriseCeiling: number;
  /** As of the evening of the working day before; undefined: there was none. */
  readonly signalBefore: LoadSignal | undefined;
  /** How many of those who were asked on the working day before answered; undefined: nobody was asked. */
  readonly answersBefore:
    | { readonly day: Day; readonly asked: number; readonly answered: number }
    | undefined;
  /** Open cards that have not moved for some working days, the longest first. */
  readonly still: readonly { readonly card: CardLine; readonly days: number }[];
}

interface WatchedSprint {
  readonly team: Team;
  readonly members: readonly Member[];
  readonly sprint: Sprint;
  readonly records: SprintRecords;
}

export async function digestContent(
  tx: Transaction,
  watched: WatchedSprint,
  on: Day,
): Promise<DigestContent> {
  const { team, members, sprint, records } = watched;
  const days = sprintDays(team, sprint).filter((day) => day < on);
  const evening = days.at(-1);
  return {
    status: await statusContent(tx, { team, members: [...members] }, sprint, on),
    surpriseCeiling: team.thresholds.surpriseRatioAtMost,
    signalBefore: await signalOnEvening(tx, watched, evening, on),
    answersBefore: evening === undefined ? undefined : await answersOn(tx, watched, evening),
    still: stillCards(statesOf(records), days),
  };
}

async function answersOn(
  tx: Transaction,
  { team, members, sprint, records }: WatchedSprint,
  day: Day,
): Promise<DigestContent['answersBefore']> {
  const prompts = await tx.read.promptsOf([{ sprintId: sprint.id, day }]);
  const counts = answerCounts(team, sprint, members, { states: statesOf(records), prompts, on: day });
  return counts.asked === 0 ? undefined : { day, ...counts };
}

async function signalOnEvening(
  tx: Transaction,
  { team, members, sprint, records: { cards, facts } }: WatchedSprint,
  evening: Day | undefined,
  next: Day,
): Promise<LoadSignal | undefined> {
  if (evening === undefined) return undefined;
  const midnight = instantOf(next, '00:00', team.timeZone);
  const states = statesOf({
    cards: cards.filter(({ enteredOn }) => enteredOn < next),
    facts: facts.filter(({ recordedAt }) => recordedAt < midnight),
  });
  const time = sprintTime(team, sprint, members, evening, true);
  return signalOf(await loadOutlook(tx, { team, members, sprint, states }, time, evening));
}

/** @param days the sprint's working days that are over */
function stillCards(states: readonly SprintCardState[], days: readonly Day[]): DigestContent['still'] {
  return states
    .filter(isOpenCard)
    .map((state) => ({ card: cardLine(state), days: days.filter((day) => day > lastMove(state)).length }))
    .filter((still) => still.days >= STILL_DAYS)
    .sort((a, b) => b.days - a.days);
}

/** The last day on which something was worked on the card, or its size changed; the day before it entered, if none. */
function lastMove({ card, entries }: SprintCardState): Day {
  const moved = entries.filter(({ workedPoints, growthPoints }) => workedPoints > 0 || growthPoints !== 0);
  const last = moved
    .map(({ answer }) => answer.day)
    .sort()
    .at(-1);
  return last ?? dayPlus(card.enteredOn, -1);
}
