/** What if: the chances of the running sprint with a card fewer, somebody away or more work. It changes nothing, and knows nobody. */
import { stillFinishable } from '../../forecast/still-finishable.ts';
import { type SprintChances, whatIf } from '../../forecast/what-if.ts';
import type { Day } from '../../sprint/calendar.ts';
import { parsePoints } from '../../sprint/points.ts';
import { type CardLine, cardLine, isOpenCard, type SprintCardState, statesOf } from '../cards/card-line.ts';
import type { SprintTime } from '../clock/sprint-time.ts';
import type { InputProblem } from '../input-problem.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { refuseIfAny } from '../refusal.ts';
import { openSprint, todayOf } from '../team/place.ts';
import type { Actor, SprintHeading } from '../team/team.ts';
import { hasPlan, type LoadOutlook, loadedSprint, loadOutlook, outcomeAhead } from './load-outlook.ts';
import { sprintProjection } from './sprint-projection.ts';
import { sprintTimeToday } from './status-content.ts';
import type { TeamSprint } from './team-sprint.ts';

export interface WhatIfForm extends SprintHeading {
  /** Those that can be taken out. */
  readonly cards: readonly CardLine[];
}

/** As it was typed; empty: nothing of this kind. */
export interface WhatIfQuestion {
  readonly sprintId: string;
  /** The number of an open card. */
  readonly without: string;
  /** Working days, of anybody. */
  readonly awayDays: string;
  readonly morePoints: string;
}

export interface WhatIfAnswer extends SprintHeading {
  readonly without: CardLine | undefined;
  readonly awayDays: number;
  readonly morePoints: number;
  /** Working days that are still to come, of all members together. */
  readonly memberDaysLeft: number;
  /** The floor of the kept share. */
  readonly floor: number;
  readonly hasPlan: boolean;
  readonly load: LoadOutlook;
  /** Undefined where the team's history gives no chances; `load` says why. */
  readonly chances: { readonly now: SprintChances; readonly changed: SprintChances } | undefined;
}

/** @throws Refusal `sprint-over` and those of finding the sprint. */
export async function whatIfForm(
  deps: AppDependencies,
  actor: Actor,
  { sprintId }: { readonly sprintId: string },
): Promise<WhatIfForm> {
  return deps.store.transaction(async (tx) => {
    const found = await openSprint(tx, actor, { sprintId }, deps.clock.now(), 'product-owner-too');
    const { team, sprint } = found;
    const states = statesOf(await tx.read.recordsOf(sprint.id));
    return { team, sprint, cards: states.filter(isOpenCard).map(cardLine) };
  });
}

/** @throws Refusal `bad-input`, `sprint-over` and those of finding the sprint. */
export async function askWhatIf(
  deps: AppDependencies,
  actor: Actor,
  question: WhatIfQuestion,
): Promise<WhatIfAnswer> {
  return deps.store.transaction(async (tx) => {
    const found = await openSprint(tx, actor, question, deps.clock.now(), 'product-owner-too');
    const { team, sprint, members } = found;
    const on = todayOf(team, deps.clock.now());
    const states = statesOf(await tx.read.recordsOf(sprint.id));
    const time = await sprintTimeToday(tx.read, { team, sprint, members, states }, on);
    const asked = readQuestion(question, states, time);
    const load = await loadOutlook(tx, { team, members, sprint, states }, time, on);
    const loaded = loadedSprint(states, team.thresholds.keptShareAtLeast);
    const answer = {
      team,
      sprint,
      ...asked,
      without: asked.without && cardLine(asked.without),
      memberDaysLeft: time.memberDaysLeft,
      floor: team.thresholds.keptShareAtLeast,
      hasPlan: hasPlan(states),
      load,
    };
    if (load.from !== 'projection') return { ...answer, chances: undefined };
    const { velocity, beyond } = await foreseen(tx, { team, members, sprint, states }, time, on);
    const chances = (without: number | undefined, morePoints: number, timeShare: number): SprintChances =>
      whatIf(loaded, velocity, beyond, { without, morePoints, timeShare });
    const place = asked.without && states.filter(isOpenCard).indexOf(asked.without);
    return {
      ...answer,
      chances: {
        now: chances(undefined, 0, 1),
        changed: chances(place, asked.morePoints, 1 - asked.awayDays / (time.memberDaysLeft || 1)),
      },
    };
  });
}

async function foreseen(tx: Transaction, running: TeamSprint, time: SprintTime, on: Day) {
  const { team, states } = running;
  const pastVersion = await tx.read.pastVersion(team.workspaceId);
  const projection = await sprintProjection(tx, team, states, time, pastVersion);
  const { velocityWith } = await outcomeAhead(tx, running, projection, time, on, pastVersion);
  const finishable = stillFinishable(projection.now, velocityWith);
  // The open cards count whole here, and what is underway in them is done already.
  const beyond = (points: number): number => finishable(points - projection.now.underwayPoints);
  return { velocity: velocityWith(0), beyond };
}

/** @throws Refusal `bad-input` with every problem */
function readQuestion(
  { without, awayDays, morePoints }: WhatIfQuestion,
  states: readonly SprintCardState[],
  { memberDaysLeft }: SprintTime,
) {
  const card = states.filter(isOpenCard).find(({ card: { number } }) => String(number) === without);
  const amounts = { awayDays: amountIn(awayDays), morePoints: amountIn(morePoints) };
  const problems: InputProblem[] = [];
  if (amounts.awayDays === undefined || amounts.awayDays > memberDaysLeft) {
    problems.push({ field: 'awayDays', problem: { code: 'what-if-away-days', most: memberDaysLeft } });
  }
  if (amounts.morePoints === undefined) {
    problems.push({ field: 'morePoints', problem: { code: 'what-if-points' } });
  }
  if (problems.length === 0 && !card && !amounts.awayDays && !amounts.morePoints) {
    problems.push({ field: 'awayDays', problem: { code: 'what-if-nothing' } });
  }
  refuseIfAny(problems);
  return { without: card, awayDays: amounts.awayDays ?? 0, morePoints: amounts.morePoints ?? 0 };
}

/** 0 when nothing was typed; undefined when it is no number of half steps. */
function amountIn(typed: string): number | undefined {
  return typed.trim() === '' ? 0 : parsePoints(typed);
}
