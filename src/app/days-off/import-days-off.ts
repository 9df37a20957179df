/**
 * Takes days off out of a calendar: first shows which days, and what is left out and why; then saves the days that were shown.
 * Only days are kept, neither titles nor times.
 */

import { createHash } from 'node:crypto';
import { type Day, dayPlus } from '../../sprint/calendar.ts';
import type { DaysOff } from '../../sprint/work-calendar.ts';
import type { GivenFile } from '../csv/given-file.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { CalendarReading, CalendarWindow } from '../ports/calendars.ts';
import type { Reading } from '../ports/store.ts';
import { Refusal } from '../refusal.ts';
import { membershipInTeam, requireFacilitator } from '../team/place.ts';
import { type Actor, isWorking, type Member, type Team } from '../team/team.ts';
import { type DaysFromCalendar, daysFromCalendar } from './days-from-calendar.ts';
import { type DaysOffSaved, savedOf, type Whose } from './days-off-form.ts';
import type { DaysOffProblem } from './read-days-off.ts';
import { firstDayToTake, ownTeams, takeDaysOff } from './say-days-off.ts';

export interface DaysOffImportInput {
  readonly teamId: string;
  readonly whose: Whose;
  readonly source: GivenFile | { readonly holidaysOf: string };
  /** Whether events that take no time in their owner's calendar count as well. */
  readonly takesFree: boolean;
  /** The fingerprint of the preview that was seen; undefined when none was. */
  readonly seen: string | undefined;
}

export interface DaysOffPreview extends DaysFromCalendar {
  readonly team: Team;
  readonly whose: Whose;
  /** What the calendar is called. */
  readonly name: string;
  /** Parts of a country that may have further holidays. */
  readonly regions: readonly string[];
  readonly takesFree: boolean;
  /** The time that matters. */
  readonly from: Day;
  readonly to: Day;
  /** A mark of the days: only what was previewed is saved. */
  readonly fingerprint: string;
}

type DaysOffImportOutcome =
  | { readonly kind: 'preview'; readonly preview: DaysOffPreview }
  | { readonly kind: 'saved'; readonly saved: DaysOffSaved };

/** Days ahead of the first that matters. */
const DAYS_AHEAD = 365;

/**
 * Saves the days when these very days were previewed before; else previews them.
 *
 * @throws Refusal `file-unreadable` (field `file`), `not-a-facilitator`, `no-work-to-be-off`, and those of finding the team.
 */
export async function importDaysOff(
  deps: AppDependencies,
  actor: Actor,
  input: DaysOffImportInput,
): Promise<DaysOffImportOutcome> {
  const now = deps.clock.now();
  const those = await deps.store.read((read) => thoseOf(read, actor, input, now));
  const source = await readSource(deps, input.source, those.window);
  return deps.store.transaction(async (tx) => {
    const { team, member } = await thoseOf(tx.read, actor, input, now);
    const preview = previewOf(input, team, member, source, those.window);
    if (preview.days.length === 0 || input.seen !== preview.fingerprint) return { kind: 'preview', preview };
    for (const share of [0, 0.5] as const) {
      const spans = preview.days.filter(({ isHalf }) => isHalf === (share === 0.5)).map(spanOf);
      if (spans.length > 0) await takeDaysOff(tx, actor, team.id, { whose: input.whose, spans, share }, now);
    }
    return { kind: 'saved', saved: savedOf(await membershipInTeam(tx.read, actor, team.id), now) };
  });
}

interface Those {
  readonly team: Team;
  readonly member: Member;
  readonly window: CalendarWindow;
}

async function thoseOf(
  read: Reading,
  actor: Actor,
  { teamId, whose }: DaysOffImportInput,
  now: Date,
): Promise<Those> {
  const membership = await membershipInTeam(read, actor, teamId);
  const { team, member } = membership;
  if (whose === 'team') requireFacilitator(membership, 'days-off');
  else if (!isWorking(member)) throw new Refusal('no-work-to-be-off', {});
  const teams = whose === 'team' ? [team] : (await ownTeams(read, actor)).map((own) => own.team);
  // Own days off count for all of a person's teams, so from where all of them take them.
  const first = await Promise.all(teams.map((one) => firstDayToTake(read, one, now)));
  const from = first.sort().at(-1) as Day;
  return { team, member, window: { from, to: dayPlus(from, DAYS_AHEAD), timeZone: team.timeZone } };
}

interface ReadSource {
  readonly name: string;
  readonly reading: CalendarReading;
  readonly regions: readonly string[];
}

async function readSource(
  { calendars }: AppDependencies,
  source: DaysOffImportInput['source'],
  window: CalendarWindow,
): Promise<ReadSource> {
  if ('holidaysOf' in source) {
    const typed = source.holidaysOf.trim();
    const found = await calendars.holidays(typed, window);
    if (!('unknown' in found)) return { ...found, name: found.place };
    const problem: DaysOffProblem =
      found.unknown === 'country'
        ? { code: 'off-no-country', typed }
        : { code: 'off-no-region', typed, regions: found.regions };
    throw new Refusal('bad-input', { problems: [{ field: 'holidays', problem }] });
  }
  const { fileName } = source;
  const reading = await calendars.read(source, window);
  if (typeof reading !== 'string') return { name: fileName, reading, regions: [] };
  throw new Refusal('file-unreadable', { field: 'file', fileName, why: reading });
}

function previewOf(
  { whose, takesFree }: DaysOffImportInput,
  team: Team,
  member: Member,
  { name, reading, regions }: ReadSource,
  { from, to }: CalendarWindow,
): DaysOffPreview {
  const { promptAt, closesAt } = team;
  const workingDays = (whose === 'own' ? member.worksOn : undefined) ?? team.workingDays;
  const daysOff = whose === 'own' ? bothOf(team.daysOff, member.daysOff) : team.daysOff;
  const found = daysFromCalendar(reading, { promptAt, closesAt, workingDays, daysOff, from, to, takesFree });
  const mark = JSON.stringify([whose, takesFree, found.days.map(({ day, isHalf }) => [day, isHalf])]);
  const fingerprint = createHash('sha256').update(mark).digest('base64url');
  return { ...found, team, whose, name, regions, takesFree, from, to, fingerprint };
}

function bothOf(one: DaysOff, other: DaysOff): DaysOff {
  return { full: [...one.full, ...other.full], half: [...one.half, ...other.half] };
}

function spanOf({ day }: { readonly day: Day }): { readonly from: Day; readonly to: Day } {
  return { from: day, to: day };
}
