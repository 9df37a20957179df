import { describe, expect, it } from 'vitest';
import { fillSample } from './fill-sample.ts';

const sample = { id: '', event: { type: 'message', user: '', ts: '', tags: [''], edited: { ts: '' } } };
const given = { event: { type: 'message', user: 'U1' } };

describe('a filled sample', () => {
  it('holds what is given, and the rest as the sample has it', () => {
    expect(fillSample(sample, given, 'empty')).toEqual({
      id: '',
      event: { type: 'message', user: 'U1', ts: '', tags: [''], edited: { ts: '' } },
    });
  });

  it('has a value everywhere when it is full', () => {
    expect(JSON.stringify(fillSample(sample, given, 'full'))).not.toContain('""');
  });

  it('has null for the rest, or nothing', () => {
    const nulls = { type: 'message', user: 'U1', ts: null, tags: null, edited: null };
    expect(fillSample(sample, given, 'null')).toEqual({ id: null, event: nulls });
    expect(fillSample(sample, given, 'left out')).toEqual(given);
  });

  it('lacks what is given as absent, and has what only is given', () => {
    expect(fillSample(sample, { event: undefined, more: { a: null } }, 'empty')).toEqual({
      id: '',
      more: { a: null },
    });
  });
});
