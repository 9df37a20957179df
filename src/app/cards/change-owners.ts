/**
 * Cards change hands: an owner gives them to others or back to nobody, a facilitator assigns them, and a member takes them.
 * Each takes several cards at once, all or none of them.
 */

import type { Problem } from '../input-problem.ts';
import { peopleCalled } from '../planning/card-owners.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { OwnerChange } from '../ports/sprints.ts';
import type { Transaction } from '../ports/store.ts';
import { directPost } from '../posting/post-kinds.ts';
import { Refusal } from '../refusal.ts';
import { tellOfOwnerless } from '../team/leave-team.ts';
import {
  dayWithin,
  type Membership,
  openSprint,
  type Place,
  requireFacilitator,
  todayOf,
} from '../team/place.ts';
import {
  type Actor,
  type Member,
  type Sprint,
  type SprintHeading,
  workersOf,
  worksIn,
} from '../team/team.ts';
import {
  type CardLine,
  cardLine,
  cardName,
  findCard,
  isOpenCard,
  type SprintCardState,
  statesOf,
} from './card-line.ts';

/** Which cards, and for some to whom, as somebody typed it. */
interface TypedCards {
  readonly place: Place;
  /** `3 5 @ana @ben`, `3, 5 to Ana and Ben` */
  readonly words: string;
}

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
  { place, words }: TypedCards,
): Promise<OwnersChange> {
  return changeOwners(deps, actor, place, (states, membership) => {
    const { cards, people } = cardsAndPeople('give', words, states, workersIn(membership));
    return cards.map((state) => ({ state, ownerIds: ownPlaceGiven(state, membership, people, 'give') }));
  });
}

/**
 * Gives cards back to nobody: an owner gives up their own place; a facilitator who doesn't own the card takes everybody off.
 *
 * @throws Refusal `bad-argument`, `no-such-card`, `card-dropped`, `not-card-owner`
 */
export async function releaseCards(
  deps: AppDependencies,
  actor: Actor,
  { place, words }: TypedCards,
): Promise<OwnersChange> {
  return changeOwners(deps, actor, place, (states, membership) =>
    cardsNamed('release', words, states).map((state) => ({
      state,
      ownerIds: ownPlaceGiven(state, membership, [], 'release'),
    })),
  );
}

/**
 * Says whose cards are; for facilitators.
 *
 * @throws Refusal `bad-argument`, `no-such-card`, `card-dropped`, `not-a-facilitator`
 */
export async function assignCards(
  deps: AppDependencies,
  actor: Actor,
  { place, words }: TypedCards,
): Promise<OwnersChange> {
  return changeOwners(deps, actor, place, (states, membership) => {
    requireFacilitator(membership, 'assign');
    const { cards, people } = cardsAndPeople('assign', words, states, workersIn(membership));
    return cards.map((state) => ({ state, ownerIds: people }));
  });
}

/** Takes a share in cards: the actor becomes one of their owners. @throws Refusal `already-owner`, `takes-no-cards`, and as above */
export async function takeCards(
  deps: AppDependencies,
  actor: Actor,
  { place, words }: TypedCards,
): Promise<OwnersChange> {
  return changeOwners(deps, actor, place, (states, { team, sprint, member }) => {
    // Nobody who is not asked can own a card: it would never be answered for.
    if (!worksIn(member, sprint.id)) throw new Refusal('takes-no-cards', { teamName: team.name });
    return cardsNamed('take', words, states).map((state) => {
      const { card } = state;
      if (card.ownerIds.includes(actor.userId)) throw new Refusal('already-owner', { card: cardName(card) });
      return { state, ownerIds: [...card.ownerIds, actor.userId] };
    });
  });
}

type InSprint = Membership & { readonly sprint: Sprint };

function workersIn({ members, sprint }: InSprint): Member[] {
  return workersOf(members, sprint.id);
}

/** Others, or nobody, in the place of the one who gives. */
function ownPlaceGiven(
  { card }: SprintCardState,
  { member }: Membership,
  to: readonly string[],
  act: 'give' | 'release',
): readonly string[] {
  if (card.ownerIds.includes(member.userId))
    return [...new Set(card.ownerIds.flatMap((id) => (id === member.userId ? to : [id])))];
  if (!member.isFacilitator) throw new Refusal('not-card-owner', { card: cardName(card), act });
  return to;
}

interface NewOwners {
  readonly state: SprintCardState;
  readonly ownerIds: readonly string[];
}

async function changeOwners(
  deps: AppDependencies,
  actor: Actor,
  place: Place,
  decide: (states: readonly SprintCardState[], membership: InSprint) => readonly NewOwners[],
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
    await tx.write.posts.refreshAboutDay(sprint.id, [...concerned], today);
    await tellNewOwners(tx, found, changes);
    const isLeft = wanted.some(
      ({ state, ownerIds }) => ownerIds.length === 0 && state.card.ownerIds.length > 0 && isOpenCard(state),
    );
    if (isLeft) await tellOfOwnerless(tx, team, found.members, sprint.id, actor.userId);
    const states = statesOf(await tx.read.recordsOf(sprint.id));
    const changedIds = new Set(changes.map(({ card }) => card.id));
    return {
      heading: { team, sprint },
      cards: states.filter(({ card }) => changedIds.has(card.id)).map(cardLine),
    };
  });
}

/** Those who got cards by somebody else's doing, in one message each. */
async function tellNewOwners(
  tx: Transaction,
  { team, sprint, member }: InSprint,
  changes: readonly Pick<OwnerChange, 'card' | 'ownerIds'>[],
): Promise<void> {
  const cardsOf = new Map<string, string[]>();
  for (const { card, ownerIds } of changes) {
    for (const userId of ownerIds) {
      if (userId === member.userId || card.ownerIds.includes(userId)) continue;
      cardsOf.set(userId, [...(cardsOf.get(userId) ?? []), card.id]);
    }
  }
  const posts = [...cardsOf].map(([userId, cardIds]) =>
    directPost(team, userId, {
      kind: 'cards-given',
      sprintId: sprint.id,
      byUserId: member.userId,
      cardIds,
    }),
  );
  if (posts.length > 0) await tx.write.posts.add(posts);
}

function cardsNamed(
  command: 'release' | 'take',
  words: string,
  states: readonly SprintCardState[],
): SprintCardState[] {
  const cards = namedCards(words, states);
  if (cards.length > 0) return cards;
  throw new Refusal('bad-argument', { command, problem: { code: 'which-card' }, example: '3' });
}

function cardsAndPeople(
  command: 'give' | 'assign',
  words: string,
  states: readonly SprintCardState[],
  members: readonly Member[],
): { cards: SprintCardState[]; people: string[] } {
  const refuse = (problem: Problem): Refusal =>
    new Refusal('bad-argument', { command, problem, example: '3 @ana' });
  const [cardWords = '', peopleWords = ''] = partedAtPeople(words, states);
  const cards = namedCards(cardWords, states);
  if (cards.length === 0) throw refuse({ code: 'which-card' });
  const people = peopleCalled(peopleWords, members);
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
