/** The cards of one imported sprint, each with the line that it comes from, and which of them a line means. Pure. */
import { randomUUID } from 'node:crypto';
import type { Day } from '../../sprint/calendar.ts';
import { MAX_CARDS } from '../planning/card-paste.ts';
import type { SprintCard } from '../team/team.ts';
import type { AnswerLine, CardLine, ChangeLine } from './import-lines.ts';
import type { ImportProblems } from './import-problem.ts';
import type { SprintLine } from './sprint-line.ts';

/** What everything that is made of one sprint of an import has in common. */
export interface ImportContext {
  readonly sprintId: string;
  /** Whether the answers say how it went from day to day; else each card has its totals only. */
  readonly isWatched: boolean;
  readonly byUserId: string;
  readonly at: Date;
}

/** A card of the import with the line that it comes from. */
export interface PlacedCard {
  readonly card: SprintCard;
  readonly line: CardLine;
}

export function placedCards(
  sprint: SprintLine,
  cards: readonly CardLine[],
  { sprintId, byUserId }: ImportContext,
  problems: ImportProblems,
): PlacedCard[] {
  if (cards.length > MAX_CARDS) {
    problems.tell(sprint, { code: 'too-many-cards', cards: cards.length, most: MAX_CARDS });
    return [];
  }
  const lineOfNumber = new Map<number, CardLine>();
  const lineOfKey = new Map<string, CardLine>();
  const given = new Set(cards.map(({ key }) => key.toLowerCase()));
  return cards.flatMap((line, i) => {
    const number = line.number ?? i + 1;
    const madeKey = given.has(String(number)) ? `#${number}` : String(number);
    const key = line.key === '' ? madeKey : line.key;
    const sameNumber = lineOfNumber.get(number);
    const sameKey = lineOfKey.get(key.toLowerCase());
    if (sameNumber) {
      problems.tell(line, {
        code: 'number-twice',
        number,
        sprint: sprint.name,
        line: sameNumber.lineNumber ?? 0,
      });
      return [];
    }
    if (sameKey) {
      problems.tell(line, { code: 'name-twice', name: key, line: sameKey.lineNumber ?? 0 });
      return [];
    }
    lineOfNumber.set(number, line);
    lineOfKey.set(key.toLowerCase(), line);
    const enteredOn = enteringDay(sprint, line, problems);
    const { title, link, estimatePoints, origin } = line;
    const card = { id: randomUUID(), sprintId, number, key, title, link, estimatePoints, origin, enteredOn };
    return [{ line, card: { ...card, ownerIds: [], addedBy: byUserId } }];
  });
}

function enteringDay(sprint: SprintLine, line: CardLine, problems: ImportProblems): Day {
  const { origin, enteredOn } = line;
  if (origin === 'pulled-in') {
    if (enteredOn === undefined) {
      problems.tell(line, { code: 'no-coming-day' });
    } else if (enteredOn < sprint.startsOn || enteredOn > sprint.endsOn) {
      problems.tell(line, { code: 'coming-day-outside', day: enteredOn, sprint: sprint.name });
    }
    return enteredOn ?? sprint.startsOn;
  }
  if (enteredOn !== undefined && enteredOn !== sprint.startsOn) {
    problems.tell(line, { code: 'planned-later', first: sprint.startsOn });
  }
  return sprint.startsOn;
}

type CardFinder = (reference: string) => PlacedCard | undefined;

/** By number where that is one, else by key: the files of an export go by number. */
export function cardFinder(placed: readonly PlacedCard[]): CardFinder {
  const hasNumbers = placed.some(({ line }) => line.number !== undefined);
  const byNumber = new Map(placed.map((one) => [String(one.card.number), one]));
  const byKey = new Map(placed.map((one) => [one.card.key.toLowerCase(), one]));
  return (reference) => {
    const wanted = reference.toLowerCase();
    const [first, second] = hasNumbers ? [byNumber, byKey] : [byKey, byNumber];
    return first.get(wanted) ?? second.get(wanted);
  };
}

export function byCard<Line extends AnswerLine | ChangeLine>(
  lines: readonly Line[],
  find: CardFinder,
  problems: ImportProblems,
): Map<PlacedCard, Line[]> {
  const found = new Map<PlacedCard, Line[]>();
  for (const line of lines) {
    const placed = find(line.card);
    if (!placed) problems.tell(line, { code: 'no-such-card', sprint: line.sprintName, card: line.card });
    else if (found.has(placed)) found.get(placed)?.push(line);
    else found.set(placed, [line]);
  }
  return found;
}
