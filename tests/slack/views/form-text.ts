/** A form as lines that one can read in a test. */
import type { KnownBlock, ModalView } from '@slack/types';

export function formText(view: ModalView): string {
  const frame = `[${view.title.text} | ${view.submit?.text ?? '-'} | ${view.close?.text ?? '-'}] ${view.private_metadata ?? ''}`;
  return [frame, ...view.blocks.map((block) => blockText(block as KnownBlock))].join('\n');
}

function blockText(block: KnownBlock): string {
  switch (block.type) {
    case 'header':
      return `# ${block.text.text}`;
    case 'section':
      return block.text?.text ?? '';
    case 'context':
      return block.elements.map((element) => ('text' in element ? `(${element.text})` : '')).join(' ');
    case 'divider':
      return '---';
    case 'input': {
      const optional = block.optional ? ' (optional)' : '';
      const hint = block.hint ? ` – ${block.hint.text}` : '';
      return `<${block.block_id}> ${block.label.text}${optional}: ${initialText(block.element)}${hint}`;
    }
    default:
      return `(${block.type})`;
  }
}

function initialText(element: object): string {
  const initial = Object.entries(element).filter(
    ([name]) => name.startsWith('initial_') || name === 'options',
  );
  return initial.map(([, value]) => JSON.stringify(value, shortOption)).join(' ');
}

/** Options as `value=label`. */
function shortOption(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || !('text' in value) || !('value' in value)) return value;
  return `${value.value}=${(value.text as { text: string }).text}`;
}
