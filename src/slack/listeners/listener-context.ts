/** What every listener works with. */
import type { WebClient } from '@slack/web-api';
import type { Directory, PostImage } from '../../app/ports.ts';
import type { Logger } from '../../logger.ts';
import type { UseCases } from '../use-cases.ts';

export interface ListenerContext {
  readonly useCases: UseCases;
  readonly directory: Directory;
  /** The client for what a person waits for. */
  readonly client: WebClient;
  readonly logger: Logger;
  /** Uploads a chart privately; gives the file's id. */
  readonly upload: (image: PostImage) => Promise<string>;
  /** False when this has been seen before, by any replica. */
  readonly isNew: (eventKey: string) => Promise<boolean>;
  /** Resolves when a form's answer can't wait for its use case any longer. */
  readonly answerDue: () => Promise<void>;
}
