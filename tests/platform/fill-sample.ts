/**
 * Makes a payload from a sample, whose values are empty. What is given goes in; how the rest comes is one of several
 * ways, because the samples hold every field that was ever seen, and the platform sends some of them at a time.
 */
import type { JsonObject } from '../../src/rehearsal/stand-in/page-state.ts';

/** `empty`: as in the sample; `full`: each field has a value; `null`: each is null; `left out`: none is there. */
export const WAYS = ['empty', 'full', 'null', 'left out'] as const;
export type Way = (typeof WAYS)[number];

/** @param given fields whose values matter; `undefined` takes a field away, a list replaces the sample's */
export function fillSample(sample: JsonObject, given: JsonObject, way: Way): JsonObject {
  const names = [...new Set([...Object.keys(sample), ...Object.keys(given)])];
  const filled = names.map((name): [string, unknown] => {
    const [had, wanted] = [sample[name], given[name]];
    if (!(name in given)) return [name, restOf(name, had, way)];
    return [name, isObject(wanted) ? fillSample(isObject(had) ? had : {}, wanted, way) : wanted];
  });
  return Object.fromEntries(filled.filter(([, value]) => value !== undefined));
}

function restOf(name: string, value: unknown, way: Way): unknown {
  if (way === 'empty') return value;
  if (way === 'full') return valueFor(name, value);
  return way === 'null' ? null : undefined;
}

/** A value such as the field could have. */
function valueFor(name: string, value: unknown): unknown {
  if (Array.isArray(value)) return value.map((one) => valueFor(name.replace(/s$/, ''), one));
  if (isObject(value)) {
    return Object.fromEntries(Object.entries(value).map(([inner, one]) => [inner, valueFor(inner, one)]));
  }
  return value === '' ? textFor(name) : value;
}

const TEXTS: readonly (readonly [RegExp, string])[] = [
  [/(^|_)ts$|^latest_reply$|^last_read$|^oldest$|^latest$/, '1793610000.000100'],
  [/url|link|image_|thumb|^hls|^mp4|^vtt|icon|pjpeg|deanimate/, 'https://files.example.org/one'],
  [/team/, 'T0ELSEWHERE'],
  [/enterprise/, 'E0ONE'],
  [/channel|conversation/, 'C0ELSEWHERE'],
  [/user|actor|inviter|editor|creator/, 'U0SOMEBODY'],
  [/bot/, 'B0ANOTHER'],
  [/app/, 'A0ANOTHER'],
  [/file/, 'F0ONE'],
  [/(^|_)ids?$/, 'X0ONE'],
];

function textFor(name: string): string {
  return TEXTS.find(([pattern]) => pattern.test(name))?.[1] ?? 'some words';
}

export function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
