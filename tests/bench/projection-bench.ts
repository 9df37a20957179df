/** The statistics behind one status, with ten years of history and 100 cards, against a plain loop over the same data. */
import type { SprintCardState } from '../../src/app/card-line.ts';
import { statesOf } from '../../src/app/card-line.ts';
import type { PastTrace } from '../../src/app/history/past-sprint.ts';
import { projectionHistory, tracePointAt } from '../../src/app/history/team-history.ts';
import { projectionReading } from '../../src/app/load-outlook.ts';
import { projectionFrom } from '../../src/app/sprint-projection.ts';
import type { RecordedFact, SprintCard } from '../../src/app/team.ts';
import { MOST_SPRINTS_BACK } from '../../src/forecast/project-velocity.ts';
import { sprintSoFar } from '../../src/forecast/sprint-so-far.ts';
import { dayPlus } from '../../src/sprint/calendar.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import { seededRandom } from '../forecast/seeded-random.ts';
import type { Bench } from './bench-row.ts';
import { benchRow } from './bench-row.ts';
import { medianTimes } from './median-time.ts';

const ELAPSED_SHARE = 0.4;
const WORKING_DAYS = 10;
/** As many as a status reads, of the team's own and of others (src/forecast/project-velocity.ts). */
const SPRINTS = MOST_SPRINTS_BACK;
const CARDS = 100;
const ANSWERED_DAYS = 4;

function pastTraces(): PastTrace[] {
  const { uniform } = seededRandom(20261125);
  const halves = (points: number): number => Math.round(points * 2) / 2;
  return Array.from({ length: SPRINTS.own + SPRINTS.others }, (_, i) => {
    const commitmentPoints = 20 + Math.round(40 * uniform());
    const velocityPoints = halves(commitmentPoints * uniform());
    return {
      teamId: i % 3 === 0 ? 'own' : `other-${i % 7}`,
      endsOn: dayPlus('2016-11-25', 12 * i),
      commitmentPoints,
      velocityPoints,
      trace: Array.from({ length: WORKING_DAYS + 1 }, (_day, day) => ({
        cardPoints: commitmentPoints,
        finishedPoints: halves((velocityPoints * day) / WORKING_DAYS),
        underwayPoints: 5 * uniform(),
      })),
    };
  });
}

function sprintCards(): SprintCard[] {
  return Array.from({ length: CARDS }, (_, i) => ({
    id: `card-${i}`,
    sprintId: 'sprint',
    number: i + 1,
    key: String(i + 1),
    title: 'Tide table',
    estimatePoints: 1 + (i % 8),
    origin: i % 10 === 9 ? 'pulled-in' : 'planned',
    enteredOn: '2026-11-02',
    ownerIds: ['UBEN'],
    addedBy: 'UANA',
  }));
}

function factsAbout(cards: readonly SprintCard[]): RecordedFact[] {
  return cards.flatMap(({ id, estimatePoints }, i) =>
    Array.from({ length: ANSWERED_DAYS }, (_, day) => ({
      id: `${id}-${day}`,
      kind: 'answer' as const,
      cardId: id,
      memberId: 'UBEN',
      day: dayPlus('2026-11-02', day),
      order: day * CARDS + i,
      workedPoints: undefined,
      leftPoints: Math.max(0, estimatePoints - day - 1),
      surprisePoints: 0,
      note: '',
      recordedAt: new Date(0),
      supersedesId: undefined,
    })),
  );
}

/** The mean share of the open work that past sprints finished, carried over to this one. */
function plainLoop(past: readonly PastTrace[], states: readonly SprintCardState[]): number {
  let shares = 0;
  for (const { trace, velocityPoints = 0 } of past) {
    const { cardPoints, finishedPoints } = tracePointAt(trace, ELAPSED_SHARE) ?? {
      cardPoints: 0,
      finishedPoints: 0,
    };
    shares +=
      cardPoints > finishedPoints ? (velocityPoints - finishedPoints) / (cardPoints - finishedPoints) : 1;
  }
  const { cardPoints, finishedPoints } = sprintSoFar(states);
  return finishedPoints + (shares / past.length) * (cardPoints - finishedPoints);
}

export const projectionBench: Bench = {
  name: 'projection',
  takesSeconds: 2,
  async run() {
    const past = pastTraces();
    const cards = sprintCards();
    const facts = factsAbout(cards);
    const reading = () => {
      const states = statesOf({ cards, facts });
      const history = projectionHistory(past, ELAPSED_SHARE);
      const projection = projectionFrom(history, 'own', sprintSoFar(states));
      return projectionReading(projection, { thresholds: DEFAULT_THRESHOLDS }, states);
    };
    const { subjectMs, baselineMs } = await medianTimes(reading, () =>
      plainLoop(past, statesOf({ cards, facts })),
    );
    return [
      benchRow({
        name: `statistics of a status, ${past.length} past sprints and ${CARDS} cards`,
        unit: 'ms',
        value: subjectMs,
        baseline: 'plain loop over the same data',
        baselineValue: baselineMs,
        bound: { of: 'value', atMost: 20 },
      }),
    ];
  },
};
