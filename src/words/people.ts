/** People, as they are named in messages. */
import { Markup } from './say.ts';
import { mention } from './typed-text.ts';

/** A person, by mention. @param userId an id that the platform gave */
export function person(userId: string): Markup {
  return new Markup(mention(userId));
}

export function people(userIds: readonly string[]): Markup[] {
  return userIds.map(person);
}
