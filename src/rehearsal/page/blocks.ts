/**
 * Shows blocks as DOM nodes. What this page can't show is named, never dropped in silence: somebody who
 * rehearses must not believe that nothing was sent.
 */
import type { ImageBlock, InputBlock, KnownBlock, SectionBlock, TextObject } from '@slack/types';
import type { JsonObject } from '../stand-in/page-state.ts';
import { buttonControl } from './button-elements.ts';
import { append, element, freshId } from './dom.ts';
import { inputControl } from './input-elements.ts';
import { mrkdwnNodes } from './mrkdwn-dom.ts';
import type { Surface } from './surface.ts';

/** Shows a list of blocks. The workspace has given every block an id. */
export function blockNodes(blocks: readonly JsonObject[], surface: Surface): Node[] {
  return blocks.map((block) => {
    const blockId = String(block.block_id ?? '');
    return blockNode(block as unknown as KnownBlock, blockId, surface);
  });
}

function blockNode(block: KnownBlock, blockId: string, surface: Surface): Node {
  switch (block.type) {
    case 'header':
      return element('h3', { class: 'block heading' }, [block.text.text]);
    case 'divider':
      return element('hr', { class: 'block' });
    case 'section':
      return sectionNode(block, blockId, surface);
    case 'context': {
      return element(
        'div',
        { class: 'block context' },
        block.elements.map((part) =>
          part.type === 'image'
            ? notShown(`image of ${part.alt_text}`)
            : textNode(part as TextObject, surface),
        ),
      );
    }
    case 'actions': {
      return element(
        'div',
        { class: 'block actions' },
        block.elements.map((part) =>
          part.type === 'button' ? buttonControl(part, blockId, surface) : notShown(part.type),
        ),
      );
    }
    case 'image':
      return imageNode(block, surface);
    case 'input':
      return inputNode(block, blockId, surface);
    default:
      return notShown(block.type);
  }
}

function notShown(kind: string): HTMLElement {
  return element('span', { class: 'note' }, [`(This page can’t show a “${kind}”.)`]);
}

function sectionNode(block: SectionBlock, blockId: string, surface: Surface): Node {
  const beside = block.accessory;
  return element('div', { class: 'block section' }, [
    block.text && textNode(block.text, surface),
    block.fields &&
      element(
        'div',
        { class: 'fields' },
        block.fields.map((field) => textNode(field, surface)),
      ),
    beside && (beside.type === 'button' ? buttonControl(beside, blockId, surface) : notShown(beside.type)),
  ]);
}

function textNode(text: TextObject, surface: Surface): HTMLElement {
  const node = element('div', { class: 'prose' });
  if (text.type === 'mrkdwn') append(node, mrkdwnNodes(text.text, surface.wording));
  else node.append(element('p', { class: 'plain' }, [text.text]));
  return node;
}

function inputNode(block: InputBlock, blockId: string, surface: Surface): Node {
  const [labelledBy, hintId, errorId] = [freshId(), freshId(), freshId()];
  const error = surface.fieldErrors[blockId];
  const describedBy = [block.hint && hintId, error && errorId].filter(Boolean).join(' ') || undefined;
  const control = inputControl(block.element, { surface, blockId, labelledBy, describedBy });
  if (block.dispatch_action === true) control.addEventListener('change', () => surface.change?.(blockId));
  const isField = /^(INPUT|TEXTAREA|SELECT)$/.test(control.tagName);
  if (isField) control.id = freshId();
  const label = element(
    isField ? 'label' : 'span',
    { class: 'label', id: labelledBy, for: control.id || undefined },
    [block.label.text, block.optional === true && element('span', { class: 'note' }, [' (optional)'])],
  );
  if (!isField) label.addEventListener('click', () => control.focus());
  const kind = `block field${error ? ' wrong' : ''}${block.optional === true ? '' : ' needed'}`;
  return element('div', { class: kind, 'data-block': blockId }, [
    label,
    control,
    error && element('p', { class: 'error', id: errorId }, [error]),
    block.hint && element('p', { class: 'note', id: hintId }, [block.hint.text]),
  ]);
}

/** An image with its words on demand; when the image can't be loaded the words are shown. */
function imageNode(image: ImageBlock, surface: Surface): HTMLElement {
  const { slack_file: file, image_url: url } = image as { slack_file?: { id: string }; image_url?: string };
  const source = file ? `/page/file/${encodeURIComponent(file.id)}` : url;
  const words = image.alt_text;
  const picture = element('img', { alt: words, src: source, loading: 'eager' }, [], {
    error: () => picture.replaceWith(element('p', { class: 'missing' }, [`Image: ${words}`])),
  });
  return element('figure', { class: 'block picture', 'data-surface': surface.key }, [
    element('a', { href: source, target: '_blank', rel: 'noreferrer', title: 'Open the image by itself' }, [
      picture,
    ]),
    element('figcaption', {}, [
      image.title && element('p', {}, [image.title.text]),
      element('details', { class: 'words' }, [
        element('summary', {}, ['The image in words']),
        element('p', {}, [words]),
      ]),
    ]),
  ]);
}
