/**
 * Many invented sprints with all their answers: as facts, the way the store gives them, and as bare columns. Some answers
 * correct an earlier one, and some are about the day before, so that recorded order is not the order in which they count.
 */
import { dayPlus } from '../../src/sprint/calendar.ts';
import type { AnswerFact, Card } from '../../src/sprint/card.ts';
import { seededRandom } from '../forecast/seeded-random.ts';

export interface BenchSprint {
  readonly cards: readonly Card[];
  /** In the order in which they were recorded. */
  readonly facts: readonly AnswerFact[];
}

/** The same, a column a property: cards and answers of all sprints one after the other. */
export interface Columns {
  /** Where each sprint's answers begin; one more at the end. */
  readonly firstAnswers: Uint32Array;
  readonly estimates: Float64Array;
  readonly isPlanned: Uint8Array;
  /** Place of the card in its sprint. */
  readonly cards: Uint8Array;
  readonly days: Uint8Array;
  readonly members: Uint8Array;
  /** NaN where only what is left was given. */
  readonly worked: Float64Array;
  readonly left: Float64Array;
  readonly surprise: Float64Array;
}

const STARTS_ON = '2026-11-02';
const ESTIMATES = [1, 2, 3, 5, 8, 13];
const CORRECTED_SHARE = 0.03;
const LATE_SHARE = 0.02;

const DAYS = Array.from({ length: 100 }, (_, day) => dayPlus(STARTS_ON, day));

interface Said {
  readonly card: number;
  readonly day: number;
  readonly member: number;
  readonly worked: number | undefined;
  readonly left: number;
  readonly surprise: number;
}

/** Each card is answered for once on every day, and now and then once more. */
export function manySprints(
  count: number,
  { cards, days }: { readonly cards: number; readonly days: number },
): BenchSprint[] {
  const { uniform } = seededRandom(20261125);
  const halves = (most: number): number => Math.floor(uniform() * (2 * most + 1)) / 2;
  const oneSprint = (number: number): BenchSprint => {
    const sprintCards = Array.from(
      { length: cards },
      (_, i): Card => ({
        id: `sprint-${number}-card-${i}`,
        key: String(i + 1),
        title: 'Tide table',
        estimatePoints: ESTIMATES[Math.floor(uniform() * ESTIMATES.length)] as number,
        origin: uniform() < 0.15 ? 'pulled-in' : 'planned',
        enteredOn: STARTS_ON,
        ownerIds: ['UBEN'],
      }),
    );
    const said: Said[] = [];
    const left = sprintCards.map(({ estimatePoints }) => estimatePoints);
    for (let day = 0; day < days; day += 1) {
      for (let card = 0; card < cards; card += 1) {
        const before = left[card] as number;
        const worked = halves(Math.min(before, 2));
        const grown = uniform() < 0.1 ? halves(2) : 0;
        left[card] = before - worked + grown;
        const isLate = day > 0 && uniform() < LATE_SHARE;
        const answer: Said = {
          card,
          day: isLate ? day - 1 : day,
          member: isLate ? 1 : 0,
          worked: grown > 0 || uniform() < 0.5 ? worked : undefined,
          left: left[card] as number,
          surprise: halves(grown),
        };
        said.push(answer);
        if (uniform() < CORRECTED_SHARE) said.push({ ...answer, left: answer.left + 0.5 });
      }
    }
    return { cards: sprintCards, facts: said.map((one, order) => factOf(one, order, sprintCards)) };
  };
  return Array.from({ length: count }, (_, number) => oneSprint(number));
}

function factOf(
  { card, day, member, worked, left, surprise }: Said,
  order: number,
  cards: Card[],
): AnswerFact {
  return {
    kind: 'answer',
    cardId: (cards[card] as Card).id,
    memberId: member === 0 ? 'UBEN' : 'UCHI',
    day: DAYS[day] as string,
    order,
    workedPoints: worked,
    leftPoints: left,
    surprisePoints: surprise,
  };
}

export function columnsOf(sprints: readonly BenchSprint[]): Columns {
  const cards = sprints.flatMap((sprint) => sprint.cards);
  const facts = sprints.flatMap((sprint) => sprint.facts);
  const places = new Map(
    sprints.flatMap((sprint) => sprint.cards.map(({ id }, place) => [id, place] as const)),
  );
  const dayNumbers = new Map(
    Array.from({ length: 100 }, (_, day) => [dayPlus(STARTS_ON, day), day] as const),
  );
  const firstAnswers = new Uint32Array(sprints.length + 1);
  for (const [i, sprint] of sprints.entries())
    firstAnswers[i + 1] = (firstAnswers[i] as number) + sprint.facts.length;
  return {
    firstAnswers,
    estimates: Float64Array.from(cards, ({ estimatePoints }) => estimatePoints),
    isPlanned: Uint8Array.from(cards, ({ origin }) => (origin === 'planned' ? 1 : 0)),
    cards: Uint8Array.from(facts, ({ cardId }) => places.get(cardId) as number),
    days: Uint8Array.from(facts, ({ day }) => dayNumbers.get(day) as number),
    members: Uint8Array.from(facts, ({ memberId }) => (memberId === 'UBEN' ? 0 : 1)),
    worked: Float64Array.from(facts, ({ workedPoints }) => workedPoints ?? Number.NaN),
    left: Float64Array.from(facts, ({ leftPoints }) => leftPoints),
    surprise: Float64Array.from(facts, ({ surprisePoints }) => surprisePoints),
  };
}
