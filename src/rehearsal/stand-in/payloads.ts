/**
 * The bodies of requests to the app. Shapes: docs.slack.dev/reference/interaction-payloads and
 * docs.slack.dev/interactivity/implementing-slash-commands. Builds only; must not change the stage.
 */
import { messageJson } from './message-json.ts';
import type { Message } from './message-log.ts';
import type { JsonObject, View } from './page-state.ts';
import type { Stage } from './stage.ts';
import type { Conversation, Person } from './workspace.ts';

/** What every interaction says about who, where and which app. */
function frame(stage: Stage, person: Person): JsonObject {
  const { workspace } = stage;
  return {
    team: { id: workspace.teamId, domain: workspace.teamDomain },
    user: { id: person.id, username: person.name, name: person.name, team_id: person.teamId },
    api_app_id: workspace.appId,
    token: 'stand-in',
    enterprise: null,
    is_enterprise_install: false,
  };
}

interface CommandParts {
  command: string;
  text: string;
  triggerId: string;
  responseUrl: string;
}

export function commandFields(
  stage: Stage,
  person: Person,
  place: Conversation,
  parts: CommandParts,
): Record<string, string> {
  const { workspace } = stage;
  return {
    token: 'stand-in',
    team_id: workspace.teamId,
    team_domain: workspace.teamDomain,
    channel_id: place.id,
    channel_name: place.kind === 'channel' && place.isPrivate ? 'privategroup' : place.name,
    user_id: person.id,
    user_name: person.name,
    command: parts.command,
    text: parts.text,
    api_app_id: workspace.appId,
    is_enterprise_install: 'false',
    response_url: parts.responseUrl,
    trigger_id: parts.triggerId,
  };
}

interface Clicked {
  action: JsonObject;
  triggerId: string;
}

export function messageClickPayload(
  stage: Stage,
  person: Person,
  message: Message,
  place: Conversation,
  clicked: Clicked & { responseUrl: string },
): JsonObject {
  const ephemeral = message.ephemeralFor !== undefined;
  return {
    type: 'block_actions',
    ...frame(stage, person),
    container: {
      type: 'message',
      message_ts: message.ts,
      channel_id: place.id,
      is_ephemeral: ephemeral,
      ...(message.threadTs ? { thread_ts: message.threadTs } : {}),
    },
    trigger_id: clicked.triggerId,
    channel: { id: place.id, name: place.name },
    // An ephemeral message is not stored, so the payload can't hold it.
    ...(ephemeral ? {} : { message: messageJson(message, stage) }),
    state: { values: {} },
    response_url: clicked.responseUrl,
    actions: [clicked.action],
  };
}

/** A shortcut chosen from the menu that is offered everywhere: no channel, no response address. */
export function shortcutPayload(stage: Stage, person: Person, callbackId: string): JsonObject {
  const { api_app_id: _, ...common } = frame(stage, person);
  return {
    type: 'shortcut',
    ...common,
    action_ts: stage.log.nextTs(),
    callback_id: callbackId,
    trigger_id: stage.triggers.make(person.id),
  };
}

/** A shortcut chosen from the menu of a message: docs.slack.dev/reference/interaction-payloads/shortcuts-interaction-payload */
export function messageShortcutPayload(
  stage: Stage,
  person: Person,
  message: Message,
  place: Conversation,
  chosen: { callbackId: string; triggerId: string; responseUrl: string },
): JsonObject {
  const { api_app_id: _, ...common } = frame(stage, person);
  return {
    type: 'message_action',
    ...common,
    user: { id: person.id, name: person.name, team_id: person.teamId },
    action_ts: stage.log.nextTs(),
    callback_id: chosen.callbackId,
    trigger_id: chosen.triggerId,
    response_url: chosen.responseUrl,
    message_ts: message.ts,
    channel: { id: place.id, name: place.name },
    message: messageJson(message, stage),
  };
}

export function viewClickPayload(stage: Stage, person: Person, view: View, clicked: Clicked): JsonObject {
  return {
    type: 'block_actions',
    ...frame(stage, person),
    container: { type: 'view', view_id: view.id },
    trigger_id: clicked.triggerId,
    view,
    actions: [clicked.action],
  };
}

export function submissionPayload(stage: Stage, person: Person, view: View, triggerId: string): JsonObject {
  return {
    type: 'view_submission',
    ...frame(stage, person),
    ...personsOwnTeam(stage, person),
    trigger_id: triggerId,
    view,
  };
}

/** A form names the workspace of the person, and in `app_installed_team_id` the app's: slackapi/bolt-js#1614. */
function personsOwnTeam({ workspace }: Stage, person: Person): JsonObject {
  return workspace.isOutsider(person) ? { team: { id: person.teamId, domain: 'elsewhere' } } : {};
}

export function closedPayload(stage: Stage, person: Person, view: View, isCleared: boolean): JsonObject {
  return {
    type: 'view_closed',
    ...frame(stage, person),
    ...personsOwnTeam(stage, person),
    view,
    is_cleared: isCleared,
  };
}

/** An event in its envelope. `event_id` stays the same when the envelope is sent again. */
export function eventEnvelope(stage: Stage, event: JsonObject): JsonObject {
  const { workspace } = stage;
  return {
    type: 'event_callback',
    token: 'stand-in',
    team_id: workspace.teamId,
    api_app_id: workspace.appId,
    event,
    event_id: stage.ids.next('Ev'),
    event_time: Math.floor(stage.options.now().getTime() / 1000),
    authorizations: [
      {
        team_id: workspace.teamId,
        user_id: workspace.bot.id,
        is_bot: true,
        enterprise_id: null,
        is_enterprise_install: false,
      },
    ],
    event_context: `4-${stage.ids.next('EC')}`,
    is_ext_shared_channel: false,
  };
}

export function messageEvent(stage: Stage, message: Message, place: Conversation): JsonObject {
  // Events name the app in the bot's profile only.
  const { app_id: _app, ...described } = messageJson(message, stage);
  return {
    ...described,
    ...(message.fileIds ? { subtype: 'file_share' } : {}),
    channel: place.id,
    channel_type: kindOf(place),
    event_ts: message.ts,
  };
}

/** @param previous how the message was described before */
export function changedMessageEvent(
  stage: Stage,
  message: Message,
  place: Conversation,
  previous: JsonObject,
): JsonObject {
  const { app_id: _app, ...described } = messageJson(message, stage);
  const { app_id: _before, ...before } = previous;
  const eventTs = message.editedTs ?? message.ts;
  return {
    type: 'message',
    subtype: 'message_changed',
    hidden: true,
    message: described,
    previous_message: before,
    channel: place.id,
    channel_type: kindOf(place),
    ts: eventTs,
    event_ts: eventTs,
  };
}

/** docs.slack.dev/reference/events/app_mention */
export function mentionEvent(stage: Stage, message: Message, place: Conversation): JsonObject {
  return {
    ...messageJson(message, stage),
    type: 'app_mention',
    channel: place.id,
    event_ts: message.ts,
  };
}

const ELSEWHERE = 'T0ELSEWHERE';

/** docs.slack.dev/reference/events/channel_shared and channel_unshared */
export function sharedEvent(channel: string, isShared: boolean): JsonObject {
  return isShared
    ? { type: 'channel_shared', connected_team_id: ELSEWHERE, channel }
    : { type: 'channel_unshared', previously_connected_team_id: ELSEWHERE, channel, is_ext_shared: false };
}

function kindOf({ kind, isPrivate }: Conversation): string {
  return kind === 'dm' ? 'im' : isPrivate ? 'group' : 'channel';
}
