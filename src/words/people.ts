/** People, as they are named in messages. */
import { isErased } from '../app/privacy/without-person.ts';
import { Markup, say } from './say.ts';
import { typed } from './typed-text.ts';

/** A person, by mention. Only for ids that the platform gave; a person who was erased is nobody in particular. */
export function mention(userId: string): string {
  if (isErased(userId)) return say('somebody');
  return /^[A-Z0-9]+$/.test(userId) ? `<@${userId}>` : typed(userId);
}

/** The same as markup, to go into a message. */
export function person(userId: string): Markup {
  return new Markup(mention(userId));
}

export function people(userIds: readonly string[]): Markup[] {
  return userIds.map(person);
}
