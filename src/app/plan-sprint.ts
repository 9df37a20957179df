/** Plans a sprint: reads what was typed, shows what it means, and commits to it. */
import { randomUUID } from 'node:crypto';
import { dayPlus, daysBetween, formatDay, isDay, workingDaysFromTo } from '../sprint/calendar.ts';
import { formatPoints } from '../sprint/points.ts';
import { isOnScale } from '../sprint/scale.ts';
import type { Verdict } from '../sprint/verdict.ts';
import { cardLine, isOpenCard, statesOf } from './card-line.ts';
import type { PastedCard } from './card-paste.ts';
import { formatCardLine, MAX_CARDS, parseCards } from './card-paste.ts';
import { instantOf, isTimeOfDay } from './local-time.ts';
import type { CardLine, PlanContent } from './message-content.ts';
import type { Membership, Place } from './place.ts';
import { membershipAt, membershipInTeam, requireFacilitator, todayOf } from './place.ts';
import type { PlanInput } from './plan-input.ts';
import type { AppDependencies, Transaction } from './ports.ts';
import type { InputProblem } from './refusal.ts';
import { Refusal, refuseIfAny } from './refusal.ts';
import { firstPromptAt, lastCallAt } from './sprint-clock.ts';
import type { Actor, Member, Sprint, SprintCard, Team } from './team.ts';

export type { PlanInput } from './plan-input.ts';

/** A sprint longer than this is surely a typing error. */
const MAX_SPRINT_DAYS = 92;
const MAX_NAME_LENGTH = 80;
const MAX_GOAL_LENGTH = 500;
const DEFAULT_SPRINT_DAYS = 14;

export interface PlanForm {
  readonly team: Team;
  /** What was typed before and not committed to, else defaults. */
  readonly draft: PlanInput;
  /** Unfinished cards of the last sprint that the draft begins with. */
  readonly leftOver: number;
}

/** A closed sprint beside which a new commitment is seen. */
export interface RecentSprint {
  readonly sprintName: string;
  readonly commitmentPoints: number;
  readonly velocityPoints: number;
  readonly verdict: Verdict;
}

export interface PlanPreview {
  readonly team: Team;
  readonly input: PlanInput;
  readonly cards: readonly CardLine[];
  readonly commitmentPoints: number;
  readonly workingDays: number;
  /** Full sentences about what may be a slip; none stops the plan. */
  readonly warnings: readonly string[];
  /** The latest closed sprints, latest first, three at most. */
  readonly recent: readonly RecentSprint[];
}

/** What the plan form shows at first. */
export async function planForm(deps: AppDependencies, actor: Actor, place: Place): Promise<PlanForm> {
  return deps.store.transaction(async (tx) => {
    const membership = await membershipAt(tx, actor, place);
    requireFacilitator(membership, 'plan a sprint');
    const { team } = membership;
    const draft = await tx.draftOf(team.id, actor.userId);
    if (draft) return { team, draft, leftOver: 0 };
    const { input, leftOver } = await freshDraft(tx, membership, todayOf(team, deps.clock.now()));
    return { team, draft: input, leftOver };
  });
}

async function freshDraft(
  tx: Transaction,
  { team, members }: Membership,
  today: string,
): Promise<{ input: PlanInput; leftOver: number }> {
  const last = await tx.latestFinishedSprint(team.id);
  const open = await tx.openSprintsOf(team.id);
  const previous = open.at(-1) ?? last;
  const isDayTaken = previous !== undefined && (previous.state === 'open' || previous.endsOn === today);
  const free = isDayTaken ? dayPlus(previous.endsOn, 1) : today;
  const startsOn = nextWorkingDay(free > today ? free : today, team.workingDays);
  const lengthDays = previous ? daysBetween(previous.startsOn, previous.endsOn) : DEFAULT_SPRINT_DAYS - 3;
  const leftOvers = previous ? statesOf(await tx.recordsOf(previous.id)).filter(isOpenCard) : [];
  const lines = leftOvers
    .filter(({ leftPoints }) => leftPoints > 0)
    .map(({ card, leftPoints }) =>
      formatCardLine(
        { key: card.key === String(card.number) ? undefined : card.key, title: card.title },
        formatPoints(leftPoints),
        callableNames(card.ownerIds, members),
      ),
    );
  return {
    input: {
      teamId: team.id,
      name: followingName(previous?.name),
      goal: '',
      startsOn,
      endsOn: dayPlus(startsOn, lengthDays),
      closesAt: team.closesAt,
      cards: lines.join('\n'),
    },
    leftOver: lines.length,
  };
}

/** What each owner who is still on the team is called by; a name that two people bear gives way to the id. */
function callableNames(ownerIds: readonly string[], members: readonly Member[]): string[] {
  const active = members.filter(({ isActive }) => isActive);
  return active
    .filter(({ userId }) => ownerIds.includes(userId))
    .map(({ userId, name }) => {
      const bearers = active.filter((other) => other.name.toLowerCase() === name.toLowerCase());
      return bearers.length === 1 ? name : userId;
    });
}

function nextWorkingDay(day: string, workingDays: readonly number[]): string {
  return workingDaysFromTo(day, dayPlus(day, 6), workingDays)[0] ?? day;
}

/** `Harbour 12` goes on as `Harbour 13`. */
function followingName(name: string | undefined): string {
  const match = /^(.*?)(\d{1,6})$/.exec(name ?? '');
  if (match) return `${match[1]}${Number(match[2]) + 1}`;
  return name ? '' : 'Sprint 1';
}

interface ReadPlan {
  readonly input: PlanInput;
  readonly cards: readonly PastedCard[];
  readonly closesAtInstant: Date;
}

/** Reads the plan or refuses with every problem at once. */
async function readPlan(
  tx: Transaction,
  membership: Membership,
  raw: PlanInput,
  now: Date,
): Promise<ReadPlan> {
  const { team, members } = membership;
  const input = { ...raw, name: raw.name.trim().replace(/\s+/g, ' '), goal: raw.goal.trim() };
  const problems: InputProblem[] = [];
  const check = (fine: boolean, field: keyof PlanInput, message: string): void => {
    if (!fine) problems.push({ field, message });
  };
  const nameIsFine = input.name.length > 0 && input.name.length <= MAX_NAME_LENGTH;
  check(nameIsFine, 'name', `Give the sprint a name of 1 to ${MAX_NAME_LENGTH} characters.`);
  check(input.goal.length <= MAX_GOAL_LENGTH, 'goal', `Keep the goal within ${MAX_GOAL_LENGTH} characters.`);
  check(isDay(input.startsOn), 'startsOn', 'Choose a first day.');
  check(isDay(input.endsOn), 'endsOn', 'Choose a last day.');
  check(isTimeOfDay(input.closesAt), 'closesAt', 'Write the time as hours and minutes, for example 17:00.');
  const datesAreRead = isDay(input.startsOn) && isDay(input.endsOn) && isTimeOfDay(input.closesAt);
  const closesAtInstant = datesAreRead ? instantOf(input.endsOn, input.closesAt, team.timeZone) : now;
  if (datesAreRead) {
    const lengthDays = daysBetween(input.startsOn, input.endsOn) + 1;
    check(lengthDays >= 1, 'endsOn', 'The last day comes before the first day.');
    check(
      lengthDays <= MAX_SPRINT_DAYS,
      'endsOn',
      `A sprint may last ${MAX_SPRINT_DAYS} days at most; this one lasts ${lengthDays}.`,
    );
    const isPast = lengthDays >= 1 && closesAtInstant <= now;
    check(
      !isPast,
      'endsOn',
      `The sprint would be over already: it closes on ${formatDay(input.endsOn)} at ${input.closesAt}.`,
    );
    const overlap = (await tx.openSprintsOf(team.id)).find(
      (other) => other.startsOn <= input.endsOn && input.startsOn <= other.endsOn,
    );
    if (overlap) {
      const span = `${formatDay(overlap.startsOn)} to ${formatDay(overlap.endsOn)}`;
      check(
        false,
        'startsOn',
        `${overlap.name} runs from ${span}. Begin after it, or close or cancel it first.`,
      );
    }
  }
  const active = members.filter(({ isActive }) => isActive);
  const { cards, bad } = parseCards(input.cards, active);
  if (bad.length > 0) problems.push({ field: 'cards', message: badLinesMessage(bad) });
  check(
    cards.length <= MAX_CARDS,
    'cards',
    `A sprint holds ${MAX_CARDS} cards at most; these are ${cards.length}.`,
  );
  refuseIfAny(problems);
  return { input, cards, closesAtInstant };
}

function badLinesMessage(bad: readonly { lineNumber: number; problem: string }[]): string {
  const shown = bad.slice(0, 8).map(({ lineNumber, problem }) => `Line ${lineNumber}: ${problem}`);
  const more = bad.length - shown.length;
  if (more > 0)
    shown.push(
      `And ${more} more ${more === 1 ? 'line' : 'lines'}: ${bad
        .slice(8)
        .map(({ lineNumber }) => lineNumber)
        .join(', ')}.`,
    );
  return shown.join(' ');
}

/**
 * Checks the plan and shows what it means. The input is kept as a draft whatever is wrong with it.
 *
 * @throws Refusal `bad-input` with every problem, `not-a-facilitator`.
 */
export async function previewPlan(deps: AppDependencies, actor: Actor, raw: PlanInput): Promise<PlanPreview> {
  // In a transaction of its own, so that a refusal below does not take the draft with it.
  await deps.store.transaction(async (tx) => {
    requireFacilitator(await membershipInTeam(tx, actor, raw.teamId), 'plan a sprint');
    await tx.saveDraft(raw.teamId, actor.userId, raw);
  });
  return deps.store.transaction(async (tx) => {
    const membership = await membershipInTeam(tx, actor, raw.teamId);
    const { team } = membership;
    const plan = await readPlan(tx, membership, raw, deps.clock.now());
    const cards = sprintCards('', actor.userId, plan).map((card) => cardLine(untouched(card)));
    const closed = await tx.closedSprintsOf(team.id);
    return {
      team,
      input: plan.input,
      cards,
      commitmentPoints: commitmentOf(cards),
      workingDays: workingDaysFromTo(plan.input.startsOn, plan.input.endsOn, team.workingDays).length,
      warnings: warningsOf(cards, team, plan.input),
      recent: closed
        .slice(-3)
        .reverse()
        .map(({ sprint, result }) => ({
          sprintName: sprint.name,
          commitmentPoints: result.summary.totals.commitmentPoints,
          velocityPoints: result.summary.totals.velocityPoints,
          verdict: result.summary.verdict.verdict,
        })),
    };
  });
}

function untouched(card: SprintCard): Parameters<typeof cardLine>[0] {
  return statesOf({ cards: [card], facts: [] })[0] as Parameters<typeof cardLine>[0];
}

function commitmentOf(cards: readonly CardLine[]): number {
  return cards.reduce((total, { estimatePoints }) => total + estimatePoints, 0);
}

function warningsOf(cards: readonly CardLine[], team: Team, input: PlanInput): string[] {
  const warnings: string[] = [];
  const list = (some: readonly CardLine[]): string => some.map(({ number }) => number).join(', ');
  const offScale = cards.filter(({ estimatePoints }) => !isOnScale(estimatePoints, team.scale));
  if (offScale.length > 0) {
    warnings.push(
      `${offScale.length === 1 ? 'The estimate of card' : 'The estimates of cards'} ${list(offScale)} ` +
        `${offScale.length === 1 ? 'is' : 'are'} not on your scale (${team.scale.join(', ')}), so the on-scale share can never count ${offScale.length === 1 ? 'it' : 'them'}.`,
    );
  }
  const ownerless = cards.filter(({ ownerIds }) => ownerIds.length === 0);
  if (ownerless.length > 0) {
    warnings.push(
      `${ownerless.length === 1 ? 'Card' : 'Cards'} ${list(ownerless)} ${ownerless.length === 1 ? 'has' : 'have'} no owner yet, so nobody is asked about ${ownerless.length === 1 ? 'it' : 'them'} until somebody takes ${ownerless.length === 1 ? 'it' : 'them'}.`,
    );
  }
  if (cards.length === 0) {
    warnings.push(
      'There is no card, so there is no commitment: all work will count as pulled in, and the verdict will be “no plan”.',
    );
  }
  if (workingDaysFromTo(input.startsOn, input.endsOn, team.workingDays).length === 0) {
    warnings.push('No working day of the team lies in this sprint, so nobody will be asked.');
  }
  return warnings;
}

function sprintCards(sprintId: string, addedBy: string, plan: ReadPlan): SprintCard[] {
  const taken = new Set(plan.cards.map(({ key }) => key?.toLowerCase()));
  return plan.cards.map((card, i) => ({
    id: randomUUID(),
    sprintId,
    number: i + 1,
    key: card.key ?? freeKey(i + 1, taken),
    title: card.title,
    estimatePoints: card.estimatePoints,
    origin: 'planned',
    enteredOn: plan.input.startsOn,
    ownerIds: card.ownerIds,
    addedBy,
  }));
}

/** A card without a key of its own is called by its number. */
function freeKey(number: number, taken: ReadonlySet<string | undefined>): string {
  return taken.has(String(number)) ? `#${number}` : String(number);
}

/**
 * Commits to the kept draft: the sprint begins to exist and the channel is told.
 *
 * @throws Refusal `no-draft`, `bad-input`, `not-a-facilitator`.
 */
export async function commitPlan(
  deps: AppDependencies,
  actor: Actor,
  { teamId }: { readonly teamId: string },
): Promise<PlanContent> {
  return deps.store.transaction(async (tx) => {
    const membership = await membershipInTeam(tx, actor, teamId);
    requireFacilitator(membership, 'plan a sprint');
    await tx.lockTeam(teamId);
    const draft = await tx.draftOf(teamId, actor.userId);
    if (!draft) throw new Refusal('no-draft', {});
    const { team } = membership;
    const now = deps.clock.now();
    const plan = await readPlan(tx, membership, draft, now);
    const { name, goal, startsOn, endsOn, closesAt } = plan.input;
    const base = { id: randomUUID(), teamId, name, goal, startsOn, endsOn, closesAt };
    const span = { ...base, closesAtInstant: plan.closesAtInstant };
    const sprint: Sprint = {
      ...span,
      state: 'open',
      closedAt: undefined,
      reopenedAt: undefined,
      nextPromptAt: firstPromptAt(team, span, todayOf(team, now)),
      nextReminderAt: undefined,
      lastCallAt: lastCallAt(span),
    };
    await tx.insertSprint(sprint);
    const cards = sprintCards(sprint.id, actor.userId, plan);
    if (cards.length > 0) await tx.insertCards(cards);
    await tx.deleteDraft(teamId, actor.userId);
    await tx.addPosts([
      {
        id: randomUUID(),
        workspaceId: team.workspaceId,
        recipient: { channelId: team.channelId },
        subject: { kind: 'plan', sprintId: sprint.id, byUserId: actor.userId },
      },
    ]);
    const lines = cards.map((card) => cardLine(untouched(card)));
    return { team, sprint, commitmentPoints: commitmentOf(lines), cards: lines, byUserId: actor.userId };
  });
}
