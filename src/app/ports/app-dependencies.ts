/** What the use cases need from outside. Adapters implement it; the use cases know nothing else. */
import type { Charts } from './charts.ts';
import type { Directory } from './directory.ts';
import type { Messenger } from './messenger.ts';
import type { Store } from './store.ts';

export interface Clock {
  now(): Date;
}

/** What every use case may use. */
export interface AppDependencies {
  readonly store: Store;
  readonly clock: Clock;
  readonly directory: Directory;
  readonly charts: Charts;
  readonly messenger: Messenger;
}
