/** Corrects a card of a sprint's plan: what it is called, and its estimate while nobody has built on it. */
import { formatPoints, MAX_POINTS, parsePoints } from '../../sprint/points.ts';
import {
  type CardLine,
  cardLine,
  cardName,
  findCard,
  hasOwnKey,
  type SprintCardState,
  statesOf,
} from '../cards/card-line.ts';
import { cardLink, MAX_LINK_LENGTH } from '../cards/card-link.ts';
import { sprintDays } from '../clock/sprint-clock.ts';
import { overtakenCards } from '../closing/overtaken-cards.ts';
import type { InputProblem } from '../input-problem.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading } from '../ports/store.ts';
import { Refusal, refuseIfAny } from '../refusal.ts';
import { openSprint, type Place, requireFacilitator, type SprintReference, todayOf } from '../team/place.ts';
import type { Actor, Sprint, SprintCard, SprintHeading, SprintRecords, Team } from '../team/team.ts';
import { isCardKey } from './card-key.ts';
import { MAX_TITLE_LENGTH } from './card-paste.ts';
import type { PlanChange } from './plan-change.ts';
import { recordPlanChanges } from './record-plan-changes.ts';

export interface CardToEdit {
  readonly heading: SprintHeading;
  readonly card: CardLine;
  /** The team's own short name; empty when the card is called by its number. */
  readonly key: string;
  readonly mayChangeEstimate: boolean;
}

export interface EditedCard {
  readonly heading: SprintHeading;
  readonly card: CardLine;
  /** None: everything was as it is. */
  readonly changes: readonly PlanChange[];
}

/** As typed; undefined: stays as it is. */
interface CardEdit {
  readonly title?: string | undefined;
  readonly link?: string | undefined;
  readonly key?: string | undefined;
  readonly estimate?: string | undefined;
}

/** What the form begins with. @throws Refusal `no-such-card`, `not-a-facilitator` */
export async function cardToEdit(
  deps: AppDependencies,
  actor: Actor,
  { place, reference }: { readonly place: Place; readonly reference: string },
): Promise<CardToEdit> {
  return deps.store.transaction(async (tx) => {
    const found = await openSprint(tx, actor, { place }, deps.clock.now());
    requireFacilitator(found, 'edit');
    const { team, sprint } = found;
    const records = await tx.read.recordsOf(sprint.id);
    const state = findCard(statesOf(records), reference);
    const today = todayOf(team, deps.clock.now());
    const why = whyEstimateIsFixed(team, sprint, records, state.card, today);
    return {
      heading: { team, sprint },
      card: cardLine(state),
      key: ownKey(state.card),
      mayChangeEstimate: why === undefined || (await mayBecomeZero(tx.read, sprint, records, state.card)),
    };
  });
}

/**
 * Corrects the card, and keeps what it was. All of it or nothing.
 *
 * @throws Refusal `bad-input` (title, link, key, estimate), `key-taken`, `estimate-is-fixed`, `no-such-card`,
 *   `not-a-facilitator`
 */
export async function editCard(
  deps: AppDependencies,
  actor: Actor,
  input: SprintReference & { readonly reference: string; readonly edit: CardEdit },
): Promise<EditedCard> {
  return deps.store.transaction(async (tx) => {
    const now = deps.clock.now();
    const found = await openSprint(tx, actor, input, now);
    requireFacilitator(found, 'edit');
    const { team, sprint } = found;
    const records = await tx.read.recordsOf(sprint.id);
    const { card } = findCard(statesOf(records), input.reference);
    const corrected = { ...card, ...readEdit(card, input.edit, records, sprint) };
    if (corrected.estimatePoints !== card.estimatePoints) {
      const why = whyEstimateIsFixed(team, sprint, records, card, todayOf(team, now));
      const mayBecome =
        why === undefined ||
        (corrected.estimatePoints === 0 && (await mayBecomeZero(tx.read, sprint, records, card)));
      if (!mayBecome) {
        throw new Refusal('estimate-is-fixed', { card: cardName(card), number: String(card.number), why });
      }
    }
    const changes = await recordPlanChanges(
      tx,
      sprint,
      { cardId: card.id, changedBy: actor.userId, changedAt: now },
      [
        { part: 'title', was: card.title, became: corrected.title },
        { part: 'link', was: card.link ?? '', became: corrected.link ?? '' },
        { part: 'key', was: ownKey(card), became: ownKey(corrected) },
        {
          part: 'estimate',
          was: formatPoints(card.estimatePoints),
          became: formatPoints(corrected.estimatePoints),
        },
      ],
    );
    if (changes.length > 0) {
      await tx.write.cards.correct(corrected);
      await tx.write.posts.refreshAboutDay(card.sprintId, card.ownerIds, todayOf(team, now));
    }
    const states = statesOf(await tx.read.recordsOf(sprint.id));
    const after = states.find((state) => state.card.id === card.id) as SprintCardState;
    return { heading: { team, sprint }, card: cardLine(after), changes };
  });
}

function ownKey(card: Pick<SprintCard, 'key' | 'number'>): string {
  return hasOwnKey(card) ? card.key : '';
}

function readEdit(
  card: SprintCard,
  { title, link, key, estimate }: CardEdit,
  { cards }: SprintRecords,
  sprint: Sprint,
): Pick<SprintCard, 'title' | 'link' | 'key' | 'estimatePoints'> {
  const problems: InputProblem[] = [];
  const cleanTitle = title === undefined ? card.title : title.replace(/\s+/g, ' ').trim();
  if (cleanTitle === '' || cleanTitle.length > MAX_TITLE_LENGTH) {
    problems.push({ field: 'title', problem: { code: 'card-title', most: MAX_TITLE_LENGTH } });
  }
  const cleanLink = link === undefined ? card.link : cardLink(link);
  if (link !== undefined && link.trim() !== '' && cleanLink === undefined) {
    problems.push({ field: 'link', problem: { code: 'card-link', most: MAX_LINK_LENGTH } });
  }
  const points = estimate === undefined ? card.estimatePoints : parsePoints(estimate);
  if (points === undefined) {
    problems.push({ field: 'estimate', problem: { code: 'not-points', most: MAX_POINTS } });
  }
  const typedKey = key?.trim();
  if (typedKey !== undefined && typedKey !== '' && !isCardKey(typedKey)) {
    problems.push({ field: 'key', problem: { code: 'card-key' } });
  }
  refuseIfAny(problems);
  const taken = new Set(cards.filter(({ id }) => id !== card.id).map((other) => other.key.toLowerCase()));
  if (typedKey && taken.has(typedKey.toLowerCase())) {
    throw new Refusal('key-taken', { key: typedKey, sprintName: sprint.name });
  }
  const number = String(card.number);
  const byNumber = taken.has(number) ? `#${number}` : number;
  return {
    title: cleanTitle,
    link: cleanLink,
    key: typedKey === undefined ? card.key : typedKey || byNumber,
    estimatePoints: points as number,
  };
}

/** Nothing was left to do of a card that the sprint before had finished by then, however late somebody notices. */
async function mayBecomeZero(
  read: Reading,
  sprint: Sprint,
  records: SprintRecords,
  card: SprintCard,
): Promise<boolean> {
  return (await overtakenCards(read, sprint, statesOf(records))).cardIds.has(card.id);
}

/** A slip of the pen may be corrected on the sprint's first working day, until somebody has answered for the card. */
function whyEstimateIsFixed(
  team: Team,
  sprint: Sprint,
  { facts }: SprintRecords,
  card: SprintCard,
  today: string,
): 'answered' | 'first-day-over' | undefined {
  if (facts.some(({ kind, cardId }) => kind === 'answer' && cardId === card.id)) return 'answered';
  const firstDay = sprintDays(team, sprint)[0] ?? sprint.startsOn;
  return today > firstDay ? 'first-day-over' : undefined;
}
