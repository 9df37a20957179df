/**
 * A card's answers as they are exported: without who gave them. The answers of one day become one wherever the ledger
 * then says the same of the card; where it would not, they stay apart, distinguished by a running number that begins again with
 * every card and day, so that no person can be followed from one to the next.
 */
import type { Day } from '../../sprint/calendar.ts';
import type { CardChangeFact } from '../../sprint/card.ts';
import { type LedgerEntry, surpriseWithin } from '../../sprint/ledger.ts';
import { MAX_POINTS } from '../../sprint/points.ts';
import { type SprintCardState, sharedNote } from '../cards/card-line.ts';
import type { RecordedFact } from '../team/team.ts';

/** Longest note of an answer, and of answers that became one. */
export const MAX_NOTE_LENGTH = 500;

/**
 * The marks in place of members on the one or two answers that an import makes up from a card's totals. They aren't
 * exported: the totals are.
 */
export const FROM_TOTALS = ['import-totals', 'import-totals-2'] as const;

interface ExportedAnswer {
  readonly day: Day;
  /** 1 for the day's first. */
  readonly place: number;
  readonly workedPoints: number;
  readonly leftPoints: number;
  readonly surprisePoints: number;
  readonly driftPoints: number;
  readonly note: string;
}

interface ExportedChange {
  readonly day: Day;
  readonly kind: Exclude<CardChangeFact['kind'], 'undrop'>;
  /** How many of the day's exported answers come before it. */
  readonly afterAnswers: number;
  readonly reason: string;
}

type Amounts = Omit<ExportedAnswer, 'day' | 'place'>;

/** Those in force, in order. Amounts are the ledger's, so worked is given even where a member gave only what is left. */
export function exportedAnswers(state: SprintCardState): ExportedAnswer[] {
  const byDay = Map.groupBy(state.entries, ({ answer }) => answer.day);
  let surpriseSoFarPoints = 0;
  return [...byDay].flatMap(([day, entries]) => {
    const apart = entries.map(amountsOf);
    const merged = mergedAnswers(apart, surpriseSoFarPoints);
    surpriseSoFarPoints += apart.reduce((sum, { surprisePoints }) => sum + surprisePoints, 0);
    if (entries.every(isFromTotals)) return [];
    return merged.map((amounts, i) => ({ day, place: i + 1, ...amounts }));
  });
}

function isFromTotals({ answer }: LedgerEntry): boolean {
  return FROM_TOTALS.some((mark) => mark === answer.memberId);
}

function amountsOf({ answer, workedPoints, leftPoints, surprisePoints, driftPoints }: LedgerEntry): Amounts {
  const { note } = answer as RecordedFact & { kind: 'answer' };
  return { workedPoints, leftPoints, surprisePoints, driftPoints, note };
}

/** Until no two neighbours can become one: so the answers of an import come out as they went in. */
function mergedAnswers(apart: readonly Amounts[], surpriseSoFarPoints: number): Amounts[] {
  let soFar = surpriseSoFarPoints;
  for (const [i, first] of apart.entries()) {
    const second = apart[i + 1];
    const one = second && oneOf(first, second, soFar);
    if (one) return mergedAnswers([...apart.slice(0, i), one, ...apart.slice(i + 2)], surpriseSoFarPoints);
    soFar += first.surprisePoints;
  }
  return [...apart];
}

/** Both as one answer; undefined when the ledger would then split the growth into surprise and drift in another way. */
function oneOf(first: Amounts, second: Amounts, surpriseSoFarPoints: number): Amounts | undefined {
  const workedPoints = first.workedPoints + second.workedPoints;
  const surprisePoints = first.surprisePoints + second.surprisePoints;
  const driftPoints = first.driftPoints + second.driftPoints;
  const nearest = surpriseWithin(surprisePoints, surprisePoints + driftPoints, surpriseSoFarPoints);
  const note = [first.note, second.note]
    .map(sharedNote)
    .filter((text) => text !== '')
    .join('\n');
  if (workedPoints > MAX_POINTS || nearest !== surprisePoints || note.length > MAX_NOTE_LENGTH)
    return undefined;
  return { workedPoints, leftPoints: second.leftPoints, surprisePoints, driftPoints, note };
}

/**
 * Drops, reopenings and blocks in order, without drops that were taken back; where one ended a block, the card moves
 * again. Whether a reopening or a block still counts depends on whether an answer of its day came after it, and on nothing
 * else of that day, so it goes before all of them or after all.
 *
 * @param facts of this card only
 */
export function exportedChanges(
  state: SprintCardState,
  facts: readonly RecordedFact[],
  answers: readonly ExportedAnswer[],
): ExportedChange[] {
  const lastUndrop = Math.max(0, ...facts.filter(({ kind }) => kind === 'undrop').map(({ order }) => order));
  return facts
    .flatMap((fact): ExportedChange[] => {
      if (fact.kind === 'answer' || fact.kind === 'undrop') return [];
      const isTakenBack = fact.kind === 'drop' && fact.order < lastUndrop;
      if (isTakenBack && !state.blocks.some(({ until }) => until === fact.day)) return [];
      const kind = isTakenBack ? 'moving' : fact.kind;
      const isAnsweredSince = state.entries.some(
        ({ answer }) => answer.day === fact.day && answer.order > fact.order,
      );
      const ofDay = answers.filter(({ day }) => day === fact.day).length;
      const afterAnswers = kind !== 'drop' && isAnsweredSince ? 0 : ofDay;
      return [{ day: fact.day, kind, afterAnswers, reason: isTakenBack ? '' : fact.note }];
    })
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.afterAnswers - b.afterAnswers));
}
