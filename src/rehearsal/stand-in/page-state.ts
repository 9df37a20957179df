/**
 * What a person at the rehearsal workspace sees and does, as plain JSON: shared by the stand-in, its page
 * API and the web page. Types only: nothing here may run.
 */

/** Any JSON object whose shape the platform's own rules have already checked. */
export type JsonObject = { [key: string]: unknown };

/**
 * What a person puts into one input. By kind of element: text: the typed string; select: the value of the option;
 * multi-select and checkboxes: a list of values; people: a list of ids; date `YYYY-MM-DD`; time `HH:mm`;
 * files: a list of ids of files that the person has picked before.
 * `null` empties the input.
 */
export type InputValue = string | null | readonly string[];

/** Values by block id, then by action id. */
export type InputValues = Record<string, Record<string, InputValue>>;

/** How a click, command, message or form ended. `reason` is a full sentence for the person. */
export type Outcome = { ok: true } | { ok: false; reason: string; fieldErrors?: Record<string, string> };

/** A file in a message, or one that a person has picked for a form. */
export interface SeenFile {
  id: string;
  name: string;
  sizeBytes: number;
}

export interface SeenMessage {
  /** Unique and increasing within the workspace: simulated seconds, a dot, six digits. */
  ts: string;
  channel: string;
  /** Id of the author. */
  user: string;
  byBot: boolean;
  /** The text fallback: what a screen reader gets. */
  text: string;
  blocks: JsonObject[];
  /** Files that it shares, in order. */
  files: SeenFile[];
  /** True when only the asking person sees it. */
  ephemeral: boolean;
  /** The message under which this one is a reply. */
  threadTs?: string;
  /** Set when the message was changed after it was posted. */
  editedTs?: string;
}

/** The platform's state object: block id, action id, then `{type, value | selected_option | …}`. */
export type StateValues = Record<string, Record<string, JsonObject>>;

/** An open form or a Home page, as the platform describes it in payloads and answers. */
export interface View extends JsonObject {
  id: string;
  type: 'modal' | 'home';
  hash: string;
  blocks: JsonObject[];
  state: { values: StateValues };
  callback_id: string;
  private_metadata: string;
  previous_view_id: string | null;
  root_view_id: string;
}

export interface PageUser {
  id: string;
  /** Handle without the at sign. */
  name: string;
  realName: string;
  timeZone: string;
  isBot: boolean;
}

export interface PageChannel {
  id: string;
  name: string;
  kind: 'channel' | 'dm';
  /** Messages by others since this person last read the place (`POST /page/read`). */
  unread: number;
}

/** The answer to `GET /page/state?as=U`: everything that one person sees now. */
export interface PageState {
  /** Simulated time, ISO 8601 in UTC. */
  now: string;
  me: PageUser;
  users: PageUser[];
  channels: PageChannel[];
  /** By channel id, oldest first. */
  messages: Record<string, SeenMessage[]>;
  /** The form on top, if one is open. */
  view: View | null;
  home: View | null;
}
