import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { Refusal } from '../../../src/app/refusal.ts';
import { viewProblems } from '../../../src/rehearsal/stand-in/shapes/check-blocks.ts';
import type { Form, FormHandler } from '../../../src/slack/commands/command.ts';
import { FORMS } from '../../../src/slack/commands/commands.ts';
import { FormFields } from '../../../src/slack/listeners/form-fields.ts';
import { fileField, textField } from '../../../src/slack/views/form-inputs.ts';
import { formView } from '../../../src/slack/views/form-view.ts';
import { botUnderTest, sentForm } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => {
  platform.reset();
  vi.restoreAllMocks();
});
afterAll(() => platform.close());

const view = formView({ form: 'drop', title: 'Past sprints', submit: 'Read', context: {} }, [
  textField({ field: 'lines', label: 'Lines', optional: true }),
  fileField({ field: 'past', label: 'File', hint: 'As CSV.', fileTypes: ['csv', 'txt'], maxFiles: 1 }),
]);

const FILE = {
  id: 'F1',
  name: 'past.csv',
  size: 36,
  url_private_download: 'https://files.slack.com/files-pri/T1-F1/download/past.csv',
};
const READ = { field: 'past', id: 'F1', name: 'past.csv', sizeBytes: 36, url: FILE.url_private_download };

const withFiles = (files: unknown) => sentForm(view, { past: { type: 'file_input', files } });
const fieldsOf = (files: unknown) => new FormFields(withFiles(files) as never);

/** Replaces the handler of the form above by this one. */
function handleWith(handler: FormHandler): void {
  vi.spyOn(FORMS.get('drop-form') as Form, 'submit').mockImplementation(handler);
}

describe('a field for files', () => {
  it('is one that the platform takes', () => {
    expect(viewProblems(view, 'modal', { canShow: () => false })).toEqual([]);
    expect(view.blocks[1]).toMatchObject({
      block_id: 'past',
      optional: false,
      element: { type: 'file_input', filetypes: ['csv', 'txt'], max_files: 1 },
    });
  });

  it('gives what is known of each file, in order', () => {
    const second = { ...FILE, id: 'F2', name: 'more.csv' };
    expect(fieldsOf([FILE, second]).files('past')).toEqual([READ, { ...READ, id: 'F2', name: 'more.csv' }]);
  });

  it.each<[string, unknown]>([
    ['nothing was picked', []],
    ['nothing is stated', undefined],
    ['it is no list', { id: 'F1' }],
    ['there are no files in the list', [null, 'F1', 7, [], {}, { id: '' }, { id: 'F1', size: 'large' }]],
  ])('gives no file when %s', (_what, files) => {
    expect(fieldsOf(files).files('past')).toEqual([]);
    expect(fieldsOf(files).files('constructor')).toEqual([]);
  });

  it('of which the platform says little gives what there is', () => {
    const known = { field: 'past', id: 'F1', name: 'file', sizeBytes: 0, url: undefined };
    expect(fieldsOf([{ id: 'F1', name: '', size: null }]).files('past')).toEqual([known]);
  });

  it('gives ten files at most, as many as the platform lets anyone pick', () => {
    expect(fieldsOf(Array.from({ length: 30 }, () => FILE)).files('past')).toHaveLength(10);
  });
});

describe('a form with a file that can not be read', () => {
  it('stays open, with the reason at the field of the file', async () => {
    handleWith(async (_useCases, { fields }, { download }) => {
      for (const file of fields.files('past')) await download({ ...file, sizeBytes: 6_000_000 });
      throw new Error('it was read');
    });
    const [answer] = await botUnderTest(platform).submit(withFiles([FILE]));
    expect(answer).toEqual({
      response_action: 'errors',
      errors: {
        past: '“past.csv” is larger than 5 MB. Split it into several files, or leave out what isn’t asked for.',
      },
    });
  });

  it('says which files to choose again when it comes back after "still working", as no form can begin with files', async () => {
    const acknowledged = Promise.withResolvers<void>();
    handleWith(async () => {
      await acknowledged.promise;
      throw new Refusal('file-unreadable', { field: 'past', fileName: 'past.csv', why: 'no answer' });
    });
    const bot = botUnderTest(platform, { answerDue: async () => {} });
    await bot.submit(withFiles([FILE]), {}, acknowledged.resolve);
    const [update] = platform.callsTo('views.update') as [
      { view: { blocks: { block_id?: string; hint?: object }[] } },
    ];
    expect(update.view.blocks.find(({ block_id }) => block_id === 'past')?.hint).toMatchObject({
      text: 'Please choose these files again, because the form couldn’t keep them: past.csv. As CSV.',
    });
    expect(JSON.stringify(update.view.blocks)).toContain('didn’t send “past.csv” in time');
    expect(viewProblems(update.view, 'modal', { canShow: () => false })).toEqual([]);
  });
});
