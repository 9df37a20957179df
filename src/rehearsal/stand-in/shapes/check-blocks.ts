/**
 * Checks the blocks of one message or view as a whole: their shapes, ids that must not repeat, and pictures
 * that must exist. Reports every problem at once, in the platform's manner: a sentence and a JSON pointer.
 */
import type { z } from 'zod';
import type { JsonObject } from '../page-state.ts';
import { messageShape, viewShape } from './block-shapes.ts';

/** Largest view as JSON, in bytes; the platform says 250 kB. */
const VIEW_BYTES_MAX = 250_000;

/** What a check must know of the workspace. */
interface FileLookup {
  /** Whether a file's upload is complete, it is a picture, and it can be shown now. */
  canShow(fileId: string): boolean;
}

/**
 * The platform names no number for `msg_blocks_too_long`: 11,341 characters were refused in one report, some 13,200 in
 * another (github.com/slackapi/bolt-js issues 2509 and 2867). The strictest of them, rounded down.
 */
const MESSAGE_TEXTS_MAX = 11_000;

/** @returns the problems, none when the blocks may be posted as a message. */
export function messageProblems(blocks: unknown, files: FileLookup): string[] {
  const parsed = messageShape.safeParse(blocks);
  if (!parsed.success) return problemsOf(parsed.error, ['blocks']);
  const whole = parsed.data as JsonObject[];
  return [...wholeProblems(whole, ['blocks'], files), ...strayFileInputs(whole, ['blocks'])];
}

/** Whether all texts of a message's blocks together, descriptions of pictures included, are more than it may hold. */
export function areTextsTooLong(blocks: unknown): boolean {
  let length = 0;
  JSON.stringify(blocks ?? [], (key, value: unknown) => {
    if (typeof value === 'string' && ['text', 'alt_text'].includes(key)) length += value.length;
    return value;
  });
  return length > MESSAGE_TEXTS_MAX;
}

/** @returns the problems, none when the view may be shown as this kind of surface. */
export function viewProblems(view: unknown, kind: 'modal' | 'home', files: FileLookup): string[] {
  const parsed = viewShape.safeParse(view);
  if (!parsed.success) return problemsOf(parsed.error, ['view']);
  if (parsed.data.type !== kind) return [problem(`must be a view of type ${kind}`, ['view', 'type'])];
  const blocks = parsed.data.blocks as JsonObject[];
  const root = ['view', 'blocks'];
  return [...wholeProblems(blocks, root, files), ...(kind === 'modal' ? [] : strayFileInputs(blocks, root))];
}

/** Whether a view asks for files, for which the app needs a scope of its own (`files:read`). */
export function asksForFiles(view: JsonObject): boolean {
  return (view.blocks as JsonObject[]).flatMap(elementsOf).some((element) => element.type === 'file_input');
}

export function isViewTooLarge(view: unknown): boolean {
  return Buffer.byteLength(JSON.stringify(view)) > VIEW_BYTES_MAX;
}

/** The elements of one block that a person can act on. */
export function elementsOf(block: JsonObject): JsonObject[] {
  const elements = block.type === 'actions' ? block.elements : [block.element, block.accessory];
  return (elements as (JsonObject | undefined)[]).filter(
    (one) => one !== undefined && one.type !== 'image',
  ) as JsonObject[];
}

/** Files can be asked for in forms only. */
function strayFileInputs(blocks: JsonObject[], root: string[]): string[] {
  return blocks.flatMap((block, index) =>
    elementsOf(block).some(({ type }) => type === 'file_input')
      ? [problem('unsupported element: file_input', [...root, index, 'element'])]
      : [],
  );
}

/** Every picture in the blocks. */
export function imagesOf(blocks: readonly JsonObject[]): JsonObject[] {
  const context = (block: JsonObject) => (block.type === 'context' ? (block.elements as JsonObject[]) : []);
  return blocks
    .flatMap((block) => [block, block.accessory as JsonObject | undefined, ...context(block)])
    .filter((one): one is JsonObject => one?.type === 'image');
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
      const file = image.slack_file as { id: string } | undefined;
      if (file && !files.canShow(file.id))
        found.push(problem('invalid slack file', [...root, index, 'slack_file']));
    }
  });
  return found;
}

/** `no more than 25 items allowed [json-pointer:/blocks/1/elements]` */
function problem(sentence: string, path: readonly PropertyKey[]): string {
  return `${sentence} [json-pointer:/${path.map(String).join('/')}]`;
}

/** One problem for each thing that a shape refused, under the given root. */
function problemsOf(error: z.ZodError, root: readonly PropertyKey[]): string[] {
  return error.issues.map((issue) => problemOf(issue, root));
}

function problemOf(issue: z.core.$ZodIssue, root: readonly PropertyKey[]): string {
  const path = [...root, ...issue.path];
  switch (issue.code) {
    case 'too_big':
      return problem(
        issue.origin === 'string'
          ? `must be less than ${Number(issue.maximum) + 1} characters`
          : issue.origin === 'array'
            ? `no more than ${issue.maximum} items allowed`
            : `must be at most ${issue.maximum}`,
        path,
      );
    case 'too_small':
      return problem(
        issue.origin === 'string'
          ? `must be more than ${Number(issue.minimum) - 1} characters`
          : issue.origin === 'array'
            ? `must provide at least ${issue.minimum} items`
            : `must be at least ${issue.minimum}`,
        path,
      );
    case 'unrecognized_keys':
      return problem(`invalid additional property: ${issue.keys.join(', ')}`, path);
    case 'invalid_union':
      return problem('unsupported or missing type', path);
    case 'invalid_type':
      // The shapes are parsed from JSON, so what is undefined there is absent.
      return issue.input === undefined && issue.message.endsWith('received undefined')
        ? problem(`missing required field: ${String(path.at(-1))}`, path.slice(0, -1))
        : problem(`must provide a value of type ${issue.expected}`, path);
    case 'invalid_value':
      return problem(`must be one of: ${issue.values.map(String).join(', ')}`, path);
    default:
      return problem(issue.message, path);
  }
}
