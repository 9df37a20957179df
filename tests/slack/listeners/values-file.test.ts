/** What the value form does with a file, and what its preview records. */
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/app/refusal.ts';
import { valueFormView, valuesPreviewView } from '../../../src/slack/views/value-views.ts';
import { team, valueForm, valuesPreview } from '../support/samples.ts';
import { spyUseCases } from '../support/spy-use-cases.ts';
import { pickedFile, submitWithFiles } from '../support/submit-with-files.ts';
import { formText } from '../views/form-text.ts';

const valuesFile = pickedFile('F1', 'values.csv');
const preview = valuesPreviewView(valuesPreview, { id: 'F1', name: 'values.csv' }, 'D1');

describe('the value form with a file', () => {
  it('shows what the file would record on top of the form, and records nothing yet', async () => {
    const { outcome, useCases } = await submitWithFiles(valueFormView(valueForm), { valuesFile });
    expect(useCases.importValues.mock.calls.map(([, input]) => input)).toEqual([
      { teamId: team.id, file: { fileName: 'values.csv', text: 'text of F1' }, seen: undefined },
    ]);
    expect(useCases.recordValue).not.toHaveBeenCalled();
    expect(outcome).toMatchObject({
      next: 'show',
      how: 'on top',
      view: { callback_id: 'values-preview-form' },
    });
  });

  it('takes a number or a file, not both', async () => {
    const values = { valuesFile, recordedValue: { type: 'plain_text_input', value: '5' } };
    const useCases = spyUseCases();
    const refused = await submitWithFiles(valueFormView(valueForm), values, useCases).catch(
      (error: unknown) => error,
    );
    expect(refused).toEqual(
      new Refusal('bad-input', {
        problems: [{ field: 'recordedValue', problem: { code: 'value-beside-file' } }],
      }),
    );
    expect(useCases.importValues).not.toHaveBeenCalled();
  });
});

describe('the preview of a file of values', () => {
  it('records what it shows, and closes with the form under it', async () => {
    const useCases = spyUseCases();
    const { team, values, same } = valuesPreview;
    useCases.importValues.mockResolvedValue({ kind: 'recorded', recorded: { team, values, same } });
    const { outcome, asked } = await submitWithFiles(preview, {}, useCases);
    expect(asked).toMatchObject([{ id: 'F1', name: 'values.csv' }]);
    expect(useCases.importValues.mock.calls[0]?.[1]).toMatchObject({ seen: 'values-1' });
    expect(outcome).toMatchObject({ next: 'close-all' });
    expect(JSON.stringify(outcome)).toContain('1,200, in place of 1,000');
  });

  it('is shown again in its place when something changed in between', async () => {
    const { outcome } = await submitWithFiles(preview);
    expect(outcome).toMatchObject({ next: 'show', how: 'in place' });
  });

  it('shows each sprint with what it replaces, and how many rows add nothing', () => {
    expect(formText(preview)).toMatchInlineSnapshot(`
      "[Record a value | Record | Cancel] {"teamId":"team-1","file":{"id":"F1","name":"values.csv"},"seen":"values-1","replyTo":"D1"}
      *The file would record:*
      • Harbour 12 (ended 13 November 2026): 1,200, in place of 1,000
      (1 sprint has the value of the file already. 2 rows have no value and are left out.)"
    `);
  });

  it('can’t be sent off while a line is wrong, or when there is nothing new', () => {
    const problem = { code: 'not-closed', sprint: 'Harbour 9' } as const;
    const bad = { fileName: 'values.csv', lineNumber: 3, problem };
    const one = { id: 'F1', name: 'values.csv' };
    const wrong = valuesPreviewView({ ...valuesPreview, values: [], problems: [bad] }, one);
    expect(formText(wrong)).toMatchInlineSnapshot(`
      "[Record a value | - | Close] 
      *Nothing was recorded. Correct these lines, then give the file again:*
      • *values.csv, line 3*: the team has no closed sprint called “Harbour 9”."
    `);
    expect(formText(valuesPreviewView({ ...valuesPreview, values: [] }, one))).toMatchInlineSnapshot(`
      "[Record a value | - | Close] 
      There is nothing new in the file.
      (1 sprint has the value of the file already. 2 rows have no value and are left out.)"
    `);
  });
});
