/** Runs what somebody asked for, once, and never leaves them without an answer. */
import { asOneRequest, mayHaveWritten, settleWritten } from '../../app/written-once.ts';
import type { Asker } from './asker.ts';
import { failureMessage, failureOf, storeTroubleOf } from './failure-words.ts';
import type { ListenerContext } from './listener-context.ts';

/** Reads, and gives back what sends the answer. */
export type Reading = () => Promise<() => Promise<void>>;

/**
 * @param during what is being done, for the log: ids of commands and buttons only, no words of people
 * @param eventKey the same for a repetition of this request only; undefined when there is no such mark
 */
export async function answerOnce(
  context: ListenerContext,
  asker: Asker,
  during: string,
  eventKey: string | undefined,
  work: () => Promise<void>,
): Promise<void> {
  const isNew = () => eventKey === undefined || context.isNew(eventKey);
  await answer(context, asker, during, eventKey, async () => work, isNew);
}

/** The same for what only reads, which it may do while it is still being found out whether the request is a repetition. */
export async function readAndAnswerOnce(
  context: ListenerContext,
  asker: Asker,
  during: string,
  eventKey: string | undefined,
  read: Reading,
): Promise<void> {
  const isNew = async () =>
    eventKey === undefined ||
    context.isNew(eventKey).catch((error: unknown) => {
      // A database that takes nothing in can still be read, and to answer a repetition once more does no harm.
      if (storeTroubleOf(error)) return true;
      throw error;
    });
  await answer(context, asker, during, eventKey, read, isNew);
}

async function answer(
  context: ListenerContext,
  asker: Asker,
  during: string,
  eventKey: string | undefined,
  read: Reading,
  isNew: () => boolean | Promise<boolean>,
): Promise<void> {
  const { logger } = context;
  let isOurs = eventKey === undefined;
  const carryOut = async (): Promise<void> => {
    const reading = read();
    // Of a repetition it does not matter what it would have come to.
    reading.catch(() => undefined);
    isOurs = await isNew();
    if (!isOurs) {
      logger.info({ during }, 'A repeated request was passed over.');
      return;
    }
    const tell = await reading;
    await tell();
    logger.info({ during }, 'Done.');
  };
  // Without a key: what comes twice was passed over already. What was written must be known, though.
  await asOneRequest(undefined, async () => {
    try {
      await carryOut();
    } catch (error) {
      if (!isOurs && eventKey !== undefined) await settleWritten(() => context.isNew(eventKey));
      const failure = failureOf(error, logger, during);
      if (failure.kind === 'refusal') logger.info({ during, refused: true }, 'Refused.');
      await asker.tell(failureMessage(failure)).catch((cause: unknown) => {
        logger.error({ during, err: cause }, 'Nobody could be told.');
      });
    }
    // Nobody waits for it.
    if (mayHaveWritten() && !asker.isHomeFresh?.()) void context.refreshHome(asker.actor);
  });
}

/** The key of an interaction: its trigger is made for one press of one button. */
export function triggerKey(triggerId: string | undefined): string | undefined {
  return triggerId === undefined ? undefined : `trigger:${triggerId}`;
}
