/** A past sprint to vary in tests: 30 points committed to and finished, nothing pulled in, everybody there. */
import type { SprintEvidence } from '../../src/forecast/commitment-evidence.ts';

const KEPT: SprintEvidence = {
  commitmentPoints: 30,
  pulledInPoints: 0,
  surprisePoints: 0,
  velocityPoints: 30,
  committedFinishedPoints: 30,
  workingDays: 10,
  memberDays: 50,
};

/** The sprint with some facts changed; `undefined` makes one unknown. */
export function aPastSprint(change: Partial<SprintEvidence>): SprintEvidence {
  return { ...KEPT, ...change };
}
