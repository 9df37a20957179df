/** Holds both manifests against the platform's published schema. */
import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import type { JsonObject } from '../../src/rehearsal/stand-in/page-state.ts';
import type { Finding } from './finding.ts';

const MANIFESTS = ['app-manifest.json', 'app-manifest-many.json'];

export function checkManifests(schema: JsonObject): Finding[] {
  // The schema describes keywords of its own, which are no rules.
  const ajv = new Ajv({ allErrors: true, strict: false });
  addFormats.default(ajv);
  const validate = ajv.compile(schema);
  return MANIFESTS.map((file) => {
    const url = new URL(`../../deploy/${file}`, import.meta.url);
    const isValid = validate(JSON.parse(readFileSync(url, 'utf8')));
    const errors = isValid ? [] : (validate.errors ?? []);
    const problems = errors.map(({ instancePath, message, params }) => {
      return `${instancePath || '/'} ${message} (${JSON.stringify(params)})`;
    });
    return { what: `deploy/${file}`, seen: 'valid by the published schema', problems };
  });
}
