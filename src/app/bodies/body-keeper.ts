/** Who may change what bodies of work a team keeps. */
import { Refusal } from '../refusal.ts';
import { type Audience, facilitatorIdsOf } from '../team/place.ts';

/** Who may change what the team keeps: the product owner and facilitators, as with a sprint's value. */
export function mayKeepBodies({ isFacilitator, isProductOwner }: Audience): boolean {
  return isFacilitator || isProductOwner;
}

export function requireBodyKeeper(audience: Audience): void {
  if (mayKeepBodies(audience)) return;
  const { team, members } = audience;
  throw new Refusal('not-a-body-keeper', {
    teamName: team.name,
    productOwnerId: team.productOwnerId,
    facilitatorIds: facilitatorIdsOf(members),
  });
}
