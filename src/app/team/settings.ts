/**
 * What a team can set in the form for its measures, in the form's order. Each setting is declared once, with what a new
 * team has, its field, and how it is typed and read; the team's type, the form, its reading and the store's follow. Its
 * words are in the messages `setting-label` and `setting-hint`. The thresholds are declared in `sprint/thresholds.ts`.
 */
import { parsePoints } from '../../sprint/points.ts';
import { DEFAULT_SCALE, type Scale, type ScaleProblem, whyNotAScale } from '../../sprint/scale.ts';
import { isTimeOfDay, type TimeOfDay } from '../clock/local-time.ts';

export const SETTINGS = {
  /** When a sprint closes on its last day, unless planned otherwise. */
  closesAt: timeOfDay('17:00'),
  /** Minutes after the prompt at which those who have not answered are reminded once. */
  reminderAfterMinutes: wholeNumber({ usual: 180, least: 15, most: 720, problem: 'reminder-minutes' }),
  scale: planningScale(DEFAULT_SCALE),
  /** Whether the channel gets a line on a running sprint at the end of each week. */
  weeklyLine: yesOrNo(false),
  /** Whether surprise work above its ceiling makes a sprint missed. */
  surpriseInVerdict: yesOrNo(true),
  /** What an unfinished card is planned with in the next sprint: what is left of it, or an estimate still to be made. */
  carriedOver: oneOf('left', ['left', 'new-estimate']),
  /** How many working days after a sprint its value is asked for; undefined: never. */
  valueAfterDays: {
    ...orNone(wholeNumber({ usual: 10, least: 1, most: 60, problem: 'value-after-days' })),
    usual: undefined,
  },
  /**
   * After how many months a finished sprint is reduced to its totals; undefined: never. Usually a year of seasons, and a
   * month to look back at it from: common practice, no published source. Ten years mean forever in practice.
   */
  retentionMonths: orNone(wholeNumber({ usual: 13, least: 1, most: 120, problem: 'retention-months' })),
};

export type SettingName = keyof typeof SETTINGS;
export const SETTING_NAMES = Object.keys(SETTINGS) as readonly SettingName[];

export type TeamSettings = {
  readonly [Name in SettingName]: (typeof SETTINGS)[Name] extends Setting<infer Value> ? Value : never;
};

/** Something wrong with what was typed for a setting. */
export type SettingProblem =
  | { readonly code: 'no-time'; readonly example: string }
  | { readonly code: 'reminder-minutes'; readonly least: number; readonly most: number }
  | { readonly code: 'retention-months'; readonly least: number; readonly most: number }
  | { readonly code: 'value-after-days'; readonly least: number; readonly most: number }
  | { readonly code: 'no-choice' }
  | { readonly code: 'not-a-scale' }
  | ScaleProblem;

export interface Setting<Value> {
  /** What a new team has. */
  readonly usual: Value;
  readonly field:
    | { readonly kind: 'time' }
    | { readonly kind: 'choice'; readonly choices: readonly SettingChoice[] }
    | { readonly kind: 'text'; readonly maxLength: number; readonly optional?: boolean };
  /** As it is typed into its field. */
  readonly typed: (value: Value) => string;
  readonly read: (typed: string) => Read<Value>;
}

/** The choices of settings, as the message `setting-choice` knows them. */
export type SettingChoice = 'yes' | 'no' | CarriedOver;

/** See `SETTINGS.carriedOver`. */
export type CarriedOver = 'left' | 'new-estimate';

type Read<Value> = { readonly value: Value } | { readonly problem: SettingProblem };

/** What a new team has. */
export const USUAL_SETTINGS: TeamSettings = mapSettings(({ usual }) => usual);

/** The settings alone, without what else the team has. */
export function settingsOf(team: TeamSettings): TeamSettings {
  return mapSettings((_, name) => team[name]);
}

type AnyValue = TeamSettings[SettingName];

/** @param make gives the value of each setting */
export function mapSettings(make: (setting: Setting<AnyValue>, name: SettingName) => AnyValue): TeamSettings {
  const made = SETTING_NAMES.map((name) => [
    name,
    make(SETTINGS[name] as unknown as Setting<AnyValue>, name),
  ]);
  return Object.fromEntries(made) as TeamSettings;
}

function timeOfDay(usual: TimeOfDay): Setting<TimeOfDay> {
  return {
    usual,
    field: { kind: 'time' },
    typed: (time) => time,
    read: (typed) =>
      isTimeOfDay(typed) ? { value: typed } : { problem: { code: 'no-time', example: usual } },
  };
}

function wholeNumber(declared: {
  readonly usual: number;
  readonly least: number;
  readonly most: number;
  readonly problem: 'reminder-minutes' | 'retention-months' | 'value-after-days';
}): Setting<number> {
  const { usual, least, most, problem } = declared;
  return {
    usual,
    field: { kind: 'text', maxLength: 5 },
    typed: String,
    read(typed) {
      const value = Number(typed);
      if (Number.isInteger(value) && value >= least && value <= most) return { value };
      return { problem: { code: problem, least, most } };
    },
  };
}

/** A setting whose field may be left empty. */
function orNone<Value>(setting: Setting<Value>): Setting<Value | undefined> {
  return {
    usual: setting.usual,
    field: setting.field.kind === 'text' ? { ...setting.field, optional: true } : setting.field,
    typed: (value) => (value === undefined ? '' : setting.typed(value)),
    read: (typed) => (typed.trim() === '' ? { value: undefined } : setting.read(typed)),
  };
}

function oneOf<Value extends SettingChoice>(usual: Value, choices: readonly Value[]): Setting<Value> {
  return {
    usual,
    field: { kind: 'choice', choices },
    typed: (value) => value,
    read(typed) {
      const value = choices.find((choice) => choice === typed);
      return value === undefined ? { problem: { code: 'no-choice' } } : { value };
    },
  };
}

function yesOrNo(usual: boolean): Setting<boolean> {
  const typed = (value: boolean) => (value ? 'yes' : 'no');
  const { field, read } = oneOf<'yes' | 'no'>(typed(usual), ['yes', 'no']);
  return {
    usual,
    field,
    typed,
    read(text) {
      const choice = read(text);
      return 'value' in choice ? { value: choice.value === 'yes' } : choice;
    },
  };
}

function planningScale(usual: Scale): Setting<Scale> {
  return {
    usual,
    field: { kind: 'text', maxLength: 300 },
    typed: (scale) => scale.join(', '),
    read: readScale,
  };
}

/** Reads sizes separated by commas, semicolons or spaces; `0,5` may be written where spaces or `;` separate them. */
function readScale(typed: string): Read<Scale> {
  const parts =
    /[;\s]/.test(typed.trim()) && !/,\s/.test(typed) ? typed.split(/[;\s]+/) : typed.split(/[;,\s]+/);
  const sizes = parts.filter((part) => part !== '').map((part) => parsePoints(part));
  if (sizes.some((size) => size === undefined)) return { problem: { code: 'not-a-scale' } };
  const scale = sizes as number[];
  const problem = whyNotAScale(scale);
  return problem ? { problem } : { value: scale };
}
