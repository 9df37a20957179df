/** Brings work into a running sprint after planning, with what to weigh before. */
import { randomUUID } from 'node:crypto';
import { runningSummary, type SprintSummary } from '../../sprint/summary.ts';
import { baselineFor } from '../history/baseline-of.ts';
import type { Problem } from '../input-problem.ts';
import type { KnownPerson } from '../planning/card-owners.ts';
import { MAX_CARDS, type PastedCard, parseCards } from '../planning/card-paste.ts';
import { alikeCards } from '../planning/plan-warnings.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { Refusal } from '../refusal.ts';
import { openSprint, type Place, requireBegun, type SprintReference, todayOf } from '../team/place.ts';
import { type Actor, type Sprint, type SprintCard, type SprintHeading, workersOf } from '../team/team.ts';
import { type LoadOutlook, loadOutlook } from '../watching/load-outlook.ts';
import { sprintTimeToday } from '../watching/status-content.ts';
import { type CardLine, cardLine, isOpenCard, statesOf } from './card-line.ts';
import { type PullInCheck, pullInCheck } from './pull-in-check.ts';

export interface PullForm {
  readonly heading: SprintHeading;
  readonly load: LoadOutlook;
  readonly check: PullInCheck;
  readonly workingDaysLeft: number;
}

export interface PulledCards {
  readonly heading: SprintHeading;
  readonly cards: readonly CardLine[];
  /** The numbers of open cards with the same title, among them one of these. */
  readonly alike: readonly number[];
  readonly summary: SprintSummary;
  /** How a card of its size fares, as it was before it came in; not known of several, which would share the time. */
  readonly check: PullInCheck | undefined;
}

/** What to weigh before a card is pulled in. */
export async function pullForm(deps: AppDependencies, actor: Actor, place: Place): Promise<PullForm> {
  return deps.store.transaction(async (tx) => {
    const { team, sprint, members } = await openSprint(tx, actor, { place }, deps.clock.now());
    const today = todayOf(team, deps.clock.now());
    requireBegun(sprint, today);
    const states = statesOf(await tx.read.recordsOf(sprint.id));
    const running = { team, sprint, members, states };
    const time = await sprintTimeToday(tx.read, running, today);
    return {
      heading: { team, sprint },
      load: await loadOutlook(tx, running, time, today),
      check: await pullInCheck(tx, running, { time, on: today }, team.scale),
      workingDaysLeft: time.left,
    };
  });
}

/**
 * Brings cards into the running sprint, one a line as they are pasted into a plan, all or none of them.
 *
 * @throws Refusal `bad-input` (cards), `too-many-cards`, `key-taken`, `sprint-not-begun`.
 */
export async function pullCards(
  deps: AppDependencies,
  actor: Actor,
  input: SprintReference & { readonly text: string },
): Promise<PulledCards> {
  return deps.store.transaction(async (tx) => {
    const { team, sprint, members } = await openSprint(tx, actor, input, deps.clock.now());
    const wanted = readCards(input.text, workersOf(members, sprint.id));
    const today = todayOf(team, deps.clock.now());
    requireBegun(sprint, today);
    const before = await tx.read.recordsOf(sprint.id);
    const states = statesOf(before);
    const running = { team, sprint, members, states };
    const time = await sprintTimeToday(tx.read, running, today);
    const [only, ...others] = wanted;
    const check =
      only && others.length === 0
        ? await pullInCheck(tx, running, { time, on: today }, [only.estimatePoints])
        : undefined;
    const cards = newCards(before.cards, wanted, sprint, {
      // A reopened sprint takes late entries for its last day.
      enteredOn: today > sprint.endsOn ? sprint.endsOn : today,
      addedBy: actor.userId,
    });
    await tx.write.cards.insert(cards);
    const ownerIds = [...new Set(cards.flatMap((card) => card.ownerIds))];
    await tx.write.posts.refreshAboutDay(sprint.id, ownerIds, today);
    const after = statesOf({ ...before, cards: [...before.cards, ...cards] });
    const baseline = await baselineFor(tx.read, team, sprint.id);
    return {
      heading: { team, sprint },
      cards: after.slice(-cards.length).map(cardLine),
      alike: alikeCards(after.filter(isOpenCard).map(cardLine), cards),
      summary: runningSummary(after, { ...team, baseline }),
      check,
    };
  });
}

function readCards(text: string, people: readonly KnownPerson[]): readonly PastedCard[] {
  const { cards, bad } = parseCards(text, people);
  const [first] = bad;
  if (first === undefined && cards.length > 0) return cards;
  const isOneLine = !/[\r\n]/.test(text.trim());
  const problem: Problem = first
    ? isOneLine
      ? first.problem
      : { code: 'bad-lines', lines: bad }
    : { code: 'no-title' };
  throw new Refusal('bad-input', { problems: [{ field: 'cards', problem }] });
}

function newCards(
  present: readonly SprintCard[],
  wanted: readonly PastedCard[],
  sprint: Sprint,
  entry: Pick<SprintCard, 'enteredOn' | 'addedBy'>,
): SprintCard[] {
  if (present.length + wanted.length > MAX_CARDS) throw new Refusal('too-many-cards', { limit: MAX_CARDS });
  const keys = new Set(present.map(({ key }) => key.toLowerCase()));
  const taken = wanted.find(({ key }) => key !== undefined && keys.has(key.toLowerCase()));
  if (taken?.key !== undefined) {
    throw new Refusal('key-taken', { key: taken.key, sprintName: sprint.name });
  }
  const last = Math.max(0, ...present.map(({ number }) => number));
  return wanted.map(({ key, title, link, estimatePoints, ownerIds }, i) => {
    const number = last + i + 1;
    return {
      id: randomUUID(),
      sprintId: sprint.id,
      number,
      key: key ?? (keys.has(String(number)) ? `#${number}` : String(number)),
      title,
      link,
      estimatePoints,
      origin: 'pulled-in',
      ownerIds,
      ...entry,
    };
  });
}
