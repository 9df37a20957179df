/** Makes a team's export and hands it to whoever asked, in their direct messages. */
import type { Place } from '../../app/team/place.ts';
import { exportComment, exportedMessage } from '../views/import-export-messages.ts';
import type { Asker } from './asker.ts';
import type { ListenerContext } from './listener-context.ts';

export async function handOutExport(
  { useCases, shareFiles }: ListenerContext,
  asker: Asker,
  place: Place,
): Promise<void> {
  const exported = await useCases.exportSprints(asker.actor, place);
  await shareFiles({
    userId: asker.actor.userId,
    comment: exportComment(exported),
    files: exported.files,
  });
  await asker.tell(exportedMessage(exported));
}
