/**
 * What the team's history says about the notes of a finished sprint: whether a crossed line is a signal or ordinary
 * variation, how often it was crossed lately, and how much to commit to next. It looks at sprints up to this one only,
 * so that a post that is brought up to date later says the same.
 */
import { type CommitmentRange, commitmentRange } from '../../forecast/commitment-range.ts';
import { type ControlChart, controlChart } from '../../forecast/control-chart.ts';
import { answerRate } from '../../sprint/answer-rate.ts';
import type { CoachingNoteId } from '../../sprint/coaching-note.ts';
import { ANSWER_RATE_AT_LEAST } from '../../sprint/habit-notes.ts';
import { RATIOS } from '../../sprint/sprint-ratios.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import { crossingOf } from '../../sprint/threshold-notes.ts';
import { isDefined, type Ratio, type UndefinedValue } from '../../sprint/undefined-value.ts';
import { comingSprint, comingTime } from '../advice/range-advice.ts';
import { baselineFor } from '../history/baseline-of.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import { pastSprintAtClosing } from '../history/past-sprint-at-closing.ts';
import { ratioValues } from '../history/ratio-values.ts';
import { commitmentPast, pastSprints } from '../history/team-history.ts';
import { letOthersTurn } from '../let-others-turn.ts';
import { nextSprintDays } from '../planning/sprint-rhythm.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import type { Sprint, Team } from '../team/team.ts';

/** How many sprints "lately" means, this one included. */
export const LATELY_SPRINTS = 8;

/** Notes on over- and under-commitment: they say how much to try next. */
export const ASKS_FOR_A_RANGE: readonly CoachingNoteId[] = ['kept-share-low', 'pull-in-ratio-high'];

export interface NoteHistory {
  readonly id: CoachingNoteId;
  /** Of the note's number, this sprint the last value; undefined where it isn't known yet. */
  readonly chart: ControlChart | UndefinedValue;
  /** In how many of the latest sprints that have the number the line was crossed, this one included. */
  readonly crossed: { readonly sprints: number; readonly of: number };
}

export interface NotesHistory {
  /** One for each note that is about a number. */
  readonly notes: readonly NoteHistory[];
  /** The range to try next; undefined when no note asks for it. */
  readonly rangeToTry: CommitmentRange | UndefinedValue | undefined;
}

/** @param summary the sprint's numbers as they are posted */
export async function notesHistory(
  tx: Transaction,
  team: Team,
  sprint: Sprint,
  summary: SprintSummary,
): Promise<NotesHistory> {
  if (summary.notes.length === 0 || sprint.state === 'cancelled') return { notes: [], rangeToTry: undefined };
  const known = await pastSprints(tx, team);
  const before = known.filter(({ sprintId, endsOn }) => sprintId !== sprint.id && endsOn <= sprint.endsOn);
  const found = await baselineFor(tx.read, team, sprint.id);
  const baseline = found === 'not-yet' ? undefined : found;
  const notes: NoteHistory[] = [];
  for (const { id } of summary.notes) {
    const crossing = crossingOf(id, team.thresholds);
    if (crossing) {
      const values = ratioValues(crossing.ratio, before, baseline?.velocityPoints);
      const all = [...values, summary.ratios[crossing.ratio]];
      notes.push({
        id,
        chart: controlChart(all, RATIOS[crossing.ratio].possible),
        crossed: crossedLately(values, crossing.isCrossedBy),
      });
    } else if (id === 'answer-rate-low' && summary.answers) {
      const values = await answerRatesBefore(tx.read, sprint);
      notes.push({
        id,
        chart: controlChart([...values, answerRate(summary.answers)], { low: 0, high: 1 }),
        crossed: crossedLately(values, (rate) => rate < ANSWER_RATE_AT_LEAST),
      });
    }
  }
  const asks = summary.notes.some(({ id }) => ASKS_FOR_A_RANGE.includes(id));
  const stored = known.find(({ sprintId }) => sprintId === sprint.id);
  if (!asks) return { notes, rangeToTry: undefined };
  await letOthersTurn();
  const rangeToTry = await rangeAfter(tx.read, team, sprint, summary, before, stored);
  await letOthersTurn();
  return { notes, rangeToTry };
}

/** This sprint crossed the line, else there would be no note; the line may have been moved since. */
function crossedLately(
  before: readonly Ratio[],
  isCrossedBy: (value: number) => boolean,
): NoteHistory['crossed'] {
  const latest = before.filter(isDefined).slice(1 - LATELY_SPRINTS);
  return { sprints: latest.filter(isCrossedBy).length + 1, of: latest.length + 1 };
}

/** Of the sprints in which prompts were counted. */
async function answerRatesBefore(read: Reading, sprint: Sprint): Promise<Ratio[]> {
  const closed = await read.closedSprintsOf(sprint.teamId);
  return closed
    .filter((other) => other.sprint.id !== sprint.id && other.sprint.endsOn <= sprint.endsOn)
    .flatMap(({ result }) => (result.summary.answers ? [answerRate(result.summary.answers)] : []));
}

/** For a sprint as long as this one, from the next working day on, with the members of today and their days off. */
async function rangeAfter(
  read: Reading,
  team: Team,
  sprint: Sprint,
  { totals }: SprintSummary,
  before: readonly PastSprint[],
  stored: PastSprint | undefined,
): Promise<CommitmentRange | UndefinedValue> {
  const time = stored ?? (await pastSprintAtClosing(read, team, sprint, sprint.closedAt ?? new Date(0)));
  const next = nextSprintDays(team, { open: [], lastFinished: sprint }, sprint.endsOn);
  const coming = comingSprint(team, await read.membersOf(team.id), next, undefined);
  const past = [
    ...commitmentPast(before),
    // A reopened sprint's record may be ahead of the numbers that are posted.
    { ...totals, workingDays: time.workingDays, memberDays: time.memberDays },
  ];
  await letOthersTurn();
  return commitmentRange(past, comingTime(coming), team.thresholds);
}
