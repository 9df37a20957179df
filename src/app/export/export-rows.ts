/** From a team's records to the lines of the files of its sprints and of what it tries. Holds no person: no id, no name, no sum by member. */
import type { RatioId } from '../../sprint/sprint-ratios.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import { type SprintTotals, sprintTotals } from '../../sprint/totals.ts';
import { isDefined, type Ratio } from '../../sprint/undefined-value.ts';
import { type Verdict, verdictOf } from '../../sprint/verdict.ts';
import { type SprintCardState, sharedNote, statesOf } from '../cards/card-line.ts';
import { dayAt } from '../clock/local-time.ts';
import { sprintDays } from '../clock/sprint-clock.ts';
import { CSV_COLUMNS } from '../csv/csv-columns.ts';
import type { CsvRow } from '../csv/write-csv.ts';
import type { Experiment } from '../experiments/experiment.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import { type FromRecords, pastSprintOf } from '../history/past-sprint-at-closing.ts';
import { MOST_GOAL_CHARACTERS } from '../import/sprint-line.ts';
import { MAX_TITLE_LENGTH } from '../planning/card-paste.ts';
import type { Sprint, SprintRecords, Team } from '../team/team.ts';
import { exportedAnswers, exportedChanges, MAX_NOTE_LENGTH } from './exported-answers.ts';

/** One sprint with all that is known of it. */
export interface ExportedSprint {
  readonly sprint: Sprint;
  readonly records: SprintRecords;
  /** What it left behind; undefined while it runs, and when it was cancelled. */
  readonly past: PastSprint | undefined;
  /** As it was posted; undefined when nothing was. */
  readonly postedVerdict: Verdict | undefined;
  /** The numbers as they were posted: all there is of a cancelled sprint once it is reduced to its totals. */
  readonly posted?: SprintSummary | undefined;
  /** To the team's baseline sprint; undefined when there is none. */
  readonly velocityGrowth: Ratio | undefined;
}

interface ExportRows {
  readonly sprints: CsvRow<'sprints'>[];
  readonly cards: CsvRow<'cards'>[];
  readonly answers: CsvRow<'answers'>[];
  readonly changes: CsvRow<'changes'>[];
}

/** What the column `change` says. */
const CHANGE_WORDS = { drop: 'dropped', reopen: 'reopened', blocked: 'blocked', moving: 'moving' } as const;

const STATE_WORDS = { open: 'running', closed: 'closed', cancelled: 'cancelled' } as const;

/** @param all in the order in which they are written */
export function exportRows(team: Team, all: readonly ExportedSprint[]): ExportRows {
  const ofSprints = all.map((exported) => sprintRows(team, exported));
  return {
    sprints: ofSprints.flatMap(({ sprints }) => sprints),
    cards: ofSprints.flatMap(({ cards }) => cards),
    answers: ofSprints.flatMap(({ answers }) => answers),
    changes: ofSprints.flatMap(({ changes }) => changes),
  };
}

function sprintRows(team: Team, exported: ExportedSprint): ExportRows {
  const { sprint, records } = exported;
  const states = statesOf(records);
  const factsOfCard = Map.groupBy(records.facts, ({ cardId }) => cardId);
  const reference = { sprint: withoutMentions(sprint.name), 'sprint first day': sprint.startsOn };
  const ofCards = states.map((state) => {
    const answers = exportedAnswers(state);
    const changes = exportedChanges(state, factsOfCard.get(state.card.id) ?? [], answers);
    const card = { ...reference, card: state.card.number };
    return {
      card: { ...card, ...cardCells(state) },
      answers: answers.map(
        (answer): CsvRow<'answers'> => ({
          ...card,
          day: answer.day,
          answer: answer.place,
          worked: answer.workedPoints,
          left: answer.leftPoints,
          surprise: answer.surprisePoints,
          drift: answer.driftPoints,
          note: withoutMentions(sharedNote(answer.note), MAX_NOTE_LENGTH),
        }),
      ),
      changes: changes.map(
        (change): CsvRow<'changes'> => ({
          ...card,
          day: change.day,
          change: CHANGE_WORDS[change.kind],
          'after answer': change.afterAnswers,
          reason: withoutMentions(change.reason, MAX_NOTE_LENGTH),
        }),
      ),
    };
  });
  return {
    sprints: [sprintRow(team, exported, states)],
    cards: ofCards.map(({ card }) => card),
    answers: ofCards.flatMap(({ answers }) => answers),
    changes: ofCards.flatMap(({ changes }) => changes),
  };
}

function cardCells(state: SprintCardState): CsvRow<'cards'> {
  const { card, droppedOn, finished } = state;
  return {
    key: card.key,
    title: withoutMentions(card.title, MAX_TITLE_LENGTH),
    link: card.link,
    estimate: card.estimatePoints,
    'came in': card.origin === 'planned' ? 'planned' : 'pulled in',
    'came in on': card.enteredOn,
    surprise: state.surprisePoints,
    drift: state.driftPoints,
    worked: state.workedPoints,
    left: state.leftPoints,
    state: droppedOn !== undefined ? 'dropped' : finished ? 'finished' : 'open',
    'finished on': state.finishedOn,
    'dropped on': droppedOn,
  };
}

function sprintRow(
  team: Team,
  { sprint, records, past, postedVerdict, posted, velocityGrowth }: ExportedSprint,
  states: readonly SprintCardState[],
): CsvRow<'sprints'> {
  const days = sprintDays(team, sprint);
  const known = past ?? {
    ...(states.length === 0 && posted ? fromPosted(posted) : pastSprintOf(team, days, records)),
    memberDays: undefined,
    recordedValue: undefined,
  };
  const totals: SprintTotals | undefined =
    states.length > 0 ? sprintTotals(states, team.scale) : posted?.totals;
  const { pulledInPoints, surprisePoints } = known;
  const hasLoad = pulledInPoints !== undefined && surprisePoints !== undefined;
  return {
    name: withoutMentions(sprint.name),
    'first day': sprint.startsOn,
    'last day': sprint.endsOn,
    commitment: known.commitmentPoints,
    'pulled in': pulledInPoints,
    surprise: surprisePoints,
    finished: known.velocityPoints,
    'points worked': known.workedPoints,
    'finished of commitment': known.committedFinishedPoints,
    drift: totals?.driftPoints,
    state: STATE_WORDS[sprint.state],
    'closed on': sprint.closedAt && dayAt(sprint.closedAt, team.timeZone),
    goal: withoutMentions(sprint.goal, MOST_GOAL_CHARACTERS),
    'member days': known.memberDays,
    value: known.recordedValue,
    'daily answers': known.trace.length > 0 ? 'yes' : 'no',
    'working days': days.length,
    load: hasLoad ? known.commitmentPoints + pulledInPoints + surprisePoints : undefined,
    verdict: postedVerdict ?? (past && verdictNow(team, past)),
    ...ratioCells({ ...known.ratios, velocityGrowth }),
  };
}

function fromPosted({ totals, ratios }: SprintSummary): FromRecords {
  return { ...totals, ratios, trace: [], cards: [] };
}

/** By the team's rules of today; undefined when what it would be judged by isn't known. */
function verdictNow(
  rules: Team,
  { commitmentPoints, ratios }: Pick<PastSprint, 'commitmentPoints' | 'ratios'>,
): Verdict | undefined {
  const isKnown = isDefined(ratios.keptShare) && isDefined(ratios.surpriseRatio);
  if (commitmentPoints > 0 && !isKnown) return undefined;
  return verdictOf(ratios, rules).verdict;
}

function ratioCells(ratios: { readonly [Id in RatioId]: Ratio | undefined }): CsvRow<'sprints'> {
  const cells = CSV_COLUMNS.sprints.flatMap(({ name, ratio }) => {
    const value = ratio && ratios[ratio];
    return value !== undefined && isDefined(value) ? [[name, value]] : [];
  });
  return Object.fromEntries(cells);
}

/**
 * The platform writes a person as `<@ID>`: an id, which says who it is.
 *
 * @param mostCharacters that an import takes
 */
export function withoutMentions(text: string, mostCharacters?: number): string {
  return text.replace(/<@[A-Z0-9]+(?:\|[^>]*)?>/g, 'somebody').slice(0, mostCharacters);
}

/** A name with a number behind it, cut where it would be too long. */
export function numberedName(name: string, number: number, mostCharacters: number): string {
  const ending = ` (${number})`;
  return `${name.slice(0, mostCharacters - ending.length).trimEnd()}${ending}`;
}

/** What a team tries and tried, in the order in which it began. */
export function experimentRows(
  { timeZone }: Pick<Team, 'timeZone'>,
  experiments: readonly Experiment[],
  sprints: readonly Sprint[],
): CsvRow<'experiments'>[] {
  return experiments.map(({ text, ratio, direction, begunAt, afterSprintId, ended }) => {
    const after = sprints.find(({ id }) => id === afterSprintId);
    return {
      experiment: withoutMentions(text),
      ratio: CSV_COLUMNS.sprints.find((column) => column.ratio === ratio)?.name,
      direction,
      'begun on': dayAt(begunAt, timeZone),
      'after sprint': after && withoutMentions(after.name),
      'after sprint first day': after?.startsOn,
      outcome: ended?.how,
      'ended on': ended && dayAt(ended.at, timeZone),
    };
  });
}
