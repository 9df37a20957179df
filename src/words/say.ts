/**
 * The one door through which a message becomes text. `say` makes plain text; `mrkdwn` makes the chat platform's markup,
 * in which what people typed can neither ping, link nor format.
 */
import { type Form, ItemList, type Language, languageOf, messageFiles } from './language.ts';
import type { Messages } from './message-arguments.ts';
import { mrkdwnOf, plainTyped } from './typed-text.ts';

export type MessageId = keyof Messages;

let language: Language | undefined;

/** Changes what language everything is said in. Tests use it; without it, it is English. */
export function speak(chosen: Language | undefined): void {
  language = chosen;
}

export function spokenLanguage(): Language {
  language ??= languageOf('en-GB', [...messageFiles('en-GB').values()]);
  return language;
}

/** Text that is markup already, such as a mention: it goes into a message as it is. */
export class Markup {
  readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  toString(): string {
    return this.text;
  }
}

type Takes<Args> = {
  readonly [Name in keyof Args]: string extends Args[Name]
    ? string | Markup
    : Args[Name] extends readonly string[]
      ? readonly (string | Markup)[]
      : Args[Name];
};

/** The arguments of a message, none for one that takes none. */
export type ArgumentsOf<Id extends MessageId> = keyof Messages[Id] extends never
  ? readonly []
  : readonly [args: Takes<Messages[Id]>];

type Given = string | number | Markup | readonly (string | Markup)[];

/** Plain text, on one line where the message is. */
export function say<Id extends MessageId>(id: Id, ...[args]: ArgumentsOf<Id>): string {
  return format('plain', id, args as Record<string, Given> | undefined);
}

/** Markup of the chat platform. Every text among the arguments is escaped, unless it is `Markup`. */
export function mrkdwn<Id extends MessageId>(id: Id, ...[args]: ArgumentsOf<Id>): string {
  return format('mrkdwn', id, args as Record<string, Given> | undefined);
}

/** Either of them. */
export function inForm(form: Form): typeof mrkdwn {
  return form === 'plain' ? say : mrkdwn;
}

/** The same as `Markup`, to go into another message. */
export function markup<Id extends MessageId>(id: Id, ...args: ArgumentsOf<Id>): Markup {
  return new Markup(mrkdwn(id, ...args));
}

/** What a core room returns in place of a sentence. */
interface Coded {
  readonly code: string;
}

/** What speaks against saying a code by the message of its name: there is none, or it takes something else. */
type Mismatch<Prefix extends string, Code> = Code extends { readonly code: infer Name extends string }
  ? `${Prefix}-${Name}` extends MessageId
    ? Omit<Code, 'code'> extends Takes<Messages[`${Prefix}-${Name}`]>
      ? never
      : [Name, 'has no such details']
    : [Name, 'has no message']
  : [Code, 'is no code'];

/**
 * Says a code by the message of its name, e.g. `problem-not-a-time`. Types see to it that there is a message for every
 * code and that the code's details are what the message takes.
 */
export function sayCode<Prefix extends string, Code extends Coded>(
  prefix: Prefix,
  coded: [Mismatch<Prefix, Code>] extends [never] ? Code : Mismatch<Prefix, Code>,
  form: Form = 'plain',
): string {
  const { code, ...details } = coded as unknown as Coded & Record<string, Given>;
  return format(form, `${prefix}-${code}`, details);
}

function format(form: Form, id: string, args: Record<string, Given> | undefined): string {
  const bundle = spokenLanguage().bundles[form];
  const pattern = bundle.getMessage(id)?.value;
  if (!pattern) throw new RangeError(`There is no message ${id}.`);
  const entries = Object.entries(args ?? {}).map(([name, given]) => [name, argument(form, given)]);
  // Without a list for its errors, the first one is thrown.
  return bundle.formatPattern(pattern, Object.fromEntries(entries));
}

function argument(form: Form, given: Given): string | number | ItemList {
  if (typeof given === 'number') return given;
  if (isList(given)) return new ItemList(given.map((item) => text(form, item)));
  return text(form, given);
}

function isList(given: Given): given is readonly (string | Markup)[] {
  return Array.isArray(given);
}

function text(form: Form, given: string | Markup): string {
  if (given instanceof Markup) return given.text;
  const line = given === '' ? '' : plainTyped(given);
  return form === 'mrkdwn' ? mrkdwnOf(line) : line;
}
