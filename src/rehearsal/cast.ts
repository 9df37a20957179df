/** The people of a scenario as the stand-in workspace knows them, and the channel they meet in. */
import type { Scenario } from './scenario.ts';
import type { StandInUser } from './stand-in/stand-in-options.ts';

export const TEAM_CHANNEL_ID = 'CTEAM00001';

/** Plays the facilitator and the product owner; not one of the scenario's members. */
export const FACILITATOR_ID = 'UFACILITATE';

export interface Cast {
  readonly users: readonly StandInUser[];
  /** @throws Error when the scenario has no such member */
  readonly userIdOf: (memberId: string) => string;
  readonly memberIdOf: (userId: string) => string | undefined;
  readonly roles: Readonly<Record<string, string>>;
}

/** Ids of users on the platform are capitals and digits; a member's own id may be anything. */
export function castOf(scenario: Scenario): Cast {
  const userIds = new Map(
    scenario.members.map(({ id }, i) => [id, `UMEMBER${String(i + 1).padStart(3, '0')}`]),
  );
  const memberIds = new Map([...userIds].map(([memberId, userId]) => [userId, memberId]));
  const { timeZone } = scenario.team;
  const facilitator = { id: FACILITATOR_ID, name: 'facilitator', realName: 'Facilitator', timeZone };
  return {
    users: [
      ...scenario.members.map(({ id, name }) => ({
        id: userIds.get(id) as string,
        name: id,
        realName: name,
        timeZone,
      })),
      facilitator,
    ],
    userIdOf: (memberId) => {
      const userId = userIds.get(memberId);
      if (userId === undefined) throw new Error(`The scenario has no member “${memberId}”.`);
      return userId;
    },
    memberIdOf: (userId) => memberIds.get(userId),
    roles: { [FACILITATOR_ID]: 'facilitator and product owner' },
  };
}
