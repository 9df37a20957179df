/** Every form that reads files takes a turn for it, before it fetches any. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FORMS } from '../../../src/slack/commands/commands.ts';
import { FormFields } from '../../../src/slack/listeners/form-fields.ts';
import { botUnderTest, sentForm } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import { pickedFile } from '../support/submit-with-files.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterAll(() => platform.close());

const encoded = (context: object) => JSON.stringify(context);
const fileContext = { teamId: 't1', file: { id: 'F1', name: 'a.csv' }, seen: 'x' };

/** A form of this id, sent off with a file in this field. */
function filesOf(id: string, field: string, context: object): unknown {
  const view = { state: { values: { [field]: { value: pickedFile('F9', 'a.csv') } } }, blocks: [] };
  const form = { actor: { workspaceId: 'T1', userId: 'U1' }, fields: new FormFields(view as never) };
  return FORMS.get(id)
    ?.files?.({ ...form, context: encoded(context) })
    ?.map((file) => file.id);
}

describe('a form that reads files', () => {
  it.each([
    ['import-form', 'files', { teamId: 't1', round: 1, files: [] }, ['F9']],
    ['import-form', 'none', { teamId: 't1', round: 1, files: [] }, []],
    ['plan-form', 'cardFile', { teamId: 't1' }, ['F9']],
    ['plan-form', 'none', { teamId: 't1' }, undefined],
    ['card-file-form', 'none', { ...fileContext, seen: {}, round: 1 }, ['F1']],
    ['card-file-form', 'cardFile-2', { ...fileContext, seen: {}, round: 1 }, ['F9']],
    ['value-form', 'valuesFile', { teamId: 't1' }, ['F9']],
    ['values-preview-form', 'none', fileContext, ['F1']],
    ['days-off-form', 'file', { teamId: 't1' }, ['F9']],
    [
      'days-off-preview-form',
      'none',
      { teamId: 't1', whose: 'own', source: { file: { id: 'F1', name: 'a.ics' } }, seen: 'x' },
      ['F1'],
    ],
  ])('%s with a file in %s says which', (id, field, context, files) => {
    expect(filesOf(id, field, context)).toEqual(files);
  });

  it('is refused to a person whose files are still being read, and stays as it is', async () => {
    const reading = Promise.withResolvers<void>();
    const begun = Promise.withResolvers<void>();
    const bot = botUnderTest(platform);
    bot.useCases.importSprints.mockImplementation(async () => {
      begun.resolve();
      await reading.promise;
      throw new Error('it was let go');
    });
    const form = () =>
      sentForm(
        {
          type: 'modal',
          callback_id: 'import-form',
          private_metadata: encoded({ teamId: 't1', round: 1, files: [] }),
          blocks: [{ type: 'input', block_id: 'text' }],
        } as never,
        { text: { type: 'plain_text_input', value: 'name' } },
      );
    const first = bot.submit(form());
    await begun.promise;
    const [second] = await bot.submit({ ...(form() as object), id: 'V2' } as never);
    expect(second).toEqual({
      response_action: 'errors',
      errors: {
        text: 'Your files of before are still being read, so these weren’t taken. Wait until you hear what came of them, then send these.',
      },
    });
    expect(bot.useCases.importSprints).toHaveBeenCalledTimes(1);
    reading.resolve();
    await first;
  });
});
