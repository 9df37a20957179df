/**
 * What blocks are shown on: one message, one form or one Home page. It carries what a control needs to know
 * its value and to report a click, so that block and element code knows nothing of the rest of the page.
 */
import type { InputValue, SeenFile } from '../stand-in/page-state.ts';
import type { KeptValues } from './kept-values.ts';
import type { Wording } from './mrkdwn-dom.ts';

/** Something that can be picked from a list of people or places. */
export interface Pick {
  value: string;
  label: string;
}

export interface Surface {
  /** Unique on the page and stable over updates. */
  key: string;
  wording: Wording;
  people: Pick[];
  places: Pick[];
  values: KeptValues;
  files: {
    /** Hands a file of the member at the desk to the workspace. @throws Error whose message can be shown */
    pick(file: File): Promise<SeenFile>;
    find(id: string): SeenFile | undefined;
    /** Marks work after which a field holds the files that were picked; a form is not sent off before. */
    during(work: Promise<void>): Promise<void>;
  };
  /** By block id, what is wrong with the field. */
  fieldErrors: Record<string, string>;
  /** Reports a click or a choice to the app; settles when the app has answered. */
  act(blockId: string, actionId: string, value: InputValue): Promise<void>;
}

/** Where one control is. */
export interface Spot {
  surface: Surface;
  blockId: string;
  /** Id of the element that names the control, if there is one. */
  labelledBy?: string;
  /** Ids of hint and error, separated by spaces. */
  describedBy?: string;
  /** True when a choice is reported at once; false when it waits for the form's submit button. */
  actsAtOnce: boolean;
}

/** Attributes that every control of a spot shares; `name` is its name when it has no label. */
export function controlAttributes(spot: Spot, actionId: string, name: string) {
  return {
    'data-key': `${spot.surface.key}/${spot.blockId}/${actionId}`,
    'aria-labelledby': spot.labelledBy,
    'aria-label': spot.labelledBy ? undefined : name,
    'aria-describedby': spot.describedBy,
    'aria-invalid': spot.surface.fieldErrors[spot.blockId] ? 'true' : undefined,
  };
}

/** The value a control starts with: what the person put in before, else what the app proposes. */
export function startValue(spot: Spot, actionId: string, initial: InputValue): InputValue {
  return spot.surface.values.start(spot.surface.key, spot.blockId, actionId, initial);
}

/** As `startValue`, for one choice; a value that is not offered any more counts as no choice. */
export function startChoice(
  spot: Spot,
  actionId: string,
  initial: string | null,
  offered: readonly string[],
): string | null {
  const value = startValue(spot, actionId, initial);
  if (value === null || (typeof value === 'string' && offered.includes(value))) return value;
  spot.surface.values.set(spot.surface.key, spot.blockId, actionId, null);
  return null;
}

/** As `startChoice`, for any number of choices. */
export function startChoices(
  spot: Spot,
  actionId: string,
  initial: string[],
  offered: readonly string[],
): string[] {
  const value = startValue(spot, actionId, initial);
  const kept = Array.isArray(value) ? value.filter((one: string) => offered.includes(one)) : [];
  spot.surface.values.set(spot.surface.key, spot.blockId, actionId, kept);
  return kept;
}

/** Keeps a value and, where choices count at once, reports it. */
export async function changeValue(spot: Spot, actionId: string, value: InputValue): Promise<void> {
  spot.surface.values.set(spot.surface.key, spot.blockId, actionId, value);
  if (spot.actsAtOnce) await spot.surface.act(spot.blockId, actionId, value);
}
