/** `views.*`: forms and Home pages. docs.slack.dev/reference/methods, docs.slack.dev/surfaces/modals */
import type { JsonObject, View } from '../page-state.ts';
import { asksForFiles, isViewTooLarge, viewProblems } from '../shapes/check-blocks.ts';
import type { Stage } from '../stage.ts';
import type { ApiArgs } from './api-args.ts';
import { ApiFailure } from './api-failure.ts';
import type { ApiMethods } from './api-method.ts';
import { requireScope } from './conversation-access.ts';

export const viewMethods: ApiMethods = {
  'views.open': {
    tier: 4,
    answer(args, stage) {
      const given = checkedView(args, stage, 'modal');
      requireFreshExternalId(given, stage, undefined);
      const trigger = exchange(args, stage);
      // From inside a form the new one goes on top, else it starts a stack of its own.
      const inside = trigger.viewId !== undefined && stage.surfaces.stackOf(trigger.userId).length > 0;
      if (inside) requireRoom(stage, trigger.userId);
      const view = stage.surfaces[inside ? 'push' : 'open'](trigger.userId, given);
      stage.changed();
      return { view };
    },
  },

  'views.push': {
    tier: 4,
    answer(args, stage) {
      const given = checkedView(args, stage, 'modal');
      requireFreshExternalId(given, stage, undefined);
      const trigger = exchange(args, stage);
      if (stage.surfaces.stackOf(trigger.userId).length === 0) throw new ApiFailure('not_found');
      requireRoom(stage, trigger.userId);
      const view = stage.surfaces.push(trigger.userId, given);
      stage.changed();
      return { view };
    },
  },

  'views.update': {
    tier: 4,
    answer(args, stage) {
      const [id, externalId] = [args.text('view_id'), args.text('external_id')];
      if ((id === undefined) === (externalId === undefined)) {
        throw new ApiFailure('invalid_arguments', ['provide exactly one of `view_id` and `external_id`']);
      }
      const found =
        id === undefined ? stage.surfaces.findExternal(externalId ?? '') : stage.surfaces.find(id);
      if (!found) throw new ApiFailure('not_found');
      const given = checkedView(args, stage, found.view.type);
      requireFreshExternalId(given, stage, found.view);
      requireHash(args, found.view);
      const view = stage.surfaces.update(found.view, given);
      stage.changed();
      return { view };
    },
  },

  'views.publish': {
    tier: 4,
    answer(args, stage) {
      const userId = args.requiredText('user_id');
      if (!stage.workspace.people.has(userId)) throw new ApiFailure('user_not_found');
      const given = checkedView(args, stage, 'home');
      const present = stage.surfaces.homeOf(userId);
      requireFreshExternalId(given, stage, present);
      if (present) requireHash(args, present);
      const view = stage.surfaces.publishHome(userId, given);
      stage.changed();
      return { view };
    },
  },
};

function checkedView(args: ApiArgs, stage: Stage, kind: 'modal' | 'home'): JsonObject {
  const given = args.json('view', 'invalid_arguments');
  if (given === undefined)
    throw new ApiFailure('invalid_arguments', ['missing required field: view [json-pointer:/]']);
  if (isViewTooLarge(given)) throw new ApiFailure('view_too_large');
  const problems = viewProblems(given, kind, stage.files);
  if (problems.length > 0) throw new ApiFailure('invalid_arguments', problems);
  if (asksForFiles(given)) requireScope(stage, 'files:read');
  return given as JsonObject;
}

function exchange(args: ApiArgs, stage: Stage): { userId: string; viewId: string | undefined } {
  const trigger = stage.triggers.exchange(args.requiredText('trigger_id'));
  if ('error' in trigger) throw new ApiFailure(trigger.error);
  return trigger;
}

function requireRoom(stage: Stage, userId: string): void {
  if (!stage.surfaces.hasRoom(userId)) throw new ApiFailure('push_limit_reached');
}

function requireHash(args: ApiArgs, view: View): void {
  const hash = args.text('hash');
  if (hash !== undefined && hash !== view.hash) throw new ApiFailure('hash_conflict');
}

function requireFreshExternalId(given: JsonObject, stage: Stage, own: View | undefined): void {
  const externalId = given.external_id;
  if (typeof externalId !== 'string' || externalId === '') return;
  const holder = stage.surfaces.findExternal(externalId);
  if (holder && holder.view.id !== own?.id) throw new ApiFailure('duplicate_external_id');
}
