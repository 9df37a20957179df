/** An invented sprint of an invented harbour, from planning to verdict, as the views are given it. */

import { bigCardsOf } from '../../../src/app/advice/odds-advice.ts';
import { rangeOf, readCommitment } from '../../../src/app/advice/range-advice.ts';
import { readSet } from '../../../src/app/advice/set-advice.ts';
import type { AnswerForm } from '../../../src/app/answering/answer-form.ts';
import type { PromptContent } from '../../../src/app/answering/prompt-content.ts';
import type { AnswerOutcome } from '../../../src/app/answering/record-answers.ts';
import type { CardLine } from '../../../src/app/cards/card-line.ts';
import { cardLine, statesOf } from '../../../src/app/cards/card-line.ts';
import type { PullInCheck, PullInSize } from '../../../src/app/cards/pull-in-check.ts';
import { sprintDays } from '../../../src/app/clock/sprint-clock.ts';
import { causesOf, leadingNote, supportedNotes } from '../../../src/app/closing/leading-note.ts';
import { saidOfCards, type VerdictContent } from '../../../src/app/closing/verdict-content.ts';
import type { BaselineForm, BaselineNamed } from '../../../src/app/history/name-baseline.ts';
import type { PastSprint } from '../../../src/app/history/past-sprint.ts';
import type { ValueForm, ValueRecorded } from '../../../src/app/history/record-value.ts';
import type { PlanChange } from '../../../src/app/planning/plan-change.ts';
import type { PlanContent } from '../../../src/app/planning/plan-content.ts';
import type { PlanPreview } from '../../../src/app/planning/plan-sprint.ts';
import { type RetroContent, retroQuestions } from '../../../src/app/retro/retro-content.ts';
import { timelineOf } from '../../../src/app/retro/timeline.ts';
import { USUAL_SETTINGS } from '../../../src/app/team/settings.ts';
import type { RecordedFact, Sprint, SprintCard, SprintHeading, Team } from '../../../src/app/team/team.ts';
import type { HomeTeam } from '../../../src/app/watching/home-page.ts';
import type { ProjectionReading } from '../../../src/app/watching/load-outlook.ts';
import type { Overview, TeamOverview } from '../../../src/app/watching/overview.ts';
import type { StatusContent } from '../../../src/app/watching/status-content.ts';
import type { WhatIfAnswer } from '../../../src/app/watching/what-if.ts';
import { type WorkTime, whatWentWell } from '../../../src/sprint/evidence.ts';
import { closingSummary, runningSummary } from '../../../src/sprint/summary.ts';
import { tellingCards } from '../../../src/sprint/telling-cards.ts';
import { DEFAULT_THRESHOLDS } from '../../../src/sprint/thresholds.ts';
import { NO_DAYS_OFF } from '../../../src/sprint/work-calendar.ts';

export const ANA = 'U0ANA';
export const BEN = 'U0BEN';

export const team: Team = {
  id: 'team-harbour',
  workspaceId: 'T0PORT',
  channelId: 'C0HARBOUR',
  name: 'Harbour',
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

export const sprint: Sprint = {
  id: 'sprint-12',
  teamId: team.id,
  name: 'Harbour 12',
  goal: 'Skippers see tides before they book a berth.',
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

export const heading: SprintHeading = { team, sprint };

export function card(number: number, over: Partial<SprintCard> = {}): SprintCard {
  return {
    id: `card-${number}`,
    sprintId: sprint.id,
    number,
    key: `LP-${number}`,
    title: `Card ${number}`,
    estimatePoints: 5,
    origin: 'planned',
    enteredOn: sprint.startsOn,
    ownerIds: [ANA],
    addedBy: ANA,
    ...over,
  };
}

/** A fact with what does not matter here filled in. */
export function fact(
  order: number,
  over: { cardId: string; day: string } & Partial<RecordedFact & { kind: 'answer' }>,
): RecordedFact {
  const base = {
    order,
    memberId: ANA,
    id: `fact-${order}`,
    recordedAt: new Date(0),
    note: '',
    supersedesId: undefined,
  };
  return { ...base, kind: 'answer', workedPoints: undefined, leftPoints: 0, surprisePoints: 0, ...over };
}

const drop = (order: number, cardId: string, note: string): RecordedFact => {
  const { workedPoints, leftPoints, surprisePoints, ...rest } = fact(order, {
    cardId,
    day: '2026-11-06',
    note,
  }) as RecordedFact & { kind: 'answer' };
  return { ...rest, kind: 'drop' };
};

export const sprintCards: readonly SprintCard[] = [
  card(1, { title: 'Import tide tables' }),
  card(2, { title: 'Show tides in the berth calendar', estimatePoints: 8, ownerIds: [ANA, BEN] }),
  card(3, { title: 'Print the harbour map', estimatePoints: 2, ownerIds: [BEN] }),
  card(4, { key: '4', title: 'Warn of low water', estimatePoints: 3, ownerIds: [] }),
  card(5, {
    title: 'Repair the tide gauge',
    origin: 'pulled-in',
    estimatePoints: 3,
    enteredOn: '2026-11-04',
  }),
];

/** Everything finished but card 4; card 1 grew by surprise work, card 2 by drift, card 3 was dropped. */
export const sprintFacts: readonly RecordedFact[] = [
  fact(1, { cardId: 'card-1', day: '2026-11-03', workedPoints: 2, leftPoints: 3 }),
  fact(2, {
    cardId: 'card-1',
    day: '2026-11-04',
    workedPoints: 1,
    leftPoints: 4,
    surprisePoints: 2,
    note: 'The tables come in two formats',
  }),
  fact(3, { cardId: 'card-1', day: '2026-11-05', leftPoints: 0 }),
  fact(4, { cardId: 'card-2', day: '2026-11-10', workedPoints: 6, leftPoints: 3 }),
  fact(5, { cardId: 'card-2', day: '2026-11-11', leftPoints: 0 }),
  drop(6, 'card-3', 'The printer has left the quay'),
  fact(7, { cardId: 'card-5', day: '2026-11-11', leftPoints: 0 }),
];

export function linesOf(cards: readonly SprintCard[], facts: readonly RecordedFact[] = []): CardLine[] {
  return statesOf({ cards, facts }).map(cardLine);
}

const yardstick = {
  scale: team.scale,
  thresholds: team.thresholds,
  baseline: { name: 'Harbour 1', velocityPoints: 12 },
};

export function verdictOf(
  cards: readonly SprintCard[],
  facts: readonly RecordedFact[],
  over: Partial<VerdictContent> = {},
  time?: WorkTime,
): VerdictContent {
  const states = statesOf({ cards, facts });
  const days = sprintDays(team, sprint);
  const summary = over.summary ?? closingSummary(states, yardstick);
  const history = over.history ?? { notes: [], rangeToTry: undefined };
  const notes = over.notes ?? supportedNotes(summary, history);
  return {
    team,
    sprint: { ...sprint, state: 'closed' },
    summary,
    notes,
    history,
    thresholds: team.thresholds,
    scale: team.scale,
    leadingNoteId: leadingNote(summary.verdict, notes, history),
    causes: new Map(notes.map(({ id }) => [id, causesOf(id, { states, days, scale: team.scale, time })])),
    wentWell: summary.verdict.verdict === 'kept' ? whatWentWell(states, days) : [],
    cards: states.map(cardLine),
    dropReasons: new Map(
      facts.filter(({ kind }) => kind === 'drop').map(({ cardId, note }) => [cardId, note]),
    ),
    said: saidOfCards(states, facts),
    planChanges: [],
    experiments: [],
    goalOutcome: undefined,
    cancelled: false,
    reopened: 'never',
    reopenUntil: new Date('2026-11-14T17:00:00Z'),
    closedEarlyOn: undefined,
    nextSprint: undefined,
    version: 1,
    ...over,
  };
}

/** The retrospective of the same sprint. */
export function retroOf(
  cards: readonly SprintCard[],
  facts: readonly RecordedFact[],
  over: Partial<RetroContent> = {},
  verdict: VerdictContent | undefined = verdictOf(cards, facts),
  corrections: readonly PlanChange[] = [],
): RetroContent {
  const states = statesOf({ cards, facts });
  const days = sprintDays(team, sprint);
  return {
    team,
    sprint: { ...sprint, state: 'closed' },
    verdict,
    timeline: timelineOf(team, states, facts, corrections),
    cards: states.map(cardLine),
    telling: tellingCards(states, days, team.scale),
    experiments: [],
    questions: retroQuestions({ states, days, scale: team.scale, time: undefined }, verdict),
    ...over,
  };
}

/** 13 of 18 points: missed. */
export const missedVerdict = verdictOf(sprintCards, sprintFacts);

/** All of it finished without growth: kept. */
export const keptVerdict = verdictOf(sprintCards.slice(0, 2), [
  fact(1, { cardId: 'card-1', day: '2026-11-05', leftPoints: 0 }),
  fact(2, { cardId: 'card-2', day: '2026-11-11', leftPoints: 0 }),
]);

/** Only pulled-in work. */
export const noPlanVerdict = verdictOf(
  [card(1, { origin: 'pulled-in', title: 'Repair the tide gauge', estimatePoints: 3 })],
  [fact(1, { cardId: 'card-1', day: '2026-11-05', leftPoints: 0 })],
);

export function promptOf(over: Partial<PromptContent> = {}): PromptContent {
  const cards = linesOf(sprintCards, sprintFacts.slice(0, 1)).filter(({ ownerIds }) =>
    ownerIds.includes(ANA),
  );
  return { ...heading, userId: ANA, day: '2026-11-04', state: 'asked', cards, answered: [], ...over };
}

export const answeredPrompt: PromptContent = promptOf({
  state: 'answered',
  answered: [
    {
      card: linesOf(sprintCards, sprintFacts.slice(0, 2))[0] as CardLine,
      workedPoints: 1,
      leftPoints: 4,
      growthPoints: 2,
      surprisePoints: 2,
      driftPoints: 0,
      note: 'The tables come in two formats',
    },
  ],
});

export const plan: PlanContent = {
  ...heading,
  commitmentPoints: 18,
  cards: linesOf(sprintCards.slice(0, 4)),
  byUserId: BEN,
};

/** A card fewer and somebody away, with a projection. */
export const whatIf: WhatIfAnswer = {
  ...heading,
  without: undefined,
  awayDays: 1,
  morePoints: 2,
  memberDaysLeft: 20,
  floor: 0.8,
  hasPlan: true,
  load: { from: 'nothing', because: { code: 'no-points' } },
  chances: { now: { kept: 0.62, all: 0.2 }, changed: { kept: 0.51, all: 0.12 } },
};

/** Seven in ten that it fails, from a fair history. */
export function projectionOf(over: Partial<ProjectionReading> = {}): ProjectionReading {
  return {
    signal: 'heavy',
    keepingChance: 0.32,
    allFinishedChance: 0.104,
    isAllNeeded: false,
    keptFloor: 0.8,
    medianPoints: 12.5,
    narrow: { low: 10.5, high: 15 },
    wide: { low: 8, high: 18.5 },
    ownSprints: 14,
    alikeSprints: 5.3,
    watchedSprints: 14,
    othersLend: false,
    finishedPoints: 5,
    cardPoints: 21,
    ...over,
  };
}

/** How cards of four sizes would fare. */
export function pullInCheckOf(over: Partial<PullInCheck> = {}): PullInCheck {
  const size = (estimatePoints: number, afterOpenWork: number, doneFirst: number): PullInSize => ({
    estimatePoints,
    chance: { afterOpenWork, doneFirst },
    record: {
      finished: 5,
      cards: 7,
      share: 5 / 7,
      interval: { low: 0.359, high: 0.918 },
      comparable: estimatePoints === 3,
    },
  });
  return {
    sizes: [size(1, 0.42, 0.97), size(3, 0.31, 0.9), size(8, 0.06, 0.44), size(13, 0, 0.04), size(21, 0, 0)],
    openPoints: 16,
    ownSprints: 14,
    pulledIn: { cards: 9, finished: 6 },
    ...over,
  };
}

export function statusOf(over: Partial<StatusContent> = {}): StatusContent {
  const facts = sprintFacts.slice(0, 3);
  const states = statesOf({ cards: sprintCards, facts });
  const first = states[0];
  if (!first) throw new Error('the example has cards');
  return {
    ...heading,
    on: '2026-11-06',
    begun: true,
    workingDaysLeft: 5,
    workingDays: 10,
    summary: runningSummary(states, yardstick),
    cards: states.map(cardLine),
    growth: [
      {
        card: cardLine(first),
        day: '2026-11-04',
        surprisePoints: 2,
        driftPoints: 0,
        note: 'The tables come in two formats',
      },
    ],
    asked: 2,
    answered: 1,
    onlyNamedDays: 0,
    load: { from: 'projection', reading: projectionOf() },
    drawn: { team, sprint, members: [], states },
    ...over,
  };
}

export const answerForm: AnswerForm = {
  heading,
  userId: ANA,
  day: '2026-11-04',
  cards: promptOf().cards.map((line) => ({
    card: line,
    previousLeftPoints: line.leftPoints,
    given: undefined,
  })),
  takeable: linesOf(sprintCards).filter(({ ownerIds }) => ownerIds.length === 0),
};

export const growth: Extract<AnswerOutcome, { kind: 'growth-to-explain' }> = {
  kind: 'growth-to-explain',
  heading,
  day: '2026-11-04',
  answers: [
    { cardId: 'card-1', worked: '1', left: '4', surprise: '', note: '' },
    { cardId: 'card-2', worked: '', left: '6', surprise: '', note: '' },
  ],
  grown: [{ card: promptOf().cards[0] as CardLine, growthPoints: 2 }],
};

export const preview: PlanPreview = {
  experiments: [],
  team,
  input: {
    teamId: team.id,
    name: sprint.name,
    goal: sprint.goal,
    startsOn: sprint.startsOn,
    endsOn: sprint.endsOn,
    closesAt: sprint.closesAt,
    awayDays: '',
    cards: '',
  },
  fingerprint: 'f1f2',
  cards: plan.cards,
  tickable: plan.cards,
  leftOut: [],
  commitmentPoints: 18,
  guestIds: [],
  workingDays: 10,
  time: {
    memberDays: 26.5,
    namedDays: 0,
    onlyNamedDays: 0,
    teamOff: [],
    people: [
      {
        userId: ANA,
        off: [{ from: '2026-11-09', to: '2026-11-10', isHalf: false }],
        worksOn: [1, 2, 3, 4],
      },
    ],
  },
  warnings: [{ code: 'no-owner', cardNumbers: [4] }],
  recent: [
    { sprintName: 'Harbour 11', workingDays: 10, commitmentPoints: 20, velocityPoints: 17, verdict: 'kept' },
  ],
  ...besideHistory([]),
};

/** What the plan of 18 points means beside such a history. */
export function besideHistory(
  past: readonly PastSprint[],
): Pick<PlanPreview, 'range' | 'commitment' | 'set' | 'bigCards'> {
  const question = { about: 'range', startsOn: sprint.startsOn, endsOn: sprint.endsOn } as const;
  const coming = {
    startsOn: sprint.startsOn,
    endsOn: sprint.endsOn,
    workingDays: 10,
    members: 5,
    memberDays: 50,
    awayDays: undefined,
  };
  const range = {
    team,
    on: '2026-10-30',
    sprints: past.length,
    importedSprints: 0,
    question,
    ...rangeOf(team, past, coming),
  };
  return {
    range,
    commitment: readCommitment(18, range),
    set: readSet(plan.cards, range),
    bigCards: bigCardsOf(plan.cards, past),
  };
}

export const closedSprint = {
  sprintId: 'sprint-11',
  name: 'Harbour 11',
  startsOn: '2026-10-19',
  endsOn: '2026-10-30',
} as const;

/** The value of Harbour 11, corrected, measured by Harbour 3. */
export function valueRecordedOf(over: Partial<ValueRecorded> = {}): ValueRecorded {
  return {
    team,
    sprint: { ...closedSprint, recordedValue: 12_500 },
    value: 12_500,
    previousValue: 1200,
    growth: { valueGrowth: 1.5, velocityGrowth: 1.2, valuePerPointGrowth: 1.25 },
    measuredBy: { sprintId: 'sprint-3', name: 'Harbour 3' },
    ...over,
  };
}

/** Two sprints, the earlier with a value. */
export const valueForm: ValueForm = {
  team,
  sprints: [
    { ...closedSprint, recordedValue: undefined },
    {
      sprintId: 'sprint-10',
      name: 'Harbour 10',
      startsOn: '2025-12-15',
      endsOn: '2025-12-26',
      recordedValue: -3.5,
    },
  ],
  initial: closedSprint.sprintId,
};

const harbour3 = {
  sprintId: 'sprint-3',
  name: 'Harbour 3',
  startsOn: '2025-12-15',
  endsOn: '2025-12-26',
  velocityPoints: 10,
} as const;

export const baselineForm: BaselineForm = {
  team,
  choices: [{ ...closedSprint, velocityPoints: 12.5 }, harbour3],
  first: harbour3,
  median: { rule: 'first-three', velocityPoints: 11 },
  named: undefined,
  leftOut: 0,
};

/** From Harbour 3 to Harbour 11. */
export function baselineNamedOf(over: Partial<BaselineNamed> = {}): BaselineNamed {
  return {
    team,
    baseline: { ...closedSprint, velocityPoints: 12.5 },
    isFirst: false,
    before: harbour3,
    latest: { name: 'Harbour 12', growthBefore: 1.5, growthAfter: 1.2 },
    ...over,
  };
}

export function teamOverview(over: Partial<TeamOverview> = {}): TeamOverview {
  return {
    team,
    sprint,
    begun: true,
    isMember: true,
    isFacilitator: true,
    isProductOwner: false,
    heldBackPosts: 0,
    myOpenCards: promptOf().cards,
    promptState: 'asked',
    nextQuestionAt: undefined,
    today: '2026-11-04',
    todayShare: 1,
    daysOff: [],
    reopenable: false,
    getsVerdicts: false,
    hasFinishedSprint: false,
    ...over,
  };
}

export function homeTeam(over: Partial<HomeTeam> = {}): HomeTeam {
  return {
    ...teamOverview(),
    isPromptDay: true,
    progress: {
      workingDays: 10,
      workingDaysLeft: 8,
      commitmentPoints: 21,
      leftPoints: 16,
      idealPoints: 14.7,
      load: {
        from: 'pace',
        pace: { signal: 'heavy', projectedLeftPoints: 4, daysGone: 6, isEarly: false },
        ownSprints: 0,
        neededSprints: 3,
      },
    },
    nextSteps: [],
    ...over,
  };
}

export const overview: Overview = { teams: [teamOverview()], canSetUpHere: false };
