/** Shows somebody how the sprint stands: the words at once, and under them the chart when it can be had. */
import type { Place } from '../../app/team/place.ts';
import { statusChartMessage, statusMessage } from '../views/status-message.ts';
import type { Asker } from './asker.ts';
import type { ListenerContext } from './listener-context.ts';

export async function tellStatus(context: ListenerContext, asker: Asker, place: Place): Promise<void> {
  const tell = await readStatus(context, asker, place);
  await tell();
}

/** @returns what tells it */
export async function readStatus(
  context: ListenerContext,
  asker: Asker,
  place: Place,
): Promise<() => Promise<void>> {
  const status = await context.useCases.sprintStatus(asker.actor, place);
  return async () => {
    await asker.tell(statusMessage(status));
    await tellChart(context, asker, status.sprint.id);
  };
}

/**
 * A chart takes many times as long as the words, to draw and to upload. They hold every number, so they stand alone when
 * it can't be made or uploaded.
 */
async function tellChart(context: ListenerContext, asker: Asker, sprintId: string): Promise<void> {
  try {
    const image = await context.useCases.statusChart(asker.actor, sprintId);
    const chart = { fileId: await context.upload(image), altText: image.altText };
    await asker.tell(statusChartMessage(chart));
  } catch (error) {
    context.logger.warn({ err: error }, 'The status is shown without its chart.');
  }
}
