/** Records what a member says about their day: numbers, "nothing changed", or "away". */
import { randomUUID } from 'node:crypto';
import { isBlockedSince } from '../../sprint/blocks.ts';
import { growthOf, placeInLedger, whyNotAnswer } from '../../sprint/check-answer.ts';
import { answersInForce, cardState } from '../../sprint/ledger.ts';
import { type CardLine, cardLine, cardName, statesOf } from '../cards/card-line.ts';
import { tellOfBlocks } from '../cards/tell-of-blocks.ts';
import { overtakenCards } from '../closing/overtaken-cards.ts';
import type { InputProblem } from '../input-problem.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import { Refusal, refuseIfAny } from '../refusal.ts';
import {
  type Actor,
  type NewFact,
  type RecordedFact,
  type Sprint,
  type SprintCard,
  type SprintHeading,
  type SprintRecords,
  worksIn,
} from '../team/team.ts';
import {
  type AnsweredDay,
  answeredDay,
  factsAbout,
  hasAnswered,
  meetPrompt,
  takeableStates,
} from './answered-day.ts';
import type { PromptContent } from './prompt-content.ts';
import { inputProblem, type ReadAnswer, readAnswers, type TypedAnswer } from './read-answers.ts';
import { blockFacts, readBlocks } from './said-blocks.ts';

export interface GrownCard {
  readonly card: CardLine;
  readonly growthPoints: number;
  /** What another owner said about the same day before: the number may be older than theirs. */
  readonly saidByOther?:
    | { readonly userId: string; readonly leftPoints: number; readonly at: Date }
    | undefined;
}

export type AnswerOutcome =
  | { readonly kind: 'recorded'; readonly prompt: PromptContent }
  | {
      readonly kind: 'growth-to-explain';
      readonly heading: SprintHeading;
      readonly day: string;
      readonly answers: readonly TypedAnswer[];
      readonly grown: readonly GrownCard[];
      /** The order of the latest answer about the cards: the question is over once there is a later one. */
      readonly asOf?: number;
    };

function newFact(
  deps: AppDependencies,
  actor: Actor,
  day: string,
  { card, typed, input }: ReadAnswer,
  records: SprintRecords,
): NewFact {
  const corrects = placeInLedger(card, factsAbout(records, card), actor.userId, day).corrects as
    | RecordedFact
    | undefined;
  return {
    kind: 'answer',
    id: randomUUID(),
    cardId: card.id,
    memberId: actor.userId,
    day,
    workedPoints: input.workedPoints,
    leftPoints: input.leftPoints,
    surprisePoints: input.surprisePoints ?? 0,
    note: typed.note.trim(),
    recordedAt: deps.clock.now(),
    supersedesId: corrects?.id,
  };
}

/**
 * Whether the answer says what is in force already; recording it again would be noise. The form shows what
 * was answered before, so an answer that nobody touched comes back with it, without its surprise work when
 * a co-owner's correction has since taken the growth away: what was said about it must not get lost.
 */
function saysNothingNew(
  records: SprintRecords,
  actor: Actor,
  day: string,
  { card, typed, input }: ReadAnswer,
): boolean {
  const facts = factsAbout(records, card);
  const context = placeInLedger(card, facts, actor.userId, day);
  const given = context.corrects as (RecordedFact & { kind: 'answer' }) | undefined;
  const isUnexplained =
    input.surprisePoints === undefined && growthOf(input, context.previousLeftPoints) === 0;
  return (
    given !== undefined &&
    !isBlockedSince(cardState(card, facts), given) &&
    given.leftPoints === input.leftPoints &&
    given.workedPoints === input.workedPoints &&
    (isUnexplained || given.surprisePoints === (input.surprisePoints ?? 0)) &&
    given.note === typed.note.trim()
  );
}

/**
 * Records a member's answers for a day: all of them or none. When a card grew and nobody said why, nothing
 * is recorded and the outcome asks.
 *
 * @throws Refusal `bad-input` (fields `left:`, `worked:`, `surprise:`, `note:` + card id), `sprint-changed`,
 *   `answered-since`, and the refusals of finding team, sprint and day.
 */
export async function recordAnswers(
  deps: AppDependencies,
  actor: Actor,
  input: GivenAnswers,
): Promise<AnswerOutcome> {
  return deps.store.transaction((tx) => recordAnswersIn(deps, tx, actor, input));
}

export interface GivenAnswers {
  readonly sprintId: string;
  readonly day: string;
  readonly answers: readonly TypedAnswer[];
  readonly takeCardIds?: readonly string[];
  /** For the answer to a question about growth: the `asOf` of the question. */
  readonly asOf?: number | undefined;
}

/** The same as part of a transaction. */
export async function recordAnswersIn(
  deps: AppDependencies,
  tx: Transaction,
  actor: Actor,
  input: GivenAnswers,
): Promise<AnswerOutcome> {
  const named = input.answers.map(({ cardId }) => cardId);
  const context = await answeredDay(deps, tx, actor, input.sprintId, input.day, named);
  refuseIfAnsweredSince(context.records, input.answers, input.asOf);
  return recordChecked(deps, tx, actor, context, input.answers, input.takeCardIds ?? []);
}

/** A button that was made before the latest answer would take that answer back. */
function refuseIfAnsweredSince(
  records: SprintRecords,
  answers: readonly TypedAnswer[],
  asOf: number | undefined,
): void {
  if (asOf === undefined) return;
  const later = answersAbout(records, answers).find(({ order }) => order > asOf);
  const card = later && records.cards.find(({ id }) => id === later.cardId);
  if (card) throw new Refusal('answered-since', { card: cardName(card) });
}

function answersAbout({ facts }: SprintRecords, answers: readonly TypedAnswer[]): RecordedFact[] {
  const cardIds = new Set(answers.map(({ cardId }) => cardId));
  return facts.filter(({ kind, cardId }) => kind === 'answer' && cardIds.has(cardId));
}

/** What another owner said last about the card and the day, unless the member's own answer is corrected. */
function saidByOther(
  card: SprintCard,
  facts: readonly RecordedFact[],
  userId: string,
  day: string,
): GrownCard['saidByOther'] {
  if (placeInLedger(card, facts, userId, day).corrects) return undefined;
  const last = answersInForce(facts).at(-1) as (RecordedFact & { kind: 'answer' }) | undefined;
  if (!last || last.memberId === userId || last.day !== day) return undefined;
  return { userId: last.memberId, leftPoints: last.leftPoints, at: last.recordedAt };
}

/** What the sprint before finished once it was planned here counts there: a bare "done" would count it again. */
async function countedBefore(
  read: Reading,
  sprint: Sprint,
  records: SprintRecords,
  answers: readonly ReadAnswer[],
): Promise<InputProblem[]> {
  const bare = answers.filter(
    ({ card, input }) =>
      input.leftPoints === 0 &&
      input.workedPoints === undefined &&
      factsAbout(records, card).every(({ kind }) => kind !== 'answer'),
  );
  if (bare.length === 0) return [];
  const { cardIds, finishedIn } = await overtakenCards(read, sprint, statesOf(records));
  return bare
    .filter(({ card }) => cardIds.has(card.id))
    .map(({ card }) => ({
      field: `left:${card.id}`,
      problem: {
        code: 'counted-before',
        card: cardName(card),
        number: String(card.number),
        sprint: finishedIn,
      },
    }));
}

async function recordChecked(
  deps: AppDependencies,
  tx: Transaction,
  actor: Actor,
  context: AnsweredDay,
  answers: readonly TypedAnswer[],
  takeCardIds: readonly string[],
): Promise<AnswerOutcome> {
  const { team, sprint, day, records } = context;
  // A card about which nothing was typed is not answered for; a note alone asks for its number, a block doesn't.
  const isNumbered = ({ left, worked, surprise, note }: TypedAnswer) =>
    `${left}${worked}${surprise}${note}`.trim() !== '';
  const given = answers.filter((answer) => isNumbered(answer) || (answer.blocked ?? '').trim() !== '');
  const { read, problems } = readAnswers(records, given.filter(isNumbered));
  const said = readBlocks(records, actor, day, given);
  problems.push(...said.problems);
  const grown: GrownCard[] = [];
  const fresh = read.filter((answer) => !saysNothingNew(records, actor, day, answer));
  for (const answer of read) {
    const { card, input } = answer;
    if (card.enteredOn > day) {
      problems.push({
        field: `left:${card.id}`,
        problem: { code: 'card-came-later', card: cardName(card), day: card.enteredOn },
      });
      continue;
    }
    const facts = factsAbout(records, card);
    const problem = whyNotAnswer(card, facts, actor.userId, day, input);
    if (!problem) continue;
    // What was said before a co-owner's correction stays, though it could not be said any more.
    if (problem.code === 'surprise-out-of-range' && !fresh.includes(answer)) continue;
    if (problem.code === 'growth-unexplained') {
      const state = statesOf({ cards: [card], facts })[0];
      const { growthPoints } = problem;
      if (state) {
        const other = saidByOther(card, facts, actor.userId, day);
        grown.push({ card: cardLine(state), growthPoints, saidByOther: other });
      }
    } else {
      problems.push(inputProblem(problem, card));
    }
  }
  problems.push(...(await countedBefore(tx.read, sprint, records, fresh)));
  refuseIfAny(problems);
  if (grown.length > 0) {
    const asOf = Math.max(0, ...answersAbout(records, given).map(({ order }) => order));
    return { kind: 'growth-to-explain', heading: { team, sprint }, day, answers: given, grown, asOf };
  }
  const takeable = worksIn(context.member, sprint.id) ? takeableStates(records) : [];
  const taken = takeable.filter(({ card }) => takeCardIds.includes(card.id));
  const by = { userId: actor.userId, day, at: deps.clock.now() };
  // Without any, to write nothing would be a way to the database by itself, for the request's key.
  if (taken.length > 0)
    await tx.write.cards.changeOwners(taken.map(({ card }) => ({ card, ownerIds: [actor.userId], by })));
  const takenIds = new Set(taken.map(({ card }) => card.id));
  const cards = records.cards.map((card) =>
    takenIds.has(card.id) ? { ...card, ownerIds: [actor.userId] } : card,
  );
  const isAnswered = read.length > 0 || said.blocks.length > 0 || hasAnswered(records, actor.userId, day);
  const state = isAnswered ? 'answered' : 'unchanged';
  const freshIds = new Set(fresh.map(({ card }) => card.id));
  const facts = [
    ...fresh.map((answer) => newFact(deps, actor, day, answer, records)),
    ...blockFacts(records, actor, by, said.blocks, freshIds),
  ];
  const nowBlocked = new Set(said.blocks.map(({ card }) => card.id));
  const before = statesOf(records).filter(({ card }) => nowBlocked.has(card.id));
  await tellOfBlocks(tx, context, actor, before);
  const answered = { ...context, records: { ...records, cards } };
  const prompt = await meetPrompt(deps, tx, actor, answered, state, facts);
  return { kind: 'recorded', prompt };
}

/** "Nothing changed": the day's prompt is met, the ledger stays as it is. */
export async function recordUnchanged(
  deps: AppDependencies,
  actor: Actor,
  input: { readonly sprintId: string; readonly day: string },
): Promise<PromptContent> {
  return deps.store.transaction(async (tx) => {
    const context = await answeredDay(deps, tx, actor, input.sprintId, input.day, []);
    // Numbers that were given stay in force; a click on an old button must not seem to take them back.
    const isAnswered = hasAnswered(context.records, actor.userId, context.day);
    return meetPrompt(deps, tx, actor, context, isAnswered ? 'answered' : 'unchanged');
  });
}

/** "Away today": the member is not asked again on that day. Numbers that they gave before stay in force. */
export async function recordAway(
  deps: AppDependencies,
  actor: Actor,
  input: { readonly sprintId: string; readonly day: string },
): Promise<PromptContent> {
  return deps.store.transaction(async (tx) => {
    const context = await answeredDay(deps, tx, actor, input.sprintId, input.day, []);
    return meetPrompt(deps, tx, actor, context, 'away');
  });
}
