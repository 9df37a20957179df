/** Makes the cards and facts of one imported sprint from the lines about it, and has each card checked. Pure. */
import { type SprintCardState, statesOf } from '../cards/card-line.ts';
import type { RecordedFact, SprintRecords } from '../team/team.ts';
import type { AnswerLine, CardLine, ChangeLine } from './import-lines.ts';
import type { ImportProblems } from './import-problem.ts';
import { byCard, cardFinder, type ImportContext, type PlacedCard, placedCards } from './placed-cards.ts';
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

/** What a card's line says of its end must be what its answers add up to: estimate + surprise + drift = worked + left. */
function checkImportedCard(line: CardLine, state: SprintCardState, problems: ImportProblems): void {
  const { surprisePoints, driftPoints, workedPoints, leftPoints } = line;
  if ([surprisePoints, driftPoints, workedPoints, leftPoints].every((points) => points !== undefined)) {
    const held = line.estimatePoints + (surprisePoints ?? 0) + (driftPoints ?? 0);
    const done = (workedPoints ?? 0) + (leftPoints ?? 0);
    if (held !== done) {
      problems.tell(line, { code: 'unbalanced', held, done });
      return;
    }
  }
  const pairs = [
    ['surprise', surprisePoints, state.surprisePoints],
    ['drift', driftPoints, state.driftPoints],
    ['worked', workedPoints, state.workedPoints],
    ['left', leftPoints, state.leftPoints],
  ] as const;
  const differing = pairs.find(([, said, is]) => said !== undefined && said !== is);
  if (differing) {
    const [column, said, is] = differing;
    problems.tell(line, { code: 'amount-differs', column, said: said ?? 0, is });
    return;
  }
  const ended = state.droppedOn !== undefined ? 'dropped' : state.finished ? 'finished' : 'open';
  const ends = [
    ['state', line.state, ended],
    ['finished on', line.finishedOn, state.finishedOn],
    ['dropped on', line.droppedOn, state.droppedOn],
  ] as const;
  const wrong = ends.find(([, said, is]) => said !== undefined && said !== is);
  if (wrong) {
    const [column, said = '', is] = wrong;
    problems.tell(
      line,
      is === undefined ? { code: 'never-ended', column, said } : { code: 'end-differs', column, said, is },
    );
  }
}
