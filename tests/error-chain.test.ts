import { describe, expect, it } from 'vitest';
import { codeOf, errorChain, firstCodeOf } from '../src/error-chain.ts';

const coded = (code: unknown, cause?: unknown) => Object.assign(new Error('failed', { cause }), { code });

describe('the chain of an error', () => {
  it('has the error and its causes, from the outermost inwards, also when what was thrown last is no error', () => {
    const inner = new Error('inner', { cause: 'a text' });
    const outer = new Error('outer', { cause: inner });
    expect(errorChain(outer)).toEqual([outer, inner, 'a text']);
    expect(errorChain('a text')).toEqual(['a text']);
    expect(errorChain(undefined)).toEqual([undefined]);
  });

  it('ends although an error is its own cause', () => {
    const loop = new Error('loop');
    loop.cause = loop;
    expect(errorChain(loop)).toHaveLength(8);
  });
});

describe('the code of an error', () => {
  it('is its own, and a text that is not empty', () => {
    expect(codeOf(coded('ECONNRESET'))).toBe('ECONNRESET');
    for (const none of [coded(''), coded(7), new Error('bare', { cause: coded('23505') }), { code: 'EPIPE' }])
      expect(codeOf(none)).toBeUndefined();
  });

  it('is looked for in the causes too, the nearest to the surface first', () => {
    expect(firstCodeOf(new Error('bare', { cause: coded('57P01', coded('EPIPE')) }))).toBe('57P01');
    expect(firstCodeOf(new Error('bare'))).toBeUndefined();
    expect(firstCodeOf('a text')).toBeUndefined();
  });
});
