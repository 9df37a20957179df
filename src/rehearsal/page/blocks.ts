/**
 * Shows blocks as DOM nodes. What this page can't show is named, never dropped in silence: somebody who
 * rehearses must not believe that nothing was sent.
 */
import type {
  ImageBlock,
  ImageElement,
  InputBlock,
  KnownBlock,
  SectionBlock,
  TextObject,
} from '@slack/types';
import type { JsonObject } from '../stand-in/page-state.ts';
import { append, element, freshId } from './dom.ts';
import { controlFor } from './elements.ts';
import { mrkdwnNodes } from './mrkdwn-dom.ts';
import { richTextNodes } from './rich-text.ts';
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
    case 'context':
      return element(
        'div',
        { class: 'block context' },
        block.elements.map((part) =>
          part.type === 'image' ? imageNode(part, surface) : textNode(part, surface),
        ),
      );
    case 'actions': {
      const spot = { surface, blockId, actsAtOnce: true };
      return element(
        'div',
        { class: 'block actions' },
        block.elements.map((control) => controlFor(control, spot)),
      );
    }
    case 'image':
      return imageNode(block, surface);
    case 'input':
      return inputNode(block, blockId, surface);
    case 'rich_text':
      return element('div', { class: 'block prose' }, richTextNodes(block, surface.wording));
    default:
      return element('p', { class: 'block note' }, [
        `(This page can’t show a block of the kind “${block.type}”.)`,
      ]);
  }
}

function sectionNode(block: SectionBlock, blockId: string, surface: Surface): Node {
  const textId = freshId();
  const words = element('div', { class: 'section-text', id: textId }, [
    block.text && textNode(block.text, surface),
    block.fields &&
      element(
        'div',
        { class: 'fields' },
        block.fields.map((field) => textNode(field, surface)),
      ),
  ]);
  const accessory = block.accessory;
  if (!accessory) return element('div', { class: 'block section' }, [words]);
  const beside =
    accessory.type === 'image'
      ? imageNode(accessory, surface)
      : controlFor(accessory, { surface, blockId, labelledBy: textId, actsAtOnce: true });
  const side = element('div', { class: 'accessory' }, [beside]);
  return element('div', { class: 'block section beside' }, [words, side]);
}

function textNode(text: TextObject, surface: Surface): HTMLElement {
  const node = element('div', { class: 'prose' });
  if (text.type === 'mrkdwn') append(node, mrkdwnNodes(text.text, surface.wording));
  else node.append(element('p', { class: 'plain' }, [text.text]));
  return node;
}

function inputNode(block: InputBlock, blockId: string, surface: Surface): Node {
  const [labelId, hintId, errorId] = [freshId(), freshId(), freshId()];
  const error = surface.fieldErrors[blockId];
  const describedBy = [block.hint && hintId, error && errorId].filter(Boolean).join(' ');
  const control = controlFor(block.element, {
    surface,
    blockId,
    labelledBy: labelId,
    ...(describedBy ? { describedBy } : {}),
    actsAtOnce: block.dispatch_action === true,
  });
  const label = element('span', { class: 'label', id: labelId }, [
    block.label.text,
    block.optional === true && element('span', { class: 'note' }, [' (optional)']),
  ]);
  label.addEventListener('click', () => control.focus());
  return element('div', { class: `block field${error ? ' wrong' : ''}`, 'data-block': blockId }, [
    label,
    control,
    error && element('p', { class: 'error', id: errorId }, [error]),
    block.hint && element('p', { class: 'note', id: hintId }, [block.hint.text]),
  ]);
}

/** An image with its words on demand; when the image can't be loaded the words are shown. */
function imageNode(image: ImageBlock | ImageElement, surface: Surface): HTMLElement {
  const isBlock = 'block_id' in image || 'title' in image;
  const source = imageSource(image);
  const words = image.alt_text;
  const picture = element('img', { alt: words, src: source, loading: 'eager' }, [], {
    error: () => picture.replaceWith(element('p', { class: 'missing' }, [`Image: ${words}`])),
  });
  const title = isBlock && 'title' in image ? image.title?.text : undefined;
  if (!isBlock) return element('span', { class: 'small-image' }, [picture]);
  return element('figure', { class: 'block picture', 'data-surface': surface.key }, [
    element('a', { href: source, target: '_blank', rel: 'noreferrer', title: 'Open the image by itself' }, [
      picture,
    ]),
    element('figcaption', {}, [
      title && element('p', {}, [title]),
      element('details', { class: 'words' }, [
        element('summary', {}, ['The image in words']),
        element('p', {}, [words]),
      ]),
    ]),
  ]);
}

function imageSource(image: ImageBlock | ImageElement): string | undefined {
  if ('slack_file' in image && image.slack_file && 'id' in image.slack_file) {
    return `/page/file/${encodeURIComponent(image.slack_file.id)}`;
  }
  const url = 'image_url' in image ? image.image_url : undefined;
  return url && /^https?:\/\//i.test(url) ? url : undefined;
}
