import { describe, expect, it } from 'vitest';
import { inputValueOf, KeptValues } from '../../../src/rehearsal/page/kept-values.ts';

describe('kept values', () => {
  it('give back what was typed instead of the proposed value', () => {
    const values = new KeptValues();
    expect(values.start('form', 'name', 'text', 'proposed')).toBe('proposed');
    values.set('form', 'name', 'text', 'typed');
    expect(values.start('form', 'name', 'text', 'proposed again')).toBe('typed');
  });

  it('do not mix two surfaces with the same ids', () => {
    const values = new KeptValues();
    values.set('one', 'name', 'text', 'a');
    expect(values.of('two')).toEqual({});
  });

  it('take over what the workspace knows without touching what was typed', () => {
    const values = new KeptValues();
    values.set('form', 'name', 'text', 'typed');
    values.seed('form', {
      name: { text: { type: 'plain_text_input', value: 'older' } },
      size: { choice: { type: 'static_select', selected_option: { value: '3' } } },
    });
    expect(values.of('form')).toEqual({ name: { text: 'typed' }, size: { choice: '3' } });
  });

  it('forget inputs that an update took away, also within a block that stays', () => {
    const values = new KeptValues();
    values.set('form', 'name', 'text', 'a');
    values.set('form', 'name', 'other', 'b');
    values.keepOnly('form', (blockId, actionId) => `${blockId}/${actionId}` === 'name/text');
    expect(values.of('form')).toEqual({ name: { text: 'a' } });
  });
});

describe('the value inside the platform’s state', () => {
  it.each([
    [{ type: 'plain_text_input', value: 'a' }, 'a'],
    [{ type: 'plain_text_input', value: null }, null],
    [{ type: 'static_select', selected_option: { value: '2' } }, '2'],
    [{ type: 'static_select', selected_option: null }, null],
    [{ type: 'checkboxes', selected_options: [{ value: 'mon' }, { value: 'tue' }] }, ['mon', 'tue']],
    [{ type: 'multi_users_select', selected_users: ['U0ANA0000'] }, ['U0ANA0000']],
    [{ type: 'file_input', files: [{ id: 'F1', name: 'past.csv' }] }, ['F1']],
    [{ type: 'file_input', files: [] }, []],
    [{ type: 'datepicker', selected_date: '2026-11-02' }, '2026-11-02'],
  ])('of %o is %o', (stated, value) => {
    expect(inputValueOf(stated)).toEqual(value);
  });
});
