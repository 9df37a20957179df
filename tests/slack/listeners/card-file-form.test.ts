/** A file of cards in the plan form: what is handed to the use case, and which form comes next. */
import { describe, expect, it, vi } from 'vitest';
import { readCardRows } from '../../../src/app/planning/card-rows.ts';
import { StaleControl } from '../../../src/slack/button-values.ts';
import type { FormTools } from '../../../src/slack/commands/command.ts';
import { FORMS } from '../../../src/slack/commands/commands.ts';
import type { SentFile } from '../../../src/slack/files/download-file.ts';
import { FormFields } from '../../../src/slack/listeners/form-fields.ts';
import { cardFileFormView } from '../../../src/slack/views/planning/card-file-form.ts';
import { planFormView } from '../../../src/slack/views/planning/plan-forms.ts';
import { sentForm } from '../support/bot-under-test.ts';
import { MIRA_ID, planInput, team, WORKSPACE_ID } from '../support/samples.ts';
import { spyUseCases } from '../support/spy-use-cases.ts';

const plan = planFormView({ team, draft: planInput, leftOver: 0 }, 'C1');
const read = readCardRows({ fileName: 'board.csv', text: 'Title,Points,Owner\nFog horn,3,\n' }, []);
const shown = cardFileFormView(
  { team, fileName: 'board.csv', read },
  { file: { id: 'F1', name: 'board.csv' }, round: 1, replyTo: 'C1' },
);
const picked = (id: string) => ({
  type: 'file_input',
  files: [{ id, name: `${'x'.repeat(200)}.csv`, size: 5, url_private_download: 'https://files.slack.com/1' }],
});
const chosen = (value: string) => ({
  type: 'static_select',
  selected_option: { value, text: { type: 'plain_text', text: value } },
});
const AS_SHOWN = {
  'column-title-1': chosen('0'),
  'column-estimate-1': chosen('1'),
  'column-owner-1': chosen('2'),
  'column-link-1': chosen('none'),
  'column-key-1': chosen('none'),
};

/** Sends a form off to its handler alone; every file holds its own id. */
async function sent(form: string, view: object, values: Record<string, unknown>, useCases = spyUseCases()) {
  const download = vi.fn(async ({ id, name }: SentFile) => ({ fileName: name, text: `text of ${id}` }));
  const body = sentForm(view as never, values as never) as { private_metadata: string };
  const outcome = await FORMS.get(form)?.submit(
    useCases,
    {
      actor: { workspaceId: WORKSPACE_ID, userId: MIRA_ID },
      fields: new FormFields(body as never),
      context: body.private_metadata,
    },
    { download } as unknown as FormTools,
  );
  return { outcome, useCases, input: useCases.readCardFile.mock.calls[0]?.[1] };
}

describe('the plan form with a file of cards', () => {
  it('keeps what was typed and shows how the file is read, in its place', async () => {
    const typed = { cards: { type: 'plain_text_input', value: 'Typed, 2' }, cardFile: picked('F1') };
    const { input, outcome, useCases } = await sent('plan-form', plan, typed);
    expect(input).toMatchObject({
      plan: { teamId: team.id, cards: 'Typed, 2' },
      file: { text: 'text of F1' },
    });
    expect(useCases.previewPlan).not.toHaveBeenCalled();
    expect(outcome).toMatchObject({ next: 'show', how: 'in place', view: { callback_id: 'card-file-form' } });
    const { view } = outcome as { view: { private_metadata: string } };
    const { file, round, replyTo } = JSON.parse(view.private_metadata);
    expect([file.id, file.name.length <= 80, round, replyTo]).toEqual(['F1', true, 1, 'C1']);
  });

  it('without one goes on to the preview', async () => {
    const { useCases } = await sent('plan-form', plan, {});
    expect(useCases.previewPlan).toHaveBeenCalledOnce();
    expect(useCases.readCardFile).not.toHaveBeenCalled();
  });
});

describe('the form that shows how a file is read', () => {
  it('says which columns were chosen and which were seen', async () => {
    const { input } = await sent('card-file-form', shown, { ...AS_SHOWN, 'column-owner-1': chosen('none') });
    expect(input).toEqual({
      teamId: team.id,
      file: { fileName: 'board.csv', text: 'text of F1' },
      columns: { title: 0, estimate: 1 },
      seen: { title: 0, estimate: 1, owner: 2 },
    });
  });

  it('reads a corrected file by its own names of columns, and shows it first', async () => {
    const { input } = await sent('card-file-form', shown, { ...AS_SHOWN, 'cardFile-2': picked('F2') });
    expect(input).toMatchObject({ file: { text: 'text of F2' } });
    expect(input).not.toHaveProperty('seen');
    expect(input).not.toHaveProperty('columns');
  });

  it('gives way to the plan form once the rows are filled in', async () => {
    const useCases = spyUseCases();
    const form = { team, draft: { ...planInput, cards: 'Fog horn\t3' }, leftOver: 0, fromFile: 1 };
    useCases.readCardFile.mockResolvedValue({ kind: 'filled in', form });
    const { outcome } = await sent('card-file-form', shown, AS_SHOWN, useCases);
    expect(outcome).toMatchObject({ next: 'show', how: 'in place', view: { callback_id: 'plan-form' } });
    expect(JSON.stringify(outcome)).toContain('1 row of your file is filled in');
  });

  it('that has been tampered with is refused', async () => {
    const forged = { ...shown, private_metadata: '{"teamId":"team-1","round":1,"seen":{"title":-1}}' };
    await expect(sent('card-file-form', forged, AS_SHOWN)).rejects.toBeInstanceOf(StaleControl);
  });
});
