/** The form for days off: what is known of the days to come, new ones, those taken back, and one's weekdays. */
import { type Day, isDay, type Weekday } from '../../sprint/calendar.ts';
import type { DayShare } from '../../sprint/work-calendar.ts';
import type { InputProblem } from '../input-problem.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { Refusal, refuseIfAny } from '../refusal.ts';
import { type Membership, membershipAt, membershipInTeam, type Place, todayOf } from '../team/place.ts';
import { type Actor, isWorking, type Team } from '../team/team.ts';
import { type SpanOff, spansOff } from './days-ahead.ts';
import { type DaySpan, whyNotSpan } from './read-days-off.ts';
import { takeDaysOff } from './say-days-off.ts';
import { saveWeekdays } from './say-weekdays.ts';

export type Whose = 'own' | 'team';

export interface DaysOffForm {
  readonly team: Team;
  readonly today: Day;
  /** Whose days the person may say; never empty. */
  readonly whose: readonly Whose[];
  readonly own: readonly SpanOff[];
  readonly ofTeam: readonly SpanOff[];
  /** Undefined for somebody who does none of the team's work. */
  readonly weekdays: readonly Weekday[] | undefined;
}

/** What the person knows after the form was sent off. */
export type DaysOffSaved = Omit<DaysOffForm, 'whose'>;

export interface DaysOffInput {
  readonly teamId: string;
  readonly whose: Whose;
  /** Empty: no new ones. */
  readonly from: string;
  /** Empty: the first day alone. */
  readonly to: string;
  readonly isHalf: boolean;
  readonly takeBack: readonly { readonly whose: Whose; readonly span: DaySpan }[];
  /** Undefined: not asked. */
  readonly weekdays: readonly Weekday[] | undefined;
}

/** @throws Refusal `no-work-to-be-off`, and those of finding the team. */
export async function daysOffForm(deps: AppDependencies, actor: Actor, place: Place): Promise<DaysOffForm> {
  return deps.store.read(async (read) => formOf(await membershipAt(read, actor, place), deps.clock.now()));
}

export function savedOf(membership: Pick<Membership, 'team' | 'member'>, now: Date): DaysOffSaved {
  const { whose: _, ...saved } = formOf(membership, now);
  return saved;
}

function formOf({ team, member }: Pick<Membership, 'team' | 'member'>, now: Date): DaysOffForm {
  const today = todayOf(team, now);
  const whose: Whose[] = [
    ...(isWorking(member) ? (['own'] as const) : []),
    ...(member.isFacilitator ? (['team'] as const) : []),
  ];
  if (whose.length === 0) throw new Refusal('no-work-to-be-off', {});
  return {
    team,
    today,
    whose,
    own: spansOff(member.daysOff, today),
    ofTeam: spansOff(team.daysOff, today),
    weekdays: isWorking(member) ? (member.worksOn ?? team.workingDays) : undefined,
  };
}

/** @throws Refusal `bad-input`, `not-a-facilitator`, and those of finding the team. */
export async function saveDaysOff(
  deps: AppDependencies,
  actor: Actor,
  input: DaysOffInput,
): Promise<DaysOffSaved> {
  const span = spanOf(input);
  const now = deps.clock.now();
  return deps.store.transaction(async (tx) => {
    for (const { whose, span: old } of input.takeBack) {
      await takeDaysOff(tx, actor, input.teamId, { whose, spans: [old], share: 1 }, now);
    }
    if (span) {
      const share: DayShare = input.isHalf ? 0.5 : 0;
      await takeDaysOff(tx, actor, input.teamId, { whose: input.whose, spans: [span], share }, now);
    }
    const { weekdays, teamId } = input;
    if (weekdays !== undefined && !(await saveWeekdays(tx, actor, teamId, weekdays, now))) {
      refuseIfAny([{ field: 'weekdays', problem: { code: 'not-weekdays' } }]);
    }
    return savedOf(await membershipInTeam(tx.read, actor, input.teamId), now);
  });
}

function spanOf({ from, to }: DaysOffInput): DaySpan | undefined {
  const problems: InputProblem[] = [];
  if (from === '' && to === '') return undefined;
  const span = { from: from === '' ? to : from, to: to === '' ? from : to };
  if (!isDay(span.from)) problems.push({ field: 'from', problem: { code: 'off-no-day' } });
  if (!isDay(span.to)) problems.push({ field: 'to', problem: { code: 'off-no-day' } });
  refuseIfAny(problems);
  const problem = whyNotSpan(span);
  if (problem) refuseIfAny([{ field: 'to', problem }]);
  return span;
}
