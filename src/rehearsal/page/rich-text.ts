/** Shows rich text: sections, lists, quotes and preformatted text with styled runs. */
import type { RichTextBlock, RichTextElement, RichTextText } from '@slack/types';
import { element } from './dom.ts';
import { fillDateTokens } from './format-date.ts';
import { linkNode, mentionNode, type Wording } from './mrkdwn-dom.ts';
import { isSafeLink } from './mrkdwn-inline.ts';

type Part = RichTextBlock['elements'][number];

/** The parts of a rich text block as nodes. */
export function richTextNodes(block: RichTextBlock, wording: Wording): Node[] {
  return block.elements.map((part) => partNode(part, wording));
}

function partNode(part: Part, wording: Wording): Node {
  switch (part.type) {
    case 'rich_text_list': {
      const items = part.elements.map((item) => element('li', {}, [partNode(item, wording)]));
      return element(part.style === 'ordered' ? 'ol' : 'ul', { class: `indent-${part.indent ?? 0}` }, items);
    }
    case 'rich_text_preformatted':
      return element('pre', {}, runs(part.elements, wording));
    case 'rich_text_quote':
      return element('blockquote', {}, runs(part.elements, wording));
    default:
      return element('p', {}, runs(part.elements, wording));
  }
}

function runs(elements: RichTextElement[], wording: Wording): Node[] {
  return elements.map((run) => runNode(run, wording));
}

function runNode(run: RichTextElement, wording: Wording): Node {
  switch (run.type) {
    case 'text':
      return styled(document.createTextNode(run.text), run.style);
    case 'link':
      return isSafeLink(run.url)
        ? styled(linkNode(run.url, run.text ?? run.url), run.style)
        : document.createTextNode(run.text ?? run.url);
    case 'user':
      return mentionNode(`@${wording.userName(run.user_id)}`);
    case 'channel':
      return mentionNode(`#${wording.channelName(run.channel_id)}`);
    case 'broadcast':
      return mentionNode(`@${run.range}`);
    case 'emoji':
      return document.createTextNode(`:${run.name}:`);
    case 'date':
      return document.createTextNode(fillDateTokens(run.timestamp, run.format, wording.timeZone));
    default:
      return document.createTextNode('');
  }
}

function styled(node: Node, style: RichTextText['style']): Node {
  let result = node;
  if (style?.code) result = element('code', {}, [result]);
  if (style?.strike) result = element('s', {}, [result]);
  if (style?.italic) result = element('em', {}, [result]);
  if (style?.bold) result = element('strong', {}, [result]);
  return result;
}
