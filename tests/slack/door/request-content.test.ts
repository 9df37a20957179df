import { describe, expect, it } from 'vitest';
import { contentOf } from '../../../src/slack/door/request-content.ts';

function read(body: object): unknown {
  return contentOf('application/json', Buffer.from(JSON.stringify(body)));
}

describe('the content of a request', () => {
  it('has no nulls, wherever they are, so that null and absent mean the same', () => {
    expect(read({ team: null, event: { user: null, files: [{ name: null, id: 'F1' }] } })).toEqual({
      event: { files: [{ id: 'F1' }] },
    });
  });

  it('keeps the nulls of a form’s state, which are fields that were emptied', () => {
    const state = { values: { goal: { input: { type: 'plain_text_input', value: null } } } };
    expect(read({ view: { submit: null, state } })).toEqual({ view: { state } });
  });
});
