/**
 * Finds the workspace of each request and gives its listener the means of that workspace, and of no other. A request
 * from a workspace without the bot is answered plainly, and nothing comes of it.
 */
import type { AnyMiddlewareArgs, Middleware } from '@slack/bolt';
import type { Logger } from '../../logger.ts';
import { noteRefusal } from '../door/request-scope.ts';
import { failureMessage, failureOf } from '../listeners/failure-words.ts';
import { keepContext, type ListenerContext } from '../listeners/listener-context.ts';
import type { MessageView } from '../views/message-view.ts';
import { refusedFormView } from '../views/trouble-views.ts';
import { workspaceIdOf } from './workspace-of.ts';
import type { ConnectedWorkspace, Workspaces } from './workspaces.ts';

/** The answer must be with the platform within three seconds, the database's silence included. */
const FOUND_WITHIN_MS = 2_000;

interface WorkspaceFinding {
  readonly workspaces: Workspaces;
  readonly contextFor: (workspace: ConnectedWorkspace) => ListenerContext;
  /** What people in a workspace without the bot read; undefined: nothing. */
  readonly notInstalled: MessageView | undefined;
  readonly logger: Logger;
}

interface Answering {
  readonly ack?: (answer?: unknown) => Promise<void>;
  readonly respond?: (answer: object) => Promise<unknown>;
}

export function withWorkspace(finding: WorkspaceFinding): Middleware<AnyMiddlewareArgs> {
  const { workspaces, contextFor, notInstalled, logger } = finding;
  return async ({ body, next, context, ...rest }) => {
    const workspaceId = workspaceIdOf(body);
    let workspace: ConnectedWorkspace | undefined;
    try {
      workspace = workspaceId === undefined ? undefined : await inTime(workspaces.find(workspaceId));
    } catch (error) {
      const message = failureMessage(failureOf(error, logger, 'finding the workspace'));
      return answerWithoutToken(body, rest as Answering, message, logger);
    }
    if (!workspace) {
      noteRefusal('not-installed');
      const actorId = personIdOf(body);
      const by = actorId === undefined ? 'platform' : 'person';
      const event = { event: 'request-refused', by, workspaceId, actorId, reason: 'not-installed' } as const;
      logger.warn(event, 'A request from a workspace without the bot was passed over.');
      return answerWithoutToken(body, rest as Answering, notInstalled, logger);
    }
    const { event } = body as { event?: { type?: unknown; user?: unknown } };
    // The bot hears of what it does itself, too. Of those who leave a channel, only itself matters.
    const isByBot = event?.user === workspace.botUserId;
    if (isByBot !== (event?.type === 'member_left_channel')) return;
    keepContext(context, contextFor(workspace));
    await next();
  };
}

/** Whoever did something, as each kind of request says it. */
function personIdOf(body: unknown): string | undefined {
  const { user_id, user, event } = body as {
    user_id?: unknown;
    user?: { id?: unknown };
    event?: { user?: unknown };
  };
  return [user_id, user?.id, event?.user].find((id) => typeof id === 'string');
}

async function inTime<T>(work: Promise<T>): Promise<T> {
  // To abort a wait makes an error with its stack, which took 2 % of a command.
  let limit: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    const end = (): void => reject(new Error('the workspace was not found in time'));
    limit = setTimeout(end, FOUND_WITHIN_MS).unref();
  });
  try {
    return await Promise.race([work, late]);
  } finally {
    clearTimeout(limit);
  }
}

/** Through the request's own answer, since there is no token to answer with. */
async function answerWithoutToken(
  body: unknown,
  { ack, respond }: Answering,
  message: MessageView | undefined,
  logger: Logger,
): Promise<void> {
  const { command, type } = body as { command?: unknown; type?: unknown };
  if (!message) return ack?.();
  if (typeof command === 'string') return ack?.({ response_type: 'ephemeral', ...message });
  if (type === 'view_submission') {
    return ack?.({ response_action: 'update', view: refusedFormView(message) });
  }
  await ack?.();
  if (type !== 'block_actions' && type !== 'message_action') return;
  await respond?.({ response_type: 'ephemeral', replace_original: false, ...message })?.catch(
    (err: unknown) => logger.info({ err }, 'Nobody could be told.'),
  );
}
