/** What the days-off form does with a calendar file, and what its preview saves. */
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/app/refusal.ts';
import { daysOffFormView, daysOffPreviewView } from '../../../src/slack/views/days-off-views.ts';
import { daysOffForm, daysOffPreview, team } from '../support/samples.ts';
import { spyUseCases } from '../support/spy-use-cases.ts';
import { pickedFile, submitWithFiles } from '../support/submit-with-files.ts';
import { formText } from '../views/form-text.ts';

const picked = {
  file: pickedFile('F1', 'off.ics'),
  whose: { type: 'static_select', selected_option: { value: 'team' } },
};
const preview = daysOffPreviewView(daysOffPreview, { file: { id: 'F1', name: 'off.ics' } }, 'D1');

describe('the days-off form with a calendar file', () => {
  it('shows what the file gives, and saves nothing of it yet', async () => {
    const { outcome, useCases } = await submitWithFiles(daysOffFormView(daysOffForm), picked);
    expect(useCases.importDaysOff.mock.calls[0]?.[1]).toEqual({
      teamId: team.id,
      whose: 'team',
      source: { fileName: 'off.ics', text: 'text of F1' },
      takesFree: false,
      seen: undefined,
    });
    expect(outcome).toMatchObject({
      next: 'show',
      how: 'in place',
      view: { callback_id: 'days-off-preview-form' },
    });
  });

  it('saves its other fields only when the file could be read', async () => {
    const useCases = spyUseCases();
    await submitWithFiles(daysOffFormView(daysOffForm), picked, useCases);
    expect(useCases.saveDaysOff).toHaveBeenCalledOnce();
    const unread = spyUseCases();
    unread.importDaysOff.mockRejectedValue(
      new Refusal('file-unreadable', { field: 'file', fileName: 'off.ics', why: 'not a calendar' }),
    );
    await expect(submitWithFiles(daysOffFormView(daysOffForm), picked, unread)).rejects.toBeInstanceOf(
      Refusal,
    );
    expect(unread.saveDaysOff).not.toHaveBeenCalled();
  });
});

describe('the days-off form with a country’s holidays', () => {
  const holidays = { type: 'plain_text_input', value: ' DE-BY ' };

  it('shows them for the whole team, and its preview saves them from the same country', async () => {
    const { outcome, useCases } = await submitWithFiles(daysOffFormView(daysOffForm), { holidays });
    const wanted = { teamId: team.id, whose: 'team', source: { holidaysOf: 'DE-BY' } };
    expect(useCases.importDaysOff.mock.calls[0]?.[1]).toMatchObject({ ...wanted, seen: undefined });
    expect(outcome).toMatchObject({ next: 'show', how: 'in place' });
    const saving = spyUseCases();
    saving.importDaysOff.mockResolvedValue({ kind: 'saved', saved: daysOffForm });
    const shown = daysOffPreviewView(daysOffPreview, { holidaysOf: 'DE-BY' }, 'D1');
    expect((await submitWithFiles(shown, {}, saving)).outcome).toMatchObject({ next: 'close' });
    expect(saving.importDaysOff.mock.calls[0]?.[1]).toMatchObject({ ...wanted, seen: 'days-1' });
  });

  it('saves nothing when the country isn’t known', async () => {
    const useCases = spyUseCases();
    useCases.importDaysOff.mockRejectedValue(new Refusal('no-sprint-running', {}));
    await expect(
      submitWithFiles(daysOffFormView(daysOffForm), { holidays }, useCases),
    ).rejects.toBeInstanceOf(Refusal);
    expect(useCases.saveDaysOff).not.toHaveBeenCalled();
  });
});

describe('the preview of a calendar file', () => {
  it('names the days that are taken, and in a line each what is left out and why', () => {
    expect(formText(preview)).toMatchInlineSnapshot(`
      "[Days off | Save days off | Cancel] {"teamId":"team-1","whose":"team","source":{"file":{"id":"F1","name":"off.ics"}},"seen":"days-1","replyTo":"D1"}
      “holidays.ics”: days off for Pier crew from Wed 4 Nov to 4 November 2027, 4 in all.
      • Thu 24 Dec (half): Christmas Eve
      • Fri 25 Dec to Sat 26 Dec: Christmas
      • Mon 28 Dec
      *Left out*
      • “Regatta” (Tue 1 Dec): cancelled.
      • “Birthday” (Wed 2 Dec and 1 more): marked as free.
      • “Dentist” (Thu 3 Dec): less than a third of the working day.
      • “Fog” (Fri 4 Dec): off already.
      • “no title” (Sat 5 Dec to Sun 6 Dec): no working day.
      • “Broken”: can’t be understood.
      • 2 events are outside this time.
      (An event at times of a day takes the whole day from three quarters of the working day on, and half of it from a third on.)
      <takesFree> Marked as free (optional): ["yes=Take these as days off too"]"
    `);
  });

  it('sent off, has the days saved that it shows, from the file read again', async () => {
    const useCases = spyUseCases();
    useCases.importDaysOff.mockResolvedValue({ kind: 'saved', saved: daysOffForm });
    const free = { type: 'checkboxes', selected_options: [{ value: 'yes' }] };
    const { outcome, asked } = await submitWithFiles(preview, { takesFree: free }, useCases);
    expect(asked).toEqual([{ field: 'file', id: 'F1', name: 'off.ics', sizeBytes: 0, url: undefined }]);
    expect(useCases.importDaysOff.mock.calls[0]?.[1]).toMatchObject({
      whose: 'team',
      takesFree: true,
      seen: 'days-1',
    });
    expect(outcome).toMatchObject({ next: 'close' });
  });

  it('is shown again when the days have changed', async () => {
    const { outcome } = await submitWithFiles(preview, {});
    expect(outcome).toMatchObject({
      next: 'show',
      how: 'in place',
      view: { callback_id: 'days-off-preview-form' },
    });
  });

  it('offers nothing to send off when there is nothing to save', () => {
    const empty = daysOffPreviewView(
      { ...daysOffPreview, days: [], leftOut: [] },
      { file: { id: 'F1', name: 'off.ics' } },
    );
    expect(empty.submit).toBeUndefined();
  });
});
