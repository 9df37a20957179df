/** Files: the input that takes them, and the list of those that a message shares. */
import type { FileInput } from '@slack/types';
import type { SeenFile, SeenMessage } from '../stand-in/page-state.ts';
import { element, freshId } from './dom.ts';
import { fileSize } from './format-date.ts';
import { fetchExample } from './page-api.ts';
import { controlAttributes, keepValue, type Spot, startValue } from './surface.ts';

/** docs.slack.dev/reference/block-kit/block-elements/file-input-element */
const FILES_MAX = 10;

/**
 * What was picked is listed below the input and can be taken off again; the browser's own words for it ("no file
 * chosen") are hidden, as they are lost whenever a form is drawn again.
 */
export function fileControl(input: FileInput, spot: Spot): HTMLElement {
  const actionId = input.action_id ?? '';
  const most = input.max_files ?? FILES_MAX;
  const names = controlAttributes(spot, actionId);
  const listId = freshId();
  const { as, files } = spot.surface;
  let chosen: SeenFile[] = idsOf(startValue(spot, actionId, [])).flatMap((id) => files.find(id) ?? []);

  const control = element('input', {
    ...names,
    type: 'file',
    class: 'file',
    multiple: most > 1,
    accept: input.filetypes?.map((ending) => `.${ending}`).join(','),
    'aria-describedby': [listId, spot.describedBy].filter(Boolean).join(' '),
  });
  const list = element('ul', { class: 'picked', id: listId });
  const trouble = element('p', { class: 'error', role: 'alert', hidden: true });
  const draw = (): void => {
    const rows = chosen.map((file) => pickedRow(file, names['data-key'], () => takeOff(file)));
    list.replaceChildren(
      ...(rows.length > 0 ? rows : [element('li', { class: 'note' }, ['Nothing picked yet.'])]),
    );
  };
  const keep = (): void => {
    draw();
    keepValue(
      spot,
      actionId,
      chosen.map(({ id }) => id),
    );
  };
  const takeOff = (file: SeenFile): void => {
    chosen = chosen.filter((one) => one !== file);
    keep();
    control.focus();
  };
  const takeIn = async (wanted: readonly { name: string; open: () => Promise<File> }[]): Promise<void> => {
    const problems: string[] = [];
    for (const { name, open } of wanted) {
      try {
        const picked = await files.pick(as, await open());
        chosen = most === 1 ? [picked] : [...chosen, picked];
      } catch (error) {
        problems.push(`${name}: ${error instanceof Error ? error.message : error}`);
      }
    }
    trouble.hidden = problems.length === 0;
    trouble.textContent = problems.join(' ');
    keep();
  };
  control.addEventListener('change', () => {
    const wanted = [...(control.files ?? [])].map((file) => ({ name: file.name, open: async () => file }));
    // So that the same file can be picked again after it was changed.
    control.value = '';
    void files.during(takeIn(wanted));
  });
  draw();
  // A field that is shown again has another number at its end.
  const exampleFiles = spot.surface.exampleFiles[spot.blockId.replace(/-\d+$/, '')] ?? [];
  const examples = exampleFiles.map((name) =>
    element(
      'button',
      { type: 'button', class: 'button quiet', 'data-key': `${names['data-key']}/${name}` },
      [`Take the example ${name}`],
      { click: () => void files.during(takeIn([{ name, open: () => fetchExample(name) }])) },
    ),
  );
  const box = element('div', { class: 'files-input' }, [control, ...examples, list, trouble]);
  // The field's label gives its focus to the control, which here is a part of the box.
  box.focus = () => control.focus();
  return box;
}

function pickedRow(file: SeenFile, key: string, takeOff: () => void): HTMLElement {
  const button = element(
    'button',
    {
      type: 'button',
      class: 'button quiet',
      'aria-label': `Take off ${file.name}`,
      'data-key': `${key}/${file.id}`,
    },
    ['Take off'],
  );
  button.addEventListener('click', takeOff);
  return element('li', {}, [
    element('span', { class: 'file-name' }, [file.name]),
    element('span', { class: 'note' }, [fileSize(file.sizeBytes)]),
    button,
  ]);
}

function idsOf(value: unknown): string[] {
  return Array.isArray(value) ? value.map(String) : [];
}

/** The files of a message: a name, a size, and a link that saves the file. None is shown in the page itself. */
export function fileNodes({ files }: SeenMessage, as: string): Node[] {
  if (files.length === 0) return [];
  const rows = files.map((file) =>
    element('li', {}, [
      element('a', { class: 'file-name', href: addressOf(file, as), download: file.name }, [file.name]),
      element('span', { class: 'note' }, [fileSize(file.sizeBytes)]),
    ]),
  );
  const name = files.length === 1 ? 'One file' : `${files.length} files`;
  return [element('ul', { class: 'block files', 'aria-label': name }, rows)];
}

/** Each file in words, for those who hear a message. */
export function fileWords({ files }: SeenMessage): string[] {
  return files.map((file) => `File: ${file.name}, ${fileSize(file.sizeBytes)}`);
}

function addressOf(file: SeenFile, as: string): string {
  return `/page/download/${encodeURIComponent(file.id)}?as=${encodeURIComponent(as)}`;
}
