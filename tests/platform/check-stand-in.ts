/** Holds what the stand-in sends against the samples, field by field. */
import type { JsonObject } from '../../src/rehearsal/stand-in/page-state.ts';
import { FIELD_RULES } from './field-rules.ts';
import type { Finding } from './finding.ts';
import type { Samples } from './read-samples.ts';
import { shapeDifferences } from './shape-differences.ts';
import { type SentPayload, standInPayloads } from './stand-in-payloads.ts';

export async function checkStandIn(samples: Samples): Promise<Finding[]> {
  const found = new Map<string, Set<string>>();
  for (const sent of await standInPayloads()) {
    const [name, sample] = sampleFor(sent, samples);
    const problems = found.get(name) ?? new Set();
    found.set(name, problems);
    if (!sample) problems.add('there is no sample of it');
    else for (const one of shapeDifferences(sent.payload, sample, name, FIELD_RULES)) problems.add(one);
  }
  return [...found].map(([what, problems]) => ({ what, seen: 'of the same shape', problems: [...problems] }));
}

/** A command comes as a form, of texts only. */
function asSent(name: string | undefined, sample: JsonObject | undefined): JsonObject | undefined {
  if (name !== 'slash_command' || !sample) return sample;
  return Object.fromEntries(Object.entries(sample).map(([field, value]) => [field, String(value)]));
}

function sampleFor(sent: SentPayload, samples: Samples): [name: string, sample: unknown] {
  if (sent.in !== 'events')
    return [String(sent.name), asSent(sent.name, samples[sent.in][String(sent.name)])];
  const { type, subtype } = sent.payload.event as { type: string; subtype?: string };
  const found = Object.entries(samples.events).find(
    ([, { event }]) => event.type === type && (event.subtype || undefined) === subtype,
  );
  return found ?? [[type, subtype].filter(Boolean).join(' '), undefined];
}
