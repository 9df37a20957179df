/** What the reader understands of words about a few cards. */
import { cardsToAnswer } from '../../../src/app/answering/cards-called.ts';
import { understandWords } from '../../../src/app/answering/understand-words.ts';
import type { SprintCardState } from '../../../src/app/cards/card-line.ts';

const TITLES = {
  'quay-41': 'Book a berth',
  'quay-42': 'Price list',
  'quay-43': 'Cancel a booking',
  'quay-50': 'Dredge the harbour',
};
/** Only what naming a card takes of its state. */
const STATES = Object.entries(TITLES).map(([key, title], i) => {
  const card = { id: key, number: i + 11, key, title };
  return { card, finished: false, droppedOn: undefined } as unknown as SprintCardState;
});

/** To somebody with that many of the first three cards; the others are other people's. */
export function understand(text: string, count: number, isEarlier = false) {
  const all = STATES.map(({ card }) => card);
  const { cards } = cardsToAnswer(STATES.slice(0, count), all);
  return understandWords(text, { ...cards, isEarlier });
}

/** What is left by card, and what is said besides. */
export function answers(text: string, count: number): unknown {
  const understood = understand(text, count);
  if (understood.kind !== 'answers') return understood;
  return Object.fromEntries(
    understood.answers.map(({ position, leftPoints, workedPoints, surprisePoints, note, blockedOn }) => {
      const more = { worked: workedPoints, surprise: surprisePoints, note, blockedOn };
      const said = Object.entries(more).filter(([, value]) => value !== undefined);
      return [position, said.length === 0 ? leftPoints : { left: leftPoints, ...Object.fromEntries(said) }];
    }),
  );
}
