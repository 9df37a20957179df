/** Cards change hands: an owner gives them away, a facilitator may as well. */

import { refreshPrompt } from '../answering/refresh-prompt.ts';
import type { Problem } from '../input-problem.ts';
import { peopleCalled } from '../planning/card-owners.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { Refusal } from '../refusal.ts';
import { dayWithin, type Membership, openSprint, type Place, todayOf } from '../team/place.ts';
import { type Actor, activeMembers, type SprintHeading } from '../team/team.ts';
import { type CardLine, cardLine, cardName, findCard, type SprintCardState, statesOf } from './card-line.ts';

/** Cards that changed hands together. */
export interface OwnersChange {
  readonly heading: SprintHeading;
  readonly cards: readonly CardLine[];
}

/**
 * Gives cards to others: an owner gives their own place, so co-owners stay; a facilitator who doesn't own the card hands all
 * of it over.
 *
 * @throws Refusal `bad-argument`, `no-such-card`, `card-dropped`, `not-card-owner`
 */
export async function giveCards(
  deps: AppDependencies,
  actor: Actor,
  { place, words }: { readonly place: Place; readonly words: string },
): Promise<OwnersChange> {
  return changeOwners(deps, actor, place, (states, { member, members }) => {
    const { cards, people } = cardsAndPeople('give', words, states, members);
    return cards.map((state): NewOwners => {
      const { ownerIds } = state.card;
      if (ownerIds.includes(actor.userId))
        return { state, ownerIds: replaced(ownerIds, actor.userId, people) };
      if (!member.isFacilitator)
        throw new Refusal('not-card-owner', { card: cardName(state.card), act: 'give' });
      return { state, ownerIds: people };
    });
  });
}

/** In the place of the one who gives. */
function replaced(ownerIds: readonly string[], giver: string, to: readonly string[]): string[] {
  return [...new Set(ownerIds.flatMap((id) => (id === giver ? to : [id])))];
}

interface NewOwners {
  readonly state: SprintCardState;
  readonly ownerIds: readonly string[];
}

async function changeOwners(
  deps: AppDependencies,
  actor: Actor,
  place: Place,
  decide: (states: readonly SprintCardState[], membership: Membership) => readonly NewOwners[],
): Promise<OwnersChange> {
  return deps.store.transaction(async (tx) => {
    const at = deps.clock.now();
    const found = await openSprint(tx, actor, { place }, at);
    const { team, sprint } = found;
    const today = todayOf(team, at);
    const wanted = decide(statesOf(await tx.read.recordsOf(sprint.id)), found);
    const changes = wanted.map(({ state: { card }, ownerIds }) => ({ card, ownerIds }));
    const by = { userId: actor.userId, day: dayWithin(sprint, today), at };
    await tx.write.cards.changeOwners(changes.map((change) => ({ ...change, by })));
    const concerned = new Set(changes.flatMap(({ card, ownerIds }) => [...card.ownerIds, ...ownerIds]));
    for (const userId of concerned) await refreshPrompt(tx, sprint.id, userId, today);
    const states = statesOf(await tx.read.recordsOf(sprint.id));
    const changedIds = new Set(changes.map(({ card }) => card.id));
    return {
      heading: { team, sprint },
      cards: states.filter(({ card }) => changedIds.has(card.id)).map(cardLine),
    };
  });
}

/** `3 5 @ana @ben`, `3, 5 to Ana and Ben` */
function cardsAndPeople(
  command: 'give',
  words: string,
  states: readonly SprintCardState[],
  members: Membership['members'],
): { cards: SprintCardState[]; people: string[] } {
  const refuse = (problem: Problem): Refusal =>
    new Refusal('bad-argument', { command, problem, example: undefined });
  const [cardWords = '', peopleWords = ''] = partedAtPeople(words, states);
  const cards = namedCards(cardWords, states);
  if (cards.length === 0) throw refuse({ code: 'which-card' });
  const people = peopleCalled(peopleWords, activeMembers(members));
  if ('code' in people) throw refuse(people);
  if (people.length === 0) throw refuse({ code: 'which-people' });
  return { cards, people };
}

/** At the first mention, or else after the last word in a row that names a card. */
function partedAtPeople(words: string, states: readonly SprintCardState[]): [string, string] {
  const mention = words.search(/<?@/);
  if (mention >= 0) return [words.slice(0, mention), words.slice(mention)];
  const tokens = words.split(/\s+/);
  const known = tokens.findIndex((token) => !isFiller(token) && !isKnown(token, states));
  const from = known < 0 ? tokens.length : Math.max(known, 1);
  return [tokens.slice(0, from).join(' '), tokens.slice(from).join(' ')];
}

const FILLERS: ReadonlySet<string> = new Set(['', 'and', 'to', 'card', 'cards']);

function isFiller(token: string): boolean {
  return FILLERS.has(token.toLowerCase());
}

function isKnown(token: string, states: readonly SprintCardState[]): boolean {
  try {
    namedCards(token, states);
    return true;
  } catch {
    return false;
  }
}

/** Cards in the sprint that words name, each once. @throws Refusal `no-such-card`, `card-dropped` */
function namedCards(words: string, states: readonly SprintCardState[]): SprintCardState[] {
  const references = words.split(/[\s,;]+/).filter((token) => !isFiller(token));
  const named = references.map((reference) => findCard(states, reference));
  const dropped = named.find(({ droppedOn }) => droppedOn !== undefined);
  if (dropped) throw new Refusal('card-dropped', { card: cardName(dropped.card) });
  return [...new Set(named)];
}
