/** Passes the listeners' context on, from where the workspace of a request is found to the listener. */
import type { Context } from '@slack/bolt';
import type { ListenerContext } from './listener-context.ts';

const NAME = 'loadlineListenerContext';

export function keepContext(bolt: Context, context: ListenerContext): void {
  (bolt as Record<string, unknown>)[NAME] = context;
}

/** The context of the request's own workspace. */
export function contextOf(bolt: Context): ListenerContext {
  const context = (bolt as Record<string, unknown>)[NAME];
  if (context === undefined)
    throw new TypeError('a request came to a listener before its workspace was found');
  return context as ListenerContext;
}
