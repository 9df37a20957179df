/** The retrospective sheet: shown, shared, and as a page to print. */
import type { Picture } from '../../app/ports/charts.ts';
import type { Actor } from '../../app/team/team.ts';
import type { RatioId } from '../../sprint/sprint-ratios.ts';
import { sprintValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import type { ListenerContext } from '../listeners/listener-context.ts';
import { retroMessage, retroPageComment, retroPageSent, retroSharedReply } from '../views/retro-message.ts';
import { retroPage } from '../views/retro-page.ts';
import { command, placeIn, readHeld } from './command.ts';

export const retro = command({
  word: 'retro',
  who: 'team-and-owner',
  run: async ({ useCases }, { actor, place, tell }, rest) => {
    await tell(retroMessage(await useCases.retroSheet(actor, { place, sprintName: rest })));
  },
  buttons: {
    [ACTIONS.showRetro]: {
      press: async ({ useCases }, { actor, tell }, value) => {
        const sheet = await useCases.retroSheet(actor, { place: placeIn(value), sprintName: '' });
        await tell(retroMessage(sheet));
      },
    },
    // Below the verdict.
    [ACTIONS.retroOfSprint]: {
      press: async ({ useCases }, { actor, tell }, value) => {
        await tell(retroMessage(await useCases.retroSheet(actor, readHeld(sprintValue, value))));
      },
    },
    [ACTIONS.shareRetro]: {
      press: async ({ useCases }, { actor, tell }, value) => {
        await useCases.shareRetro(actor, readHeld(sprintValue, value));
        await tell(retroSharedReply());
      },
    },
    [ACTIONS.printRetro]: {
      cost: 'heavy',
      press: async (context, { actor, tell }, value) => {
        const sheet = await context.useCases.retroSheet(actor, readHeld(sprintValue, value));
        const { sprint, team } = sheet;
        const page = retroPage(sheet, {
          burndown: await drawn(context, (useCases) => useCases.statusChart(actor, sprint.id)),
          history: await drawn(context, (useCases) => historyChart(useCases, actor, team.id)),
        });
        await context.shareFiles({
          userId: actor.userId,
          comment: retroPageComment(sheet),
          files: [page],
        });
        await tell(retroPageSent());
      },
    },
  },
  inOverview: {
    row: 'numbers',
    when: ({ hasFinishedSprint, isFacilitator }) => hasFinishedSprint && isFacilitator,
    actionId: ACTIONS.showRetro,
  },
});

/** Those of the four numbers of a verdict. */
const DRAWN: readonly RatioId[] = ['keptShare', 'surpriseRatio', 'pullInRatio', 'velocityGrowth'];

/** The words hold the numbers, so the page is made even when a chart can't be drawn. */
async function drawn(
  { useCases, logger }: ListenerContext,
  draw: (useCases: ListenerContext['useCases']) => Promise<Picture | undefined>,
): Promise<Picture | undefined> {
  try {
    return await draw(useCases);
  } catch (error) {
    logger.warn({ err: error }, 'A retrospective is printed without a chart.');
    return undefined;
  }
}

async function historyChart(
  useCases: ListenerContext['useCases'],
  actor: Actor,
  teamId: string,
): Promise<Picture | undefined> {
  const history = await useCases.askAdvice(actor, { teamId }, { about: 'history' });
  if (!('ratios' in history)) throw new TypeError('the question about history got another answer');
  // All of them would be too small to read on paper.
  const ratios = history.ratios.filter(({ ratio }) => DRAWN.includes(ratio));
  return useCases.adviceChart({ ...history, ratios });
}
