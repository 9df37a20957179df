/** Invented teams, sprints and cards for the store's tests. */

import { randomUUID } from 'node:crypto';
import type { NewPost } from '../../src/app/posting/posts.ts';
import { USUAL_SETTINGS } from '../../src/app/team/settings.ts';
import type { Member, NewFact, Sprint, SprintCard, SprintResult, Team } from '../../src/app/team/team.ts';
import type { Installation } from '../../src/app/workspaces/installation.ts';
import { ledgerOf } from '../../src/sprint/ledger.ts';
import { closingSummary } from '../../src/sprint/summary.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import { NO_DAYS_OFF } from '../../src/sprint/work-calendar.ts';
import type { Database } from '../../src/store/database.ts';

export const WORKSPACE = 'W-harbour';

export function aTeam(given: Partial<Team> = {}): Team {
  const id = randomUUID();
  return {
    id,
    workspaceId: WORKSPACE,
    channelId: `C-${id}`,
    name: 'Tugboats',
    timeZone: 'Europe/Lisbon',
    promptAt: '09:15',
    ...USUAL_SETTINGS,
    reminderAfterMinutes: 120,
    retentionMonths: undefined,
    workingDays: [1, 2, 3, 4, 5],
    daysOff: NO_DAYS_OFF,
    scale: [0, 0.5, 1, 2, 3, 5, 8],
    thresholds: { ...DEFAULT_THRESHOLDS, keptShareAtLeast: 0.7 },
    ownerGetsVerdicts: false,
    productOwnerId: undefined,
    baselineSprintId: undefined,
    baselineRule: 'first',
    ...given,
  };
}

export function aMember(given: Partial<Member> = {}): Member {
  return {
    userId: 'U-ana',
    name: 'Ana',
    isFacilitator: false,
    isMember: true,
    isActive: true,
    guestIn: [],
    getsVerdicts: false,
    worksOn: undefined,
    worksOnBefore: [],
    daysOff: NO_DAYS_OFF,
    joinedOn: undefined,
    leftOn: undefined,
    ...given,
  };
}

export function aSprint(teamId: string, given: Partial<Sprint> = {}): Sprint {
  return {
    id: randomUUID(),
    teamId,
    name: 'Spring tide',
    goal: 'Berth the ferry',
    startsOn: '2026-11-02',
    endsOn: '2026-11-13',
    closesAt: '17:00',
    closesAtInstant: new Date('2026-11-13T17:00:00Z'),
    state: 'open',
    closedAt: undefined,
    reopenedAt: undefined,
    nextPromptAt: new Date('2026-11-02T09:15:00Z'),
    nextReminderAt: undefined,
    lastCallAt: new Date('2026-11-13T16:00:00Z'),
    importedAt: undefined,
    plannedAt: new Date('2026-10-30T12:00:00Z'),
    ...given,
  };
}

export function aCard(sprintId: string, number: number, given: Partial<SprintCard> = {}): SprintCard {
  return {
    id: randomUUID(),
    sprintId,
    number,
    key: `LP-${number}`,
    title: `Mooring ${number}`,
    estimatePoints: 2.5,
    origin: 'planned',
    enteredOn: '2026-11-02',
    ownerIds: ['U-ana'],
    addedBy: 'U-ana',
    ...given,
  };
}

type NewAnswer = Extract<NewFact, { kind: 'answer' }>;
type NewChange = Exclude<NewFact, { kind: 'answer' }>;

export function anAnswer(cardId: string, given: Partial<NewAnswer> = {}): NewAnswer {
  return {
    kind: 'answer',
    id: randomUUID(),
    cardId,
    day: '2026-11-03',
    memberId: 'U-ana',
    workedPoints: 1,
    leftPoints: 1.5,
    surprisePoints: 0,
    note: '',
    recordedAt: new Date('2026-11-03T09:20:00Z'),
    supersedesId: undefined,
    ...given,
  };
}

export function aChange(cardId: string, kind: NewChange['kind'], given: Partial<NewChange> = {}): NewFact {
  return {
    id: randomUUID(),
    cardId,
    day: '2026-11-04',
    memberId: 'U-ana',
    note: 'no longer wanted',
    recordedAt: new Date('2026-11-04T10:00:00Z'),
    supersedesId: undefined,
    ...given,
    kind,
  } as NewFact;
}

/** A result with one card, finished at its estimate, and with 0 for a card nobody worked on. */
export function aResult(
  sprintId: string,
  velocityPoints: number,
  given: Partial<SprintResult> = {},
): SprintResult {
  const card = aCard(sprintId, 1, { estimatePoints: velocityPoints || 1 });
  const finishing = { ...anAnswer(card.id, { workedPoints: velocityPoints, leftPoints: 0 }), order: 1 };
  const states = ledgerOf([card], velocityPoints > 0 ? [finishing] : []);
  return {
    sprintId,
    version: 1,
    recordedAt: new Date('2026-11-13T17:00:30Z'),
    cancelled: false,
    summary: closingSummary(states, {
      scale: [1, 2, 3, 5, 8],
      thresholds: DEFAULT_THRESHOLDS,
      baseline: undefined,
    }),
    ...given,
  };
}

export function aPost(sprintId: string, given: Partial<NewPost> = {}): NewPost {
  return {
    id: randomUUID(),
    workspaceId: WORKSPACE,
    recipient: { channelId: 'C-quay' },
    subject: { kind: 'verdict', sprintId },
    ...given,
  };
}

/** Saves a team with one sprint, and gives both back. */
export async function savedSprint(
  database: Database,
  sprint: Partial<Sprint> = {},
): Promise<{ team: Team; sprint: Sprint }> {
  const team = aTeam();
  const saved = aSprint(team.id, sprint);
  await database.store.transaction(async (tx) => {
    await tx.write.teams.save(team);
    await tx.write.sprints.insert(saved);
  });
  return { team, sprint: saved };
}

export function anInstallation(given: Partial<Installation> = {}): Installation {
  return {
    workspaceId: `T-${randomUUID()}`,
    workspaceName: 'Harbour',
    enterpriseId: undefined,
    botUserId: 'U-bot',
    botId: 'B-bot',
    token: { sealed: `v1.${randomUUID()}`, keyName: 'spring' },
    scopes: ['chat:write', 'commands'],
    installedBy: 'U-ana',
    installedAt: new Date('2026-11-02T10:00:00Z'),
    revokedAt: undefined,
    ...given,
  };
}
