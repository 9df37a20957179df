/** What is recorded about sprints that are over, and the ways in and out of it. */
import { Refusal } from '../../app/refusal.ts';
import type { Place } from '../../app/team/place.ts';
import type { Actor, BaselineRule } from '../../app/team/team.ts';
import type { UseCases } from '../../app/use-cases.ts';
import { sprintValue } from '../button-values.ts';
import { type SentFile, sentBefore } from '../files/download-file.ts';
import { removalContext, teamContext, valuesPreviewContext } from '../form-contexts.ts';
import { ACTIONS, IMPORT_FIELDS } from '../ids.ts';
import { type Asker, openForm } from '../listeners/asker.ts';
import { filesOfImport, submitImport } from '../listeners/import-submission.ts';
import type { ListenerContext } from '../listeners/listener-context.ts';
import {
  BASELINE_FIELDS,
  BASELINE_RULES,
  baselineFormView,
  baselineNamedMessage,
} from '../views/baseline-views.ts';
import { exportComment, exportedMessage, importFormView } from '../views/import-views.ts';
import {
  importRemovedReply,
  REMOVAL_FIELDS,
  removalConfirmView,
  removalFormView,
} from '../views/removal-views.ts';
import {
  VALUE_FIELDS,
  valueFormView,
  valueRecordedMessage,
  valuesPreviewView,
  valuesRecordedMessage,
} from '../views/value-views.ts';
import {
  type Command,
  command,
  type FormOutcome,
  type FormTools,
  picked,
  placeIn,
  readHeld,
  showFirstForm,
} from './command.ts';

export const value: Command = command({
  word: 'value',
  who: 'product-owner',
  run: async (context, caller, rest) => {
    if (rest === '') return showFirstForm(value, context, caller);
    const { actor, place } = caller;
    const recorded = await context.useCases.recordValueLine(actor, { place, line: rest });
    await caller.tell(valueRecordedMessage(recorded));
  },
  forms: [
    {
      name: 'value',
      fields: VALUE_FIELDS,
      make: async ({ useCases }, { actor, replyTo }, place) =>
        valueFormView(await useCases.valueForm(actor, { place }), replyTo),
      submit: async (useCases, { actor, fields, context }, { download }) => {
        const { teamId, replyTo } = readHeld(teamContext, context);
        const value = fields.text(VALUE_FIELDS.recordedValue);
        const [file] = fields.files(VALUE_FIELDS.file);
        if (file) {
          if (value.trim() !== '') throw oneOrTheOther();
          return valuesOutcome(useCases, { actor, teamId, replyTo, file, seen: undefined, download });
        }
        const sprint = { sprintId: fields.text(VALUE_FIELDS.sprintId) };
        const recorded = await useCases.recordValue(actor, { teamId, sprint, value });
        return { next: 'close', say: valueRecordedMessage(recorded) };
      },
      files: picked(VALUE_FIELDS.file),
    },
    {
      name: 'values-preview',
      cost: 'heavy',
      files: ({ context }) => [sentBefore(VALUE_FIELDS.file, readHeld(valuesPreviewContext, context).file)],
      submit: async (useCases, { actor, context }, { download }) => {
        const { teamId, replyTo, file, seen } = readHeld(valuesPreviewContext, context);
        const again = sentBefore(VALUE_FIELDS.file, file);
        return valuesOutcome(useCases, { actor, teamId, replyTo, file: again, seen, download });
      },
    },
  ],
  buttons: {
    [ACTIONS.recordValue]: {
      press: async ({ useCases, client }, { actor, replyTo, triggerId }, held) => {
        const form = await useCases.valueForm(actor, readHeld(sprintValue, held));
        await openForm(client, triggerId, valueFormView(form, replyTo));
      },
    },
  },
  inOverview: {
    row: 'numbers',
    when: ({ hasFinishedSprint, isFacilitator, isProductOwner }) =>
      hasFinishedSprint && (isFacilitator || isProductOwner),
  },
});

interface ValuesFile {
  readonly actor: Actor;
  readonly teamId: string;
  readonly replyTo: string | undefined;
  readonly file: SentFile;
  /** The fingerprint of the preview that was seen. */
  readonly seen: string | undefined;
  readonly download: FormTools['download'];
}

/** The preview lies on top of the form, which keeps the file that may have to be corrected. */
async function valuesOutcome(
  useCases: UseCases,
  { actor, teamId, replyTo, file, seen, download }: ValuesFile,
): Promise<FormOutcome> {
  const outcome = await useCases.importValues(actor, { teamId, file: await download(file), seen });
  if (outcome.kind === 'recorded') return { next: 'close-all', say: valuesRecordedMessage(outcome.recorded) };
  const { id, name } = file;
  const view = valuesPreviewView(outcome.preview, { id, name }, replyTo);
  return { next: 'show', how: seen === undefined ? 'on top' : 'in place', view };
}

function oneOrTheOther(): Refusal {
  const problem = { code: 'value-beside-file' } as const;
  return new Refusal('bad-input', { problems: [{ field: VALUE_FIELDS.recordedValue, problem }] });
}

function ruleIn(typed: string): BaselineRule | undefined {
  return BASELINE_RULES.find((rule) => rule === typed);
}

export const baseline: Command = command({
  word: 'baseline',
  who: 'facilitator',
  run: async (context, caller, rest) => {
    if (rest === '') return showFirstForm(baseline, context, caller);
    const { actor, place } = caller;
    const sprint = ruleIn(rest.toLowerCase().replace(/\s+/g, '-')) ?? { sprintName: rest };
    await caller.tell(baselineNamedMessage(await context.useCases.nameBaseline(actor, { place, sprint })));
  },
  forms: [
    {
      name: 'baseline',
      fields: BASELINE_FIELDS,
      make: async ({ useCases }, { actor, replyTo }, place) =>
        baselineFormView(await useCases.baselineForm(actor, place), replyTo),
      submit: async (useCases, { actor, fields, context }) => {
        const { teamId } = readHeld(teamContext, context);
        const chosen = fields.text(BASELINE_FIELDS.sprintId);
        const sprint = ruleIn(chosen) ?? { sprintId: chosen };
        const named = await useCases.nameBaseline(actor, { teamId, sprint });
        return { next: 'close', say: baselineNamedMessage(named) };
      },
    },
  ],
  inOverview: {
    row: 'numbers',
    when: ({ hasFinishedSprint, isFacilitator }) => hasFinishedSprint && isFacilitator,
  },
});

export const importSprints = command({
  word: 'import',
  who: 'facilitator',
  cost: 'heavy',
  forms: [
    {
      name: 'import',
      fields: IMPORT_FIELDS,
      cost: 'heavy',
      make: async ({ useCases }, { actor, replyTo }, place) =>
        importFormView(await useCases.importForm(actor, place), replyTo),
      submit: submitImport,
      files: filesOfImport,
    },
  ],
  inOverview: { row: 'numbers', when: ({ isFacilitator }) => isFacilitator },
});

export const importRemove = command({
  word: 'import remove',
  who: 'facilitator',
  forms: [
    {
      name: 'remove-import',
      fields: REMOVAL_FIELDS,
      recordsNothing: true,
      make: async ({ useCases }, { actor, replyTo }, place) =>
        removalFormView(await useCases.removalForm(actor, place), replyTo),
      submit: async (useCases, { actor, fields, context }) => {
        const { teamId, replyTo } = readHeld(teamContext, context);
        const sprintId = fields.text(REMOVAL_FIELDS.sprintId);
        const removal = await useCases.previewRemoval(actor, { teamId, sprintId });
        return { next: 'show', how: 'on top', view: removalConfirmView(removal, replyTo) };
      },
    },
    {
      name: 'remove-import-confirm',
      submit: async (useCases, { actor, context }) => {
        const { teamId, sprintId } = readHeld(removalContext, context);
        const removal = await useCases.removeImport(actor, { teamId, sprintId });
        return { next: 'close-all', say: importRemovedReply(removal) };
      },
    },
  ],
});

export const exportSprints = command({
  word: 'export',
  who: 'facilitator',
  cost: 'heavy',
  run: (context, caller) => handOutExport(context, caller, caller.place),
  buttons: {
    [ACTIONS.exportSprints]: {
      cost: 'heavy',
      press: (context, presser, held) => handOutExport(context, presser, placeIn(held)),
    },
  },
  inOverview: {
    row: 'numbers',
    when: ({ hasFinishedSprint, isFacilitator }) => hasFinishedSprint && isFacilitator,
    actionId: ACTIONS.exportSprints,
  },
});

/** The files come in the person's direct messages. */
async function handOutExport(
  { useCases, shareFiles }: ListenerContext,
  { actor, tell }: Asker,
  place: Place,
): Promise<void> {
  const exported = await useCases.exportSprints(actor, place);
  await shareFiles({ userId: actor.userId, comment: exportComment(exported), files: exported.files });
  await tell(exportedMessage(exported));
}
