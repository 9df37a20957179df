/**
 * Reads which messages the message files hold and what each takes, and writes that as TypeScript. What a message takes
 * follows from how it uses it: by the function that it goes through, by the plural that it selects, or by the codes that
 * it tells apart; anything else is text.
 */
import {
  type FunctionReference,
  type Message,
  type MessageReference,
  parse,
  type SelectExpression,
  type VariableReference,
  Visitor,
} from '@fluent/syntax';
import { ARGUMENT_TYPES } from '../../src/words/language.ts';

const PLURALS = new Set(['zero', 'one', 'two', 'few', 'many', 'other']);

/** Arguments by name, each with its TypeScript type. */
type Arguments = ReadonlyMap<string, string>;

class Uses extends Visitor {
  readonly found = new Map<string, string>();
  readonly references: string[] = [];
  readonly #id: string;

  constructor(id: string) {
    super();
    this.#id = id;
  }

  #take(name: string, type: string): void {
    const before = this.found.get(name);
    if (before === undefined || before === 'string') this.found.set(name, type);
    else if (type !== 'string' && type !== before)
      throw new Error(`${this.#id}: $${name} is used as ${before} and as ${type}`);
  }

  override visitSelectExpression(node: SelectExpression): void {
    if (node.selector.type === 'VariableReference') {
      const keys = node.variants.map(({ key }) => (key.type === 'NumberLiteral' ? key.value : key.name));
      const isPlural = keys.every((key) => PLURALS.has(key) || /^\d/.test(key));
      if (!isPlural && keys.some((key) => PLURALS.has(key)))
        throw new Error(`${this.#id}: $${node.selector.id.name} mixes plurals with codes`);
      const codes = keys.map((key) => `'${key}'`).sort();
      this.#take(node.selector.id.name, isPlural ? 'number' : codes.join(' | '));
    }
    this.genericVisit(node);
  }

  override visitFunctionReference(node: FunctionReference): void {
    const type = (ARGUMENT_TYPES as Readonly<Record<string, string>>)[node.id.name];
    if (type === undefined) throw new Error(`${this.#id}: there is no function ${node.id.name}`);
    for (const given of node.arguments.positional) {
      if (given.type === 'VariableReference') this.#take(given.id.name, type);
    }
    this.genericVisit(node);
  }

  override visitVariableReference(node: VariableReference): void {
    this.#take(node.id.name, 'string');
  }

  override visitMessageReference(node: MessageReference): void {
    this.references.push(node.id.name);
  }
}

/**
 * What every message takes, what the messages that it is made of take included.
 *
 * @param files texts of message files by name
 * @throws Error for what the parser of the running bot would silently skip
 */
export function messageArguments(files: ReadonlyMap<string, string>): Map<string, Arguments> {
  const uses = new Map<string, Uses>();
  for (const [name, source] of files) {
    if (/[ \t]$/m.test(source)) throw new Error(`${name}: a line ends in a blank`);
    for (const entry of parse(source, { withSpans: false }).body) {
      if (entry.type === 'Junk')
        throw new Error(
          `${name}: ${entry.annotations.map(({ message }) => message).join()} ${entry.content}`,
        );
      if (entry.type === 'Message') addMessage(uses, entry, name);
    }
  }
  return new Map([...uses.keys()].map((id) => [id, argumentsOf(id, uses, [])]));
}

function addMessage(uses: Map<string, Uses>, entry: Message, file: string): void {
  const id = entry.id.name;
  if (uses.has(id)) throw new Error(`${file}: there is a second message ${id}`);
  if (entry.value === null || entry.attributes.length > 0)
    throw new Error(`${file}: ${id} has an attribute; a continued line may not begin with a dot`);
  const own = new Uses(id);
  own.visit(entry);
  uses.set(id, own);
}

function argumentsOf(id: string, uses: ReadonlyMap<string, Uses>, above: readonly string[]): Arguments {
  if (above.includes(id)) throw new Error(`${id} refers to itself`);
  const own = uses.get(id);
  if (!own) throw new Error(`${above.at(-1)} refers to ${id}, which there is none of`);
  const all = new Map(own.found);
  for (const reference of own.references) {
    for (const [name, type] of argumentsOf(reference, uses, [...above, id])) {
      if (!all.has(name) || all.get(name) === 'string') all.set(name, type);
    }
  }
  return all;
}

/** The text of `src/words/message-arguments.ts`, before it is formatted. */
export function messageArgumentsSource(files: ReadonlyMap<string, string>): string {
  const lines = [...messageArguments(files)].map(([id, args]) => {
    const fields = [...args].map(([name, type]) => `readonly ${name}: ${type}`);
    return `  '${id}': ${fields.length === 0 ? 'Record<never, never>' : `{ ${fields.join('; ')} }`};`;
  });
  return `/** What each message takes. Written by \`npm run messages\` from the English message files; don't edit it by hand. */\n\nexport interface Messages {\n${lines.join('\n')}\n}\n`;
}
