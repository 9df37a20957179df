import { setImmediate as later } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import {
  currentReference,
  newReference,
  withNewReference,
  withoutReference,
  withReference,
} from '../src/reference.ts';
import { logCatcher } from './slack/support/log-catcher.ts';

describe('a reference', () => {
  it('can be read aloud: eight letters and digits, none of which is mistaken for another', () => {
    for (let n = 0; n < 200; n += 1) expect(newReference()).toMatch(/^[2-9A-HJ-NP-Z]{8}$/);
  });

  it('is in every log line of its work, and in none of other work that runs at the same time', async () => {
    const { logger, entries } = logCatcher();
    const work = async (name: string): Promise<void> => {
      for (let n = 0; n < 3; n += 1) {
        await later();
        logger.info({ name }, 'step');
      }
    };
    await Promise.all([withReference(() => work('a')), withReference(() => work('b')), work('none')]);
    const seen = Map.groupBy(entries(), ({ name }) => name);
    const references = (name: string) => new Set(seen.get(name)?.map(({ reference }) => reference));
    expect(references('a').size).toBe(1);
    expect(references('b').size).toBe(1);
    expect(references('a')).not.toEqual(references('b'));
    expect(references('none')).toEqual(new Set([undefined]));
  });

  it('stays the same in the next step, is another in new work, and is left behind by what belongs to no request', () => {
    withReference(() => {
      const outer = currentReference();
      expect(outer).toBeDefined();
      expect(withReference(currentReference)).toBe(outer);
      expect(withNewReference(currentReference)).not.toBe(outer);
      expect(currentReference()).toBe(outer);
      expect(withoutReference(currentReference)).toBeUndefined();
    });
    expect(currentReference()).toBeUndefined();
  });
});
