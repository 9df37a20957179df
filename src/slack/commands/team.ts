/** The team and its settings. */
import { Refusal } from '../../app/refusal.ts';
import { SETTING_NAMES } from '../../app/team/settings.ts';
import { THRESHOLD_NAMES } from '../../sprint/thresholds.ts';
import { encodeValue } from '../button-values.ts';
import { setupContext, teamContext } from '../form-contexts.ts';
import { openFormAction } from '../ids.ts';
import { openForm } from '../listeners/asker.ts';
import { formButtonMessage } from '../views/form-view.ts';
import { exportComment } from '../views/import-views.ts';
import { guestsMessage } from '../views/team/guest-messages.ts';
import {
  END_FIELDS,
  EXPORT_FIRST,
  endFormView,
  leaveFormView,
  MEASURES_FIELDS,
  measuresFormView,
  SETUP_FIELDS,
  setupFormView,
} from '../views/team/team-forms.ts';
import {
  measuresSavedReply,
  teamEndedReply,
  teamLeftReply,
  teamMovedReply,
  teamResumedReply,
  teamSavedReply,
} from '../views/team/team-messages.ts';
import { type Command, command, readHeld, showFirstForm } from './command.ts';

export const setup = command({
  word: 'setup',
  who: 'anyone',
  forms: [
    {
      name: 'setup',
      fields: SETUP_FIELDS,
      make: async ({ useCases }, { actor, replyTo }, place) =>
        setupFormView(await useCases.setupForm(actor, place), replyTo),
      submit: async (useCases, { actor, fields, context }) => {
        const { channelId, shown } = readHeld(setupContext, context);
        const { canSetUpHere } = await useCases.overview(actor, { channelId, isDirect: false });
        const team = await useCases.setUpTeam(actor, {
          channelId,
          name: fields.text(SETUP_FIELDS.name),
          timeZone: fields.text(SETUP_FIELDS.timeZone),
          promptAt: fields.text(SETUP_FIELDS.promptAt),
          workingDays: fields.choices(SETUP_FIELDS.workingDays).map(Number),
          memberIds: fields.choices(SETUP_FIELDS.memberIds),
          facilitatorIds: fields.choices(SETUP_FIELDS.facilitatorIds),
          productOwnerId: fields.choices(SETUP_FIELDS.productOwnerId)[0],
          acceptsShared: fields.choices(SETUP_FIELDS.acceptsShared).length > 0,
          shownIds: shown,
        });
        return { next: 'close', say: teamSavedReply(team, !canSetUpHere) };
      },
    },
  ],
  inOverview: { row: 'sprint', when: ({ isFacilitator }) => isFacilitator },
});

export const move = command({
  word: 'move',
  who: 'facilitator',
  run: async ({ useCases }, { actor, place, tell }, rest) => {
    // The yes comes last: what others would read is said before.
    const named = rest.replace(/(?:^|\s)yes$/i, '');
    const acceptsShared = named !== rest;
    const teamName = named.trimEnd();
    await tell(teamMovedReply(await useCases.moveTeam(actor, { place, teamName, acceptsShared })));
  },
});

export const guest = command({
  word: 'guest',
  who: 'facilitator',
  takesPeople: true,
  run: async ({ useCases }, { actor, place, tell }, words) => {
    const removed = /^remove\s+(\S.*)$/is.exec(words)?.[1];
    if (removed === undefined) {
      return tell(guestsMessage(await useCases.addGuests(actor, { place, words }), 'added'));
    }
    await tell(guestsMessage(await useCases.removeGuests(actor, { place, words: removed }), 'removed'));
  },
});

export const leave = command({
  word: 'leave',
  who: 'team-and-owner',
  run: async (context, caller, rest) => {
    const { actor, place, replyTo, triggerId, tell } = caller;
    const form = await context.useCases.leaveForm(actor, { place, teamName: rest });
    if (triggerId !== undefined) return openForm(context.client, triggerId, leaveFormView(form, replyTo));
    const value = encodeValue({ channelId: form.team.channelId });
    await tell(formButtonMessage({ actionId: openFormAction('leave'), value }));
  },
  forms: [
    {
      name: 'leave',
      make: async ({ useCases }, { actor, replyTo }, place) =>
        leaveFormView(await useCases.leaveForm(actor, { place, teamName: '' }), replyTo),
      submit: async (useCases, { actor, context }) => {
        const { teamId } = readHeld(teamContext, context);
        return { next: 'close', say: teamLeftReply(await useCases.leaveTeam(actor, { teamId })) };
      },
    },
  ],
});

export const end: Command = command({
  word: 'end',
  who: 'facilitator',
  run: (context, caller, rest) => {
    // It ends a team; `end sprint` closes one.
    if (/^(?:the |this )?sprint$/i.test(rest)) {
      throw new Refusal('unknown-command', { word: `end ${rest}`, near: 'close' });
    }
    return showFirstForm(end, context, caller);
  },
  forms: [
    {
      name: 'end',
      fields: END_FIELDS,
      cost: 'heavy',
      make: async ({ useCases }, { actor, replyTo }, place) =>
        endFormView(await useCases.endForm(actor, place), replyTo),
      submit: async (useCases, { actor, fields, context }, { shareFiles }) => {
        const { teamId } = readHeld(teamContext, context);
        const isWanted = fields.choices(END_FIELDS.exportFirst).includes(EXPORT_FIRST);
        const exported = isWanted ? await useCases.exportSprints(actor, { teamId }) : undefined;
        // Before the end: without the files the team goes on.
        if (exported) {
          const { userId } = actor;
          await shareFiles({ userId, comment: exportComment(exported), files: exported.files });
        }
        return { next: 'close', say: teamEndedReply(await useCases.endTeam(actor, { teamId })) };
      },
    },
  ],
});

export const resume = command({
  word: 'resume',
  who: 'facilitator',
  run: async ({ useCases }, { actor, place, tell }) =>
    tell(teamResumedReply(await useCases.resumeTeam(actor, place))),
});

export const setupMeasures = command({
  word: 'setup measures',
  who: 'facilitator',
  forms: [
    {
      name: 'measures',
      fields: MEASURES_FIELDS,
      make: async ({ useCases }, { actor, replyTo }, place) =>
        measuresFormView(await useCases.measuresForm(actor, place), replyTo),
      submit: async (useCases, { actor, fields, context }) => {
        const { teamId } = readHeld(teamContext, context);
        const typed = <Name extends string>(names: readonly Name[]) =>
          Object.fromEntries(names.map((name) => [name, fields.text(name)])) as Record<Name, string>;
        const team = await useCases.setMeasures(actor, {
          teamId,
          ...typed(SETTING_NAMES),
          thresholds: typed(THRESHOLD_NAMES),
        });
        return { next: 'close', say: measuresSavedReply(team) };
      },
    },
  ],
  inOverview: { row: 'sprint', when: ({ isFacilitator }) => isFacilitator },
});
