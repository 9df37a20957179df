/** Invented answers of the use cases, for tests that are about the way there and back. */
import type { AnswerForm } from '../../../src/app/answer-form.ts';
import { cardLine, statesOf } from '../../../src/app/card-line.ts';
import type { PromptContent, StatusContent, VerdictContent } from '../../../src/app/message-content.ts';
import type { AnswerOutcome } from '../../../src/app/record-answers.ts';
import type { RecordedFact, Sprint, SprintCard, Team } from '../../../src/app/team.ts';
import { DEFAULT_SCALE } from '../../../src/sprint/scale.ts';
import { runningSummary } from '../../../src/sprint/summary.ts';
import { DEFAULT_THRESHOLDS } from '../../../src/sprint/thresholds.ts';

export const WORKSPACE_ID = 'T0HARBOUR';
export const CHANNEL_ID = 'C0PIER';
export const DIRECT_ID = 'D0MIRA';
/** Facilitator. */
export const MIRA_ID = 'U0MIRA';
export const OLE_ID = 'U0OLE';
export const CARD_TITLE = 'Repair the tide gauge';

export const team: Team = {
  id: 'team-1',
  workspaceId: WORKSPACE_ID,
  channelId: CHANNEL_ID,
  name: 'Pier crew',
  timeZone: 'Europe/Lisbon',
  promptAt: '09:15',
  reminderAfterMinutes: 180,
  closesAt: '17:00',
  workingDays: [1, 2, 3, 4, 5],
  scale: DEFAULT_SCALE,
  thresholds: DEFAULT_THRESHOLDS,
  productOwnerId: undefined,
  baselineSprintId: undefined,
};

export const sprint: Sprint = {
  id: 'sprint-1',
  teamId: team.id,
  name: 'Harbour 12',
  goal: 'Boats find their berth',
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
};

const card: SprintCard = {
  id: 'card-1',
  key: 'LP-1',
  title: CARD_TITLE,
  estimatePoints: 5,
  origin: 'planned',
  enteredOn: '2026-11-02',
  ownerIds: [MIRA_ID],
  sprintId: sprint.id,
  number: 1,
  addedBy: MIRA_ID,
};

const answer: RecordedFact = {
  kind: 'answer',
  id: 'answer-1',
  cardId: card.id,
  memberId: MIRA_ID,
  day: '2026-11-03',
  order: 1,
  workedPoints: 2,
  leftPoints: 3,
  surprisePoints: 0,
  note: '',
  recordedAt: new Date('2026-11-03T09:20:00Z'),
  supersedesId: undefined,
};

const states = statesOf({ cards: [card], facts: [answer] });
export const cards = states.map(cardLine);
export const [line] = cards as [(typeof cards)[number]];
export const heading = { team, sprint };
export const summary = runningSummary(states, {
  scale: team.scale,
  thresholds: team.thresholds,
  baselineVelocityPoints: undefined,
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

export const grown: AnswerOutcome = {
  kind: 'growth-to-explain',
  heading,
  day: '2026-11-04',
  answers: [{ cardId: line.cardId, worked: '', left: '6', surprise: '', note: '' }],
  grown: [{ card: line, growthPoints: 3 }],
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
  cards,
  dropReasons: new Map(),
  cancelled: false,
  reopened: 'never',
  reopenUntil: new Date('2026-11-14T17:00:00Z'),
  version: 1,
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
  pace: { signal: 'on the line', noSignalBecause: undefined, projectedLeftPoints: 0.5 },
};

export const planInput = {
  teamId: team.id,
  name: 'Harbour 13',
  goal: 'Ferries on time',
  startsOn: '2026-11-16',
  endsOn: '2026-11-27',
  closesAt: '17:00',
  cards: `${CARD_TITLE}, 5, @mira`,
};

/** A picture of one pixel, PNG. */
export const PNG = Uint8Array.from(
  Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
    'base64',
  ),
);
