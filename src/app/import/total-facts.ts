/** The facts of a card of which only the end is known. Pure. */
import { MAX_POINTS } from '../../sprint/points.ts';
import { FROM_TOTALS } from '../export/exported-answers.ts';
import type { NewFact, SprintCard } from '../team/team.ts';
import type { AnswerLine, CardLine, ChangeLine } from './import-lines.ts';
import type { ImportProblems } from './import-problem.ts';
import { answerFact, dropOf, factBase, isWithin, markOf } from './imported-facts.ts';
import type { ImportContext, PlacedCard } from './placed-cards.ts';
import type { SprintLine } from './sprint-line.ts';

/** One answer, or two, that say what the card's own line says of its end. Its day is not known to be the day of the work. */
export function totalFacts(
  sprint: SprintLine,
  placed: PlacedCard,
  changes: readonly ChangeLine[],
  context: ImportContext,
  problems: ImportProblems,
): NewFact[] {
  const { line, card } = placed;
  const placeless = changes.find(({ kind }) => kind !== 'drop');
  if (placeless) problems.tell(placeless, { code: 'change-alone' });
  const drop = dropOf(sprint, placed, changes, problems);
  const isFine = drop === undefined || isWithin(sprint, placed, drop, drop, problems);
  const dropFacts: NewFact[] =
    drop && isFine
      ? [{ ...factBase(placed, drop, context, markOf(1)), kind: 'drop', note: drop.reason }]
      : [];
  const leftPoints = line.leftPoints ?? (line.state === 'finished' ? 0 : undefined);
  const isSilent =
    line.workedPoints === undefined && line.surprisePoints === undefined && line.driftPoints === undefined;
  if (leftPoints === undefined && isSilent && line.state !== undefined) return dropFacts;
  if (leftPoints === undefined) {
    problems.tell(line, { code: 'no-end' });
    return [];
  }
  if (line.state !== 'finished' && isUntouched(card, line, leftPoints)) return dropFacts;
  if (line.state === 'open' && leftPoints === 0) {
    problems.tell(line, { code: 'nothing-left' });
    return [];
  }
  const workedPoints = totalWorked(card, line, leftPoints);
  if (workedPoints < 0 || workedPoints > MAX_POINTS) {
    problems.tell(line, { code: 'worked-out-of-bounds', worked: workedPoints, most: MAX_POINTS });
    return [];
  }
  const day = line.finishedOn ?? drop?.day ?? sprint.endsOn;
  if (day < card.enteredOn || day > sprint.endsOn) {
    problems.tell(line, { code: 'end-outside', day, sprint: sprint.name });
    return [];
  }
  const answers = answersOf(card, line, workedPoints, leftPoints);
  if (answers.some((answer) => answer.leftPoints > MAX_POINTS)) {
    problems.tell(line, { code: 'grown-too-large', most: MAX_POINTS });
    return [];
  }
  return [
    ...answers.map((answer, i) =>
      answerFact(placed, { day, note: '', ...answer }, context, FROM_TOTALS[i] as string),
    ),
    ...dropFacts,
  ];
}

type Amounts = Pick<AnswerLine, 'workedPoints' | 'leftPoints' | 'surprisePoints'>;

/** One answer; two where surprise work came up and the rest shrank, for one answer's growth is either or the other. */
function answersOf(
  { estimatePoints }: SprintCard,
  line: CardLine,
  workedPoints: number,
  leftPoints: number,
): Amounts[] {
  const surprisePoints = line.surprisePoints ?? 0;
  const driftPoints = workedPoints + leftPoints - estimatePoints - surprisePoints;
  if (surprisePoints === 0 || driftPoints >= 0) return [{ workedPoints, leftPoints, surprisePoints }];
  return [
    { workedPoints: 0, leftPoints: estimatePoints + surprisePoints, surprisePoints },
    { workedPoints, leftPoints, surprisePoints: 0 },
  ];
}

/** A card of which all is left needs no answer. */
function isUntouched({ estimatePoints }: SprintCard, line: CardLine, leftPoints: number): boolean {
  return (
    leftPoints === estimatePoints &&
    (line.workedPoints ?? 0) === 0 &&
    (line.surprisePoints ?? 0) === 0 &&
    (line.driftPoints ?? 0) === 0
  );
}

function totalWorked({ estimatePoints }: SprintCard, line: CardLine, leftPoints: number): number {
  if (line.workedPoints !== undefined) return line.workedPoints;
  const growthPoints = (line.surprisePoints ?? 0) + (line.driftPoints ?? 0);
  const isGrowthSaid = line.surprisePoints !== undefined || line.driftPoints !== undefined;
  return isGrowthSaid ? estimatePoints + growthPoints - leftPoints : Math.max(estimatePoints - leftPoints, 0);
}
