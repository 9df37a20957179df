/**
 * Simulated teams for the model of cards. Invented, with the rules in plain sight; never to be shown as real.
 *
 * Both kinds: four members, ten working days, 12 to 16 cards of 1, 2, 3, 5 or 8 points dealt out at random, so that queues
 * are of unequal length. A sprint has a pace, lognormal around 1 with a deviation of 0.25.
 *
 * `queues`: every day each member works on the first card of the own queue that is not stuck, half a point to two points
 * times the sprint's pace. A card gets stuck on the day it is begun with a chance of 15%, and comes free with a chance of
 * 10% a day. Stuck cards are blocked in half of all cases.
 *
 * `whole`: cards have no queues. The sprint draws the share of its points that gets done, the pace times 0.75, and does the
 * cards in random order at an even pace; nothing gets stuck.
 */
import { type CardEvenings, openCardsAt } from '../../src/forecast/card-evenings.ts';
import type { CardSprint } from '../../src/forecast/contest.ts';
import type { SprintSoFar } from '../../src/forecast/sprint-so-far.ts';
import { seededRandom } from './seeded-random.ts';

const DAYS = 10;
const MEMBERS = 4;
const SIZES = [1, 2, 2, 3, 3, 5, 8];

type Random = ReturnType<typeof seededRandom>;

interface Simulated {
  readonly estimatePoints: number;
  readonly queue: number;
  readonly left: number[];
  readonly blocked: number[];
  isStuck: boolean;
}

interface Rules {
  readonly seed: number;
  readonly sprints: number;
  readonly rule: 'queues' | 'whole';
}

/** A sprint as its record would be kept: a trace point an evening. */
interface SimulatedSprint {
  readonly velocityPoints: number;
  readonly trace: readonly SprintSoFar[];
  readonly cardEvenings: readonly CardEvenings[];
}

export function simulatedSprints({ seed, sprints, rule }: Rules): SimulatedSprint[] {
  const random = seededRandom(1000 + seed);
  return Array.from({ length: sprints }, () => {
    const cards = newCards(random);
    const pace = Math.exp(0.25 * random.normal());
    if (rule === 'queues') workInQueues(cards, pace, random);
    else workAsOne(cards, pace, random);
    return sprintOf(cards.map((card) => eveningsOf(card, rule)));
  });
}

/** The same as the models want them, on one evening. */
export function simulatedTeam({ evening, ...rules }: Rules & { readonly evening: number }): CardSprint[] {
  return simulatedSprints(rules).map(({ velocityPoints, trace, cardEvenings }) => ({
    team: 'simulated',
    soFar: trace[evening] as SprintSoFar,
    velocityPoints,
    open: openCardsAt(cardEvenings, evening),
  }));
}

function newCards(random: Random): Simulated[] {
  return Array.from({ length: 12 + Math.floor(5 * random.uniform()) }, () => {
    const estimatePoints = SIZES[Math.floor(SIZES.length * random.uniform())] as number;
    const queue = Math.floor(MEMBERS * random.uniform());
    return { estimatePoints, queue, left: [estimatePoints], blocked: [], isStuck: false };
  });
}

function workInQueues(cards: readonly Simulated[], pace: number, random: Random): void {
  for (let day = 1; day <= DAYS; day += 1) {
    for (const card of cards) {
      if (card.isStuck && random.uniform() < 0.1) card.isStuck = false;
      card.left.push(card.left.at(-1) as number);
    }
    for (let member = 0; member < MEMBERS; member += 1) {
      const card = cards.find(
        (each) => each.queue === member && !each.isStuck && (each.left.at(-1) as number) > 0,
      );
      if (!card) continue;
      const before = card.left.at(-1) as number;
      if (before === card.estimatePoints && random.uniform() < 0.15) {
        card.isStuck = true;
        card.left[day] = Math.max(0.5, before - 0.5);
        if (random.uniform() < 0.5) card.blocked.push(day);
      } else card.left[day] = inHalves(before - pace * (0.5 + 1.5 * random.uniform()));
    }
    for (const card of cards) {
      if (card.isStuck && card.blocked.at(-1) === day - 1) card.blocked.push(day);
    }
  }
}

function workAsOne(cards: readonly Simulated[], pace: number, random: Random): void {
  const order = cards.map((card) => ({ card, at: random.uniform() })).sort((a, b) => a.at - b.at);
  const total = cards.reduce((sum, card) => sum + card.estimatePoints, 0);
  for (let day = 1; day <= DAYS; day += 1) {
    let done = (Math.min(1, 0.75 * pace) * total * day) / DAYS;
    for (const { card } of order) {
      card.left.push(inHalves(card.estimatePoints - done));
      done = Math.max(0, done - card.estimatePoints);
    }
  }
}

function inHalves(points: number): number {
  return Math.max(0, Math.ceil(points * 2) / 2);
}

function eveningsOf({ estimatePoints, queue, left, blocked }: Simulated, rule: Rules['rule']): CardEvenings {
  const worked = left.map((points) => estimatePoints - points);
  return { estimatePoints, from: 0, left, worked, blocked, queues: rule === 'queues' ? [queue] : [] };
}

function sprintOf(cards: readonly CardEvenings[]): SimulatedSprint {
  const sum = (points: (card: CardEvenings) => number): number =>
    cards.reduce((total, card) => total + points(card), 0);
  const cardPoints = sum(({ estimatePoints }) => estimatePoints);
  return {
    velocityPoints: sum((card) => (card.left.at(-1) === 0 ? card.estimatePoints : 0)),
    trace: Array.from({ length: DAYS + 1 }, (_, evening) => {
      const isOpen = (card: CardEvenings): boolean => (card.left[evening] as number) > 0;
      return {
        cardPoints,
        finishedPoints: sum((card) => (isOpen(card) ? 0 : card.estimatePoints)),
        underwayPoints: sum((card) => (isOpen(card) ? (card.worked[evening] as number) : 0)),
      };
    }),
    cardEvenings: cards,
  };
}
