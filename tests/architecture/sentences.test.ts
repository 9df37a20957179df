/** Sentences that somebody reads are messages of the words room; no other code holds any. */
import { readFileSync } from 'node:fs';
import { glob } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { parseSync } from 'oxc-parser';
import { describe, expect, it } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');

/**
 * Rooms that may hold sentences: the words room; the rehearsal's page, which runs in the browser without the message
 * files; the stand-in, which says what the chat platform says; and the metrics, whose help texts are part of their format.
 */
const EXEMPT_ROOMS = ['words/', 'rehearsal/page/', 'rehearsal/stand-in/', 'metrics/'];

/** Files whose sentences nobody reads, and what they are. */
const NOT_READ: Readonly<Record<string, string>> = {
  'app/answering/answer-vocabulary.ts': 'what people write',
  'app/written-once.ts': 'part of a key in the database',
  'jobs/database-watch.ts': 'log lines that are chosen before they are logged',
  'jobs/watchdog-worker.js': 'a log line of a thread that has no logger',
  'jobs/deliveries.ts': 'a log event that is chosen before it is logged',
  'slack/sending/delivery-errors.ts': 'how a library words its error',
};

/** Two words in a row with small letters. */
const PROSE = /\p{Ll}{2,}[,;:]? \p{Ll}{2,}/u;
/** A query that is written as text, or a part of one. */
const SQL =
  /^\s*(?:select|insert|update|delete|with|set|create|alter|from|where|union|and|order by|notify|listen|show|begin|lock) /i;

/** Codes, as in `'no such key'`, which have neither capitals nor punctuation; commands; headers and style sheets. */
const NO_SENTENCE = /^\/?[a-z-]+(?: [a-z-]+)+$|charset=|font:/;
/** The elements of a page, also where a template goes on within one. */
const ELEMENT = /<!?\/?(?:doctype|html|body|div|footer|h[1-6]|img|li|p|section|ul)\b[^<>]*>?/g;

type Node = { readonly type: string } & Readonly<Record<string, unknown>>;

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string';
}

function nameOf(node: unknown): string {
  if (!isNode(node)) return '';
  if (node.type === 'Identifier' || node.type === 'PrivateIdentifier') return String(node.name);
  return node.type === 'MemberExpression' ? `${nameOf(node.object)}.${nameOf(node.property)}` : '';
}

/** What no user reads: log lines, which operators search for as they are; errors of programming; SQL; imports. */
function isExempt(node: Node): boolean {
  if (node.type === 'NewExpression') return nameOf(node.callee).endsWith('Error');
  if (node.type === 'CallExpression' && isNode(node.callee) && node.callee.type === 'Super') return true;
  if (node.type === 'CallExpression') return /(?:^|\.)#?log(?:ger)?\.|^sql\.raw$/.test(nameOf(node.callee));
  if (node.type === 'TaggedTemplateExpression')
    return nameOf(node.tag) === 'sql' || nameOf(node.tag).startsWith('sql.');
  return node.type.startsWith('Import') || node.type.startsWith('TS');
}

function textOf(node: Node): string | undefined {
  if (node.type === 'Literal' && typeof node.value === 'string') return node.value;
  if (node.type !== 'TemplateElement') return undefined;
  return (node.value as { readonly cooked: string | null }).cooked ?? undefined;
}

function sentencesIn(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(sentencesIn);
  if (!isNode(value) || isExempt(value)) return [];
  const text = textOf(value)?.replace(ELEMENT, '');
  if (text !== undefined) return PROSE.test(text) && !SQL.test(text) && !NO_SENTENCE.test(text) ? [text] : [];
  return Object.values(value).flatMap(sentencesIn);
}

function sentencesOf(source: string, file = 'a.ts'): string[] {
  return sentencesIn(parseSync(file, source).program.body);
}

describe('sentences outside the words room', () => {
  it('are found in strings and templates', () => {
    expect(sentencesOf("show('Nothing was recorded.')")).toEqual(['Nothing was recorded.']);
    // biome-ignore lint/suspicious/noTemplateCurlyInString: it is source code
    expect(sentencesOf('const a = `${n} cards are left`;')).toEqual([' cards are left']);
    expect(
      sentencesOf("logger.warn({ err }, 'it was lost'); throw new RangeError('there is no such card');"),
    ).toEqual([]);
    expect(sentencesOf("type Day = 'half a day'; sql`select * from cards where true`;")).toEqual([]);
    expect(sentencesOf("/some words here/.test('a-code'); // a comment with words")).toEqual([]);
  });

  it('are in no file but those that are listed, and each of those has one', async () => {
    const found: string[] = [];
    for await (const path of glob('src/**/*.{ts,js}', { cwd: ROOT })) {
      const file = relative('src', path);
      if (EXEMPT_ROOMS.some((room) => file.startsWith(room))) continue;
      const sentences = sentencesOf(readFileSync(join(ROOT, path), 'utf8'), file);
      if (sentences.length > 0) found.push(`${file}: ${sentences[0]}`);
    }
    const files = found.map((line) => line.split(':')[0]);
    expect(found.filter((_, i) => !(String(files[i]) in NOT_READ))).toEqual([]);
    // Take these out of the list: they have no sentence left.
    expect(Object.keys(NOT_READ).filter((file) => !files.includes(file))).toEqual([]);
  });
});
