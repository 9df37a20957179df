/** Invented answers of the use cases, for tests that are about the way there and back. */

import { bigCardsOf } from '../../../src/app/advice/odds-advice.ts';
import { readCommitment } from '../../../src/app/advice/range-advice.ts';
import type { AnswerForm } from '../../../src/app/answering/answer-form.ts';
import type { PromptContent } from '../../../src/app/answering/prompt-content.ts';
import type { AnswerOutcome } from '../../../src/app/answering/record-answers.ts';
import { cardLine, statesOf } from '../../../src/app/cards/card-line.ts';
import type { PullInCheck } from '../../../src/app/cards/pull-in-check.ts';
import type { VerdictContent } from '../../../src/app/closing/verdict-content.ts';
import type { DaysOffForm } from '../../../src/app/days-off/days-off-form.ts';
import type { DaysOffPreview } from '../../../src/app/days-off/import-days-off.ts';
import type { Experiment } from '../../../src/app/experiments/experiment.ts';
import type { TeamExport } from '../../../src/app/export/export-sprints.ts';
import type { BaselineForm, BaselineNamed } from '../../../src/app/history/name-baseline.ts';
import type { ValueForm, ValueRecorded } from '../../../src/app/history/record-value.ts';
import type { ImportPreview } from '../../../src/app/import/import-reading.ts';
import type { SprintsImported } from '../../../src/app/import/import-sprints.ts';
import type { ValuesPreview } from '../../../src/app/import/import-values.ts';
import type { PlanPreview } from '../../../src/app/planning/plan-sprint.ts';
import type { OwnPromptSetting } from '../../../src/app/team/own-prompt.ts';
import type { Sprint, Team } from '../../../src/app/team/team.ts';
import type { StatusContent } from '../../../src/app/watching/status-content.ts';
import type { WhatIfAnswer } from '../../../src/app/watching/what-if.ts';
import { runningSummary } from '../../../src/sprint/summary.ts';
import { undefinedBecause } from '../../../src/sprint/undefined-value.ts';
import { rangeAdvice } from '../views/advice-examples.ts';
import * as examples from '../views/view-examples.ts';

export const WORKSPACE_ID = 'T0HARBOUR';
export const CHANNEL_ID = 'C0PIER';
export const DIRECT_ID = 'D0MIRA';
/** Facilitator. */
export const MIRA_ID = 'U0MIRA';
export const OLE_ID = 'U0OLE';
export const CARD_TITLE = 'Repair the tide gauge';

export const team: Team = {
  ...examples.team,
  id: 'team-1',
  workspaceId: WORKSPACE_ID,
  channelId: CHANNEL_ID,
  name: 'Pier crew',
};

export const sprint: Sprint = {
  ...examples.sprint,
  id: 'sprint-1',
  teamId: team.id,
  goal: 'Boats find their berth',
};

const card = examples.card(1, {
  title: CARD_TITLE,
  ownerIds: [MIRA_ID],
  sprintId: sprint.id,
  addedBy: MIRA_ID,
});

const answer = examples.fact(1, {
  cardId: card.id,
  memberId: MIRA_ID,
  day: '2026-11-03',
  workedPoints: 2,
  leftPoints: 3,
});

const states = statesOf({ cards: [card], facts: [answer] });
export const cards = states.map(cardLine);
export const [line] = cards as [(typeof cards)[number]];
export const heading = { team, sprint };
export const summary = runningSummary(states, {
  scale: team.scale,
  thresholds: team.thresholds,
  baseline: undefined,
});

export const prompt: PromptContent = {
  ...heading,
  userId: MIRA_ID,
  day: '2026-11-03',
  state: 'answered',
  cards,
  answered: [
    {
      card: line,
      workedPoints: 2,
      leftPoints: 3,
      growthPoints: 0,
      surprisePoints: 0,
      driftPoints: 0,
      note: '',
    },
  ],
};

export const recorded: AnswerOutcome = { kind: 'recorded', prompt };

export const recordedInPrompt: AnswerOutcome = { kind: 'recorded', prompt: { ...prompt, isInPrompt: true } };

export const grown: AnswerOutcome = {
  kind: 'growth-to-explain',
  heading,
  day: '2026-11-04',
  answers: [{ cardId: line.cardId, worked: '', left: '6', surprise: '', note: '' }],
  grown: [{ card: line, growthPoints: 3 }],
};

export const ownPrompt: OwnPromptSetting = {
  teams: [team],
  ownPrompt: { at: '10:30', timeZone: 'Europe/Lisbon' },
  timeZone: 'Europe/Lisbon',
};

export const answerForm: AnswerForm = {
  heading,
  userId: MIRA_ID,
  day: '2026-11-04',
  cards: [{ card: line, previousLeftPoints: 3, given: undefined }],
  takeable: [{ ...line, cardId: 'card-2', number: 2, key: 'LP-2', title: 'Paint the buoys', ownerIds: [] }],
};

export const verdict: VerdictContent = {
  ...heading,
  sprint: { ...sprint, state: 'closed' },
  summary,
  notes: summary.notes,
  history: { notes: [], rangeToTry: undefined },
  leadingNoteId: 'went-well',
  causes: new Map(),
  wentWell: [],
  thresholds: team.thresholds,
  scale: team.scale,
  cards,
  dropReasons: new Map(),
  said: [],
  planChanges: [],
  experiments: [],
  goalOutcome: undefined,
  cancelled: false,
  reopened: 'never',
  reopenUntil: new Date('2026-11-14T17:00:00Z'),
  closedEarlyOn: undefined,
  nextSprint: undefined,
  version: 1,
};

export const experiment: Experiment = {
  id: 'experiment-1',
  teamId: team.id,
  text: 'Split cards of 8',
  ratio: 'surpriseRatio',
  direction: 'down',
  begunBy: MIRA_ID,
  begunAt: new Date('2026-11-16T10:00:00Z'),
  afterSprintId: 'sprint-1',
  ended: undefined,
};

export const pullInCheck: PullInCheck = {
  sizes: [
    {
      estimatePoints: 3,
      chance: { afterOpenWork: 0.6, doneFirst: 0.9 },
      record: undefinedBecause('few-pulled-in', { needed: 5, known: 2 }),
    },
  ],
  openPoints: 3,
  ownSprints: 5,
  pulledIn: { cards: 2, finished: 1 },
};

const closedSprint = {
  sprintId: 'sprint-1',
  name: sprint.name,
  startsOn: sprint.startsOn,
  endsOn: sprint.endsOn,
};

export const valueRecorded: ValueRecorded = {
  team,
  sprint: { ...closedSprint, recordedValue: 1200 },
  value: 1200,
  previousValue: 1000,
  growth: { valueGrowth: 1.5, velocityGrowth: 1.2, valuePerPointGrowth: 1.25 },
  measuredBy: { sprintId: 'sprint-0', name: 'Harbour 3' },
};

export const valueForm: ValueForm = {
  team,
  sprints: [{ ...closedSprint, recordedValue: undefined }],
  initial: closedSprint.sprintId,
};

export const valuesPreview: ValuesPreview = {
  team,
  values: [{ sprint: { ...closedSprint, recordedValue: 1000 }, value: 1200 }],
  same: 1,
  without: 2,
  problems: [],
  problemsUntold: 0,
  fingerprint: 'values-1',
};

const baselineChoice = { ...closedSprint, velocityPoints: 12 };

export const baselineForm: BaselineForm = {
  team,
  choices: [baselineChoice],
  first: baselineChoice,
  median: { rule: 'first-three', velocityPoints: 11 },
  named: undefined,
  leftOut: 0,
};

export const baselineNamed: BaselineNamed = {
  team,
  baseline: baselineChoice,
  isFirst: true,
  before: { ...baselineChoice, sprintId: 'sprint-0', name: 'Harbour 3', velocityPoints: 10 },
  latest: { name: 'Harbour 13', growthBefore: 1.5, growthAfter: 1.25 },
};

export const status: StatusContent = {
  ...heading,
  on: '2026-11-04',
  begun: true,
  workingDaysLeft: 8,
  workingDays: 10,
  summary,
  cards,
  growth: [],
  asked: 1,
  answered: 1,
  onlyNamedDays: 0,
  load: {
    from: 'pace',
    pace: { signal: 'on the line', projectedLeftPoints: 0.5, daysGone: 6, isEarly: false },
    ownSprints: 0,
    neededSprints: 3,
  },
  drawn: { ...heading, members: [], states: [] },
};

export const planInput = {
  teamId: team.id,
  name: 'Harbour 13',
  goal: 'Ferries on time',
  startsOn: '2026-11-16',
  endsOn: '2026-11-27',
  closesAt: '17:00',
  awayDays: '',
  guests: '',
  cards: `${CARD_TITLE}, 5, @mira`,
};

/** A plan beside a team without history. */
export const preview: PlanPreview = {
  team,
  input: planInput,
  fingerprint: 'f1f2',
  cards,
  tickable: cards,
  leftOut: [],
  set: undefined,
  guestIds: [],
  commitmentPoints: 5,
  workingDays: 10,
  time: {
    memberDays: 26.5,
    namedDays: 0,
    onlyNamedDays: 0,
    teamOff: [],
    people: [
      {
        userId: 'U0INES00001',
        off: [{ from: '2026-11-09', to: '2026-11-10', isHalf: false }],
        worksOn: [1, 2, 3, 4],
      },
    ],
  },
  warnings: [],
  recent: [],
  range: rangeAdvice([]),
  commitment: readCommitment(5, rangeAdvice([])),
  bigCards: bigCardsOf(cards, []),
  experiments: [],
};

/** A card fewer, before there is history enough to say what that changes. */
export const whatIf: WhatIfAnswer = {
  ...heading,
  without: cards[0],
  awayDays: 1,
  morePoints: 2,
  memberDaysLeft: 20,
  floor: 0.8,
  hasPlan: true,
  load: { from: 'nothing', because: { code: 'no-points' } },
  chances: { now: { kept: 0.62, all: 0.2 }, changed: { kept: 0.7, all: 0.35 } },
};

/** A picture of one pixel, PNG. */
export const PNG = Uint8Array.from(
  Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
    'base64',
  ),
);

export const importPreview: ImportPreview = {
  team,
  files: [{ fileName: 'sprints.csv', kind: 'sprints', lines: 2, unused: ['Mood'] }],
  sprints: [
    {
      name: 'Harbour 1',
      startsOn: '2026-01-05',
      endsOn: '2026-01-16',
      commitmentPoints: 20,
      velocityPoints: 18,
      cards: 0,
    },
    {
      name: 'Harbour 2',
      startsOn: '2026-01-19',
      endsOn: '2026-01-30',
      commitmentPoints: 21.5,
      velocityPoints: undefined,
      cards: 0,
    },
  ],
  cards: 0,
  answers: 0,
  leftOut: [{ name: 'Harbour 3', startsOn: '2026-02-02', why: 'cancelled' }],
  bodies: [{ name: 'Harbour lights', leftPoints: 80, isDone: false }],
  bodiesLeftOut: [{ name: 'Bells', why: 'known' }],
  bodiesUntold: 0,
  problems: [],
  problemsUntold: 0,
  badLines: 0,
  warnings: [],
  fingerprint: 'print-1',
};

export const sprintsImported: SprintsImported = {
  team,
  sprints: importPreview.sprints,
  cards: 0,
  answers: 0,
  leftOut: importPreview.leftOut,
  bodies: importPreview.bodies,
  bodiesLeftOut: importPreview.bodiesLeftOut,
  knownSprints: 2,
};

export const teamExport: TeamExport = {
  team,
  files: [
    { fileName: 'sprints.csv', bytes: Buffer.from('name') },
    { fileName: 'cards.csv', bytes: Buffer.from('sprint') },
    { fileName: 'answers.csv', bytes: Buffer.from('sprint') },
    { fileName: 'changes.csv', bytes: Buffer.from('sprint') },
    { fileName: 'bodies.csv', bytes: Buffer.from('body') },
    { fileName: 'dates.csv', bytes: Buffer.from('body') },
  ],
  lines: { sprints: 3, cards: 12, answers: 1, changes: 0, bodies: 2, dates: 7, experiments: 0 },
  parts: 1,
  running: 1,
  cancelled: 0,
};

export const daysOffPreview: DaysOffPreview = {
  team,
  whose: 'team',
  name: 'holidays.ics',
  regions: [],
  takesFree: false,
  from: '2026-11-04',
  to: '2027-11-04',
  days: [
    { day: '2026-12-24', isHalf: true, titles: ['Christmas Eve'] },
    { day: '2026-12-25', isHalf: false, titles: ['Christmas'] },
    { day: '2026-12-26', isHalf: false, titles: ['Christmas'] },
    { day: '2026-12-28', isHalf: false, titles: [] },
  ],
  leftOut: [
    { why: 'cancelled', title: 'Regatta', days: ['2026-12-01'] },
    { why: 'free', title: 'Birthday', days: ['2026-12-02', '2027-01-04'] },
    { why: 'too-short', title: 'Dentist', days: ['2026-12-03'] },
    { why: 'off-already', title: 'Fog', days: ['2026-12-04'] },
    { why: 'no-working-day', title: '', days: ['2026-12-05', '2026-12-06'] },
    { why: 'unreadable', title: 'Broken', days: [] },
  ],
  outside: 2,
  fingerprint: 'days-1',
};

export const daysOffForm: DaysOffForm = {
  team,
  today: '2026-11-04',
  whose: ['own', 'team'],
  own: [
    { from: '2026-12-24', to: '2027-01-02', isHalf: false },
    { from: '2027-01-04', to: '2027-01-04', isHalf: true },
  ],
  ofTeam: [{ from: '2026-12-25', to: '2026-12-26', isHalf: false }],
  weekdays: [1, 2, 3, 4],
};
