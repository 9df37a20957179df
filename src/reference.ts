/**
 * A reference ties together everything that one request or one piece of background work writes to the log,
 * and the words that a person is shown when it fails. It travels with the work by itself. Must carry no other
 * meaning: nothing may be decided by it.
 */
import { AsyncLocalStorage } from 'node:async_hooks';
import { randomInt } from 'node:crypto';

/** No letters that are mistaken for digits when read aloud. */
const ALPHABET = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
/** With 8 letters, two in a day of a million requests are the same about once in two days. */
const LENGTH = 8;

const underWay = new AsyncLocalStorage<string>();

/** The reference of the work under way; undefined outside of any. */
export function currentReference(): string | undefined {
  return underWay.getStore();
}

export function newReference(): string {
  return Array.from({ length: LENGTH }, () => ALPHABET[randomInt(ALPHABET.length)]).join('');
}

/** Runs work that begins here under a reference of its own. */
export function withNewReference<T>(work: () => T): T {
  return underWay.run(newReference(), work);
}

/** Runs the next step of work that may have begun elsewhere: under its reference, or under a new one. */
export function withReference<T>(work: () => T): T {
  return currentReference() === undefined ? withNewReference(work) : work();
}

/** Runs what belongs to no request, even if a request was the first to need it. */
export function withoutReference<T>(work: () => T): T {
  return underWay.exit(work);
}
