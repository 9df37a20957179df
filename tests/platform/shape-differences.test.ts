import { describe, expect, it } from 'vitest';
import { type FieldRule, shapeDifferences } from './shape-differences.ts';

const sample = {
  ok: false,
  user: { id: '', name: '', tags: [{ key: '' }], profile: {} },
  blocks: [{ type: '' }],
};
const sent = {
  ok: true,
  user: { id: 'U1', name: 'ana', tags: [{ key: 'a' }], profile: { any: 1 } },
  blocks: [],
};

function differences(payload: object, rules: readonly FieldRule[] = []): string[] {
  return shapeDifferences(payload, sample, 'one', rules);
}

describe('a payload', () => {
  it('of the sample’s shape differs in nothing, with null for any value and anything where the sample was cut', () => {
    expect(differences(sent)).toEqual([]);
    expect(differences({ ...sent, ok: null })).toEqual([]);
    expect(differences({ ...sent, blocks: [{ anything: 1 }] })).toEqual([]);
  });

  it('with a field that the platform doesn’t send differs', () => {
    expect(differences({ ...sent, more: 1 })).toEqual(['one.more: the platform sends no such field']);
    expect(differences({ ...sent, user: { ...sent.user, tags: [{ key: 'a', b: 1 }] } })).toEqual([
      'one.user.tags.b: the platform sends no such field',
    ]);
  });

  it('without a field that the platform always sends differs', () => {
    const { ok: _ok, ...rest } = sent;
    expect(differences(rest)).toEqual(['one.ok: is missing; the platform always sends it']);
  });

  it('with another kind of value differs', () => {
    expect(differences({ ...sent, ok: 'true' })).toEqual([
      'one.ok: is a string, but a boolean on the platform',
    ]);
  });

  it('may lack what a rule says is not always there, and hold what was cut off the sample', () => {
    const place = /^one\.user$/;
    const lacking = { ...sent, user: { id: 'U1', tags: [], profile: {}, blocks: [] } };
    const because = 'of this test';
    expect(differences(lacking, [{ place, sometimes: ['name'], cutOff: ['blocks'], because }])).toEqual([]);
    expect(differences(lacking, [{ place, always: ['id'], cutOff: ['blocks'], because }])).toEqual([]);
    expect(differences(lacking, [{ place, always: ['id', 'name'], because }])).toEqual([
      'one.user.name: is missing; the platform always sends it',
      'one.user.blocks: the platform sends no such field',
    ]);
  });
});
