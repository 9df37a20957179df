/** The facts of a card whose days are known, as its answers and changes say them. Pure; invents no answer. */
import { statesOf } from '../cards/card-line.ts';
import type { NewFact, RecordedFact } from '../team/team.ts';
import type { AnswerLine, ChangeLine } from './import-lines.ts';
import type { ImportProblems } from './import-problem.ts';
import { answerFact, dropOf, factBase, isWithin, markOf } from './imported-facts.ts';
import type { ImportContext, PlacedCard } from './placed-cards.ts';
import type { SprintLine } from './sprint-line.ts';

interface CardLines {
  readonly answers: readonly AnswerLine[];
  readonly changes: readonly ChangeLine[];
}

/** The facts as the answers and changes say them, day by day. */
export function watchedFacts(
  sprint: SprintLine,
  placed: PlacedCard,
  { answers, changes }: CardLines,
  context: ImportContext,
  problems: ImportProblems,
): NewFact[] {
  const drop = dropOf(sprint, placed, changes, problems);
  const all = drop && !changes.includes(drop) ? [...changes, drop] : changes;
  const fine = (line: AnswerLine | ChangeLine): boolean => isWithin(sprint, placed, line, drop, problems);
  const days = [...new Set([...answers, ...all].map(({ day }) => day))].sort();
  const facts: NewFact[] = [];
  const lineOf = new Map<string, AnswerLine>();
  for (const day of days) {
    const ofDay = inPlace(
      answers.filter((line) => line.day === day && fine(line)),
      problems,
    );
    const changesOfDay = all.filter((line) => line.day === day && fine(line));
    for (const line of changesOfDay.filter(({ afterAnswers = 0 }) => afterAnswers > ofDay.length)) {
      const { afterAnswers: said = 0 } = line;
      problems.tell(line, { code: 'after-answer', said, answers: ofDay.length });
    }
    for (let after = 0; after <= ofDay.length; after += 1) {
      for (const line of changesOfDay) {
        if ((line.afterAnswers ?? ofDay.length) === after) {
          facts.push({ ...factBase(placed, line, context, markOf(1)), kind: line.kind, note: line.reason });
        }
      }
      const line = ofDay[after];
      if (!line) continue;
      const fact = answerFact(placed, line, context, markOf(after + 1));
      lineOf.set(fact.id, line);
      facts.push(fact);
    }
  }
  checkAnswers(placed, facts, lineOf, problems);
  return facts;
}

/** By their running numbers; those without one in the order of the file. */
function inPlace(lines: readonly AnswerLine[], problems: ImportProblems): AnswerLine[] {
  const lineOfPlace = new Map<number, AnswerLine>();
  for (const line of lines) {
    if (line.place === undefined) continue;
    const same = lineOfPlace.get(line.place);
    if (same) {
      const { place: answer, day } = line;
      problems.tell(line, { code: 'answer-twice', answer, day, line: same.lineNumber ?? 0 });
    }
    lineOfPlace.set(line.place, line);
  }
  return [...lines].sort((a, b) => (a.place ?? 0) - (b.place ?? 0));
}

/** What each answer says of the growth must be what the ledger makes of it. */
function checkAnswers(
  { card }: PlacedCard,
  facts: readonly NewFact[],
  lineOf: ReadonlyMap<string, AnswerLine>,
  problems: ImportProblems,
): void {
  const numbered = facts.map((fact, i) => ({ ...fact, order: i + 1 }) as RecordedFact);
  const [state] = statesOf({ cards: [card], facts: numbered });
  for (const entry of state?.entries ?? []) {
    const line = lineOf.get((entry.answer as RecordedFact).id);
    if (!line || problems.has(line)) continue;
    const { growthPoints, surprisePoints, driftPoints, workedPoints, leftPoints, previousLeftPoints } = entry;
    const growth = {
      worked: workedPoints,
      left: leftPoints,
      before: previousLeftPoints,
      growth: growthPoints,
    };
    if (line.surprisePoints !== surprisePoints) {
      const said = line.surprisePoints;
      problems.tell(line, { code: 'surprise-differs', ...growth, said, most: surprisePoints });
      return;
    }
    if (line.driftPoints !== undefined && line.driftPoints !== driftPoints) {
      const said = line.surprisePoints + line.driftPoints;
      problems.tell(line, { code: 'growth-differs', ...growth, said });
      return;
    }
  }
}
