/** Column kinds and check expressions that several tables share. Defines no table. */
import { type SQL, type SQLWrapper, sql } from 'drizzle-orm';
import { customType, date, numeric, pgSchema, timestamp } from 'drizzle-orm/pg-core';
import type { PastRatios } from '../../app/history/past-sprint.ts';
import type { CoachingNote } from '../../sprint/coaching-note.ts';
import { RATIO_IDS, type SprintRatios } from '../../sprint/sprint-ratios.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import { isDefined, type Ratio, type Reason, undefinedBecause } from '../../sprint/undefined-value.ts';

/** Everything of ours lives in this database schema, apart from what else the database holds. */
export const loadline = pgSchema('loadline');

/** Points of one statement, −999.5 to 999.5 with one decimal. */
export function points(name: string) {
  return numeric(name, { precision: 4, scale: 1, mode: 'number' });
}

/** Sums of points over a sprint's cards. */
export function pointsSum(name: string) {
  return numeric(name, { precision: 9, scale: 1, mode: 'number' });
}

export function instant(name: string) {
  return timestamp(name, { withTimezone: true, mode: 'date', precision: 3 });
}

export function day(name: string) {
  return date(name, { mode: 'string' });
}

/** Multiples of 0.5 from 0 to 999.5. */
export function isPoints(column: SQLWrapper): SQL {
  return sql`${column} >= 0 and ${column} <= 999.5 and mod(${column} * 2, 1) = 0`;
}

export function isHalves(column: SQLWrapper): SQL {
  return sql`mod(${column} * 2, 1) = 0`;
}

/** A web address that means nothing else in the platform's markup. */
export function isSafeLink(column: SQLWrapper): SQL {
  return sql`length(${column}) <= 500 and ${column} ~ '^https?://[^[:space:]<>|"\u0060*]+$'`;
}

/** A local time of day, `HH:MM`. */
export function isTimeOfDay(column: SQLWrapper): SQL {
  return sql`${column} ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'`;
}

export function isNotBlank(column: SQLWrapper): SQL {
  return sql`btrim(${column}) <> ''`;
}

/**
 * A word: the code of a reason without details, which is every reason that a ratio of a sprint has today. Text with blanks
 * in it: a sentence of a version before codes.
 */
type StoredRatio = number | { readonly undefined: string | Reason };

type Stored<Ratios> = Readonly<Record<keyof Ratios, StoredRatio>>;

type StoredSummary = Omit<SprintSummary, 'ratios' | 'notes'> & {
  readonly ratios: Stored<SprintRatios>;
  /** Always empty: the version before expects sentences in it. */
  readonly notes: readonly never[];
  readonly codedNotes: readonly CoachingNote[];
};

function mapped<From, To, Name extends string>(
  ratios: Readonly<Record<Name, From>>,
  change: (ratio: From) => To,
): Record<Name, To> {
  const entries = Object.entries<From>(ratios).map(([name, ratio]) => [name, change(ratio)]);
  return Object.fromEntries(entries) as Record<Name, To>;
}

function storedRatio(ratio: Ratio): StoredRatio {
  if (isDefined(ratio)) return ratio;
  const reason = ratio.undefined;
  if (reason.code === 'as-posted') return { undefined: reason.sentence };
  const { code, ...details } = reason;
  return { undefined: Object.keys(details).length === 0 ? code : reason };
}

function ratioOf(stored: StoredRatio): Ratio {
  if (typeof stored === 'number') return stored;
  const reason = stored.undefined;
  if (typeof reason !== 'string') return { undefined: reason };
  return reason.includes(' ')
    ? undefinedBecause('as-posted', { sentence: reason })
    : { undefined: { code: reason } as Reason };
}

/** As drizzle's own `jsonb` does it: the driver takes text, and gives text or what it has parsed. */
function codedJson<Data, Kept>(write: (data: Data) => Kept, read: (kept: Kept) => Data) {
  return customType<{ data: Data; driverData: unknown }>({
    dataType: () => 'jsonb',
    toDriver: (data) => JSON.stringify(write(data)),
    fromDriver: (kept) => read((typeof kept === 'string' ? JSON.parse(kept) : kept) as Kept),
  });
}

/** What a row says of a ratio that came after it. */
const NOT_KEPT_YET = Object.fromEntries(
  RATIO_IDS.map((id) => [id, undefinedBecause('ended-before-ratio')]),
) as SprintRatios;
const { velocityGrowth: _changesWithTheBaseline, ...PAST_NOT_KEPT_YET } = NOT_KEPT_YET;

/**
 * How ratios and summaries are kept: codes, no sentences. The version before reads them too while an upgrade is under way,
 * or when it is gone back to. So a reason is one word where that version shows a text, and the notes have a key of their
 * own. What that version writes is read through the functions of the migration 0008.
 */
export const codedRatios = codedJson<PastRatios, Stored<PastRatios>>(
  (ratios) => mapped(ratios, storedRatio),
  (stored) => ({ ...PAST_NOT_KEPT_YET, ...mapped(stored, ratioOf) }),
);

export const codedSummary = codedJson<SprintSummary, StoredSummary>(
  ({ ratios, notes, ...summary }) => ({
    ...summary,
    ratios: mapped(ratios, storedRatio),
    notes: [],
    codedNotes: notes,
  }),
  ({ ratios, codedNotes, ...summary }) => ({
    ...summary,
    ratios: { ...NOT_KEPT_YET, ...mapped(ratios, ratioOf) },
    notes: codedNotes,
  }),
);
