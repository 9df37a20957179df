/** The people of a scenario as the stand-in workspace knows them, and the channel they meet in. */
import type { Scenario } from './scenario.ts';
import type { StandInUser } from './stand-in/stand-in-options.ts';

export const TEAM_CHANNEL_ID = 'CTEAM00001';

/** Where a visitor of the page can set up a team from nothing. */
export const FREE_CHANNEL = { id: 'CFREE00001', name: 'your-team' };

/** Plays the facilitator and the product owner where a scenario gives these roles to nobody; not one of its members. */
export const FACILITATOR_ID = 'UFACILITATE';

export interface Cast {
  readonly users: readonly StandInUser[];
  /** Those who facilitate; the first one sets up and plans. */
  readonly facilitatorIds: readonly [string, ...string[]];
  readonly productOwnerId: string | undefined;
  /** @throws Error when the scenario has no such person */
  readonly userIdOf: (personId: string) => string;
  readonly memberIdOf: (userId: string) => string | undefined;
  readonly roles: Readonly<Record<string, string>>;
}

/** A person of the workspace, by the id that the scenario gives them. */
interface Person {
  readonly id: string;
  readonly name: string;
  readonly userId: string;
}

/** Ids of users on the platform are capitals and digits; a person's own id may be anything. */
export function castOf(scenario: Scenario): Cast {
  const { members, roles = {} } = scenario;
  const { timeZone } = scenario.team;
  const facilitators = roles.facilitators ?? [];
  const named = [...facilitators, ...(roles.productOwner === undefined ? [] : [roles.productOwner])];
  const others = [...new Set(named)].filter((id) => !members.some((member) => member.id === id));
  const people: Person[] = [
    ...members.map((member, i) => ({ ...member, userId: numbered('UMEMBER', i) })),
    // Somebody with a role who does none of the team's work.
    ...others.map((id, i) => ({ id, name: id, userId: numbered('UOUTSIDE', i) })),
  ];
  const userIds = new Map(people.map(({ id, userId }) => [id, userId]));
  const memberIds = new Map(people.map(({ id, userId }) => [userId, id]));
  const userIdOf = (personId: string): string => {
    const userId = userIds.get(personId);
    if (userId === undefined) throw new Error(`The scenario has no “${personId}”.`);
    return userId;
  };
  const [first = FACILITATOR_ID, ...more] = facilitators.map(userIdOf);
  const hasUnnamed = first === FACILITATOR_ID;
  const unnamed = hasUnnamed ? FACILITATOR_ID : undefined;
  const productOwnerId = roles.productOwner === undefined ? unnamed : userIdOf(roles.productOwner);
  return {
    users: [
      ...people.map(({ id, name, userId }) => ({ id: userId, name: id, realName: name, timeZone })),
      ...(hasUnnamed ? [{ id: FACILITATOR_ID, name: 'facilitator', realName: 'Facilitator', timeZone }] : []),
    ],
    facilitatorIds: [first, ...more],
    productOwnerId,
    userIdOf,
    memberIdOf: (userId) => memberIds.get(userId),
    roles: rolesOf([first, ...more], productOwnerId),
  };
}

function numbered(prefix: string, index: number): string {
  return `${prefix}${String(index + 1).padStart(3, '0')}`;
}

function rolesOf(
  facilitatorIds: readonly string[],
  productOwnerId: string | undefined,
): Record<string, string> {
  const roles: Record<string, string> = Object.fromEntries(facilitatorIds.map((id) => [id, 'facilitator']));
  if (productOwnerId === undefined) return roles;
  const both = facilitatorIds.includes(productOwnerId);
  roles[productOwnerId] = both ? 'facilitator and product owner' : 'product owner';
  return roles;
}
