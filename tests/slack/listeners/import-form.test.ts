/** What the import form hands to the use case, and what becomes of it. */
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { StaleControl } from '../../../src/slack/button-values.ts';
import type { FormTools } from '../../../src/slack/commands/command.ts';
import type { SentFile } from '../../../src/slack/files/download-file.ts';
import { FormFields } from '../../../src/slack/listeners/form-fields.ts';
import { submitImport } from '../../../src/slack/listeners/import-submission.ts';
import { importFormView, importPreviewView } from '../../../src/slack/views/import-views.ts';
import { botUnderTest, sentForm } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import { importPreview, MIRA_ID, sprintsImported, team, WORKSPACE_ID } from '../support/samples.ts';
import { spyUseCases } from '../support/spy-use-cases.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

const first = importFormView({ team, knownSprints: 0 });
const later = importPreviewView(importPreview, {
  round: 2,
  files: [
    { id: 'F1', name: 'sprints.csv' },
    { id: 'F2', name: 'cards.csv' },
  ],
  texts: [],
});
const picked = (id: string, name: string) => ({
  id,
  name,
  size: 5,
  url_private_download: `https://files.slack.com/${id}`,
});
const ticked = (...ids: string[]) => ({
  type: 'checkboxes',
  selected_options: ids.map((value) => ({ value, text: { type: 'plain_text', text: value } })),
});
const typed = (value: string) => ({ type: 'plain_text_input', value });

/** Sends a form off to the handler alone; every file holds its own id. */
async function sent(view: object, values: Record<string, unknown>) {
  const useCases = spyUseCases();
  const download = vi.fn(async ({ id, name }: SentFile) => ({ fileName: name, text: `text of ${id}` }));
  const form = sentForm(view as never, values as never) as { private_metadata: string };
  const outcome = await submitImport(
    useCases,
    {
      actor: { workspaceId: WORKSPACE_ID, userId: MIRA_ID },
      fields: new FormFields(form as never),
      context: form.private_metadata,
    },
    { download } as unknown as FormTools,
  );
  return {
    outcome,
    input: useCases.importSprints.mock.calls[0]?.[1],
    asked: download.mock.calls.map(([file]) => file),
  };
}

describe('the import form, sent off', () => {
  it('gives picked files and pasted lines to the use case, the lines of all fields in one', async () => {
    const { input, outcome } = await sent(first, {
      files: { type: 'file_input', files: [picked('F1', 'sprints.csv')] },
      text: typed('a\nb'),
      'text-3': typed('c'),
    });
    expect(input).toEqual({
      teamId: team.id,
      files: [
        { fileName: 'sprints.csv', text: 'text of F1' },
        { fileName: 'the pasted lines', text: 'a\nb\n\nc' },
      ],
      seen: undefined,
    });
    expect(outcome).toMatchObject({ next: 'show', how: 'in place', view: { callback_id: 'import-form' } });
  });

  it('keeps the files of the rounds before that have their tick, and says which preview was seen', async () => {
    const { input, asked } = await sent(later, { 'keptFileIds-2': ticked('F2', 'F-of-somebody-else') });
    expect(input).toMatchObject({
      seen: 'print-1',
      files: [{ fileName: 'cards.csv', text: 'text of F2' }, {}],
    });
    // Its place is asked for again: nothing that a form carries is trusted.
    expect(asked).toEqual([
      { field: 'keptFileIds-2', id: 'F2', name: 'cards.csv', sizeBytes: 0, url: undefined },
    ]);
  });

  it('takes a picked file in place of one of the same name', async () => {
    const { input } = await sent(later, {
      'keptFileIds-2': ticked('F1', 'F2'),
      'files-2': { type: 'file_input', files: [picked('F3', 'cards.csv')] },
    });
    expect(input?.files.map((file) => 'text' in file && file.text)).toEqual(['text of F1', 'text of F3', '']);
  });

  it('shows the next round with all that was given', async () => {
    const { outcome } = await sent(later, {
      'keptFileIds-2': ticked('F1'),
      'files-2': { type: 'file_input', files: [picked('F3', `${'x'.repeat(300)}.csv`)] },
      text: typed('kept'),
    });
    if (outcome.next !== 'show') throw new Error('it closed');
    const { round, files } = JSON.parse(outcome.view.private_metadata ?? '') as {
      round: number;
      files: { id: string; name: string }[];
    };
    expect([round, files.map(({ id }) => id)]).toEqual([3, ['F1', 'F3']]);
    expect(files[1]?.name.length).toBeLessThanOrEqual(80);
    expect(files[1]?.name).toMatch(/\.csv$/);
    expect(JSON.stringify(outcome.view.blocks)).toContain('"initial_value":"kept"');
  });

  it('that has been tampered with is refused', async () => {
    const forged = { ...later, private_metadata: '{"teamId":"team-1","round":0,"files":[{"id":7}]}' };
    await expect(sent(forged, {})).rejects.toBeInstanceOf(StaleControl);
  });

  it('closes once the sprints are imported, and tells the person who asked', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.importSprints.mockResolvedValue({ kind: 'imported', imported: sprintsImported });
    expect(await bot.submit(sentForm(first, { text: typed('a') }))).toEqual([undefined]);
    expect(JSON.stringify(platform.calls)).toContain('Imported 2 sprints of Pier crew');
  });
});

describe('the export', () => {
  it('goes to the person’s direct messages only, as one message of all files', async () => {
    const bot = botUnderTest(platform);
    await bot.command('export');
    expect(platform.uploads.map((bytes) => Buffer.from(bytes).toString())).toEqual([
      'name',
      'sprint',
      'sprint',
      'sprint',
      'body',
      'body',
    ]);
    expect(platform.callsTo('files.completeUploadExternal')).toMatchObject([
      { channel_id: `D-of-${MIRA_ID}`, initial_comment: expect.stringContaining('Exported Pier crew') },
    ]);
    expect(platform.responses).toMatchObject([{ response_type: 'ephemeral' }]);
  });

  it('that could not be handed over is reported', async () => {
    platform.refuse('files.completeUploadExternal', 'not_in_channel');
    const bot = botUnderTest(platform);
    await bot.command('export');
    expect(platform.responses).toHaveLength(1);
    expect(JSON.stringify(platform.responses)).not.toContain('Exported Pier crew');
  });
});
