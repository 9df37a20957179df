/** Arbitrary histories of a team: closed sprints with cards, answers of several owners, corrections, drops, reopenings. */
import { randomUUID } from 'node:crypto';
import fc from 'fast-check';
import type { Transaction } from '../../../src/app/ports/store.ts';
import type {
  NewFact,
  RecordedFact,
  Sprint,
  SprintCard,
  SprintRecords,
  Team,
} from '../../../src/app/team/team.ts';
import { dayPlus, daysFromTo } from '../../../src/sprint/calendar.ts';
import { placeInLedger, whyNotAnswer } from '../../../src/sprint/check-answer.ts';
import { cardState } from '../../../src/sprint/ledger.ts';
import { halves } from '../../sprint/random-sprint.ts';

const OWNERS = ['UANA', 'UBEN', 'UCHI'];

/** Text of the kind that breaks files: separators, quotes, line ends, formulas, apostrophes, other alphabets. */
const trickyText = (maxLength: number): fc.Arbitrary<string> =>
  fc
    .array(
      fc.constantFrom(
        'Tide table',
        '=1+1',
        '+2',
        '-3',
        '@ana',
        "'",
        '"',
        ',',
        ';',
        '\n',
        '\t',
        ' ',
        'Ölkännchen',
        '港',
        '＝A1',
        '⛵',
        '0',
      ),
      { maxLength: 8 },
    )
    .map((parts) => parts.join('').slice(0, maxLength).toWellFormed());

const lineOfText = (maxLength: number): fc.Arbitrary<string> =>
  trickyText(maxLength).map((text) => text.replace(/\s+/g, ' ').trim());

interface RandomFact {
  readonly card: number;
  readonly dayIndex: number;
  readonly owner: number;
  readonly what: 'answer' | 'drop' | 'reopen';
  readonly workedPoints: number | undefined;
  readonly leftPoints: number;
  readonly surpriseShare: number;
  readonly note: string;
}

const anyFact: fc.Arbitrary<RandomFact> = fc.record({
  card: fc.nat({ max: 5 }),
  dayIndex: fc.nat({ max: 9 }),
  owner: fc.nat({ max: OWNERS.length - 1 }),
  what: fc.oneof(
    { weight: 12, arbitrary: fc.constant('answer' as const) },
    { weight: 1, arbitrary: fc.constant('drop' as const) },
    { weight: 2, arbitrary: fc.constant('reopen' as const) },
  ),
  workedPoints: fc.option(halves(0, 6), { nil: undefined }),
  leftPoints: fc.oneof(halves(0, 8), fc.constant(0)),
  surpriseShare: fc.constantFrom(0, 0.5, 1),
  note: trickyText(60).map((text) => text.trim()),
});

export interface RandomSprint {
  readonly name: string;
  readonly goal: string;
  readonly lengthDays: number;
  readonly closedEarlyBy: number;
  readonly cards: readonly { title: string; estimatePoints: number; pulledInOn: number | undefined }[];
  readonly facts: readonly RandomFact[];
  readonly value: number | undefined;
}

export const anySprint: fc.Arbitrary<RandomSprint> = fc.record({
  name: lineOfText(30).map((text) => (text === '' ? 'Harbour' : text)),
  goal: trickyText(60).map((text) => text.trim()),
  lengthDays: fc.integer({ min: 1, max: 14 }),
  closedEarlyBy: fc.constantFrom(0, 0, 0, 1),
  cards: fc.array(
    fc.record({
      title: lineOfText(40).map((text) => (text === '' ? 'Buoy' : text)),
      estimatePoints: fc.oneof(halves(0, 13), fc.constantFrom(1, 2, 3, 5, 8)),
      pulledInOn: fc.option(fc.nat({ max: 9 }), { nil: undefined }),
    }),
    { maxLength: 6 },
  ),
  facts: fc.array(anyFact, { maxLength: 40 }),
  value: fc.option(fc.oneof(fc.integer(), fc.double({ noNaN: true, min: -1e6, max: 1e6 })), {
    nil: undefined,
  }),
});

/** A sprint as the store would hold it. */
interface HistorySprint {
  readonly sprint: Sprint;
  readonly records: SprintRecords;
  readonly value: number | undefined;
}

/** The sprints one after another from the day on, as if the team had run them. Facts that the bot would refuse are left out. */
export function historyOf(team: Team, from: string, sprints: readonly RandomSprint[]): HistorySprint[] {
  let startsOn = from;
  return sprints.map((given) => {
    const endsOn = dayPlus(startsOn, given.lengthDays - 1);
    const closedOn = dayPlus(endsOn, given.lengthDays > 1 ? -given.closedEarlyBy : 0);
    const sprint: Sprint = {
      id: randomUUID(),
      teamId: team.id,
      name: given.name,
      goal: given.goal,
      startsOn,
      endsOn,
      closesAt: '17:00',
      closesAtInstant: new Date(`${endsOn}T17:00:00Z`),
      state: 'closed',
      closedAt: new Date(`${closedOn}T17:00:00Z`),
      reopenedAt: undefined,
      nextPromptAt: undefined,
      nextReminderAt: undefined,
      lastCallAt: undefined,
      importedAt: undefined,
    };
    startsOn = dayPlus(endsOn, 1);
    const cards = cardsOf(sprint, given);
    return { sprint, records: { cards, facts: factsOf(sprint, cards, given.facts) }, value: given.value };
  });
}

export async function recordHistory(tx: Transaction, history: readonly HistorySprint[]): Promise<void> {
  for (const { sprint, records, value } of history) {
    await tx.write.sprints.insert(sprint);
    if (records.cards.length > 0) await tx.write.cards.insert(records.cards);
    await tx.write.cards.insertFacts(records.facts.map(({ order: _order, ...fact }) => fact as NewFact));
    if (value !== undefined) {
      await tx.write.history.recordValue({
        sprintId: sprint.id,
        value,
        byUserId: 'UPO',
        at: new Date('2026-01-01'),
      });
    }
  }
}

function cardsOf(sprint: Sprint, { cards }: RandomSprint): SprintCard[] {
  const days = daysFromTo(sprint.startsOn, sprint.endsOn);
  return cards.map(({ title, estimatePoints, pulledInOn }, i) => ({
    id: randomUUID(),
    sprintId: sprint.id,
    number: i + 1,
    key: i % 2 === 0 ? String(i + 1) : `LP-${i + 1}`,
    title,
    estimatePoints,
    origin: pulledInOn === undefined ? 'planned' : 'pulled-in',
    enteredOn: pulledInOn === undefined ? sprint.startsOn : (days[pulledInOn % days.length] as string),
    ownerIds: OWNERS,
    addedBy: 'UANA',
  }));
}

function factsOf(sprint: Sprint, cards: readonly SprintCard[], given: readonly RandomFact[]): RecordedFact[] {
  const days = daysFromTo(sprint.startsOn, sprint.endsOn);
  const facts: RecordedFact[] = [];
  for (const one of given) {
    const card = cards[one.card % Math.max(cards.length, 1)];
    if (!card) continue;
    const day = days[one.dayIndex % days.length] as string;
    if (day < card.enteredOn) continue;
    const own = facts.filter(({ cardId }) => cardId === card.id);
    const memberId = OWNERS[one.owner] as string;
    const base = {
      id: randomUUID(),
      cardId: card.id,
      day,
      memberId,
      order: facts.length + 1,
      recordedAt: new Date(`${day}T12:00:00Z`),
      note: one.note,
    };
    const state = cardState(card, own);
    if (state.droppedOn !== undefined) continue;
    if (one.what === 'answer') {
      const context = placeInLedger(card, own, memberId, day);
      const { workedPoints, leftPoints } = one;
      const worked = workedPoints ?? Math.max(context.previousLeftPoints - leftPoints, 0);
      const growth = worked + leftPoints - context.previousLeftPoints;
      const surprisePoints = growth > 0 ? Math.floor(growth * 2 * one.surpriseShare) / 2 : 0;
      const input = { workedPoints, leftPoints, surprisePoints };
      if (whyNotAnswer(card, own, memberId, day, input)) continue;
      const supersedesId = (context.corrects as RecordedFact | undefined)?.id;
      facts.push({ ...base, kind: 'answer', ...input, supersedesId });
    } else if (
      one.what === 'drop'
        ? day >=
          (own
            .map((fact) => fact.day)
            .sort()
            .at(-1) ?? day)
        : state.finished
    ) {
      facts.push({ ...base, kind: one.what, supersedesId: undefined });
    }
  }
  return facts;
}
