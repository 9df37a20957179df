/** Uploads, and where a private picture can be shown. Behaviours by their number in docs/platform.md. */
import type { FilesGetUploadURLExternalResponse } from '@slack/web-api';
import { NotTried, needed, okOf, post, type TrialStep, type TrialWorld } from './trial-step.ts';

const READY_POLL_MS = 250;
const READY_ATTEMPTS = 80;

export const pictureBlock = (fileId: string, altText = 'A trial of pictures') => ({
  type: 'image',
  slack_file: { id: fileId },
  alt_text: altText,
});

export function pictureSteps(world: TrialWorld): TrialStep[] {
  const { client, channelId, picture } = world;
  let fileId: string | undefined;
  const uploaded = () => needed(fileId, 'nothing was uploaded');
  const shown = () => needed(world.pictureId, 'the picture never became ready');
  const ticketOf = (altText: string, length = picture.byteLength) =>
    client.apiCall('files.getUploadURLExternal', { filename: 'trial.png', length, alt_txt: altText });
  const complete = (more: Record<string, unknown> = {}) =>
    client.apiCall('files.completeUploadExternal', {
      files: [{ id: uploaded(), title: 'trial.png' }],
      ...more,
    });
  const postPicture = async (id: string, altText?: string) => {
    await post(world, { text: 'A trial of pictures', blocks: [pictureBlock(id, altText)] });
    return 'ok';
  };

  return [
    {
      what: 'files.getUploadURLExternal of an empty file (30)',
      expected: ['missing_argument'],
      run: () => okOf(ticketOf('x', 0)),
    },
    {
      what: 'files.getUploadURLExternal, 1,001 characters of description (1)',
      expected: ['alt_txt_too_large'],
      run: () => okOf(ticketOf('x'.repeat(1_001))),
    },
    {
      what: 'an upload with 1,000 characters of description (1)',
      expected: ['ok'],
      run: async () => {
        const ticket = (await ticketOf('x'.repeat(1_000))) as FilesGetUploadURLExternalResponse;
        const address = needed(ticket.upload_url, 'there is no address');
        const answer = await fetch(address, {
          method: 'POST',
          body: new Blob([Uint8Array.from(picture)], { type: 'image/png' }),
        });
        if (answer.status !== 200) return `status ${answer.status} for the bytes`;
        fileId = ticket.file_id;
        return 'ok';
      },
    },
    {
      what: 'files.completeUploadExternal to a person in place of a conversation (33)',
      expected: ['invalid_arguments'],
      run: () => okOf(complete({ channel_id: world.personId })),
    },
    { what: 'files.completeUploadExternal, private', expected: ['ok'], run: () => okOf(complete()) },
    {
      what: 'files.completeUploadExternal once more (31)',
      expected: ['file_update_failed', 'file_not_found'],
      run: () => okOf(complete()),
    },
    {
      what: 'chat.postMessage with the picture at once (32)',
      expected: ['ok', 'invalid_blocks'],
      run: () => postPicture(uploaded()),
    },
    {
      what: 'files.info until the picture can be shown: seconds (32)',
      expected: [],
      run: async () => {
        const from = performance.now();
        for (let attempt = 0; attempt < READY_ATTEMPTS; attempt += 1) {
          const { file } = await client.files.info({ file: uploaded() });
          if (file?.mimetype) {
            world.pictureId = uploaded();
            return `${((performance.now() - from) / 1000).toFixed(1)} s`;
          }
          await world.wait(READY_POLL_MS);
        }
        throw new NotTried('the picture never became ready');
      },
    },
    {
      what: 'chat.postMessage with the picture, 2,000 characters of description (1)',
      expected: ['ok'],
      run: () => postPicture(shown(), 'x'.repeat(2_000)),
    },
    {
      what: 'chat.postMessage with the picture, 2,001 characters of description (1)',
      expected: ['invalid_blocks'],
      run: () => postPicture(shown(), 'x'.repeat(2_001)),
    },
    {
      what: 'chat.postEphemeral with the picture',
      expected: [],
      run: () =>
        okOf(
          client.apiCall('chat.postEphemeral', {
            channel: channelId,
            user: world.personId,
            text: 'A trial of pictures',
            blocks: [pictureBlock(shown())],
          }),
        ),
    },
  ];
}
