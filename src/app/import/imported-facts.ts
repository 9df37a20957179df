/** What all facts of an import have in common. Members are marks, not people. */
import { randomUUID } from 'node:crypto';
import type { Day } from '../../sprint/calendar.ts';
import type { NewFact } from '../team/team.ts';
import type { AnswerLine, ChangeLine } from './import-lines.ts';
import type { ImportProblems } from './import-problem.ts';
import type { ImportContext, PlacedCard } from './placed-cards.ts';
import type { SprintLine } from './sprint-line.ts';

/** Members' marks of an import: no person, only which of the day's answers it was. */
export function markOf(place: number): string {
  return `import-${place}`;
}

export function isWithin(
  sprint: SprintLine,
  { card }: PlacedCard,
  line: AnswerLine | ChangeLine,
  drop: ChangeLine | undefined,
  problems: ImportProblems,
): boolean {
  const { day } = line;
  if (day < sprint.startsOn || day > sprint.endsOn) {
    const { name, startsOn: first, endsOn: last } = sprint;
    problems.tell(line, { code: 'day-outside', day, sprint: name, first, last });
  } else if (day < card.enteredOn) {
    problems.tell(line, { code: 'before-card', day, came: card.enteredOn });
  } else if (drop && day > drop.day) {
    problems.tell(line, { code: 'after-drop', day, dropped: drop.day });
  } else {
    return true;
  }
  return false;
}

/** The line that drops the card, or one made from what the card's own line says; undefined: it was not dropped. */
export function dropOf(
  sprint: SprintLine,
  { line }: PlacedCard,
  changes: readonly ChangeLine[],
  problems: ImportProblems,
): ChangeLine | undefined {
  const [drop, again] = changes.filter(({ kind }) => kind === 'drop');
  if (drop && again) problems.tell(again, { code: 'dropped-twice', line: drop.lineNumber ?? 0 });
  if (drop || line.state !== 'dropped') return drop;
  const { fileName, lineNumber, sprintName, sprintStartsOn } = line;
  const where = { fileName, lineNumber, sprintName, sprintStartsOn, card: '' };
  return {
    ...where,
    day: line.droppedOn ?? sprint.endsOn,
    kind: 'drop',
    afterAnswers: undefined,
    reason: '',
  };
}

export function factBase(
  { card }: PlacedCard,
  { day }: { readonly day: Day },
  { at }: ImportContext,
  memberId: string,
) {
  return { id: randomUUID(), cardId: card.id, memberId, day, recordedAt: at, supersedesId: undefined };
}

export function answerFact(
  placed: PlacedCard,
  line: Pick<AnswerLine, 'day' | 'workedPoints' | 'leftPoints' | 'surprisePoints' | 'note'>,
  context: ImportContext,
  memberId: string,
): NewFact & { kind: 'answer' } {
  const { workedPoints, leftPoints, surprisePoints, note } = line;
  return {
    ...factBase(placed, line, context, memberId),
    kind: 'answer',
    workedPoints,
    leftPoints,
    surprisePoints,
    note,
  };
}
