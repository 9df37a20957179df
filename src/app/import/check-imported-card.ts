/** Holds what a card’s line says of its end against the ledger: estimate + surprise + drift = worked + left. Pure. */
import type { SprintCardState } from '../cards/card-line.ts';
import type { CardLine } from './import-lines.ts';
import type { ImportProblems } from './import-problems.ts';

/** What the card's line says of its end must be what its answers add up to. */
export function checkImportedCard(line: CardLine, state: SprintCardState, problems: ImportProblems): void {
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
