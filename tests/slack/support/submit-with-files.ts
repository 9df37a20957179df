/** Sends a form off whose files need no platform: each holds `text of ID`. */
import { vi } from 'vitest';
import type { FormTools } from '../../../src/slack/commands/command.ts';
import { FORMS } from '../../../src/slack/commands/commands.ts';
import type { SentFile } from '../../../src/slack/files/download-file.ts';
import { FormFields } from '../../../src/slack/listeners/form-fields.ts';
import { sentForm } from './bot-under-test.ts';
import { MIRA_ID, WORKSPACE_ID } from './samples.ts';
import { spyUseCases } from './spy-use-cases.ts';

export async function submitWithFiles(
  view: object,
  values: Record<string, object> = {},
  useCases = spyUseCases(),
) {
  const form = sentForm(view, values) as { callback_id: string; private_metadata: string };
  const actor = { workspaceId: WORKSPACE_ID, userId: MIRA_ID };
  const download = vi.fn(async ({ id, name }: SentFile) => ({ fileName: name, text: `text of ${id}` }));
  const outcome = await FORMS.get(form.callback_id)?.submit(
    useCases,
    { actor, fields: new FormFields(form as never), context: form.private_metadata },
    { download } as unknown as FormTools,
  );
  return { outcome, useCases, asked: download.mock.calls.map(([file]) => file) };
}

export function pickedFile(id: string, name: string): object {
  const files = [{ id, name, size: 5, url_private_download: `https://files.slack.com/${id}` }];
  return { type: 'file_input', files };
}
