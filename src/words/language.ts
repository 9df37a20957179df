/**
 * A language: the message files of one folder, read once. Messages are Project Fluent's (projectfluent.org), so that a
 * translator edits text files and no code; DEVELOPERS.md says how to write one. Which messages there are and what they
 * take is in `message-arguments.ts`, which `npm run messages` writes from the English files.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { FluentBundle, FluentNumber, FluentResource, FluentType, type FluentValue } from '@fluent/bundle';

/** How a message is shown: as plain text, or in the chat platform's own markup. */
export type Form = 'plain' | 'mrkdwn';

export interface Language {
  /** BCP 47 tag. */
  readonly tag: string;
  readonly bundles: Readonly<Record<Form, FluentBundle>>;
}

type Scope = Parameters<FluentType<unknown>['toString']>[0];

/** By options of Intl, which are always the same objects: what was formatted by them, by language and value. */
const formatted = new WeakMap<object, Map<string, string>>();
const MOST_FORMATTED = 5_000;

/** The same few numbers and days are said again and again, thirty of them in a status. */
function formatOnce(
  options: object,
  { bundle: { locales } }: Scope,
  value: string | number,
  format: () => string,
): string {
  const texts = formatted.get(options) ?? new Map<string, string>();
  formatted.set(options, texts);
  const key = `${locales} ${value}`;
  const before = texts.get(key);
  if (before !== undefined) return before;
  if (texts.size >= MOST_FORMATTED) texts.clear();
  const text = format();
  texts.set(key, text);
  return text;
}

const AS_IT_IS: Intl.NumberFormatOptions = {};

class PlainNumber extends FluentNumber {
  constructor(value: number) {
    super(value, AS_IT_IS);
  }

  override toString(scope: Scope): string {
    return formatOnce(AS_IT_IS, scope, this.value, () => super.toString(scope));
  }
}

/** A number with options of Intl that Fluent's own NUMBER doesn't pass on. */
class FormattedNumber extends FluentType<number> {
  readonly #options: Intl.NumberFormatOptions;

  constructor(value: number, options: Intl.NumberFormatOptions) {
    super(value);
    this.#options = options;
  }

  override toString(scope: Scope): string {
    return formatOnce(this.#options, scope, this.value, () =>
      scope.memoizeIntlObject(Intl.NumberFormat, this.#options).format(this.value),
    );
  }
}

/** An amount as another message says it. */
class Amount extends FluentType<number> {
  readonly #messageId: string;
  readonly #more: Readonly<Record<string, number>>;

  constructor(value: number, messageId: string, more: Readonly<Record<string, number>> = {}) {
    super(value);
    this.#messageId = messageId;
    this.#more = more;
  }

  override toString({ bundle }: Scope): string {
    const pattern = bundle.getMessage(this.#messageId)?.value;
    if (!pattern) throw new RangeError(`There is no message ${this.#messageId}.`);
    return bundle.formatPattern(pattern, { amount: this.value, ...this.#more });
  }
}

/** An estimated chance is never certain: 0.4% is not 0%. */
function chance(value: number): Amount {
  const percent = Math.round(value * 100);
  if (value > 0 && percent === 0) return new Amount(0.01, 'amount-chance-below');
  if (value < 1 && percent === 100) return new Amount(0.99, 'amount-chance-above');
  return new Amount(value, 'amount-chance');
}

/** In whole percent; one number where both ends are the same. */
function percentSpan(low: number, high: number): FluentType<number> {
  return Math.round(low * 100) === Math.round(high * 100)
    ? new FormattedNumber(high, WHOLE_PERCENT)
    : new Amount(low, 'amount-percent-span', { high });
}

const WHOLE_PERCENT: Intl.NumberFormatOptions = {
  style: 'percent',
  maximumFractionDigits: 0,
  signDisplay: 'negative',
};
const PERCENT: Intl.NumberFormatOptions = { ...WHOLE_PERCENT, maximumFractionDigits: 1 };
const SIGNED: Intl.NumberFormatOptions = { signDisplay: 'exceptZero' };

const WEEKDAY_AND_DAY: Intl.DateTimeFormatOptions = { weekday: 'short', day: 'numeric', month: 'short' };
const SHORT_DATE: Intl.DateTimeFormatOptions = { day: 'numeric', month: 'short', year: 'numeric' };
const SHORT_DATE_NO_YEAR: Intl.DateTimeFormatOptions = { day: 'numeric', month: 'short' };
const YEAR: Intl.DateTimeFormatOptions = { year: 'numeric' };
const DATE: Intl.DateTimeFormatOptions = { day: 'numeric', month: 'long', year: 'numeric' };
const DATE_NO_YEAR: Intl.DateTimeFormatOptions = { day: 'numeric', month: 'long' };

class FormattedDay extends FluentType<string> {
  readonly #options: Intl.DateTimeFormatOptions;

  constructor(day: string, options: Intl.DateTimeFormatOptions) {
    super(day);
    this.#options = options;
  }

  override toString(scope: Scope): string {
    return formatOnce(this.#options, scope, this.value, () =>
      scope
        .memoizeIntlObject(Intl.DateTimeFormat, { ...this.#options, timeZone: 'UTC' })
        .format(new Date(`${this.value}T00:00:00Z`)),
    );
  }
}

const listFormats = new Map<string, Intl.ListFormat>();

/** Several items in one argument: `a, b and c`. */
export class ItemList extends FluentType<readonly string[]> {
  readonly #type: Intl.ListFormatType;

  constructor(items: readonly string[], type: Intl.ListFormatType = 'conjunction') {
    super(items);
    this.#type = type;
  }

  override toString({ bundle: { locales } }: Scope): string {
    const key = `${locales} ${this.#type}`;
    const format = listFormats.get(key) ?? new Intl.ListFormat(locales, { type: this.#type });
    listFormats.set(key, format);
    return format.format(this.value);
  }

  as(type: Intl.ListFormatType): ItemList {
    return new ItemList(this.value, type);
  }
}

function numberIn(value: FluentValue | undefined): number {
  const number = value instanceof FluentType ? value.valueOf() : value;
  // -0 would show its sign.
  if (typeof number === 'number' && Number.isFinite(number)) return number === 0 ? 0 : number;
  throw new TypeError(`A message takes a number, not ${String(number)}.`);
}

function itemsIn(value: FluentValue | undefined): ItemList {
  if (value instanceof ItemList) return value;
  throw new TypeError('A message takes a list.');
}

/** The functions that a message may call. The type of each one's argument is in `ARGUMENT_TYPES`. */
const FUNCTIONS = {
  /** `3`, `2.5`, `1,200`, `-1` */
  NUMBER: ([value]: FluentValue[]) => new PlainNumber(numberIn(value)),
  /** Selects by the ordinal plural: `{ ORDINAL($n) -> [one] { NUMBER($n) }st … }` */
  ORDINAL: ([value]: FluentValue[]) =>
    new FluentNumber(numberIn(value), { type: 'ordinal' } as Intl.NumberFormatOptions),
  /** `+2`, `-1`, `0` */
  SIGNED: ([value]: FluentValue[]) => new FormattedNumber(numberIn(value), SIGNED),
  /** `1 point`, `2.5 points` */
  POINTS: ([value]: FluentValue[]) => new Amount(numberIn(value), 'amount-points'),
  /** `80%`, `79.9%` */
  PERCENT: ([value]: FluentValue[]) => new FormattedNumber(numberIn(value), PERCENT),
  /** `80%`, of a share as well as of anything else that is rounded to whole percent */
  WHOLE_PERCENT: ([value]: FluentValue[]) => new FormattedNumber(numberIn(value), WHOLE_PERCENT),
  /** `32% to 81%`; `25%` where both ends are the same */
  PERCENT_SPAN: ([low, high]: FluentValue[]) => percentSpan(numberIn(low), numberIn(high)),
  /** `62%`; near the ends `less than 1%` and `more than 99%` */
  CHANCE: ([value]: FluentValue[]) => chance(numberIn(value)),
  /** `about 8 in 10`; near the ends `less than 1 in 10` and `more than 9 in 10` */
  IN_TEN: ([value]: FluentValue[]) => new Amount(Math.round(numberIn(value) * 10), 'amount-in-ten'),
  /** The same where several stand side by side: `8 in 10` */
  TENTHS: ([value]: FluentValue[]) => new Amount(Math.round(numberIn(value) * 10), 'amount-tenths'),
  /** The same of what happens again and again: `about 8 times in 10`; `hardly ever`, `nearly every time` */
  TIMES_IN_TEN: ([value]: FluentValue[]) =>
    new Amount(Math.round(numberIn(value) * 10), 'amount-times-in-ten'),
  /** `Wed 4 Nov` */
  DAY: ([value]: FluentValue[]) => new FormattedDay(String(value), WEEKDAY_AND_DAY),
  /** `4 Nov 2026`, where room is scarce */
  SHORT_DATE: ([value]: FluentValue[]) => new FormattedDay(String(value), SHORT_DATE),
  /** `4 Nov` */
  SHORT_DATE_NO_YEAR: ([value]: FluentValue[]) => new FormattedDay(String(value), SHORT_DATE_NO_YEAR),
  /** `2026` */
  YEAR: ([value]: FluentValue[]) => new FormattedDay(String(value), YEAR),
  /** `4 November 2026`: for days that may lie months ahead or years back */
  DATE: ([value]: FluentValue[]) => new FormattedDay(String(value), DATE),
  /** The same beside another day: `4 November` where that one has named the year */
  DATE_BESIDE: ([value, beside]: FluentValue[]) => {
    const isSameYear = String(value).slice(0, 4) === String(beside).slice(0, 4);
    return new FormattedDay(String(value), isSameYear ? DATE_NO_YEAR : DATE);
  },
  /** `a, b and c` */
  LIST: ([value]: FluentValue[]) => itemsIn(value),
  /** `a, b or c` */
  OR_LIST: ([value]: FluentValue[]) => itemsIn(value).as('disjunction'),
  /** `a, b, c` */
  SERIES: ([value]: FluentValue[]) => itemsIn(value).as('unit'),
} as const;

/** The TypeScript type of what each function takes. */
export const ARGUMENT_TYPES: Readonly<
  Record<keyof typeof FUNCTIONS, 'number' | 'string' | 'readonly string[]'>
> = {
  NUMBER: 'number',
  ORDINAL: 'number',
  SIGNED: 'number',
  POINTS: 'number',
  PERCENT: 'number',
  WHOLE_PERCENT: 'number',
  PERCENT_SPAN: 'number',
  CHANCE: 'number',
  IN_TEN: 'number',
  TENTHS: 'number',
  TIMES_IN_TEN: 'number',
  DAY: 'string',
  SHORT_DATE: 'string',
  SHORT_DATE_NO_YEAR: 'string',
  YEAR: 'string',
  DATE: 'string',
  DATE_BESIDE: 'string',
  LIST: 'readonly string[]',
  OR_LIST: 'readonly string[]',
  SERIES: 'readonly string[]',
};

/** Plain text has no mark for what one types: a command speaks for itself, anything else comes in quotes. */
function withoutMarkup(source: string): string {
  return source.replace(/`(\/[^`\n]*)`/g, '$1').replace(/`([^`\n]*)`/g, '“$1”');
}

function bundleOf(tag: string, sources: readonly string[]): FluentBundle {
  // Isolating marks would be copied along with a command, and break a mention.
  const bundle = new FluentBundle(tag, { functions: FUNCTIONS, useIsolating: false });
  for (const source of sources) {
    const [error] = bundle.addResource(new FluentResource(source));
    if (error) throw error;
  }
  return bundle;
}

/** @param sources the texts of its message files. @throws when two messages have one name */
export function languageOf(tag: string, sources: readonly string[]): Language {
  return {
    tag,
    bundles: { plain: bundleOf(tag, sources.map(withoutMarkup)), mrkdwn: bundleOf(tag, sources) },
  };
}

/** The texts of a language's message files, by name. @param tag names the folder */
export function messageFiles(tag: string): ReadonlyMap<string, string> {
  const folder = fileURLToPath(new URL(`./${tag}/`, import.meta.url));
  const names = readdirSync(folder).filter((name) => name.endsWith('.ftl'));
  return new Map(names.sort().map((name) => [name, readFileSync(`${folder}${name}`, 'utf8')]));
}
