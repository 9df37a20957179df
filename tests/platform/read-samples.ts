/** Reads the samples of the platform's shapes from a folder. They are never part of the repository. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { JsonObject } from '../../src/rehearsal/stand-in/page-state.ts';

export interface Samples {
  /** By name, in their envelopes. */
  readonly events: Readonly<Record<string, EventSample>>;
  /** By their type; `slash_command` is a form. */
  readonly interactions: Readonly<Record<string, JsonObject>>;
  /** By method of the Web API. */
  readonly responses: Readonly<Record<string, JsonObject>>;
  readonly manifestSchema: JsonObject;
}

export type EventSample = JsonObject & { readonly event: JsonObject & { readonly type: string } };

/** The folder is not there, or holds something else. */
export class SamplesError extends Error {
  override readonly name = 'SamplesError';
}

const FILES = {
  events: 'events.json',
  interactions: 'interactions.json',
  responses: 'responses.json',
  manifestSchema: 'manifest.schema.2.0.0.json',
} as const satisfies Record<keyof Samples, string>;

/** @throws SamplesError */
export function readSamples(folder: string): Samples {
  const missing = Object.values(FILES).filter((file) => !existsSync(join(folder, file)));
  if (missing.length > 0) {
    throw new SamplesError(`The platform's samples are not in ${folder}. Missing: ${missing.join(', ')}`);
  }
  const read = (file: string): unknown => {
    try {
      return JSON.parse(readFileSync(join(folder, file), 'utf8')) as unknown;
    } catch (cause) {
      throw new SamplesError(`${join(folder, file)} is not JSON.`, { cause });
    }
  };
  return Object.fromEntries(Object.entries(FILES).map(([name, file]) => [name, read(file)])) as Record<
    string,
    unknown
  > as unknown as Samples;
}
