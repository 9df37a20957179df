/** Tells somebody what is stored about them, or hands them a copy, in their direct messages. Only ever their own. */
import { copyComment, copySentMessage, privacyMessage } from '../views/privacy-message.ts';
import type { Asker } from './asker.ts';
import type { ListenerContext } from './listener-context.ts';

export async function tellPrivacy({ useCases }: ListenerContext, asker: Asker): Promise<void> {
  await asker.tell(privacyMessage(await useCases.privacyOverview(asker.actor)));
}

export async function handOutCopy({ useCases, shareFiles }: ListenerContext, asker: Asker): Promise<void> {
  const copy = await useCases.personalCopy(asker.actor);
  await shareFiles({ userId: asker.actor.userId, comment: copyComment(copy), files: [copy] });
  await asker.tell(copySentMessage(copy));
}
