/** What a member says about their day: the form, the one-click answers, and answers in words. */
import { randomUUID } from 'node:crypto';
import { formatDay, isDay } from '../sprint/calendar.ts';
import type { AnswerInput, AnswerProblem } from '../sprint/check-answer.ts';
import { answerContext, whyNotAnswer } from '../sprint/check-answer.ts';
import { answersInForce } from '../sprint/ledger.ts';
import { formatPoints, formatPointsWithUnit, MAX_POINTS, parsePoints } from '../sprint/points.ts';
import { understandWords } from './answer-words.ts';
import type { SprintCardState } from './card-line.ts';
import { cardLine, cardName, isOpenCard, statesOf } from './card-line.ts';
import type { CardLine, PromptContent, SprintHeading } from './message-content.ts';
import type { Membership, Place } from './place.ts';
import { currentSprint, membershipAt, requireBegun, requireOpen, sprintForMember, todayOf } from './place.ts';
import type { AppDependencies, NewFact, SprintRecords, Transaction } from './ports.ts';
import { answerableStates, promptContent } from './prompt-content.ts';
import { refreshPrompt } from './refresh-prompt.ts';
import type { InputProblem } from './refusal.ts';
import { Refusal, refuseIfAny } from './refusal.ts';
import type { Actor, RecordedFact, Sprint, SprintCard } from './team.ts';

const MAX_NOTE_LENGTH = 500;

/** What was typed about one card; `''` is "not given". A card with nothing given is left as it is. */
export interface TypedAnswer {
  readonly cardId: string;
  readonly worked: string;
  readonly left: string;
  readonly surprise: string;
  readonly note: string;
}

export interface AnswerFormCard {
  readonly card: CardLine;
  /** Left before this member's answer for the day. */
  readonly previousLeftPoints: number;
  /** What the member has answered for the day already. */
  readonly given:
    | {
        readonly worked: number | undefined;
        readonly left: number;
        readonly surprise: number;
        readonly note: string;
      }
    | undefined;
}

export interface AnswerForm {
  readonly heading: SprintHeading;
  readonly userId: string;
  readonly day: string;
  readonly cards: readonly AnswerFormCard[];
  /** Open cards that nobody owns yet. */
  readonly takeable: readonly CardLine[];
}

export interface GrownCard {
  readonly card: CardLine;
  readonly growthPoints: number;
}

export type AnswerOutcome =
  | { readonly kind: 'recorded'; readonly prompt: PromptContent }
  | {
      readonly kind: 'growth-to-explain';
      readonly heading: SprintHeading;
      readonly day: string;
      readonly answers: readonly TypedAnswer[];
      readonly grown: readonly GrownCard[];
    };

type SprintAndMember = Membership & { readonly sprint: Sprint };

/** The sprint and the day that a member speaks about, checked. */
async function sprintDay(
  deps: AppDependencies,
  tx: Transaction,
  found: SprintAndMember,
  day: string | undefined,
): Promise<SprintAndMember & { day: string; records: SprintRecords }> {
  const { team } = found;
  await tx.lockTeam(team.id);
  // Read again under the lock: the clock may have closed it since.
  const sprint = await tx.sprintById(found.sprint.id);
  if (!sprint) throw new Refusal('no-sprint-running', {});
  requireOpen(sprint);
  const today = todayOf(team, deps.clock.now());
  requireBegun(sprint, today);
  const wanted = day ?? (today > sprint.endsOn ? sprint.endsOn : today);
  if (!isDay(wanted) || wanted < sprint.startsOn || wanted > sprint.endsOn) {
    const { name: sprintName, startsOn, endsOn } = sprint;
    throw new Refusal('day-outside-sprint', { sprintName, day: wanted, startsOn, endsOn });
  }
  if (wanted > today) throw new Refusal('day-not-come', { day: wanted });
  return { ...found, sprint, day: wanted, records: await tx.recordsOf(sprint.id) };
}

async function runningSprint(
  tx: Transaction,
  actor: Actor,
  place: Place,
  now: Date,
  day: string | undefined,
): Promise<SprintAndMember> {
  const membership = await membershipAt(tx, actor, place);
  const open = await tx.openSprintsOf(membership.team.id);
  const sprint = currentSprint(open, day ?? todayOf(membership.team, now));
  if (!sprint) throw new Refusal('no-sprint-running', {});
  return { ...membership, sprint };
}

/** The member's cards that can be answered for on the day, with what was said already. */
function answerableCards(
  records: SprintRecords,
  userId: string,
  day: string,
): { card: SprintCard; form: AnswerFormCard }[] {
  return answerableStates(records, userId, day).map((state) => {
    const context = answerContext(state.card, factsAbout(records, state.card), userId, day);
    const given = context.corrects as (typeof context.corrects & RecordedFact) | undefined;
    return {
      card: state.card,
      form: {
        card: cardLine(state),
        previousLeftPoints: context.previousLeftPoints,
        given: given && {
          worked: given.workedPoints,
          left: given.leftPoints,
          surprise: given.surprisePoints,
          note: given.note,
        },
      },
    };
  });
}

/** Open cards that nobody owns yet. */
function takeableStates(records: SprintRecords): SprintCardState[] {
  return statesOf(records).filter((state) => isOpenCard(state) && state.card.ownerIds.length === 0);
}

function factsAbout(records: SprintRecords, card: SprintCard): RecordedFact[] {
  return records.facts.filter((fact) => fact.cardId === card.id);
}

/**
 * The form in which a member answers for all their cards. Without a day: today, or the last day of a
 * sprint that was reopened.
 *
 * @throws Refusal `no-cards-of-yours` and the refusals of finding team, sprint and day.
 */
export async function answerForm(
  deps: AppDependencies,
  actor: Actor,
  where: { readonly place?: Place; readonly sprintId?: string; readonly day?: string },
): Promise<AnswerForm> {
  return deps.store.transaction(async (tx) => {
    const found =
      where.sprintId !== undefined
        ? await sprintForMember(tx, actor, where.sprintId)
        : await runningSprint(tx, actor, where.place as Place, deps.clock.now(), where.day);
    const { team, sprint, day, records } = await sprintDay(deps, tx, found, where.day);
    const cards = answerableCards(records, actor.userId, day).map(({ form }) => form);
    const takeable = takeableStates(records).map(cardLine);
    if (cards.length === 0 && takeable.length === 0) {
      throw new Refusal('no-cards-of-yours', { sprintName: sprint.name });
    }
    return { heading: { team, sprint }, userId: actor.userId, day, cards, takeable };
  });
}

interface ReadAnswer {
  readonly card: SprintCard;
  readonly typed: TypedAnswer;
  readonly input: AnswerInput;
}

function readChange(text: string): number | undefined {
  const match = /^([-−+]?)\s*(\S+)$/.exec(text.trim());
  const points = match ? parsePoints(match[2] as string) : undefined;
  return points === undefined ? undefined : match?.[1] === '-' || match?.[1] === '−' ? 0 - points : points;
}

/** Reads the typed numbers; every slip becomes a problem of its field. */
function readAnswers(
  records: SprintRecords,
  answers: readonly TypedAnswer[],
): { read: ReadAnswer[]; problems: InputProblem[] } {
  const problems: InputProblem[] = [];
  const read: ReadAnswer[] = [];
  const amount = `Write points in halves from 0 to ${MAX_POINTS}, for example 3 or 0.5.`;
  for (const typed of answers) {
    const card = records.cards.find(({ id }) => id === typed.cardId);
    if (!card) throw new Refusal('sprint-changed', {});
    const leftPoints = parsePoints(typed.left);
    const workedPoints = typed.worked.trim() === '' ? undefined : parsePoints(typed.worked);
    const surprisePoints = typed.surprise.trim() === '' ? undefined : readChange(typed.surprise);
    const before = problems.length;
    if (leftPoints === undefined) problems.push({ field: `left:${card.id}`, message: amount });
    if (typed.worked.trim() !== '' && workedPoints === undefined)
      problems.push({ field: `worked:${card.id}`, message: amount });
    if (typed.surprise.trim() !== '' && surprisePoints === undefined)
      problems.push({ field: `surprise:${card.id}`, message: amount });
    if (typed.note.length > MAX_NOTE_LENGTH) {
      problems.push({
        field: `note:${card.id}`,
        message: `Keep the note within ${MAX_NOTE_LENGTH} characters.`,
      });
    }
    if (problems.length === before && leftPoints !== undefined) {
      read.push({ card, typed, input: { leftPoints, workedPoints, surprisePoints } });
    }
  }
  return { read, problems };
}

function problemInWords(problem: AnswerProblem, card: SprintCard): InputProblem {
  const name = cardName(card);
  switch (problem.code) {
    case 'not-an-owner':
      return {
        field: `left:${card.id}`,
        message: `${name} is not one of your cards. Its owners answer for it; take a share in it with “take ${card.number}” if you work on it too.`,
      };
    case 'card-dropped':
      return {
        field: `left:${card.id}`,
        message: `${name} was dropped on ${formatDay(problem.on)}, so nothing can be left on it.`,
      };
    case 'card-finished':
      return {
        field: `left:${card.id}`,
        message: `${name} was finished on ${formatDay(problem.on)}. If it is not done after all, reopen it first with “reopen ${card.number}”.`,
      };
    case 'surprise-out-of-range':
      return { field: `surprise:${card.id}`, message: surpriseProblem(problem) };
    case 'growth-unexplained':
      return {
        field: `surprise:${card.id}`,
        message: `The card grew by ${formatPointsWithUnit(problem.growthPoints)}: say how many of them were surprise work.`,
      };
    default:
      return {
        field: `${problem.code.replace('bad-', '')}:${card.id}`,
        message: `Write points in halves from 0 to ${MAX_POINTS}, for example 3 or 0.5.`,
      };
  }
}

function surpriseProblem(problem: { growthPoints: number; leastPoints: number; mostPoints: number }): string {
  const { growthPoints, leastPoints, mostPoints } = problem;
  if (growthPoints > 0) {
    return `The card grew by ${formatPointsWithUnit(growthPoints)}, so surprise work is from 0 to ${formatPoints(mostPoints)}.`;
  }
  if (growthPoints === 0) return 'The card did not grow, so no surprise work came up: leave this at 0.';
  return leastPoints === 0
    ? 'The card shrank and holds no surprise work that could have fallen away: leave this at 0.'
    : `The card shrank by ${formatPointsWithUnit(-growthPoints)}, so surprise work that was not needed is from ${formatPoints(leastPoints)} to 0.`;
}

function newFact(
  deps: AppDependencies,
  actor: Actor,
  day: string,
  { card, typed, input }: ReadAnswer,
  records: SprintRecords,
): NewFact {
  const corrects = answerContext(card, factsAbout(records, card), actor.userId, day).corrects as
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

/** Whether the answer says exactly what is in force already; recording it again would be noise. */
function saysNothingNew(
  records: SprintRecords,
  actor: Actor,
  day: string,
  { card, typed, input }: ReadAnswer,
): boolean {
  const given = answerContext(card, factsAbout(records, card), actor.userId, day).corrects as
    | (RecordedFact & { kind: 'answer' })
    | undefined;
  return (
    given !== undefined &&
    given.leftPoints === input.leftPoints &&
    given.workedPoints === input.workedPoints &&
    given.surprisePoints === (input.surprisePoints ?? 0) &&
    given.note === typed.note.trim()
  );
}

/**
 * Records a member's answers for a day: all of them or none. When a card grew and nobody said why, nothing
 * is recorded and the outcome asks.
 *
 * @throws Refusal `bad-input` (fields `left:`, `worked:`, `surprise:`, `note:` + card id), `sprint-changed`,
 *   and the refusals of finding team, sprint and day.
 */
export async function recordAnswers(
  deps: AppDependencies,
  actor: Actor,
  input: {
    readonly sprintId: string;
    readonly day: string;
    readonly answers: readonly TypedAnswer[];
    readonly takeCardIds?: readonly string[];
  },
): Promise<AnswerOutcome> {
  return deps.store.transaction(async (tx) => {
    const found = await sprintForMember(tx, actor, input.sprintId);
    const context = await sprintDay(deps, tx, found, input.day);
    return recordChecked(deps, tx, actor, context, input.answers, input.takeCardIds ?? []);
  });
}

async function recordChecked(
  deps: AppDependencies,
  tx: Transaction,
  actor: Actor,
  context: SprintAndMember & { day: string; records: SprintRecords },
  answers: readonly TypedAnswer[],
  takeCardIds: readonly string[],
): Promise<AnswerOutcome> {
  const { team, sprint, day, records } = context;
  // A card about which nothing was typed is not answered for; a note alone asks for its number.
  const given = answers.filter(
    ({ left, worked, surprise, note }) => `${left}${worked}${surprise}${note}`.trim() !== '',
  );
  const { read, problems } = readAnswers(records, given);
  if (given.length === 0 && takeCardIds.length === 0) {
    const field = answers[0] ? `left:${answers[0].cardId}` : 'answers';
    problems.push({ field, message: 'Say what is left on at least one card.' });
  }
  const grown: GrownCard[] = [];
  for (const { card, input } of read) {
    if (card.enteredOn > day) {
      problems.push({
        field: `left:${card.id}`,
        message: `${cardName(card)} came into the sprint on ${formatDay(card.enteredOn)}; answer for that day or a later one.`,
      });
      continue;
    }
    const facts = factsAbout(records, card);
    const problem = whyNotAnswer(card, facts, actor.userId, day, input);
    if (!problem) continue;
    if (problem.code === 'growth-unexplained') {
      const state = statesOf({ cards: [card], facts })[0];
      if (state) grown.push({ card: cardLine(state), growthPoints: problem.growthPoints });
    } else {
      problems.push(problemInWords(problem, card));
    }
  }
  refuseIfAny(problems);
  if (grown.length > 0) {
    return { kind: 'growth-to-explain', heading: { team, sprint }, day, answers: given, grown };
  }
  for (const { card } of takeableStates(records)) {
    if (takeCardIds.includes(card.id)) await tx.addOwner(card.id, actor.userId);
  }
  const fresh = read.filter((answer) => !saysNothingNew(records, actor, day, answer));
  if (fresh.length > 0)
    await tx.insertFacts(fresh.map((answer) => newFact(deps, actor, day, answer, records)));
  const said = read.length > 0 || hasAnswered(records, actor.userId, day) ? 'answered' : 'unchanged';
  return { kind: 'recorded', prompt: await meetPrompt(deps, tx, actor, { team, sprint, day }, said) };
}

function hasAnswered(records: SprintRecords, userId: string, day: string): boolean {
  return answersInForce(records.facts).some((answer) => answer.memberId === userId && answer.day === day);
}

/** Marks the day's prompt as met and brings it up to date where it stands. */
async function meetPrompt(
  deps: AppDependencies,
  tx: Transaction,
  actor: Actor,
  { team, sprint, day }: Pick<SprintAndMember, 'team' | 'sprint'> & { day: string },
  state: 'answered' | 'unchanged' | 'away',
): Promise<PromptContent> {
  const { userId } = actor;
  await tx.setPromptState({ sprintId: sprint.id, userId, day }, state, deps.clock.now());
  await refreshPrompt(tx, sprint.id, userId, day);
  return promptContent(tx, team, sprint, userId, day);
}

async function recordWithoutNumbers(
  deps: AppDependencies,
  actor: Actor,
  input: { readonly sprintId: string; readonly day: string },
  state: 'unchanged' | 'away',
): Promise<PromptContent> {
  return deps.store.transaction(async (tx) => {
    const found = await sprintForMember(tx, actor, input.sprintId);
    const { team, sprint, day, records } = await sprintDay(deps, tx, found, input.day);
    // Numbers that were given stay in force; a click on an old button must not seem to take them back.
    const said = hasAnswered(records, actor.userId, day) ? 'answered' : state;
    return meetPrompt(deps, tx, actor, { team, sprint, day }, said);
  });
}

/** "Nothing changed": the day's prompt is met, the ledger stays as it is. */
export async function recordUnchanged(
  deps: AppDependencies,
  actor: Actor,
  input: { readonly sprintId: string; readonly day: string },
): Promise<PromptContent> {
  return recordWithoutNumbers(deps, actor, input, 'unchanged');
}

/** "Away today": the member is not asked again on that day. */
export async function recordAway(
  deps: AppDependencies,
  actor: Actor,
  input: { readonly sprintId: string; readonly day: string },
): Promise<PromptContent> {
  return recordWithoutNumbers(deps, actor, input, 'away');
}

export interface AnswerInWords {
  readonly text: string;
  readonly place: Place;
  /** The prompt's thread that it was said in. */
  readonly threadTs?: string;
  /** How a bare number names a card: by its place in the member's list (the default), or in the sprint. */
  readonly numbering?: 'list' | 'sprint';
}

/**
 * An answer in words. Said in the thread of a prompt it is about that prompt's day, otherwise about today.
 * Numbers without a name count the member's cards in the order of the prompt.
 *
 * @throws Refusal `unclear-words`, `no-cards-of-yours`, and those of `recordAnswers`.
 */
export async function answerInWords(
  deps: AppDependencies,
  actor: Actor,
  input: AnswerInWords,
): Promise<AnswerOutcome> {
  const { sprint, day, records } = await deps.store.transaction(async (tx) => {
    const asked =
      input.threadTs === undefined
        ? undefined
        : await tx.promptByPost(actor.workspaceId, { channelId: input.place.channelId, ts: input.threadTs });
    const prompt = asked?.userId === actor.userId ? asked : undefined;
    const found = prompt
      ? await sprintForMember(tx, actor, prompt.sprintId)
      : await runningSprint(tx, actor, input.place, deps.clock.now(), undefined);
    return sprintDay(deps, tx, found, prompt?.day);
  });
  const where = { sprintId: sprint.id, day };
  const list = answerableCards(records, actor.userId, day).map(({ card }) => card);
  // Cards of others follow the member's own, so that naming one gets the reason why it can't be answered.
  const named = [...list, ...records.cards.filter((card) => !list.includes(card))];
  const numbered = input.numbering === 'sprint' ? records.cards : list;
  const positionOf = (written: string): number | undefined => {
    const reference = written.replace(/^#(?=.)/, '');
    const byKey = named.findIndex(({ key }) => key.toLowerCase() === reference.toLowerCase());
    const byNumber = numbered.find(
      (card, i) => reference === String(numbered === list ? i + 1 : card.number),
    );
    const found = byNumber ?? named[byKey];
    return found && named.indexOf(found) + 1;
  };
  const understood = understandWords(input.text, list.length, positionOf);
  if (understood.kind === 'unchanged')
    return { kind: 'recorded', prompt: await recordUnchanged(deps, actor, where) };
  if (understood.kind === 'away') return { kind: 'recorded', prompt: await recordAway(deps, actor, where) };
  if (understood.kind === 'unclear') {
    if (list.length === 0) throw new Refusal('no-cards-of-yours', { sprintName: sprint.name });
    throw new Refusal('unclear-words', { problems: understood.problems, cardCount: list.length });
  }
  const answers = understood.answers.map(
    ({ position, leftPoints, workedPoints, surprisePoints }): TypedAnswer => {
      const card = named[position - 1] as SprintCard;
      return {
        cardId: card.id,
        left: formatPoints(leftPoints),
        worked: workedPoints === undefined ? '' : formatPoints(workedPoints),
        surprise: surprisePoints === undefined ? '' : formatPoints(surprisePoints),
        note: '',
      };
    },
  );
  return recordAnswers(deps, actor, { ...where, answers });
}
