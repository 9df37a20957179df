/** What the plan form shows at first: a kept draft, or one made from the sprint before. */
import { formatPoints } from '../../sprint/points.ts';
import { hasOwnKey, isOpenCard, statesOf } from '../cards/card-line.ts';
import { type Experiment, isOpen } from '../experiments/experiment.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading } from '../ports/store.ts';
import { type Membership, membershipAt, type Place, requireFacilitator, todayOf } from '../team/place.ts';
import { type Actor, activeMembers, type Member, type Team } from '../team/team.ts';
import { formatCardLine } from './card-paste.ts';
import type { PlanInput } from './plan-input.ts';
import { nextSprintDays } from './sprint-rhythm.ts';

export interface PlanForm {
  readonly team: Team;
  /** What was typed before and not committed to, else defaults. */
  readonly draft: PlanInput;
  /** Unfinished cards of the last sprint that the draft begins with. */
  readonly leftOver: number;
  /** What the team is trying. */
  readonly experiments?: readonly Experiment[];
  /** Rows of a file that were just filled in. */
  readonly fromFile?: number;
}

/** What the plan form shows at first. */
export async function planForm(deps: AppDependencies, actor: Actor, place: Place): Promise<PlanForm> {
  return deps.store.read(async (read) => {
    const membership = await membershipAt(read, actor, place);
    requireFacilitator(membership, 'plan');
    const { team } = membership;
    const draft = await read.draftOf(team.id, actor.userId);
    const experiments = (await read.experimentsOf(team.id)).filter(isOpen);
    if (draft) return { team, draft, leftOver: 0, experiments };
    const { input, leftOver } = await freshDraft(read, membership, todayOf(team, deps.clock.now()));
    return { team, draft: input, leftOver, experiments };
  });
}

async function freshDraft(
  read: Reading,
  { team, members }: Membership,
  today: string,
): Promise<{ input: PlanInput; leftOver: number }> {
  const last = await read.latestFinishedSprint(team.id);
  const open = await read.openSprintsOf(team.id);
  const previous = open.at(-1) ?? last;
  // Of a sprint that is planned and has not begun, nothing is left over yet.
  const hasBegun = previous !== undefined && previous.startsOn <= today;
  const leftOvers = hasBegun ? statesOf(await read.recordsOf(previous.id)).filter(isOpenCard) : [];
  const lines = leftOvers
    .filter(({ leftPoints }) => leftPoints > 0)
    .map(({ card, leftPoints }) =>
      formatCardLine(
        { key: hasOwnKey(card) ? card.key : undefined, title: card.title, link: card.link },
        // A question mark has to be replaced before the plan can be committed.
        team.carriedOver === 'left' ? formatPoints(leftPoints) : '?',
        callableNames(card.ownerIds, members),
      ),
    );
  return {
    input: {
      teamId: team.id,
      name: followingName(previous?.name),
      goal: '',
      ...nextSprintDays(team, { open, lastFinished: last }, today),
      closesAt: team.closesAt,
      awayDays: '',
      cards: lines.join('\n'),
    },
    leftOver: lines.length,
  };
}

/** What each owner who is still on the team is called by; where two people have the same name, their ids are used. */
function callableNames(ownerIds: readonly string[], members: readonly Member[]): string[] {
  const active = activeMembers(members);
  return active
    .filter(({ userId }) => ownerIds.includes(userId))
    .map(({ userId, name }) => {
      const bearers = active.filter((other) => other.name.toLowerCase() === name.toLowerCase());
      return bearers.length === 1 ? name : userId;
    });
}

/** `Harbour 12` goes on as `Harbour 13`. */
function followingName(name: string | undefined): string {
  const match = /^(.*?)(\d{1,6})$/.exec(name ?? '');
  if (match) return `${match[1]}${Number(match[2]) + 1}`;
  return name ? '' : 'Sprint 1';
}
