/** What the use cases need of the store. */

import type { BodyReading, BodyWriting } from './bodies.ts';
import type { ExperimentReading, ExperimentWriting } from './experiments.ts';
import type { ImportsAside, ImportWriting } from './imports.ts';
import type { InstallationReading, InstallationWriting } from './installations.ts';
import type { Claims, Locks } from './locks.ts';
import type { PostReading, PostWriting } from './posts.ts';
import type { RemovalWriting } from './removals.ts';
import type { DraftReading, Drafts, EventReading, SeenEvents, VisitReading, Visits } from './repeatable.ts';
import type {
  CardReading,
  CardWriting,
  HistoryReading,
  HistoryWriting,
  PromptReading,
  PromptWriting,
  ResultReading,
  ResultWriting,
  SprintReading,
  SprintWriting,
} from './sprints.ts';
import type {
  EndedTeamReading,
  PeopleReading,
  PeopleWriting,
  RetentionWriting,
  TeamReading,
  TeamWriting,
} from './teams.ts';
import type { WatchWriting } from './watches.ts';

/** Everything that can be asked of the store. None of it changes or holds anything. */
export interface Reading
  extends TeamReading,
    EndedTeamReading,
    SprintReading,
    ResultReading,
    HistoryReading,
    ExperimentReading,
    BodyReading,
    CardReading,
    PromptReading,
    PostReading,
    PeopleReading,
    InstallationReading,
    DraftReading,
    EventReading,
    VisitReading {}

/** Everything that changes what is recorded. What holds for every write hangs on the whole of it (`written-once.ts`). */
export interface Writing {
  readonly teams: TeamWriting;
  readonly sprints: SprintWriting;
  readonly watches: WatchWriting;
  readonly results: ResultWriting;
  readonly history: HistoryWriting;
  readonly experiments: ExperimentWriting;
  readonly bodies: BodyWriting;
  readonly cards: CardWriting;
  readonly prompts: PromptWriting;
  readonly posts: PostWriting;
  readonly people: PeopleWriting;
  readonly retention: RetentionWriting;
  readonly removals: RemovalWriting;
  readonly installations: InstallationWriting;
  readonly imports: ImportWriting;
}

/** All of it happens or none of it does. */
export interface Transaction {
  readonly read: Reading;
  readonly lock: Locks;
  readonly claim: Claims;
  readonly write: Writing;
  readonly drafts: Drafts;
  readonly events: SeenEvents;
  readonly visits: Visits;
  readonly aside: ImportsAside;
}

export interface Store {
  /** For work that only reads. Each statement sees what is committed by then. */
  read<T>(work: (read: Reading) => Promise<T>): Promise<T>;
  transaction<T>(work: (tx: Transaction) => Promise<T>): Promise<T>;
  /** What is one statement, which is carried out whole or not at all without a transaction around it. */
  readonly single: {
    /** A crash of the database may forget it, but nothing that was committed after it. */
    readonly rememberEvent: SeenEvents['remember'];
    readonly updatePost: PostWriting['update'];
  };
}
