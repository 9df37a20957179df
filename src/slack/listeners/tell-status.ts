/** Shows somebody how the sprint stands, with the chart when it can be had. */
import type { Place } from '../../app/place.ts';
import type { ChartImage } from '../views/chart-image.ts';
import { statusMessage } from '../views/status-message.ts';
import type { Asker } from './asker.ts';
import type { ListenerContext } from './listener-context.ts';

export async function tellStatus(context: ListenerContext, asker: Asker, place: Place): Promise<void> {
  const status = await context.useCases.sprintStatus(asker.actor, place);
  const chart = await chartOf(context, asker, status.sprint.id);
  await asker.tell(statusMessage(status, chart));
}

/** The words hold every number, so they are shown even when the chart can't be made or uploaded. */
async function chartOf(
  context: ListenerContext,
  asker: Asker,
  sprintId: string,
): Promise<ChartImage | undefined> {
  try {
    const image = await context.useCases.statusChart(asker.actor, sprintId);
    return { fileId: await context.upload(image), altText: image.altText };
  } catch (error) {
    context.logger.warn({ err: error }, 'The status is shown without its chart.');
    return undefined;
  }
}
