/** A form as it was sent off, with what was typed in it, to be shown again. */
import type { ModalView } from '@slack/types';
import { visibleText } from '../../app/visible-text.ts';
import { say } from '../../words/say.ts';
import type { Surface } from '../door/incoming.ts';
import { sentFile } from '../files/download-file.ts';
import { INPUT } from '../ids.ts';
import { plain } from '../views/block-builders.ts';
import type { MessageView } from '../views/message-view.ts';

/** The name under which an element takes what it is to begin with, by the name under which it was entered. */
const INITIAL = {
  value: 'initial_value',
  selected_time: 'initial_time',
  selected_date: 'initial_date',
  selected_option: 'initial_option',
  selected_options: 'initial_options',
  selected_users: 'initial_users',
} as const;

/** What of a form the platform takes back; ids, hashes and the like are its own. */
const KEPT = [
  'type',
  'title',
  'submit',
  'close',
  'callback_id',
  'private_metadata',
  'notify_on_close',
] as const;

const MOST_BLOCKS = 100;
const HINT_MAX_LENGTH = 2_000;

/** @param notice what went wrong, above the fields */
export function refilledForm(form: Surface, notice: MessageView): ModalView {
  const kept = KEPT.flatMap((name) =>
    form[name] === undefined || form[name] === null ? [] : [[name, form[name]]],
  );
  const blocks = form.blocks.map((block) => refilled(block, form));
  return {
    ...Object.fromEntries(kept),
    blocks: [...notice.blocks, ...blocks].slice(0, MOST_BLOCKS),
  } as unknown as ModalView;
}

function refilled(block: Surface['blocks'][number], form: Surface): object {
  const entered = block.block_id === undefined ? undefined : form.state.values[block.block_id]?.[INPUT];
  if (block.type !== 'input' || entered === undefined) return block;
  const element = { ...(block.element as Record<string, unknown>) };
  if (element.type === 'file_input') return withFilesToPickAgain(block, entered.files);
  for (const [name, initial] of Object.entries(INITIAL)) {
    if (!(name in entered)) continue;
    const value = entered[name];
    const isEmpty = value === null || value === '' || (Array.isArray(value) && value.length === 0);
    if (isEmpty) delete element[initial];
    else element[initial] = typeof value === 'string' ? visibleText(value) : value;
  }
  return { ...block, element };
}

/** A form can’t begin with files in it: the field says which ones to choose again. */
function withFilesToPickAgain(block: Surface['blocks'][number], files: unknown): object {
  const names = (Array.isArray(files) ? files : []).flatMap((file) => sentFile('', file)?.name ?? []);
  if (names.length === 0) return block;
  const { text = '' } = (block.hint ?? {}) as { text?: string };
  const words = `${say('import-pick-again', { files: names })} ${text}`;
  return { ...block, hint: plain(words.trim(), HINT_MAX_LENGTH) };
}
