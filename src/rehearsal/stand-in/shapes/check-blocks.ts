/**
 * Checks the blocks of one message or view as a whole: their shapes, ids that must not repeat, and pictures
 * that must exist. Reports every problem at once.
 */
import { z } from 'zod';
import type { JsonObject } from '../page-state.ts';
import { blockShape, MESSAGE_BLOCKS_MAX } from './block-shapes.ts';
import { problem, problemsOf } from './problems.ts';
import { VIEW_BYTES_MAX, viewShape } from './view-shapes.ts';

/** What a check must know of the workspace. */
export interface FileLookup {
  /** Whether a file's upload is complete, it is a picture, and it can be shown now. */
  canShow(file: { id?: string; url?: string }): boolean;
}

const messageShape = z.array(blockShape).max(MESSAGE_BLOCKS_MAX);

/** @returns the problems, none when the blocks may be posted as a message. */
export function messageProblems(blocks: unknown, files: FileLookup): string[] {
  const parsed = messageShape.safeParse(blocks);
  if (!parsed.success) return problemsOf(parsed.error, ['blocks']);
  const whole = parsed.data as JsonObject[];
  return [...wholeProblems(whole, ['blocks'], files), ...strayFileInputs(whole, ['blocks'])];
}

/** @returns the problems, none when the view may be shown as this kind of surface. */
export function viewProblems(view: unknown, kind: 'modal' | 'home', files: FileLookup): string[] {
  const parsed = viewShape.safeParse(view);
  if (!parsed.success) return problemsOf(parsed.error, ['view']);
  if (parsed.data.type !== kind) return [problem(`must be a view of type ${kind}`, ['view', 'type'])];
  const blocks = parsed.data.blocks as JsonObject[];
  return [
    ...wholeProblems(blocks, ['view', 'blocks'], files),
    ...focusProblems(blocks),
    ...(kind === 'modal' ? [] : strayFileInputs(blocks, ['view', 'blocks'])),
  ];
}

/** Whether a view asks for files, for which the app needs a scope of its own (`files:read`). */
export function asksForFiles(view: unknown): boolean {
  const { blocks } = view as { blocks?: JsonObject[] };
  return (blocks ?? []).some(hasFileInput);
}

function hasFileInput(block: JsonObject): boolean {
  return elementsOf(block).some((element) => element.type === 'file_input');
}

/** Files can be asked for in forms only. */
function strayFileInputs(blocks: JsonObject[], root: string[]): string[] {
  return blocks.flatMap((block, index) =>
    hasFileInput(block) ? [problem('unsupported element: file_input', [...root, index, 'element'])] : [],
  );
}

export function isViewTooLarge(view: unknown): boolean {
  return Buffer.byteLength(JSON.stringify(view)) > VIEW_BYTES_MAX;
}

/** The elements of one block that a person can act on. */
export function elementsOf(block: JsonObject): JsonObject[] {
  const found = [block.element, block.accessory, ...(block.type === 'actions' ? asList(block.elements) : [])];
  return found.filter((one): one is JsonObject => isObject(one) && one.type !== 'image');
}

/** Every picture in the blocks: image blocks, accessories and context images. */
export function imagesOf(blocks: readonly JsonObject[]): JsonObject[] {
  return blocks
    .flatMap((block) => [block, block.accessory, ...(block.type === 'context' ? asList(block.elements) : [])])
    .filter((one): one is JsonObject => isObject(one) && one.type === 'image');
}

function wholeProblems(blocks: JsonObject[], root: string[], files: FileLookup): string[] {
  const found: string[] = [];
  const seen = new Set<string>();
  blocks.forEach((block, index) => {
    const id = block.block_id;
    if (typeof id === 'string') {
      if (seen.has(id))
        found.push(problem(`\`block_id\` "${id}" already exists`, [...root, index, 'block_id']));
      seen.add(id);
    }
    const actionIds = elementsOf(block).map((element) => element.action_id);
    const repeated = actionIds.find((one, at) => one !== undefined && actionIds.indexOf(one) !== at);
    if (repeated)
      found.push(problem(`\`action_id\` "${repeated}" already exists in this block`, [...root, index]));
    for (const image of imagesOf([block])) {
      const file = image.slack_file as { id?: string; url?: string } | undefined;
      if (file && !files.canShow(file))
        found.push(problem('invalid slack file', [...root, index, 'slack_file']));
    }
  });
  return found;
}

function focusProblems(blocks: JsonObject[]): string[] {
  const focused = blocks.flatMap(elementsOf).filter((element) => element.focus_on_load === true);
  return focused.length > 1 ? [problem('only one element may have `focus_on_load`', ['view', 'blocks'])] : [];
}

function asList(value: unknown): unknown[] {
  return Array.isArray(value) ? value : [];
}

function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
