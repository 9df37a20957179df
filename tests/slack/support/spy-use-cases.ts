/** Use cases that record how they were called and answer with samples. */
import { vi } from 'vitest';
import type { UseCases } from '../../../src/slack/use-cases.ts';
import * as sample from './samples.ts';

const { heading, summary, cards, line, team, verdict } = sample;

const ANSWERS: { readonly [Name in keyof UseCases]: Awaited<ReturnType<UseCases[Name]>> } = {
  answerForm: sample.answerForm,
  answerInWords: sample.recorded,
  cancelSprint: { ...verdict, cancelled: true },
  closeSprint: verdict,
  commitPlan: { ...heading, commitmentPoints: 5, cards, byUserId: sample.MIRA_ID },
  dropCard: { heading, card: { ...line, state: 'dropped' } },
  listCards: { heading, cards, openCount: 1, summary },
  measuresForm: team,
  overview: {
    teams: [
      {
        team,
        sprint: sample.sprint,
        begun: true,
        isFacilitator: true,
        myOpenCards: cards,
        promptState: 'asked',
        today: '2026-11-04',
        reopenable: false,
      },
    ],
    canSetUpHere: false,
  },
  planForm: { team, draft: sample.planInput, leftOver: 0 },
  previewPlan: {
    team,
    input: sample.planInput,
    cards,
    commitmentPoints: 5,
    workingDays: 10,
    warnings: [],
    recent: [],
  },
  pullCard: { heading, card: { ...line, origin: 'pulled-in' }, summary },
  pullForm: { heading, pace: sample.status.pace, workingDaysLeft: 8, memberIds: [sample.MIRA_ID] },
  pullLine: { heading, card: { ...line, origin: 'pulled-in' }, summary },
  recordAnswers: sample.recorded,
  recordAway: { ...sample.prompt, state: 'away' },
  recordUnchanged: { ...sample.prompt, state: 'unchanged' },
  reopenCard: { heading, card: line },
  reopenSprint: { heading, until: new Date('2026-11-14T17:00:00Z') },
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
  },
  shareStatus: undefined,
  sprintStatus: sample.status,
  statusChart: { png: sample.PNG, fileName: 'harbour-12.png', altText: 'Burndown: 3 of 5 points are left.' },
  takeCard: { heading, card: line },
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
