/** Shows parsed markup as DOM nodes. Names and dates are filled in here. */
import { type Child, element } from './dom.ts';
import { fillDateTokens } from './format-date.ts';
import { type Inline, parseMrkdwn } from './mrkdwn.ts';

export interface Wording {
  userName(id: string): string;
  channelName(id: string): string;
  timeZone: string;
}

/** Shows a text with markup, as block-level nodes to be put into a container. */
export function mrkdwnNodes(text: string, wording: Wording): Node[] {
  return parseMrkdwn(text).map((block) => {
    switch (block.kind) {
      case 'codeBlock':
        return element('pre', {}, [element('code', {}, [block.text])]);
      case 'list':
        return element(
          'ul',
          { class: 'bullets' },
          block.items.map((item) => element('li', {}, inlineNodes(item.content, wording))),
        );
      case 'quote':
        return element('blockquote', {}, lineNodes(block.lines, wording));
      default:
        return element('p', {}, lineNodes(block.lines, wording));
    }
  });
}

function lineNodes(lines: Inline[][], wording: Wording): Child[] {
  return lines.flatMap((line, index) => [index > 0 && element('br'), ...inlineNodes(line, wording)]);
}

function inlineNodes(nodes: Inline[], wording: Wording): Node[] {
  return nodes.map((node) => inlineNode(node, wording));
}

function inlineNode(node: Inline, wording: Wording): Node {
  switch (node.kind) {
    case 'text':
      return document.createTextNode(node.text);
    case 'bold':
      return element('strong', {}, inlineNodes(node.children, wording));
    case 'italic':
      return element('em', {}, inlineNodes(node.children, wording));
    case 'strike':
      return element('s', {}, inlineNodes(node.children, wording));
    case 'code':
      return element('code', {}, [node.text]);
    case 'link':
      return linkNode(node.url, node.label);
    case 'user':
      return mentionNode(`@${wording.userName(node.id)}`);
    case 'channel':
      return mentionNode(`#${node.label ?? wording.channelName(node.id)}`);
    case 'broadcast':
      return mentionNode(node.label);
    case 'date': {
      const label = fillDateTokens(node.epochSeconds, node.format, wording.timeZone) || node.fallback;
      return node.url ? linkNode(node.url, label) : element('span', {}, [label]);
    }
  }
}

/** A mention as it reads in a message. */
function mentionNode(label: string): HTMLElement {
  return element('span', { class: 'mention' }, [label]);
}

/** A link that opens beside the page. The address must have been found safe before. */
function linkNode(url: string, label: string): HTMLElement {
  return element('a', { href: url, target: '_blank', rel: 'noreferrer' }, [label]);
}
