/** How the sprint is going. */
import type { Place } from '../../app/team/place.ts';
import type { StatusContent } from '../../app/watching/status-content.ts';
import { sprintValue } from '../button-values.ts';
import { sprintContext } from '../form-contexts.ts';
import { ACTIONS } from '../ids.ts';
import { type Asker, openForm } from '../listeners/asker.ts';
import type { ListenerContext } from '../listeners/listener-context.ts';
import { statusSharedReply } from '../views/sprint-change-views.ts';
import { statusChartMessage, statusMessage } from '../views/status-message.ts';
import { WHAT_IF_FIELDS, whatIfFormView, whatIfMessage } from '../views/what-if-views.ts';
import { command, placeIn, readHeld } from './command.ts';

export const status = command({
  word: 'status',
  who: 'team-and-owner',
  cost: 'heavy',
  read: (context, caller) => readStatus(context, caller, caller.place),
  forms: [
    {
      name: 'what-if',
      fields: WHAT_IF_FIELDS,
      recordsNothing: true,
      submit: async (useCases, { actor, fields, context }) => {
        const { sprintId } = readHeld(sprintContext, context);
        const question = {
          sprintId,
          without: fields.text(WHAT_IF_FIELDS.without),
          awayDays: fields.text(WHAT_IF_FIELDS.awayDays),
          morePoints: fields.text(WHAT_IF_FIELDS.morePoints),
        };
        return { next: 'close', say: whatIfMessage(await useCases.askWhatIf(actor, question)) };
      },
    },
  ],
  buttons: {
    [ACTIONS.askWhatIf]: {
      press: async ({ useCases, client }, { actor, replyTo, triggerId }, value) => {
        const form = await useCases.whatIfForm(actor, readHeld(sprintValue, value));
        await openForm(client, triggerId, whatIfFormView(form, replyTo));
      },
    },
    [ACTIONS.showStatus]: {
      cost: 'heavy',
      press: async (context, presser, value) => {
        const tell = await readStatus(context, presser, placeIn(value));
        await tell();
      },
    },
    [ACTIONS.showBurndown]: {
      cost: 'heavy',
      press: async ({ useCases, upload }, { actor, tell }, value) => {
        const image = await useCases.statusChart(actor, readHeld(sprintValue, value).sprintId);
        await tell(statusChartMessage({ fileId: await upload(image), altText: image.altText }));
      },
    },
    [ACTIONS.shareStatus]: {
      cost: 'heavy',
      press: async ({ useCases }, presser, value) => {
        await useCases.shareStatus(presser.actor, readHeld(sprintValue, value));
        await presser.tell(statusSharedReply());
      },
    },
  },
  inOverview: {
    row: 'daily',
    when: ({ isMember, isProductOwner, sprint }) => (isMember || isProductOwner) && sprint !== undefined,
    actionId: ACTIONS.showStatus,
  },
});

/** @returns what sends it: the words at once, and under them the chart when it can be had */
async function readStatus(
  context: ListenerContext,
  asker: Asker,
  place: Place,
): Promise<() => Promise<void>> {
  const read = await context.useCases.sprintStatus(asker.actor, place);
  return async () => {
    await asker.tell(statusMessage(read));
    await tellChart(context, asker, read);
  };
}

/**
 * A chart takes many times as long as the words, to draw and to upload. They hold every number, so they are enough when it
 * can't be made or uploaded.
 */
async function tellChart(context: ListenerContext, asker: Asker, status: StatusContent): Promise<void> {
  try {
    const image = await context.useCases.statusBurndown(asker.actor, status);
    const chart = { fileId: await context.upload(image), altText: image.altText };
    await asker.tell(statusChartMessage(chart));
  } catch (error) {
    context.logger.warn({ err: error }, 'The status is shown without its chart.');
  }
}
