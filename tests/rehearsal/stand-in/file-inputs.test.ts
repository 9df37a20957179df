import type { App } from '@slack/bolt';
import { afterEach, describe, expect, test } from 'vitest';
import type { JsonObject } from '../../../src/rehearsal/stand-in/page-state.ts';
import { plain, refusal, type Scene, startScene, TOKEN } from './fixture.ts';
import { form, input, openForm } from './form-fixture.ts';

const CSV = Buffer.from('name,first day\nHarbour 1,2026-11-02\n');
let scene: Scene | undefined;
afterEach(async () => {
  await scene?.stop();
  scene = undefined;
});

/** A form with a field for files, sent off by Ana with the given files. */
async function sentWith(names: readonly string[], element: object = {}, more: object = {}) {
  const heard: JsonObject[] = [];
  const listen = (app: App) =>
    app.view('f', async ({ ack, view }) => {
      heard.push(view.state.values as unknown as JsonObject);
      await ack();
    });
  const opened = await openForm(form([input('past', { type: 'file_input', ...element }, more)]), listen);
  scene = opened.scene;
  const { standIn } = scene;
  const ids = names.map((name) => standIn.pickFile('U1ANA0000', name, CSV));
  standIn.fill('U1ANA0000', opened.viewId, { past: ids });
  return { outcome: await standIn.submit('U1ANA0000', opened.viewId), heard, ids, viewId: opened.viewId };
}

describe('a form that asks for files', () => {
  test('hands over what was picked, described as the platform describes files', async () => {
    const { outcome, heard, ids } = await sentWith(['past sprints.csv'], {
      filetypes: ['csv'],
      max_files: 1,
    });
    expect(outcome).toEqual({ ok: true });
    const url = `${scene?.standIn.url}/files/${ids[0]}`;
    expect(heard).toMatchObject([
      {
        past: {
          past_in: {
            type: 'file_input',
            files: [
              {
                id: ids[0],
                name: 'past sprints.csv',
                title: 'past sprints.csv',
                mimetype: 'text/csv',
                filetype: 'csv',
                size: CSV.length,
                mode: 'hosted',
                user: 'U1ANA0000',
                url_private: `${url}/past%20sprints.csv`,
                url_private_download: `${url}/download/past%20sprints.csv`,
              },
            ],
          },
        },
      },
    ]);
  });

  test('holds an empty list when nothing was picked and nothing had to be', async () => {
    const { outcome, heard } = await sentWith([], {}, { optional: true });
    expect(outcome).toEqual({ ok: true });
    expect(heard).toEqual([{ past: { past_in: { type: 'file_input', files: [] } } }]);
  });

  // Limits: docs.slack.dev/reference/block-kit/block-elements/file-input-element
  test.each<[string, readonly string[], object, string]>([
    ['no file where one is needed', [], {}, 'Please fill this in.'],
    ['two files where one is asked for', ['a.csv', 'b.csv'], { max_files: 1 }, 'Please choose one file.'],
    ['eleven files', Array.from('abcdefghijk'), {}, 'Please choose at most 10 files.'],
    [
      'a file of another kind',
      ['a.CSV', 'b.xlsx'],
      { filetypes: ['csv', 'txt'] },
      '“b.xlsx” is not a file of this kind: csv, txt.',
    ],
  ])('is held back with %s', async (_what, names, element, words) => {
    const { outcome, heard } = await sentWith(names, element);
    expect(outcome).toMatchObject({ ok: false, fieldErrors: { past: words } });
    expect(heard).toEqual([]);
  });

  test('is held back with a file of more than 10 MB', async () => {
    const { viewId } = await sentWith([]);
    const large = String(scene?.standIn.pickFile('U1ANA0000', 'large.csv', Buffer.alloc(10_000_001)));
    const outcome = await scene?.standIn.submit('U1ANA0000', viewId, { past: { past_in: [large] } });
    expect(outcome).toMatchObject({ fieldErrors: { past: '“large.csv” is too large: 10 MB at most.' } });
  });

  test('takes no file that somebody else picked', async () => {
    const { viewId } = await sentWith([]);
    const other = String(scene?.standIn.pickFile('U2BEN0000', 'a.csv', CSV));
    expect(() => scene?.standIn.fill('U1ANA0000', viewId, { past: [other] })).toThrow('there is no file');
  });

  test('keeps the files when it comes back with an error', async () => {
    const element = input('past', { type: 'file_input' });
    const opened = await openForm(form([element]), (app) =>
      app.view('f', async ({ ack }) =>
        ack({ response_action: 'errors', errors: { past: 'Line 2 is bad.' } }),
      ),
    );
    scene = opened.scene;
    const id = scene.standIn.pickFile('U1ANA0000', 'a.csv', CSV);
    scene.standIn.fill('U1ANA0000', opened.viewId, { past: [id] });
    expect(await scene.standIn.submit('U1ANA0000', opened.viewId)).toMatchObject({
      fieldErrors: { past: 'Line 2 is bad.' },
    });
    expect(scene.standIn.viewOf('U1ANA0000')?.state.values.past?.past_in?.files).toMatchObject([{ id }]);
  });
});

describe('the bot reads a file of a form', () => {
  test('with its token, from the address or by its id', async () => {
    const { heard, ids } = await sentWith(['a.csv']);
    const [file] = (heard[0] as { past: { past_in: { files: JsonObject[] } } }).past.past_in.files;
    const headers = { authorization: `Bearer ${TOKEN}` };
    for (const address of [file?.url_private, file?.url_private_download]) {
      const response = await fetch(String(address), { headers });
      expect(response.headers.get('content-type')).toBe('text/csv');
      expect(Buffer.from(await response.arrayBuffer()).equals(CSV)).toBe(true);
    }
    expect((await scene?.client.files.info({ file: String(ids[0]) }))?.file).toMatchObject({
      name: 'a.csv',
      mimetype: 'text/csv',
      url_private_download: file?.url_private_download,
    });
  });

  test.each([
    ['no token', {}],
    ['another token', { authorization: 'Bearer xoxb-other' }],
  ])('with %s gets a page to sign in, and status 200', async (_what, headers) => {
    const { heard } = await sentWith(['a.csv']);
    const [file] = (heard[0] as { past: { past_in: { files: JsonObject[] } } }).past.past_in.files;
    const response = await fetch(String(file?.url_private_download), { headers });
    expect([response.status, response.headers.get('content-type')]).toEqual([
      200,
      'text/html; charset=utf-8',
    ]);
    expect(await response.text()).not.toContain('Harbour 1');
  });
});

describe('an input for files', () => {
  const view = (element: object) => form([input('past', { type: 'file_input', ...element })]);
  const open = async (given: never, options = {}) => {
    scene = await startScene(options);
    return refusal(scene.client.views.open({ trigger_id: 'none', view: given }));
  };

  test.each([
    ['max_files of 0', { max_files: 0 }, 'must be at least 1'],
    ['max_files of 11', { max_files: 11 }, 'must be at most 10'],
    ['a placeholder', { placeholder: plain('a') }, 'invalid additional property: placeholder'],
    ['filetypes that are no list', { filetypes: 'csv' }, 'must provide a value of type array'],
  ])('with %s is refused', async (_what, element, words) => {
    const { error, messages } = await open(view(element));
    expect(error).toBe('invalid_arguments');
    expect(messages.join()).toContain(words);
  });

  test('as documented is taken: only the trigger is wrong', async () => {
    expect((await open(view({ filetypes: ['csv'], max_files: 10 }))).error).toBe('invalid_trigger_id');
  });

  test('needs the scope files:read', async () => {
    const { error, data } = await open(view({}), { scopes: ['chat:write'] });
    expect([error, data.needed]).toEqual(['missing_scope', 'files:read']);
  });

  test('can not be in a message, on a Home page, or outside an input block', async () => {
    scene = await startScene();
    const element = { type: 'file_input', action_id: 'a' };
    const asked = input('past', element);
    const { client } = scene;
    const message = client.chat.postMessage({ channel: 'C1TEAM0000', text: 'a', blocks: [asked] as never });
    expect((await refusal(message)).messages).toEqual([
      '[ERROR] unsupported element: file_input [json-pointer:/blocks/0/element]',
    ]);
    const home = { type: 'home', blocks: [asked] } as never;
    expect((await refusal(client.views.publish({ user_id: 'U1ANA0000', view: home }))).messages).toEqual([
      '[ERROR] unsupported element: file_input [json-pointer:/view/blocks/0/element]',
    ]);
    const opened = client.views.open({
      trigger_id: 'none',
      view: form([{ type: 'actions', elements: [element] }]),
    });
    expect((await refusal(opened)).messages.join()).toContain('unsupported or missing type');
  });
});
