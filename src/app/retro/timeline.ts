/** A sprint day by day, from its ledger: what happened to which card, and what the team wrote about it. Nobody is named. */
import type { Day } from '../../sprint/calendar.ts';
import { type SprintCardState, sharedNote } from '../cards/card-line.ts';
import { dayAt } from '../clock/local-time.ts';
import type { PlanChange } from '../planning/plan-change.ts';
import type { RecordedFact, Team } from '../team/team.ts';

/** What happens to a card on a day, in the order in which a day tells it. */
export const CARD_EVENTS = [
  'pulled-in',
  'dropped',
  'undropped',
  'reopened',
  'grew',
  'shrank',
  'blocked',
  'moving',
  'finished',
] as const;

export interface CardEvent {
  readonly kind: (typeof CARD_EVENTS)[number];
  readonly cardId: string;
  /** Of growth; 0 in everything else. */
  readonly surprisePoints: number;
  readonly driftPoints: number;
  /** Empty when nothing was written, and when it is private. */
  readonly note: string;
}

/** A correction of the plan. */
export interface PlanEvent {
  readonly kind: 'plan';
  readonly change: PlanChange;
}

export interface TimelineDay {
  readonly day: Day;
  /** Corrections of the plan first, then in the order of `CARD_EVENTS`. */
  readonly events: readonly (CardEvent | PlanEvent)[];
}

/** The days on which something happened, in order. */
export function timelineOf(
  { timeZone }: Pick<Team, 'timeZone'>,
  states: readonly SprintCardState[],
  facts: readonly RecordedFact[],
  planChanges: readonly PlanChange[],
): TimelineDay[] {
  const days = new Map<Day, (CardEvent | PlanEvent)[]>();
  const add = (day: Day, event: CardEvent | PlanEvent): void => {
    days.set(day, [...(days.get(day) ?? []), event]);
  };
  for (const change of planChanges) add(dayAt(change.changedAt, timeZone), { kind: 'plan', change });
  const events = states.flatMap((state) =>
    eventsOf(
      state,
      facts.filter(({ cardId }) => cardId === state.card.id),
    ),
  );
  for (const kind of CARD_EVENTS) {
    for (const { day, ...event } of events) if (event.kind === kind) add(day, event);
  }
  return [...days].map(([day, of]) => ({ day, events: of })).sort((a, b) => (a.day < b.day ? -1 : 1));
}

type DatedEvent = CardEvent & { readonly day: Day };

function eventsOf(state: SprintCardState, facts: readonly RecordedFact[]): DatedEvent[] {
  const { card, entries, blocks, outOfSprint, finishedOn } = state;
  const event = (
    kind: CardEvent['kind'],
    day: Day,
    more: Partial<Pick<CardEvent, 'note' | 'surprisePoints' | 'driftPoints'>> = {},
  ): DatedEvent => ({ kind, day, cardId: card.id, surprisePoints: 0, driftPoints: 0, note: '', ...more });
  const whyDropped = (day: Day): string =>
    sharedNote(facts.findLast((fact) => fact.kind === 'drop' && fact.day === day)?.note ?? '');
  const isOut = (day: Day): boolean => outOfSprint.some(({ from }) => from === day);
  const reopened = facts.filter(({ kind }) => kind === 'reopen');
  const finishedDays = new Set(
    [...reopened.map((fact) => finishedBefore(state, fact)), finishedOn].filter((day) => day !== undefined),
  );
  return [
    ...(card.origin === 'pulled-in' ? [event('pulled-in', card.enteredOn)] : []),
    ...outOfSprint.flatMap(({ from, until }) => [
      event('dropped', from, { note: whyDropped(from) }),
      ...(until === undefined ? [] : [event('undropped', until)]),
    ]),
    ...entries.flatMap(({ answer, growthPoints, surprisePoints, driftPoints }) => {
      if (growthPoints === 0) return [];
      // The ledger hands back the very facts that it was given.
      const note = sharedNote((answer as RecordedFact).note);
      return [event(growthPoints > 0 ? 'grew' : 'shrank', answer.day, { surprisePoints, driftPoints, note })];
    }),
    ...blocks.flatMap(({ since, until, said }) => [
      event('blocked', since, { note: sharedNote((said as RecordedFact & { kind: 'blocked' }).note) }),
      // That it was finished or dropped says so already.
      ...(until === undefined || finishedDays.has(until) || isOut(until) ? [] : [event('moving', until)]),
    ]),
    ...reopened.map(({ day }) => event('reopened', day)),
    ...[...finishedDays].map((day) => event('finished', day)),
  ];
}

/** The day of the answer that had finished the card; undefined when it was reopened on the same day, as a slip. */
function finishedBefore(
  { entries }: Pick<SprintCardState, 'entries'>,
  reopening: RecordedFact,
): Day | undefined {
  const before = entries.findLast(
    ({ answer: { day, order } }) => day < reopening.day || (day === reopening.day && order < reopening.order),
  );
  const isEarlier = before !== undefined && before.answer.day < reopening.day;
  return isEarlier && before.leftPoints === 0 ? before.answer.day : undefined;
}
