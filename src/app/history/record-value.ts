/** The one number a sprint that the product owner records, in any unit. What it means is theirs to know. */
import type { Growth } from '../../forecast/value-growth.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { readNumber } from '../read-number.ts';
import { Refusal } from '../refusal.ts';
import {
  type Audience,
  audienceAt,
  audienceInTeam,
  facilitatorIdsOf,
  type Place,
  type SprintReference,
  type TeamReference,
} from '../team/place.ts';
import type { Actor, Team } from '../team/team.ts';
import { type ClosedSprintReference, closedSprint, lockedAudience } from './closed-sprint.ts';
import { growthOfPast } from './growth-of-past.ts';
import type { PastSprint, ValuedSprint } from './past-sprint.ts';
import { pastSprints } from './team-history.ts';

/** As many as a year of two-week sprints has; older ones can be named in the command. */
const SPRINTS_OFFERED = 24;

export interface ValueForm {
  readonly team: Team;
  /** The latest closed sprints, the latest first; at least one. */
  readonly sprints: readonly ValuedSprint[];
  /** The sprint that the form begins with. */
  readonly initial: string;
}

export interface ValueRecorded {
  readonly team: Team;
  readonly sprint: ValuedSprint;
  readonly value: number;
  /** What was there before; undefined when nothing was. */
  readonly previousValue: number | undefined;
  /** The sprint's growth, with this value in it. */
  readonly growth: Growth;
  /** The sprint that both growths are measured by; undefined when there is none yet. */
  readonly measuredBy: Pick<PastSprint, 'sprintId' | 'name'> | undefined;
}

/** Undefined sprint: the latest closed one. */
type ValueInput = TeamReference & {
  readonly sprint: ClosedSprintReference | undefined;
  /** As typed. */
  readonly value: string;
};

/** @throws Refusal `not-a-value-keeper`, `no-closed-sprint`, and those of finding the team. */
export async function valueForm(
  deps: AppDependencies,
  actor: Actor,
  reference: SprintReference,
): Promise<ValueForm> {
  return deps.store.transaction(async (tx) => {
    const sprint = 'sprintId' in reference ? await tx.read.sprintById(reference.sprintId) : undefined;
    const audience =
      'place' in reference
        ? await audienceAt(tx.read, actor, reference.place)
        : await audienceInTeam(tx.read, actor, sprint?.teamId ?? '');
    requireValueKeeper(audience);
    const sprints = (await pastSprints(tx, audience.team)).slice(-SPRINTS_OFFERED).reverse();
    const [latest] = sprints;
    if (!latest) {
      throw new Refusal('no-closed-sprint', { teamName: audience.team.name, withVelocity: false });
    }
    const asked = sprints.find(({ sprintId }) => sprintId === sprint?.id);
    return { team: audience.team, sprints, initial: (asked ?? latest).sprintId };
  });
}

/**
 * Records a sprint's value; a correction counts instead of what was recorded before, which is kept.
 *
 * @throws Refusal `bad-input` (recordedValue), `not-a-value-keeper`, `no-closed-sprint`, `no-such-sprint`,
 * `sprint-not-closed`, and those of finding the team.
 */
export async function recordValue(
  deps: AppDependencies,
  actor: Actor,
  input: ValueInput,
): Promise<ValueRecorded> {
  return deps.store.transaction(async (tx) => {
    // Locked, so that of two who record at once the later counts.
    const audience = await lockedAudience(tx, actor, input);
    requireValueKeeper(audience);
    const { team } = audience;
    const past = await pastSprints(tx, team);
    const sprint = input.sprint ? await closedSprint(tx.read, team, past, input.sprint) : past.at(-1);
    if (!sprint) throw new Refusal('no-closed-sprint', { teamName: team.name, withVelocity: false });
    const read = readNumber(input.value);
    if ('problem' in read) {
      throw new Refusal('bad-input', { problems: [{ field: 'recordedValue', problem: read.problem }] });
    }
    const { value } = read;
    const { sprintId, recordedValue: previousValue } = sprint;
    if (value !== previousValue) {
      await tx.write.history.recordValue({ sprintId, value, byUserId: actor.userId, at: deps.clock.now() });
      await tx.write.posts.refreshSent(sprintId, 'value-question');
    }
    const recorded = { ...sprint, recordedValue: value };
    const { growth, measuredBy } = growthOfPast(
      team,
      past.map((other) => (other.sprintId === sprintId ? recorded : other)),
    );
    const own = growth[past.indexOf(sprint)] as Growth;
    return { team, sprint: recorded, value, previousValue, growth: own, measuredBy };
  });
}

/**
 * A value in words: the number alone for the latest closed sprint, or the sprint's name, a colon and the number.
 *
 * @throws Refusal `bad-argument` when the colon is missing, and those of `recordValue`.
 */
export async function recordValueLine(
  deps: AppDependencies,
  actor: Actor,
  { place, line }: { readonly place: Place; readonly line: string },
): Promise<ValueRecorded> {
  const [, sprintName, value] = /^([\s\S]*)[:=：]([^:=：]*)$/u.exec(line) ?? [];
  const words = line.trim().split(/\s+/);
  const number = words.pop() ?? '';
  const name = words.join(' ');
  if (value === undefined && /\d$/.test(number) && /\p{L}/u.test(name)) {
    const problem = { code: 'no-colon' } as const;
    throw new Refusal('bad-argument', { command: 'value', problem, example: `${name}: ${number}` });
  }
  const named = sprintName !== undefined && sprintName.trim() !== '';
  return recordValue(deps, actor, {
    place,
    sprint: named ? { sprintName } : undefined,
    value: value ?? line,
  });
}

/** Who records values: facilitators and the product owner. */
export function requireValueKeeper({ team, members, isFacilitator, isProductOwner }: Audience): void {
  if (isFacilitator || isProductOwner) return;
  throw new Refusal('not-a-value-keeper', {
    teamName: team.name,
    productOwnerId: team.productOwnerId,
    facilitatorIds: facilitatorIdsOf(members),
  });
}
