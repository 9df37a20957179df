/** The files of a message: a name, a size, and a link that saves the file. None is shown in the page itself. */
import type { SeenFile, SeenMessage } from '../stand-in/page-state.ts';
import { element } from './dom.ts';
import { fileSize } from './file-size.ts';

/** Nothing for a message without files. */
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
