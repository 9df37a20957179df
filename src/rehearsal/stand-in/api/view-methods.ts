/** `views.*`: forms and Home pages. docs.slack.dev/reference/methods, docs.slack.dev/surfaces/modals */
import type { JsonObject } from '../page-state.ts';
import { asksForFiles, isViewTooLarge, viewProblems } from '../shapes/check-blocks.ts';
import type { Stage } from '../stage.ts';
import { type ApiArgs, ApiFailure, type ApiMethods, requireScope } from './api-method.ts';

export const viewMethods: ApiMethods = {
  'views.open': {
    tier: 4,
    answer(args, stage) {
      // The view is judged first, so that one with problems does not use the trigger up.
      const given = checkedView(args, stage, 'modal');
      const trigger = stage.triggers.exchange(args.requiredText('trigger_id'));
      if ('error' in trigger) throw new ApiFailure(trigger.error);
      const view = stage.surfaces.open(trigger.userId, given);
      stage.changed();
      return { view };
    },
  },

  'views.update': {
    tier: 4,
    answer(args, stage) {
      const found = stage.surfaces.find(args.requiredText('view_id'));
      if (!found) throw new ApiFailure('not_found');
      const view = stage.surfaces.update(found, checkedView(args, stage, found.type));
      stage.changed();
      return { view };
    },
  },

  'views.publish': {
    tier: 4,
    answer(args, stage) {
      const userId = args.requiredText('user_id');
      if (!stage.workspace.people.has(userId)) throw new ApiFailure('user_not_found');
      const view = stage.surfaces.publishHome(userId, checkedView(args, stage, 'home'));
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
  const view = given as JsonObject;
  if (asksForFiles(view)) requireScope(stage, 'files:read');
  return view;
}
