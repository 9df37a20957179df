/** Brings work into a running sprint after planning, with what to weigh before. */
import { randomUUID } from 'node:crypto';
import { MAX_POINTS, parsePoints } from '../../sprint/points.ts';
import { runningSummary, type SprintSummary } from '../../sprint/summary.ts';
import { refreshOwnersPrompts } from '../answering/refresh-prompt.ts';
import { isDayOver, type SprintTime, sprintTime } from '../clock/sprint-time.ts';
import { baselineFor } from '../history/baseline-of.ts';
import type { InputProblem } from '../input-problem.ts';
import {
  MAX_CARDS,
  MAX_TITLE_LENGTH,
  type PastedCard,
  parseCardLine,
  parseCards,
} from '../planning/card-paste.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import { Refusal, refuseIfAny } from '../refusal.ts';
import {
  type Membership,
  openSprint,
  type Place,
  requireBegun,
  type SprintReference,
  todayOf,
} from '../team/place.ts';
import {
  type Actor,
  activeMembers,
  type Sprint,
  type SprintCard,
  type SprintHeading,
  type SprintRecords,
  type Team,
} from '../team/team.ts';
import { type LoadOutlook, loadOutlook } from '../watching/load-outlook.ts';
import { answerCounts } from '../watching/status-content.ts';
import { type CardLine, cardLine, type SprintCardState, statesOf } from './card-line.ts';
import { cardLink, MAX_LINK_LENGTH } from './card-link.ts';
import type { CardChange } from './change-cards.ts';
import { type PullInCheck, pullInCheck } from './pull-in-check.ts';

export interface PullForm {
  readonly heading: SprintHeading;
  readonly load: LoadOutlook;
  readonly check: PullInCheck;
  readonly workingDaysLeft: number;
  readonly memberIds: readonly string[];
}

export interface PulledCard extends CardChange {
  readonly summary: SprintSummary;
  /** How a card of its size fares, as it was before it came in. */
  readonly check: PullInCheck;
}

type OpenSprint = Membership & { readonly sprint: Sprint };

/** What to weigh before a card is pulled in. */
export async function pullForm(deps: AppDependencies, actor: Actor, place: Place): Promise<PullForm> {
  return deps.store.transaction(async (tx) => {
    const { team, sprint, members } = await openSprint(tx, actor, { place }, deps.clock.now());
    const today = todayOf(team, deps.clock.now());
    requireBegun(sprint, today);
    const states = statesOf(await tx.read.recordsOf(sprint.id));
    const time = await timeOf(tx.read, { team, sprint, members }, states, today);
    return {
      heading: { team, sprint },
      load: await loadOutlook(tx, team, sprint, states, time, today),
      check: await pullInCheck(tx, team, sprint, { states, time, on: today }, team.scale),
      workingDaysLeft: time.left,
      memberIds: activeMembers(members).map(({ userId }) => userId),
    };
  });
}

async function timeOf(
  read: Reading,
  { team, sprint, members }: Pick<OpenSprint, 'team' | 'sprint' | 'members'>,
  states: readonly SprintCardState[],
  today: string,
): Promise<SprintTime> {
  const prompts = await read.promptsOf([{ sprintId: sprint.id, day: today }]);
  return sprintTime(
    team,
    sprint,
    today,
    isDayOver(answerCounts(team, sprint, members, { states, prompts, on: today })),
  );
}

/**
 * Brings a card into the running sprint.
 *
 * @throws Refusal `bad-input` (title, link, estimate, ownerIds), `too-many-cards`, `sprint-not-begun`.
 */
export async function pullCard(
  deps: AppDependencies,
  actor: Actor,
  input: SprintReference & {
    readonly title: string;
    /** As typed; may be empty. An address in the title is the link otherwise. */
    readonly link?: string;
    readonly estimate: string;
    readonly ownerIds: readonly string[];
  },
): Promise<PulledCard> {
  return deps.store.transaction(async (tx) => {
    const found = await openSprint(tx, actor, input, deps.clock.now());
    const title = input.title.replace(/\s+/g, ' ').trim();
    const { link: typedLink = '' } = input;
    const link = cardLink(typedLink);
    const estimatePoints = parsePoints(input.estimate);
    const problems: InputProblem[] = [];
    if (title === '' || title.length > MAX_TITLE_LENGTH) {
      problems.push({ field: 'title', problem: { code: 'card-title', most: MAX_TITLE_LENGTH } });
    }
    if (typedLink.trim() !== '' && link === undefined) {
      problems.push({ field: 'link', problem: { code: 'card-link', most: MAX_LINK_LENGTH } });
    }
    if (estimatePoints === undefined) {
      problems.push({ field: 'estimate', problem: { code: 'not-points', most: MAX_POINTS } });
    }
    const strangers = input.ownerIds.filter(
      (id) => !activeMembers(found.members).some(({ userId }) => userId === id),
    );
    if (strangers.length > 0) {
      problems.push({ field: 'ownerIds', problem: { code: 'not-members' } });
    }
    refuseIfAny(problems);
    // Planning and pulling read a line in the same way: a leading short name is separated from the title.
    const parsed = parseCardLine(`"${title.replaceAll('"', '""')}",${estimatePoints}`, [], link);
    if ('code' in parsed) throw new Refusal('bad-input', { problems: [{ field: 'title', problem: parsed }] });
    return pullIn(deps, tx, actor, found, { ...parsed, ownerIds: [...new Set(input.ownerIds)] });
  });
}

/** The same from a line as it is pasted into a plan: `title, estimate, @owner`. */
export async function pullLine(
  deps: AppDependencies,
  actor: Actor,
  { place, line }: { readonly place: Place; readonly line: string },
): Promise<PulledCard> {
  return deps.store.transaction(async (tx) => {
    const found = await openSprint(tx, actor, { place }, deps.clock.now());
    const people = activeMembers(found.members);
    const parsed = /[\r\n]/.test(line.trim())
      ? ({ code: 'several-cards' } as const)
      : parseCardLine(line, people);
    if ('code' in parsed) {
      throw new Refusal('bad-argument', { command: 'pull', problem: parsed, example: undefined });
    }
    return pullIn(deps, tx, actor, found, parsed);
  });
}

/** Cards that came in together. */
export interface PulledCards {
  readonly heading: SprintHeading;
  readonly cards: readonly CardLine[];
  readonly summary: SprintSummary;
}

/** Several cards at once, one a line, all or none of them. @throws Refusal as above */
export async function pullLines(
  deps: AppDependencies,
  actor: Actor,
  { place, text }: { readonly place: Place; readonly text: string },
): Promise<PulledCards> {
  return deps.store.transaction(async (tx) => {
    const found = await openSprint(tx, actor, { place }, deps.clock.now());
    const { cards, bad } = parseCards(text, activeMembers(found.members));
    if (bad.length > 0) {
      const problem = { code: 'bad-lines', lines: bad } as const;
      throw new Refusal('bad-argument', { command: 'pull', problem, example: undefined });
    }
    const pulled: PulledCard[] = [];
    for (const { lineNumber: _, ...card } of cards) pulled.push(await pullIn(deps, tx, actor, found, card));
    const last = pulled.at(-1);
    if (!last) {
      const problem = { code: 'no-title' } as const;
      throw new Refusal('bad-argument', { command: 'pull', problem, example: undefined });
    }
    return { heading: last.heading, summary: last.summary, cards: pulled.map(({ card }) => card) };
  });
}

async function pullIn(
  deps: AppDependencies,
  tx: Transaction,
  actor: Actor,
  found: OpenSprint,
  wanted: Omit<PastedCard, 'lineNumber'>,
): Promise<PulledCard> {
  const { team, sprint } = found;
  const today = todayOf(team, deps.clock.now());
  requireBegun(sprint, today);
  const { cards, facts } = await tx.read.recordsOf(sprint.id);
  const before = statesOf({ cards, facts });
  const time = await timeOf(tx.read, found, before, today);
  const check = await pullInCheck(tx, team, sprint, { states: before, time, on: today }, [
    wanted.estimatePoints,
  ]);
  if (cards.length >= MAX_CARDS) throw new Refusal('too-many-cards', { limit: MAX_CARDS });
  const keys = new Set(cards.map(({ key }) => key.toLowerCase()));
  if (wanted.key !== undefined && keys.has(wanted.key.toLowerCase())) {
    throw new Refusal('key-taken', { key: wanted.key, sprintName: sprint.name });
  }
  const number = Math.max(0, ...cards.map((card) => card.number)) + 1;
  const card: SprintCard = {
    id: randomUUID(),
    sprintId: sprint.id,
    number,
    key: wanted.key ?? (keys.has(String(number)) ? `#${number}` : String(number)),
    title: wanted.title,
    link: wanted.link,
    estimatePoints: wanted.estimatePoints,
    origin: 'pulled-in',
    // A reopened sprint takes late entries for its last day.
    enteredOn: today > sprint.endsOn ? sprint.endsOn : today,
    ownerIds: wanted.ownerIds,
    addedBy: actor.userId,
  };
  await tx.write.cards.insert([card]);
  await refreshOwnersPrompts(tx, card, today);
  return pulledCard(tx.read, team, sprint, { cards: [...cards, card], facts }, card, check);
}

async function pulledCard(
  read: Reading,
  team: Team,
  sprint: Sprint,
  records: SprintRecords,
  card: SprintCard,
  check: PullInCheck,
): Promise<PulledCard> {
  const states = statesOf(records);
  const baseline = await baselineFor(read, team, sprint.id);
  return {
    heading: { team, sprint },
    card: cardLine(states.find((state) => state.card.id === card.id) as SprintCardState),
    summary: runningSummary(states, { ...team, baseline }),
    check,
  };
}
