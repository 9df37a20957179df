/**
 * What blocks are shown on: one message, one form or one Home page. It carries what a control needs to know
 * its value and to report a press, so that block and element code knows nothing of the rest of the page.
 */
import type { InputValue, JsonObject, PageState, SeenMessage, View } from '../stand-in/page-state.ts';
import { type Desk, nameOf, type PickedFiles, wordingOf } from './desk.ts';
import type { KeptValues } from './kept-values.ts';
import type { Wording } from './mrkdwn-dom.ts';
import type { ClickTarget } from './page-api.ts';

export interface Surface {
  /** Unique on the page and stable over updates. */
  key: string;
  wording: Wording;
  /** Everybody who can be picked from a list of people. */
  people: { value: string; label: string }[];
  values: KeptValues;
  /** Who is at the desk. */
  as: string;
  files: PickedFiles;
  /** By the name of the field that takes them. */
  exampleFiles: Readonly<Record<string, readonly string[]>>;
  /** By block id, what is wrong with the field. */
  fieldErrors: Record<string, string>;
  /** Reports a changed input to the app. */
  change?: (blockId: string) => void;
  /** Reports a pressed button to the app; settles when the app has answered. */
  press(blockId: string, actionId: string, value: string | undefined): Promise<void>;
}

/** Reports a pressed button for the person at the desk. */
export type Act = (
  target: ClickTarget,
  click: { blockId: string; actionId: string; value: string | undefined },
) => Promise<void>;

export function messageSurface(desk: Desk, state: PageState, message: SeenMessage, act: Act): Surface {
  const key = `${state.me.id}/${message.channel}/${message.ts}`;
  return surface(desk, state, key, { channel: message.channel, ts: message.ts }, act);
}

export function viewSurface(desk: Desk, state: PageState, view: View, act: Act): Surface {
  desk.values.seed(view.id, view.state.values);
  desk.pickedFiles.seed(view.state.values);
  const inputs = new Set(view.blocks.map(inputKey));
  desk.values.keepOnly(view.id, (blockId, actionId) => inputs.has(`${blockId}/${actionId}`));
  const base = surface(desk, state, view.id, { viewId: view.id }, act);
  return { ...base, fieldErrors: desk.fieldErrors.get(view.id) ?? {} };
}

function surface(desk: Desk, state: PageState, key: string, target: ClickTarget, act: Act): Surface {
  return {
    key,
    wording: wordingOf(desk, state),
    people: state.users
      .filter((user) => !user.isBot)
      .map((user) => ({ value: user.id, label: nameOf(user) })),
    values: desk.values,
    as: state.me.id,
    files: desk.pickedFiles,
    exampleFiles: desk.about?.exampleFiles ?? {},
    fieldErrors: {},
    press: (blockId, actionId, value) => act(target, { blockId, actionId, value }),
  };
}

/** `block id/action id` of an input block. */
function inputKey(block: JsonObject): string {
  return `${block.block_id}/${(block.element as JsonObject | undefined)?.action_id}`;
}

/** Where one input is. */
export interface Spot {
  surface: Surface;
  blockId: string;
  /** Id of the element that names the control. */
  labelledBy: string;
  /** Ids of hint and error, separated by spaces. */
  describedBy: string | undefined;
}

/** Attributes that every input shares. */
export function controlAttributes(spot: Spot, actionId: string) {
  return {
    'data-key': `${spot.surface.key}/${spot.blockId}/${actionId}`,
    'aria-labelledby': spot.labelledBy,
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
  keepValue(spot, actionId, null);
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
  keepValue(spot, actionId, kept);
  return kept;
}

export function keepValue(spot: Spot, actionId: string, value: InputValue): void {
  spot.surface.values.set(spot.surface.key, spot.blockId, actionId, value);
}
