/** Use cases that record how they were called and answer with samples. */

import { vi } from 'vitest';
import type { Removal } from '../../../src/app/import/remove-import.ts';
import { readCardRows } from '../../../src/app/planning/card-rows.ts';
import type { UseCases } from '../../../src/app/use-cases.ts';
import type { HomePage } from '../../../src/app/watching/home-page.ts';
import type { TeamOverview } from '../../../src/app/watching/overview.ts';
import { ordinaryJoint } from '../../charts/joint-examples.ts';
import { aBody, ordinaryKept } from '../../charts/kept-examples.ts';
import { rangeAdvice, STEADY } from '../views/advice-examples.ts';
import * as sample from './samples.ts';

const { heading, summary, cards, line, team, verdict } = sample;

const TEAM_OVERVIEW: TeamOverview = {
  team,
  sprint: sample.sprint,
  begun: true,
  isMember: true,
  isFacilitator: true,
  isProductOwner: false,
  heldBackPosts: 0,
  myOpenCards: cards,
  promptState: 'asked',
  nextQuestionAt: undefined,
  today: '2026-11-04',
  todayShare: 1,
  daysOff: [],
  reopenable: false,
  getsVerdicts: false,
  hasFinishedSprint: true,
};

const HOME_PAGE: HomePage = {
  teams: [{ ...TEAM_OVERVIEW, isPromptDay: true, progress: undefined, nextSteps: [] }],
};

const REMOVAL: Removal = {
  team,
  sprint: {
    sprintId: 'sprint-1',
    name: 'Pier 1',
    startsOn: '2026-06-15',
    endsOn: '2026-06-26',
    commitmentPoints: 22,
  },
  sprintsLeft: 7,
};

const ANSWERS: { readonly [Name in keyof UseCases]: Awaited<ReturnType<UseCases[Name]>> } = {
  addGuests: { heading, userIds: [sample.MIRA_ID] },
  removeGuests: { heading, userIds: [sample.MIRA_ID] },
  adviceChart: { png: sample.PNG, fileName: 'range.png', altText: 'At 25 points: 8 in 10 to keep it.' },
  answerForm: sample.answerForm,
  answerInWords: sample.recorded,
  answersForCard: false,
  askAdvice: { ...rangeAdvice(STEADY), askerIsFacilitator: true },
  askWhatIf: sample.whatIf,
  whatIfForm: { ...heading, cards },
  baselineForm: sample.baselineForm,
  beginWelcome: { teamNames: ['Pier crew'], isAsked: true },
  cancelSprint: { ...verdict, cancelled: true },
  cardToEdit: { heading, card: line, key: line.key, mayChangeEstimate: true },
  bodyForm: { team, body: undefined, turn: undefined },
  keepBody: { team, body: aBody(), before: undefined, advice: ordinaryKept },
  renameBody: { team, body: aBody(), before: aBody(), advice: ordinaryKept },
  orderBodies: ordinaryKept,
  jointForecast: ordinaryJoint,
  endBody: { team, body: aBody(), how: 'done', told: [] },
  closeSprint: verdict,
  chooseOwnPrompt: sample.ownPrompt,
  commitPlan: { ...heading, commitmentPoints: 5, cards, byUserId: sample.MIRA_ID, leftOut: [] },
  daysOffForm: sample.daysOffForm,
  digestForm: { team, digestAt: '08:30' },
  directVerdicts: { team, isWanted: false },
  chooseDirectVerdicts: { team, isWanted: true },
  setDigest: { team, digestAt: '08:30' },
  dropCard: { heading, card: { ...line, state: 'dropped' } },
  editCard: { heading, card: line, changes: [] },
  editSprint: { heading, changes: [] },
  endForm: { team, sprintName: 'Harbour 12', canBeExported: true, erasedOn: '2027-12-30' },
  endTeam: { ...team, endedAt: new Date('2026-11-30T12:00:00Z') },
  resumeTeam: { team, sprintName: 'Harbour 12' },
  erasePerson: { records: 24, teamNames: ['Pier crew'] },
  exportSprints: sample.teamExport,
  forecastForm: { team, velocities: [22, 25, 21], keptNames: [] },
  assignCards: { heading, cards: [line] },
  releaseCards: { heading, cards: [line] },
  giveCards: { heading, cards: [line] },
  importValues: { kind: 'preview', preview: sample.valuesPreview },
  importDaysOff: { kind: 'preview', preview: sample.daysOffPreview },
  importForm: { team, knownSprints: 0 },
  importSprints: { kind: 'preview', preview: sample.importPreview },
  leaveForm: {
    team,
    leftAlone: 1,
    shared: 0,
    isLastFacilitator: false,
    isMember: true,
    isProductOwner: false,
  },
  leaveTeam: team,
  listCards: { heading, cards, summary, planChanges: [], isOnTeam: true },
  measuresForm: team,
  moveTeam: team,
  nameBaseline: sample.baselineNamed,
  openHomePage: HOME_PAGE,
  ownPromptForm: sample.ownPrompt,
  overview: { teams: [TEAM_OVERVIEW], canSetUpHere: false },
  personalCopy: { fileName: 'loadline-about-me.json', bytes: new TextEncoder().encode('{}'), records: 24 },
  planForm: { team, draft: sample.planInput, leftOver: 0 },
  previewPlan: sample.preview,
  previewTicked: sample.preview,
  privacyOverview: {
    kinds: [{ kind: 'answers', count: 24, from: '2026-11-02', to: '2026-11-13', teamNames: ['Pier crew'] }],
    teams: [{ name: 'Pier crew', retentionMonths: 13 }],
  },
  previewRemoval: REMOVAL,
  removalForm: { team, sprints: [REMOVAL.sprint], leftOut: 0 },
  removeImport: REMOVAL,
  pullForm: {
    heading,
    load: sample.status.load,
    check: sample.pullInCheck,
    workingDaysLeft: 8,
  },
  pullCards: {
    heading,
    cards: [{ ...line, origin: 'pulled-in' }],
    alike: [],
    summary,
    check: sample.pullInCheck,
  },
  readCardFile: {
    kind: 'reading',
    reading: {
      team,
      fileName: 'board.csv',
      read: readCardRows({ fileName: 'board.csv', text: 'Title,Points\nFog horn,3\n' }, []),
    },
  },
  recordAnswers: sample.recorded,
  recordAway: { ...sample.prompt, state: 'away' },
  tryForm: { team, verdict: undefined, open: [] },
  tryExperiment: { team, experiment: sample.experiment },
  listExperiments: { team, experiments: [sample.experiment], askerIsFacilitator: true },
  endExperiment: { team, experiment: sample.experiment, outcome: 'drop' },
  goalForm: { heading, outcome: undefined },
  recordGoal: {
    heading,
    outcome: { met: 'yes', note: '', saidBy: sample.MIRA_ID, saidAt: new Date('2026-11-13T16:00:00Z') },
  },
  recordUnchanged: { ...sample.prompt, state: 'unchanged' },
  recordValue: sample.valueRecorded,
  recordValueLine: sample.valueRecorded,
  refreshHomePage: HOME_PAGE,
  reopenCard: { heading, card: line },
  blockCard: { heading, card: line },
  unblockCard: { heading, card: line, day: '2026-11-04' },
  reopenSprint: { heading, until: new Date('2026-11-14T17:00:00Z'), lastDay: '2026-11-13' },
  retroSheet: {
    ...heading,
    verdict,
    timeline: [],
    cards,
    telling: [],
    experiments: [],
    questions: [],
  },
  saveDaysOff: sample.daysOffForm,
  sayDaysOff: {
    whose: 'own',
    teams: [team],
    today: '2026-11-04',
    spans: [{ from: '2026-12-24', to: '2027-01-02' }],
    share: 0,
  },
  sayWeekdays: { team, worksOn: [1, 2, 3, 4] },
  setMeasures: team,
  setUpTeam: team,
  setupForm: {
    existing: false,
    channelId: sample.CHANNEL_ID,
    name: 'Pier crew',
    timeZone: 'Europe/Lisbon',
    promptAt: '09:15',
    workingDays: [1, 2, 3, 4, 5],
    memberIds: [sample.MIRA_ID],
    facilitatorIds: [sample.MIRA_ID],
    productOwnerId: undefined,
    isShared: false,
    acceptsShared: false,
  },
  shareAdvice: undefined,
  shareRetro: undefined,
  shareStatus: undefined,
  sprintStatus: sample.status,
  sprintToEdit: heading,
  sprintToEnd: { heading, cards, summary },
  statusBurndown: {
    png: sample.PNG,
    fileName: 'harbour-12.png',
    altText: 'Burndown: 3 of 5 points are left.',
  },
  statusChart: { png: sample.PNG, fileName: 'harbour-12.png', altText: 'Burndown: 3 of 5 points are left.' },
  takeBackWelcome: undefined,
  takeCards: { heading, cards: [line] },
  undropCard: { heading, card: line },
  valueForm: sample.valueForm,
};

export type SpyUseCases = { readonly [Name in keyof UseCases]: ReturnType<typeof vi.fn<UseCases[Name]>> };

export function spyUseCases(): SpyUseCases {
  const spies = Object.entries(ANSWERS).map(([name, answer]) => [name, vi.fn(async () => answer)]);
  return Object.fromEntries(spies) as SpyUseCases;
}

/** Names and inputs of the use cases that were called, in order of name; the actor left out. */
export function callsOf(useCases: SpyUseCases): [string, ...unknown[]][] {
  return Object.entries(useCases).flatMap(([name, spy]) =>
    spy.mock.calls.map(([, ...input]): [string, ...unknown[]] => [name, ...input]),
  );
}
