/** Makes the cards and facts of one imported sprint from the lines about it, and has each card checked. Pure. */
import { statesOf } from '../cards/card-line.ts';
import type { RecordedFact, SprintRecords } from '../team/team.ts';
import { checkImportedCard } from './check-imported-card.ts';
import type { AnswerLine, CardLine, ChangeLine } from './import-lines.ts';
import type { ImportProblems } from './import-problems.ts';
import type { ImportContext, PlacedCard } from './placed-cards.ts';
import { byCard, cardFinder, placedCards } from './placed-cards.ts';
import type { SprintLine } from './sprint-line.ts';
import { totalFacts } from './total-facts.ts';
import { watchedFacts } from './watched-facts.ts';

/** The lines about one sprint. */
export interface SprintLines {
  readonly sprint: SprintLine;
  readonly cards: readonly CardLine[];
  readonly answers: readonly AnswerLine[];
  readonly changes: readonly ChangeLine[];
}

export function importedRecords(
  lines: SprintLines,
  context: ImportContext,
  problems: ImportProblems,
): SprintRecords {
  const placed = placedCards(lines.sprint, lines.cards, context, problems);
  const find = cardFinder(placed);
  const answersOf = byCard(lines.answers, find, problems);
  const changesOf = byCard(lines.changes, find, problems);
  let order = 0;
  const facts = placed.flatMap((card) => {
    const own = { answers: answersOf.get(card) ?? [], changes: changesOf.get(card) ?? [] };
    const made = context.isWatched
      ? watchedFacts(lines.sprint, card, own, context, problems)
      : totalFacts(lines.sprint, card, own.changes, context, problems);
    return made.map((fact): RecordedFact => {
      order += 1;
      return { ...fact, order } as RecordedFact;
    });
  });
  const records = { cards: placed.map(({ card }) => card), facts };
  for (const [i, state] of statesOf(records).entries()) {
    const { line } = placed[i] as PlacedCard;
    if (!problems.has(line)) checkImportedCard(line, state, problems);
  }
  return records;
}
