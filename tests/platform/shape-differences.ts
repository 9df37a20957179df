/**
 * Holds a payload of the stand-in against a sample of the same thing. A sample is the union of all that was ever seen, so
 * not every field of it is always there: `fieldRules` says which are.
 */
import { isObject } from './fill-sample.ts';

/** Which fields of an object are always there; the first rule whose place fits holds, and without one all are. */
export interface FieldRule {
  /** Fits the end of a path such as `users.info user.profile`. */
  readonly place: RegExp;
  /** Only these are always there. */
  readonly always?: readonly string[];
  /** These are not. */
  readonly sometimes?: readonly string[];
  /** Sent, though the sample leaves this deep part out. */
  readonly cutOff?: readonly string[];
  readonly because: string;
}

/** What apps or people put together themselves, in any shape: other rules hold it. */
const OPEN = new Set(['blocks', 'attachments', 'state', 'event_payload']);

/** @returns sentences, each beginning with the path */
export function shapeDifferences(
  payload: unknown,
  sample: unknown,
  path: string,
  rules: readonly FieldRule[],
): string[] {
  if (payload === null || sample === null || sample === undefined) return [];
  if (Array.isArray(payload) && Array.isArray(sample)) {
    return payload.flatMap((one) => shapeDifferences(one, sample[0], path, rules));
  }
  if (!isObject(payload) || !isObject(sample)) {
    const [sent, known] = [kindOf(payload), kindOf(sample)];
    return sent === known ? [] : [`${path}: is ${sent}, but ${known} on the platform`];
  }
  // A sample without any field says that the deep part was left out.
  if (Object.keys(sample).length === 0) return [];
  const rule = rules.find(({ place }) => place.test(path));
  const always = rule?.always ?? Object.keys(sample).filter((name) => !rule?.sometimes?.includes(name));
  const missing = always
    .filter((name) => name in sample && payload[name] === undefined)
    .map((name) => `${path}.${name}: is missing; the platform always sends it`);
  const present = Object.entries(payload).filter(([, value]) => value !== undefined);
  const unknown = present
    .filter(([name]) => !(name in sample) && !rule?.cutOff?.includes(name))
    .map(([name]) => `${path}.${name}: the platform sends no such field`);
  const inner = present
    .filter(([name]) => name in sample && !OPEN.has(name))
    .flatMap(([name, value]) => shapeDifferences(value, sample[name], `${path}.${name}`, rules));
  return [...new Set([...missing, ...unknown, ...inner])];
}

function kindOf(value: unknown): string {
  return Array.isArray(value) ? 'a list' : isObject(value) ? 'an object' : `a ${typeof value}`;
}
