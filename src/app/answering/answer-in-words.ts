/** An answer in words, in direct messages or after the command. */
import { formatPoints } from '../../sprint/points.ts';
import { hasOwnKey, isOpenCard, type SprintCardState } from '../cards/card-line.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { readGoneDay } from '../read-day.ts';
import { Refusal } from '../refusal.ts';
import { currentSprint, type Place, todayOf } from '../team/place.ts';
import type { Actor, Prompt, SprintCard, SprintRecords } from '../team/team.ts';
import { isWordForBlocked, isWordForCard } from './answer-vocabulary.ts';
import { type AnsweredDay, answeredDay, runningSprintId } from './answered-day.ts';
import { cardsToAnswer, type Numbering } from './cards-called.ts';
import { answerableStates } from './prompt-content.ts';
import type { TypedAnswer } from './read-answers.ts';
import {
  type AnswerOutcome,
  recordAnswers,
  recordAnswersIn,
  recordAway,
  recordUnchanged,
} from './record-answers.ts';
import { saidDay } from './said-day.ts';
import { wordsOf } from './typed-words.ts';
import { callsCard } from './understand-part.ts';
import { understandWords } from './understand-words.ts';

export interface AnswerInWords {
  readonly text: string;
  readonly place: Place;
  /** The prompt's thread that it was said in. */
  readonly threadTs?: string;
  /** How a bare number names a card: by its place in the member's list (the default), or in the sprint. */
  readonly numbering?: Numbering;
}

/** What came of the words, for the first of the teams that they were about. */
export type WordsOutcome = AnswerOutcome & {
  /** For the other teams. */
  readonly others?: readonly AnswerOutcome[];
  /** What was said besides and isn't kept. */
  readonly leftOut?: readonly string[];
};

/**
 * An answer in words. It is about the day that it begins with; else, in the thread of a prompt, about that prompt's day,
 * and otherwise about today.
 * Numbers without a name count the member's cards in the order of the prompt.
 *
 * @throws Refusal `unclear-words`, `not-about-cards`, `no-cards-of-yours`, and those of `recordAnswers`.
 */
export async function answerInWords(
  deps: AppDependencies,
  actor: Actor,
  input: AnswerInWords,
): Promise<WordsOutcome> {
  const { days, states, named, cards, understood } = await heardFrom(deps, actor, input);
  if (understood.kind === 'unchanged' || understood.kind === 'away') {
    const record = understood.kind === 'away' ? recordAway : recordUnchanged;
    const outcome = await ofAll(days, async (_, where) => ({
      kind: 'recorded',
      prompt: await record(deps, actor, where),
    }));
    return { ...outcome, leftOut: understood.leftOut ?? [] };
  }
  if (understood.kind !== 'answers') {
    const problems = understood.kind === 'unclear' ? understood.problems : [];
    const [asked] = problems.flatMap((problem) => ('position' in problem ? [problem.position] : []));
    const state = states[(asked ?? 0) - 1] ?? states.find(isOpenCard) ?? states[0];
    if (state === undefined) {
      if (understood.kind === 'not-about-cards') throw new Refusal('not-about-cards', { example: undefined });
      const sprintName = days.map(({ sprint }) => sprint.name).join(', ');
      throw new Refusal('no-cards-of-yours', { sprintName });
    }
    const { card, leftPoints } = state;
    const number = input.numbering === 'sprint' ? card.number : states.indexOf(state) + 1;
    const reference = hasOwnKey(card) ? card.key : String(number);
    const example = { cardCount: cards.count, reference, title: card.title, leftPoints };
    throw understood.kind === 'unclear'
      ? new Refusal('unclear-words', { problems: understood.problems, example })
      : new Refusal('not-about-cards', { example });
  }
  const answers = understood.answers.map(
    ({ position, leftPoints, workedPoints, surprisePoints, blockedOn = '', note = '' }): TypedAnswer => {
      const card = named[position - 1] as SprintCard;
      return {
        cardId: card.id,
        left: formatted(leftPoints === 'unchanged' ? leftBy(states[position - 1], days) : leftPoints),
        worked: formatted(workedPoints),
        surprise: formatted(surprisePoints),
        note,
        blocked: blockedOn,
      };
    },
  );
  const record = () => {
    if (days.length === 1)
      return ofAll(days, (_, where) => recordAnswers(deps, actor, { ...where, answers }));
    return deps.store.transaction(async (tx) => {
      await tx.lock.teamsOfPerson(actor);
      const said = days.filter(({ records }) => answersAbout(records, answers).length > 0);
      return ofAll(said, ({ records }, where) =>
        recordAnswersIn(deps, tx, actor, { ...where, answers: answersAbout(records, answers) }),
      );
    });
  };
  return { ...(await record()), leftOut: understood.leftOut ?? [] };
}

/**
 * Whether the words answer for a card of the person's own that is open and called by the first of them: `cancel 2`,
 * `cards 1 and 2 done`; or say without a card on what one is blocked: `blocked by the harbour office`.
 */
export async function answersForCard(
  deps: AppDependencies,
  actor: Actor,
  input: AnswerInWords,
): Promise<boolean> {
  const { cards, understood } = await heardFrom(deps, actor, input);
  const [first = '', second = ''] = wordsOf(input.text);
  if (understood.kind !== 'answers') return false;
  if (isWordForCard(first)) return true;
  if (isWordForBlocked(first)) return !/\d/.test(second) && cards.positionOf(second) === undefined;
  const position = cards.positionOf(first);
  if (position === undefined) return false;
  return cards.open.includes(position) && understood.answers.some((answer) => answer.position === position);
}

/** What is understood, of which days and cards. */
async function heardFrom(deps: AppDependencies, actor: Actor, input: AnswerInWords) {
  const { day, rest } = saidDay(input.text.trim());
  const days = await deps.store.transaction((tx) => daysMeant(deps, tx, actor, input, day));
  const states = days.flatMap(({ records, day }) => answerableStates(records, actor.userId, day));
  const all = days.flatMap(({ records }) => records.cards);
  const { cards, named } = cardsToAnswer(states, all, input.numbering);
  const now = deps.clock.now();
  const isEarlier = days.every((one) => one.day < todayOf(one.team, now));
  return { days, states, named, cards, understood: understandWords(rest, { ...cards, isEarlier }) };
}

function formatted(points: number | undefined): string {
  return points === undefined ? '' : formatPoints(points);
}

/** What was left of the card on the evening of the day that the words are about. */
function leftBy(state: SprintCardState | undefined, days: readonly AnsweredDay[]): number | undefined {
  const day = days.find(({ records }) => records.cards.some(({ id }) => id === state?.card.id))?.day ?? '';
  const last = state?.entries.findLast(({ answer }) => answer.day <= day);
  return last?.leftPoints ?? state?.card.estimatePoints;
}

function answersAbout({ cards }: SprintRecords, answers: readonly TypedAnswer[]): TypedAnswer[] {
  const ids = new Set(cards.map(({ id }) => id));
  return answers.filter(({ cardId }) => ids.has(cardId));
}

/** One after the other. */
async function ofAll(
  days: readonly AnsweredDay[],
  record: (
    day: AnsweredDay,
    where: { readonly sprintId: string; readonly day: string },
  ) => Promise<AnswerOutcome>,
): Promise<WordsOutcome> {
  const outcomes: AnswerOutcome[] = [];
  for (const one of days) outcomes.push(await record(one, { sprintId: one.sprint.id, day: one.day }));
  const [first, ...others] = outcomes;
  return { ...(first as AnswerOutcome), others };
}

/** A sprint and the day on which it is spoken about. */
type SprintDay = Pick<Prompt, 'sprintId' | 'day'>;

/**
 * The days that the words are about: the one that they begin with, else those of the prompt in whose thread they are said,
 * else today. Who is on several teams is asked about all of them in one message, mostly.
 */
async function daysMeant(
  deps: AppDependencies,
  tx: Transaction,
  actor: Actor,
  { text, place, threadTs, numbering }: AnswerInWords,
  said: string | undefined,
): Promise<AnsweredDay[]> {
  const now = deps.clock.now();
  const inThread =
    threadTs === undefined || said !== undefined
      ? []
      : await tx.read.promptsByPost(actor.workspaceId, { channelId: place.channelId, ts: threadTs });
  const isMessage = place.isDirect && numbering !== 'sprint';
  const own = inThread.filter(({ userId }) => userId === actor.userId);
  const meant = own.length > 0 || !isMessage ? own : await sprintsMeant(tx, actor, text, now, said);
  if (meant.length === 0) {
    const sprintId = await runningSprintId(tx.read, actor, place, now, said);
    return [await answeredDay(deps, tx, actor, sprintId, said, 'all')];
  }
  if (meant.length > 1) await tx.lock.teamsOfPerson(actor);
  const days: AnsweredDay[] = [];
  for (const { sprintId, day } of meant) days.push(await answeredDay(deps, tx, actor, sprintId, day, 'all'));
  return days;
}

/**
 * What a person on several teams means by the day, or today: the only sprint that runs; else those about which the latest
 * message asked together. So on a weekend, too, when nobody is asked. Where several messages asked, the one of which a card of
 * theirs is named; none where that isn't clear.
 */
async function sprintsMeant(
  tx: Transaction,
  actor: Actor,
  text: string,
  now: Date,
  said: string | undefined,
): Promise<SprintDay[]> {
  const teams = await tx.read.teamsOf(actor);
  if (teams.length < 2) return [];
  const running: (SprintDay & { readonly prompt: Prompt | undefined })[] = [];
  for (const team of teams) {
    const today = todayOf(team, now);
    const day = (said && readGoneDay(said, today)) ?? today;
    const sprint = currentSprint(await tx.read.openSprintsOf(team.id), day);
    if (!sprint || day < sprint.startsOn) continue;
    const prompts = await tx.read.promptsOfPerson(sprint.id, actor.userId);
    const asked = prompts.filter((prompt) => prompt.day <= day && prompt.postId !== undefined);
    const prompt = asked.toSorted((a, b) => (a.day < b.day ? -1 : 1)).at(-1);
    running.push({ sprintId: sprint.id, day, prompt });
  }
  if (running.length < 2) return running;
  const lastAskedOn = running.reduce(
    (last, { prompt }) => (prompt && prompt.day > last ? prompt.day : last),
    '',
  );
  const meant = running.filter(({ prompt }) => prompt?.day === lastAskedOn);
  const isOne = new Set(meant.map(({ prompt }) => prompt?.postId)).size === 1;
  // In the order in which the message lists them.
  if (isOne) return meant.sort((a, b) => (a.sprintId < b.sprintId ? -1 : 1));
  const named: SprintDay[] = [];
  for (const sprint of running) if (await namesCardOf(tx, actor, sprint, text)) named.push(sprint);
  return named.length === 1 ? named : [];
}

/** Whether the words call a card of the person's own in the sprint by a name. */
async function namesCardOf(
  tx: Transaction,
  actor: Actor,
  { sprintId, day }: SprintDay,
  text: string,
): Promise<boolean> {
  const states = answerableStates(await tx.read.recordsOf(sprintId), actor.userId, day);
  const { cards } = cardsToAnswer(states, []);
  return wordsOf(text.replaceAll(/[,;]/g, ' ')).some((word) => callsCard(word, cards));
}
