/** Shows what a plan means, and commits to it. */

import { randomUUID } from 'node:crypto';
import type { CommitmentChances } from '../../forecast/commitment-range.ts';
import { type Day, isDay } from '../../sprint/calendar.ts';
import type { UndefinedValue } from '../../sprint/undefined-value.ts';
import type { Verdict } from '../../sprint/verdict.ts';
import { workingDaysOf } from '../../sprint/work-calendar.ts';
import type { RangeAdvice } from '../advice/advice.ts';
import { adviceBase } from '../advice/advice-of.ts';
import { type BigCards, bigCardsOf } from '../advice/odds-advice.ts';
import { comingSprint, rangeOf, readCommitment } from '../advice/range-advice.ts';
import { readSet, type SetReading } from '../advice/set-advice.ts';
import {
  type CardLine,
  cardIdentity,
  cardLine,
  isOpenCard,
  type SprintCardState,
  statesOf,
} from '../cards/card-line.ts';
import { isTimeOfDay } from '../clock/local-time.ts';
import { firstPromptAt, lastCallAt } from '../clock/sprint-clock.ts';
import { finishedIn, sprintBefore } from '../closing/overtaken-cards.ts';
import { type Experiment, isOpen } from '../experiments/experiment.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import { pastSprints } from '../history/team-history.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import { channelPost } from '../posting/post-kinds.ts';
import { readOrWrite } from '../read-or-write.ts';
import { Refusal } from '../refusal.ts';
import { type Candidate, candidatesOf, welcomeGuests } from '../team/guests.ts';
import { membershipInTeam, requireFacilitator, todayOf } from '../team/place.ts';
import { type Actor, isWatched, type Sprint, type SprintCard, type Team } from '../team/team.ts';
import { commitmentOf, type PlanContent } from './plan-content.ts';
import type { PlanInput } from './plan-input.ts';
import { type PlanTime, planTime } from './plan-time.ts';
import { type PlanWarning, planWarnings, type WorkBefore } from './plan-warnings.ts';
import { guestIdsIn, type ReadPlan, readPlan } from './read-plan.ts';
import { leftOutCards, planFingerprint, tickableCards } from './tickable-cards.ts';

/** How many of the latest closed sprints are shown beside a plan. */
const RECENT_SPRINTS = 3;

/** A closed sprint beside which a new commitment is seen. */
export interface RecentSprint {
  readonly sprintName: string;
  readonly workingDays: number;
  readonly commitmentPoints: number;
  /** Undefined where an import did not say. */
  readonly velocityPoints: number | undefined;
  /** Undefined for an imported sprint, which was judged elsewhere if at all. */
  readonly verdict: Verdict | undefined;
}

export interface PlanPreview {
  readonly team: Team;
  readonly input: PlanInput;
  /** Changes with the plan. */
  readonly fingerprint: string;
  /** Those to commit to. */
  readonly cards: readonly CardLine[];
  /** Those that can be left out, and those that are. */
  readonly tickable: readonly CardLine[];
  readonly leftOut: readonly CardLine[];
  readonly commitmentPoints: number;
  readonly workingDays: number;
  readonly time: PlanTime;
  readonly guestIds: readonly string[];
  /** What may be a slip; none stops the plan. */
  readonly warnings: readonly PlanWarning[];
  /** The latest closed sprints, latest first, three at most. */
  readonly recent: readonly RecentSprint[];
  /** How much to commit to on the plan's own days. */
  readonly range: RangeAdvice;
  /** What this commitment means beside the range. */
  readonly commitment: CommitmentChances;
  /** What these very cards mean. Undefined where nothing can be said. */
  readonly set: SetReading | undefined;
  /** The three largest sizes in the plan, largest first, with their odds of holding surprise work. */
  readonly bigCards: readonly BigCards[] | UndefinedValue;
  /** What the team is trying. */
  readonly experiments: readonly Experiment[];
}

/**
 * Checks the plan and shows what it means. The input is kept as a draft even when something is wrong with it.
 *
 * @throws Refusal `bad-input` with every problem, `not-a-facilitator`.
 */
export async function previewPlan(deps: AppDependencies, actor: Actor, raw: PlanInput): Promise<PlanPreview> {
  // In a transaction of its own, so that a refusal below does not take the draft with it.
  await keepDraft(deps, actor, raw);
  const guests = await candidatesOf(deps, actor, raw, guestIdsIn(raw));
  return readOrWrite(deps.store, (tx) => previewOf(tx, deps, actor, raw, guests, undefined));
}

/** Which cards of a plan the team commits to. */
interface TickedCards {
  readonly teamId: string;
  /** Numbers of the ticked cards; undefined: all of them. */
  readonly ticked?: readonly string[] | undefined;
  /** The fingerprint of the plan that was seen. */
  readonly seen?: string | undefined;
}

/**
 * The preview of the kept draft with only the ticked cards in it. Nothing is kept of the ticks.
 *
 * @throws Refusal `no-draft`, `plan-changed`, `bad-input`, `not-a-facilitator`.
 */
export async function previewTicked(
  deps: AppDependencies,
  actor: Actor,
  input: TickedCards,
): Promise<PlanPreview> {
  const { draft, guests } = await keptDraft(deps, actor, input.teamId);
  return deps.store.transaction(async (tx) => {
    requireFacilitator(await membershipInTeam(tx.read, actor, input.teamId), 'plan');
    if (!draft) throw new Refusal('no-draft', {});
    requireSeen(draft, input);
    return previewOf(tx, deps, actor, draft, guests, input.ticked);
  });
}

async function keptDraft(
  deps: AppDependencies,
  actor: Actor,
  teamId: string,
): Promise<{ draft: PlanInput | undefined; guests: readonly Candidate[] }> {
  const draft = await deps.store.read((read) => read.draftOf(teamId, actor.userId));
  return { draft, guests: await candidatesOf(deps, actor, { teamId }, draft ? guestIdsIn(draft) : []) };
}

/** Numbers of ticked cards mean nothing in another plan. */
function requireSeen(draft: PlanInput, { seen }: TickedCards): void {
  if (seen !== undefined && seen !== planFingerprint(draft)) throw new Refusal('plan-changed', {});
}

async function previewOf(
  tx: Transaction,
  deps: AppDependencies,
  actor: Actor,
  raw: PlanInput,
  guests: readonly Candidate[],
  ticked: readonly string[] | undefined,
): Promise<PlanPreview> {
  const membership = await membershipInTeam(tx.read, actor, raw.teamId);
  const { team } = membership;
  const plan = await readPlan(tx.read, membership, raw, deps.clock.now(), guests);
  const all = sprintCards('', actor.userId, plan).map(lineOfNew);
  const leftOut = leftOutCards(all, ticked);
  const cards = all.filter((card) => !leftOut.includes(card));
  const commitmentPoints = commitmentOf(cards);
  const past = await pastSprints(tx, team);
  const today = todayOf(team, deps.clock.now());
  const range = rangeForPlan(team, past, plan, today);
  return {
    team,
    input: plan.input,
    fingerprint: planFingerprint(raw),
    cards,
    tickable: tickableCards(all),
    leftOut,
    commitmentPoints,
    workingDays: workingDaysOf(team, plan.input.startsOn, plan.input.endsOn).length,
    time: planTime(team, plan.workers, { ...plan.input, awayDays: plan.awayDays }),
    guestIds: guestIdsIn(raw),
    warnings: planWarnings(cards, team, plan.input, await workBefore(tx.read, team, plan.input, today)),
    recent: await recentSprints(tx.read, past),
    range,
    commitment: readCommitment(commitmentPoints, range),
    set: readSet(cards, range),
    bigCards: bigCardsOf(cards, past),
    experiments: (await tx.read.experimentsOf(team.id)).filter(isOpen),
  };
}

/**
 * Keeps a plan as it was typed. A day or time that is none can't have been chosen in the form: it isn't kept, or the form
 * could never be opened with it again.
 *
 * @throws Refusal `not-a-facilitator`, and those of finding the team.
 */
export async function keepDraft(deps: AppDependencies, actor: Actor, plan: PlanInput): Promise<void> {
  await deps.store.transaction(async (tx) => {
    requireFacilitator(await membershipInTeam(tx.read, actor, plan.teamId), 'plan');
    await tx.drafts.save(plan.teamId, actor.userId, {
      ...plan,
      startsOn: isDay(plan.startsOn) ? plan.startsOn : '',
      endsOn: isDay(plan.endsOn) ? plan.endsOn : '',
      closesAt: isTimeOfDay(plan.closesAt) ? plan.closesAt : '',
    });
  });
}

/** What is known of the sprint before the plan's. */
async function workBefore(
  read: Reading,
  team: Team,
  { startsOn }: Pick<PlanInput, 'startsOn'>,
  today: Day,
): Promise<WorkBefore | undefined> {
  const before = await sprintBefore(
    read,
    team.id,
    (sprint) => sprint.startsOn <= today && sprint.endsOn < startsOn,
  );
  if (!before) return undefined;
  const records = await read.recordsOf(before.id);
  const open = before.state === 'open' ? statesOf(records).filter(isOpenCard) : [];
  return {
    sprintName: before.name,
    endsOn: before.endsOn,
    openCards: new Set(open.map(({ card }) => cardIdentity(card))),
    finishedCards: finishedIn(records),
  };
}

function rangeForPlan(
  team: Team,
  past: readonly PastSprint[],
  { input: { startsOn, endsOn }, awayDays, workers }: ReadPlan,
  on: Day,
): RangeAdvice {
  const coming = comingSprint(team, workers, { startsOn, endsOn }, awayDays);
  const question = { about: 'range', startsOn, endsOn, awayDays } as const;
  return { ...adviceBase(team, past, on), question, ...rangeOf(team, past, coming) };
}

async function recentSprints(read: Reading, past: readonly PastSprint[]): Promise<RecentSprint[]> {
  const recent: RecentSprint[] = [];
  for (const { sprintId, name, ...told } of past.slice(-RECENT_SPRINTS).reverse()) {
    const { workingDays, commitmentPoints, velocityPoints } = told;
    const verdict = (await read.latestResult(sprintId))?.summary.verdict.verdict;
    recent.push({ sprintName: name, workingDays, commitmentPoints, velocityPoints, verdict });
  }
  return recent;
}

function lineOfNew(card: SprintCard): CardLine {
  const [state] = statesOf({ cards: [card], facts: [] });
  return cardLine(state as SprintCardState);
}

function sprintCards(sprintId: string, addedBy: string, plan: ReadPlan): SprintCard[] {
  const taken = new Set(plan.cards.map(({ key }) => key?.toLowerCase()));
  return plan.cards.map((card, i) => ({
    id: randomUUID(),
    sprintId,
    number: i + 1,
    key: card.key ?? freeKey(i + 1, taken),
    title: card.title,
    link: card.link,
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

/** What the team committed to, and the cards that were left out. */
export type CommittedPlan = PlanContent & { readonly leftOut: readonly ReadPlan['cards'][number][] };

/**
 * Commits to the ticked cards of the kept draft: the sprint begins and the channel hears of it.
 *
 * @throws Refusal `no-draft`, `plan-changed`, `bad-input`, `not-a-facilitator`.
 */
export async function commitPlan(
  deps: AppDependencies,
  actor: Actor,
  input: TickedCards,
): Promise<CommittedPlan> {
  const { teamId } = input;
  const { guests } = await keptDraft(deps, actor, teamId);
  return deps.store.transaction(async (tx) => {
    const membership = await membershipInTeam(tx.read, actor, teamId);
    requireFacilitator(membership, 'plan');
    await tx.lock.team(teamId);
    const draft = await tx.read.draftOf(teamId, actor.userId);
    if (!draft) throw new Refusal('no-draft', {});
    requireSeen(draft, input);
    const { team } = membership;
    const now = deps.clock.now();
    const whole = await readPlan(tx.read, membership, draft, now, guests);
    const all = whole.cards.map((card, i) => ({ ...card, number: i + 1 }));
    const leftOut = leftOutCards(all, input.ticked);
    const plan = { ...whole, cards: all.filter((card) => !leftOut.includes(card)) };
    const { name, goal, startsOn, endsOn, closesAt } = plan.input;
    const base = { id: randomUUID(), teamId, name, goal, startsOn, endsOn, closesAt };
    const span = { ...base, closesAtInstant: plan.closesAtInstant };
    const sprint: Sprint = {
      ...span,
      state: 'open',
      closedAt: undefined,
      reopenedAt: undefined,
      nextPromptAt: firstPromptAt(team, plan.workers, span, todayOf(team, now)),
      nextReminderAt: undefined,
      lastCallAt: lastCallAt(span),
      importedAt: undefined,
      awayDays: plan.awayDays,
      plannedAt: now,
    };
    await tx.write.sprints.insert(sprint);
    if (isWatched(team, membership.members)) await tx.write.watches.begin([sprint.id], now);
    const cards = sprintCards(sprint.id, actor.userId, plan);
    if (cards.length > 0) await tx.write.cards.insert(cards);
    await tx.drafts.delete(teamId, actor.userId);
    await tx.write.posts.add([
      channelPost(team, { kind: 'plan', sprintId: sprint.id, byUserId: actor.userId }),
    ]);
    await welcomeGuests(tx, team, sprint, { guests, from: startsOn, byUserId: actor.userId });
    const lines = cards.map(lineOfNew);
    const content = { team, sprint, commitmentPoints: commitmentOf(lines), cards: lines };
    return { ...content, byUserId: actor.userId, leftOut };
  });
}
