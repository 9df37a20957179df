/**
 * All that one status computes (summary, growth, load reading, projection, burndown) with ten years of history and 100
 * cards, by the very function behind the command, over a store that has everything at hand; against a plain loop over the
 * same data.
 */

import type { SprintCardState } from '../../src/app/cards/card-line.ts';
import { statesOf } from '../../src/app/cards/card-line.ts';
import type { PastTrace } from '../../src/app/history/past-sprint.ts';
import { tracePointAt } from '../../src/app/history/team-history.ts';
import type { Reading, Transaction } from '../../src/app/ports/store.ts';
import { USUAL_SETTINGS } from '../../src/app/team/settings.ts';
import type { RecordedFact, Sprint, SprintCard, Team } from '../../src/app/team/team.ts';
import { statusContent } from '../../src/app/watching/status-content.ts';
import { MOST_SPRINTS_BACK } from '../../src/forecast/project-velocity.ts';
import { sprintSoFar } from '../../src/forecast/sprint-so-far.ts';
import { burndownOf } from '../../src/sprint/burndown.ts';
import { dayPlus } from '../../src/sprint/calendar.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import { NO_DAYS_OFF } from '../../src/sprint/work-calendar.ts';
import { seededRandom } from '../forecast/seeded-random.ts';
import type { Bench } from './bench-row.ts';
import { benchRow } from './bench-row.ts';
import { medianTimes } from './median-time.ts';

const ELAPSED_SHARE = 0.4;
const WORKING_DAYS = 10;
/** Ten years of fortnights. */
const OWN_SPRINTS = 260;
const OTHER_SPRINTS = 1_000;
const TODAY = '2026-11-06';
const CARDS = 100;
const ANSWERED_DAYS = 4;

function pastTraces(): PastTrace[] {
  const { uniform } = seededRandom(20261125);
  const halves = (points: number): number => Math.round(points * 2) / 2;
  return Array.from({ length: OWN_SPRINTS + OTHER_SPRINTS }, (_, i) => {
    const commitmentPoints = 20 + Math.round(40 * uniform());
    const velocityPoints = halves(commitmentPoints * uniform());
    return {
      teamId: i % 5 === 0 && i < 5 * OWN_SPRINTS ? 'own' : `other-${i % 7}`,
      endsOn: dayPlus('2016-11-25', Math.floor(2.8 * i)),
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

const TEAM: Team = {
  id: 'own',
  workspaceId: 'W1',
  channelId: 'C1',
  name: 'Tugboats',
  timeZone: 'Europe/Lisbon',
  promptAt: '09:15',
  ...USUAL_SETTINGS,
  retentionMonths: undefined,
  workingDays: [1, 2, 3, 4, 5],
  daysOff: NO_DAYS_OFF,
  thresholds: DEFAULT_THRESHOLDS,
  ownerGetsVerdicts: false,
  productOwnerId: undefined,
  baselineSprintId: undefined,
  baselineRule: 'first',
};

const SPRINT: Sprint = {
  id: 'sprint',
  teamId: TEAM.id,
  name: 'Harbour 12',
  goal: '',
  startsOn: '2026-11-02',
  endsOn: '2026-11-13',
  closesAt: '17:00',
  closesAtInstant: new Date('2026-11-13T17:00:00Z'),
  state: 'open',
  closedAt: undefined,
  reopenedAt: undefined,
  nextPromptAt: undefined,
  nextReminderAt: undefined,
  lastCallAt: undefined,
  importedAt: undefined,
};

/** What a status reads, at hand; the latest of the history, as the store picks them. */
function storeOf(
  past: readonly PastTrace[],
  cards: readonly SprintCard[],
  facts: readonly RecordedFact[],
): Transaction {
  const read: Partial<Reading> = {
    recordsOf: async () => ({ cards, facts }),
    promptsOf: async () => [],
    baselineOf: async () => ({ name: 'Harbour 1', velocityPoints: 20 }),
    sprintsWithoutPast: async () => [],
    // So that everything is learnt again each time.
    pastVersion: async () => undefined,
    watchedSprintsOf: async () => [],
    pastTracesOf: async (team, most) => {
      const latest = new Set([
        ...past.filter(({ teamId }) => teamId === team.id).slice(-most.own),
        ...past.filter(({ teamId }) => teamId !== team.id).slice(-most.others),
      ]);
      return past.filter((one) => latest.has(one));
    },
  };
  return { read } as Transaction;
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

export const statusStatisticsBench: Bench = {
  name: 'status-statistics',
  takesSeconds: 2,
  async run() {
    const past = pastTraces();
    const cards = sprintCards();
    const facts = factsAbout(cards);
    const tx = storeOf(past, cards, facts);
    const read = await tx.read.pastTracesOf(TEAM, MOST_SPRINTS_BACK, ELAPSED_SHARE);
    const everything = async () => {
      await statusContent(tx, { team: TEAM, members: [] }, SPRINT, TODAY);
      const { name: sprintName, startsOn, endsOn } = SPRINT;
      const span = { sprintName, startsOn, endsOn, calendar: TEAM, members: [], today: TODAY };
      burndownOf(statesOf({ cards, facts }), span);
    };
    const { load } = await statusContent(tx, { team: TEAM, members: [] }, SPRINT, TODAY);
    if (load.from !== 'projection')
      throw new Error('There is nothing to measure: the status has no projection.');
    const { subjectMs, baselineMs } = await medianTimes(everything, async () =>
      plainLoop(read, statesOf({ cards, facts })),
    );
    return [
      benchRow({
        name: `statistics of a status, ${OWN_SPRINTS} past sprints and ${CARDS} cards`,
        unit: 'ms',
        value: subjectMs,
        baseline: 'plain loop over the same data',
        baselineValue: baselineMs,
        bound: { of: 'value', atMost: 20 },
      }),
    ];
  },
};
