/** Whether the platform would take a view, judged by the stand-in's shapes, which the views do not know. */
import type { HomeView, KnownBlock, ModalView } from '@slack/types';
import { expect } from 'vitest';
import {
  areTextsTooLong,
  messageProblems,
  viewProblems,
} from '../../../src/rehearsal/stand-in/shapes/check-blocks.ts';
import type { MessageView } from '../../../src/slack/views/message-view.ts';

const everyFile = { canShow: () => true };

/** As it goes over the wire, where keys without a value are left out. */
function wired(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value));
}

export function expectMessageFits(view: MessageView): void {
  expect(messageProblems(wired(view.blocks), everyFile)).toEqual([]);
  expect(areTextsTooLong(wired(view.blocks)), 'texts of all blocks').toBe(false);
  expect(view.text.length).toBeGreaterThan(0);
  expect(view.text.length).toBeLessThanOrEqual(4_000);
}

export function expectFormFits(view: ModalView | HomeView): void {
  expect(viewProblems(wired(view), view.type, everyFile)).toEqual([]);
  expect(Buffer.byteLength(JSON.stringify(view))).toBeLessThanOrEqual(250_000);
}

/** How many words somebody reads, those on the buttons included. */
export function wordsIn({ text }: MessageView): number {
  return (text.match(/[\p{L}\p{N}][^\s]*/gu) ?? []).length;
}

/** All formatted texts of some blocks. */
export function mrkdwnTexts(blocks: readonly object[]): string[] {
  const texts: string[] = [];
  JSON.stringify(blocks, (_key, value: unknown) => {
    if (typeof value === 'object' && value !== null && 'type' in value && value.type === 'mrkdwn') {
      texts.push((value as unknown as { text: string }).text);
    }
    return value;
  });
  return texts;
}

interface SeenButton {
  readonly label: string;
  readonly actionId: string;
  readonly value: string;
}

export function buttonsOf(blocks: readonly KnownBlock[] | ModalView['blocks']): SeenButton[] {
  return blocks.flatMap((block) => {
    const known = block as KnownBlock;
    if (known.type !== 'actions') return [];
    return known.elements.flatMap((element) =>
      element.type === 'button'
        ? [{ label: element.text.text, actionId: element.action_id ?? '', value: element.value ?? '' }]
        : [],
    );
  });
}
