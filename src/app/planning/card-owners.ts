/** Finds the people that a pasted line names as a card's owners. */

/** Somebody who may own a card. */
export interface KnownPerson {
  readonly userId: string;
  readonly name: string;
}

export type OwnerProblem =
  | {
      readonly code: 'several-people';
      readonly typed: string;
      readonly people: readonly { readonly person: string; readonly id: string }[];
    }
  | { readonly code: 'no-such-person'; readonly typed: string; readonly people: readonly string[] };

/** What people and trackers write for a card of nobody's. */
const NOBODY = new Set(['unassigned', 'nobody', 'none', 'n/a', 'tbd', '?', '-', '–', '—']);

const MENTION = /^<@([A-Z0-9]+)(?:\|[^>]*)?>$/;

export function findOwners(
  fields: readonly string[],
  people: readonly KnownPerson[],
): string[] | OwnerProblem {
  const ownerIds: string[] = [];
  for (const field of fields.map((text) => text.replace(/\s+/g, ' ').trim())) {
    // A whole name first: it may hold what parts names elsewhere.
    const parts =
      'code' in personCalled(field, people)
        ? field.split(/ ?[,;&+/] ?| and |(?<=>) ?(?=<@)| (?=[@<])/i)
        : [field];
    for (const part of parts.filter((text) => text !== '')) {
      const person = personCalled(part, people);
      if ('code' in person) return person;
      if (!ownerIds.includes(person.userId)) ownerIds.push(person.userId);
    }
  }
  return ownerIds;
}

/** People as they are called in a row: `@ana @ben`, `Ana and Ben`. */
export function peopleCalled(text: string, people: readonly KnownPerson[]): string[] | OwnerProblem {
  return findOwners([text], people);
}

/** Whether the words stand for no owner; a member may be called so. */
export function isNobody(text: string, people: readonly KnownPerson[]): boolean {
  return (
    NOBODY.has(text.trim().replace(/^@/, '').toLowerCase()) && 'code' in peopleCalled(text.trim(), people)
  );
}

/** The member that is meant, or why that can't be said. */
function personCalled(called: string, people: readonly KnownPerson[]): KnownPerson | OwnerProblem {
  const mentioned = MENTION.exec(called)?.[1];
  const wanted = called.replace(/^@/, '').toLowerCase();
  const matches = [
    ({ userId }: KnownPerson) => userId === mentioned || userId.toLowerCase() === wanted,
    ({ name }: KnownPerson) => name.toLowerCase() === wanted,
    ({ name }: KnownPerson) => name.toLowerCase().split(/\s+/)[0] === wanted,
  ]
    .map((isMeant) => people.filter(isMeant))
    .find((some) => some.length > 0);
  const [person, ...others] = matches ?? [];
  if (person && others.length === 0) return person;
  if (person) {
    const several = [person, ...others].map(({ name, userId }) => ({ person: name, id: userId }));
    return { code: 'several-people', typed: called, people: several };
  }
  return { code: 'no-such-person', typed: called, people: people.map(({ name }) => name) };
}
