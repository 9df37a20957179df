/** Sprints that are watched for facilitators. */
import type { LoadSignal } from '../../forecast/pace.ts';
import type { Day } from '../../sprint/calendar.ts';

/** What was seen of a sprint, and what was said of it. */
export interface Watch {
  readonly sprintId: string;
  readonly nextAt: Date;
  readonly lastAt: Date;
  /** As of the last word, or as it was first seen. */
  readonly signal: LoadSignal | undefined;
  readonly signalToldOn: Day | undefined;
  readonly ceilingsTold: readonly string[];
}

export interface WatchWriting {
  /** Has the sprints looked at from now on; what is known of one that is watched already stays. */
  begin(sprintIds: readonly string[], now: Date): Promise<void>;
  save(watch: Watch): Promise<void>;
  end(sprintId: string): Promise<void>;
}
