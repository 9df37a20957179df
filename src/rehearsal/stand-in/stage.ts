/**
 * Everything that the parts of the stand-in share: the workspace, what was posted, what is open, and the clocks.
 * Holds no behaviour of its own; the API, the app's replies and the people act on it.
 */

import { FileShelf } from './file-shelf.ts';
import { IdMaker } from './ids.ts';
import { MessageLog } from './message-log.ts';
import type { JsonObject } from './page-state.ts';
import { LOADLINE_SCOPES, type StandInOptions } from './stand-in-options.ts';
import { Surfaces } from './surfaces.ts';
import { ResponseUrls, TRIGGER_LIFE_MS, Triggers } from './triggers.ts';
import { Workspace } from './workspace.ts';

export interface Stage {
  readonly options: StandInOptions;
  readonly workspace: Workspace;
  readonly log: MessageLog;
  readonly files: FileShelf;
  readonly surfaces: Surfaces;
  readonly triggers: Triggers;
  readonly responseUrls: ResponseUrls;
  readonly ids: IdMaker;
  readonly scopes: ReadonlySet<string>;
  /** Address of the stand-in, known once it listens. */
  url: string;
  realNowMs(): number;
  /** Sends the app an event that it caused itself; nobody waits for it. */
  announce(event: JsonObject): void;
  /** Tells everybody who watches that something can be seen that could not be seen before. */
  changed(): void;
}

export function buildStage(options: StandInOptions, changed: () => void): Stage {
  const realNowMs = options.realNowMs ?? Date.now;
  const ids = new IdMaker();
  const workspace = new Workspace(options);
  return {
    options,
    workspace,
    log: new MessageLog(options.now),
    files: new FileShelf(ids, realNowMs, options.fileReadyAfterMs ?? 0),
    surfaces: new Surfaces(ids, workspace, options.now),
    triggers: new Triggers(realNowMs, options.triggerLifeMs ?? TRIGGER_LIFE_MS),
    responseUrls: new ResponseUrls(realNowMs),
    ids,
    scopes: new Set(options.scopes ?? LOADLINE_SCOPES),
    url: '',
    realNowMs,
    announce: () => {},
    changed,
  };
}
