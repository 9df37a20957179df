/** `views.*`: forms and Home pages; `blocks.validate`, which shows nothing. docs.slack.dev/reference/methods, docs.slack.dev/surfaces/modals */
import type { JsonObject, View } from '../page-state.ts';
import { asksForFiles, isViewTooLarge, messageProblems, viewProblems } from '../shapes/check-blocks.ts';
import type { Stage } from '../stage.ts';
import { type ApiArgs, ApiFailure, type ApiMethods, requireScope } from './api-method.ts';

export const viewMethods: ApiMethods = {
  'views.open': {
    tier: 4,
    answer(args, stage) {
      const given = checkedNewView(args, stage);
      const view = stage.surfaces.open(exchange(args, stage), given);
      stage.changed();
      return { view };
    },
  },

  'views.push': {
    tier: 4,
    answer(args, stage) {
      const given = checkedNewView(args, stage);
      const userId = exchange(args, stage);
      if (!stage.surfaces.topOf(userId)) throw new ApiFailure('not_found');
      if (!stage.surfaces.hasRoom(userId)) throw new ApiFailure('push_limit_reached');
      const view = stage.surfaces.push(userId, given);
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
      const found = stage.surfaces.find((one) => (id ? one.id === id : one.external_id === externalId));
      if (!found) throw new ApiFailure('not_found');
      const given = checkedView(args, stage, found.type);
      requireFresh(given, args, stage, found);
      const view = stage.surfaces.update(found, given);
      stage.changed();
      return { view };
    },
  },

  'views.publish': {
    tier: 4,
    answer(args, stage) {
      const userId = args.requiredText('user_id');
      if (!stage.workspace.people.has(userId)) throw new ApiFailure('user_not_found');
      if (stage.options.tabsOff?.includes('home')) throw new ApiFailure('not_enabled');
      const given = checkedView(args, stage, 'home');
      requireFresh(given, args, stage, stage.surfaces.homeOf(userId));
      const view = stage.surfaces.publishHome(userId, given);
      stage.changed();
      return { view };
    },
  },

  'blocks.validate': {
    tier: 4,
    answer(args, stage) {
      const kinds = (['blocks', 'view', 'message'] as const).filter((kind) => args.has(kind));
      const [kind] = kinds;
      if (kind === undefined || kinds.length > 1) {
        throw new ApiFailure('invalid_arguments', ['provide exactly one of `blocks`, `view` and `message`']);
      }
      const given = args.json(kind, 'invalid_arguments') as JsonObject;
      const problems =
        kind === 'view'
          ? viewProblems(given, given.type === 'home' ? 'home' : 'modal', stage.files)
          : messageProblems(kind === 'message' ? given.blocks : given, stage.files);
      if (problems.length > 0) throw new ApiFailure(`invalid_${kind}`, problems);
      return {};
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
  const view = given as JsonObject;
  if (asksForFiles(view)) requireScope(stage, 'files:read');
  return view;
}

/** Judged before the trigger, so that a view with problems does not use it up. */
function checkedNewView(args: ApiArgs, stage: Stage): JsonObject {
  const given = checkedView(args, stage, 'modal');
  requireFresh(given, args, stage, undefined);
  return given;
}

/** @returns whose trigger it was */
function exchange(args: ApiArgs, stage: Stage): string {
  const trigger = stage.triggers.exchange(args.requiredText('trigger_id'));
  if ('error' in trigger) throw new ApiFailure(trigger.error);
  return trigger.userId;
}

/** An id of the app's own belongs to one view, and a hash that is given must be that of the present view. */
function requireFresh(given: JsonObject, args: ApiArgs, stage: Stage, present: View | undefined): void {
  const externalId = given.external_id;
  const holder = externalId && stage.surfaces.find((one) => one.external_id === externalId);
  if (holder && holder !== present) throw new ApiFailure('duplicate_external_id');
  const hash = args.text('hash');
  if (present && hash !== undefined && hash !== present.hash) throw new ApiFailure('hash_conflict');
}
