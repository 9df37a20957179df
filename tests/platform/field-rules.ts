/**
 * Which fields of a sample the platform always sends: all of them, unless a rule here says otherwise and why. The first rule
 * that fits counts.
 */
import type { FieldRule } from './shape-differences.ts';

const ANSWER = [
  'error',
  'needed',
  'provided',
  'warning',
  'errors',
  'arg',
  'response_metadata',
  'deprecated_argument',
];
const ONLY_IN_ORGANISATIONS = ['enterprise_id', 'enterprise_name', 'enterprise', 'enterprise_user', 'teams'];

export const FIELD_RULES: readonly FieldRule[] = [
  // Answers of the Web API.
  {
    place: /^auth\.test$/,
    sometimes: [...ANSWER, ...ONLY_IN_ORGANISATIONS, 'app_name', 'app_id', 'expires_in'],
    because: 'the app is named for tokens of the app itself; only rotating tokens expire',
  },
  {
    place: /^files\.info$/,
    always: ['ok', 'file', 'comments'],
    because: 'the content is there for texts only',
  },
  {
    place: /^files\.completeUploadExternal\.files$/,
    always: ['id', 'title'],
    because: 'so documented; the rest once it is worked on',
  },
  {
    place: /^conversations\.(history|replies|members)$|^users\.list$/,
    always: ['ok', 'messages', 'members', 'has_more', 'response_metadata', 'cache_ts'],
    because: 'the rest depends on what was asked, and on pins and tabs of the channel',
  },
  {
    place: /^conversations\.open$/,
    always: ['ok', 'channel'],
    because: 'the rest says that the conversation was open before',
  },
  { place: /^conversations\.open\.channel$/, always: ['id'], because: 'all of it only with return_im' },
  {
    place: /^(chat|conversations|files|users|views)\.[a-zA-Z]+$/,
    sometimes: ANSWER,
    because: 'what explains refusals and warnings comes with these',
  },
  {
    place: /^conversations\.(info|join)\.channel$/,
    always: [
      ...[
        'id',
        'name',
        'name_normalized',
        'created',
        'updated',
        'creator',
        'is_channel',
        'is_group',
        'is_im',
        'is_mpim',
      ],
      ...[
        'is_private',
        'is_archived',
        'is_general',
        'is_shared',
        'is_ext_shared',
        'is_org_shared',
        'is_member',
      ],
      ...[
        'is_pending_ext_shared',
        'shared_team_ids',
        'pending_shared',
        'pending_connected_team_ids',
        'previous_names',
      ],
      ...['topic', 'purpose', 'unlinked', 'context_team_id'],
    ],
    because:
      'the rest is of channels that are shared, restricted or counted, and of conversations that were read',
  },
  // People.
  {
    place: /^users\.(info\.user|list\.members)$/,
    always: [
      'id',
      'team_id',
      'name',
      'deleted',
      'profile',
      'is_bot',
      'is_app_user',
      'updated',
      'is_admin',
      'is_owner',
    ],
    because:
      'any field of a person may be absent (docs.slack.dev/reference/objects/user-object); those who left have few',
  },
  {
    place: /^users\.(info\.user|list\.members)\.profile$/,
    always: [
      ...[
        'real_name',
        'real_name_normalized',
        'display_name',
        'display_name_normalized',
        'team',
        'avatar_hash',
      ],
      ...[
        'title',
        'phone',
        'skype',
        'status_text',
        'status_text_canonical',
        'status_emoji',
        'status_expiration',
      ],
    ],
    because:
      'pictures have many sizes, an address needs its own scope, and the rest is of bots, guests and huddles',
  },
  // Messages and files, wherever they are.
  {
    place: /^chat\.update\.message$/,
    always: ['type', 'user', 'text', 'team', 'bot_id', 'bot_profile', 'app_id', 'blocks', 'edited'],
    because: 'the rest is of messages with files, calls and threads of assistants',
  },
  {
    place: /^(chat\.postMessage|block_actions|message_action)\.message$/,
    always: ['type', 'user', 'ts', 'text', 'team', 'bot_id', 'bot_profile', 'app_id'],
    because: 'a message without blocks, thread, file or change has none of the rest',
  },
  {
    place: /^conversations\.(history|replies)\.messages$/,
    always: ['type', 'user', 'ts', 'text', 'team'],
    because: 'the rest is of bots, threads, files, reactions and changes',
  },
  {
    place: /\.metadata$/,
    always: ['event_type'],
    because: 'the payload comes when it is asked for (docs.slack.dev/messaging/message-metadata)',
  },
  { place: /\.bot_profile$/, sometimes: ['user_id'], because: 'in one answer of many only' },
  { place: /\.icons$/, always: [], because: 'an app without a picture has none' },
  {
    place: /\.(files|file)$/,
    always: [
      ...[
        'id',
        'created',
        'timestamp',
        'name',
        'title',
        'mimetype',
        'filetype',
        'pretty_type',
        'user',
        'user_team',
      ],
      ...[
        'editable',
        'size',
        'mode',
        'is_external',
        'external_type',
        'is_public',
        'public_url_shared',
        'display_as_bot',
      ],
      ...['username', 'url_private', 'url_private_download', 'permalink', 'permalink_public', 'file_access'],
      ...['media_display_type', 'has_rich_preview', 'channels', 'groups', 'ims', 'comments_count'],
    ],
    because:
      'the rest is of pictures, films, mails, canvases and lists, and of files that were shared or edited',
  },
  // Events.
  {
    place: /^(Message|AppMention|AppHomeOpened|[A-Z][A-Za-z]+)$/,
    sometimes: ['enterprise_id', 'context_enterprise_id', 'context_team_id', 'authed_users', 'authed_teams'],
    because: 'organisations only; the two lists are deprecated (docs.slack.dev/apis/events-api)',
  },
  {
    place: /^Message\.event$/,
    sometimes: [
      'client_msg_id',
      'bot_id',
      'bot_profile',
      'blocks',
      'attachments',
      'metadata',
      'parent_user_id',
      'thread_ts',
      'edited',
    ],
    because:
      'people have no bot, threads are few; what was sent through the Web API has no id of a client and no blocks',
  },
  {
    place: /^MessageChanged\.event\.(message|previous_message)$/,
    always: ['type', 'user', 'team', 'text', 'ts'],
    because: 'the rest is of bots, threads, files and clients',
  },
  {
    place: /^AppMention\.event$/,
    always: ['type', 'user', 'text', 'ts', 'team', 'channel', 'event_ts'],
    because: 'as above',
  },
  { place: /^AppHomeOpened\.event$/, sometimes: ['view'], because: 'once a page was published' },
  // Commands and interactions.
  { place: /^slash_command$/, sometimes: ONLY_IN_ORGANISATIONS, because: 'organisations only' },
  {
    place: /^block_actions$/,
    always: [
      'type',
      'team',
      'user',
      'api_app_id',
      'token',
      'container',
      'trigger_id',
      'enterprise',
      'is_enterprise_install',
      'actions',
    ],
    because: 'a message or a view, with what belongs to it; the rest is of unfurled links and of functions',
  },
  {
    place: /^view_(submission|closed)$/,
    sometimes: ['bot_access_token', 'function_data', 'interactivity', 'is_cleared'],
    because: 'functions only; only a closed form was cleared or not',
  },
  {
    place: /^(block_actions|message_action|view_submission|view_closed)\.team$/,
    always: ['id', 'domain'],
    because: 'organisations only',
  },
  { place: /^block_actions\.container$/, always: ['type'], because: 'a message or a view, with its ids' },
  {
    place: /^block_actions\.actions$/,
    always: ['type', 'action_id', 'block_id', 'action_ts'],
    because: 'the rest is as the app gave it, or belongs to other elements',
  },
  {
    place: /\.(text|title|submit|close|label|hint)$/,
    always: ['type', 'text'],
    because: 'of a text object the app says the rest',
  },
  {
    place: /^(block_actions|view_submission|view_closed|AppHomeOpened\.event)\.view$/,
    sometimes: ['title'],
    cutOff: ['blocks'],
    because: 'a home page has no title; the sample leaves out the blocks, which are documented',
  },
  {
    place: /^views\.(open|update|publish)\.view$/,
    sometimes: [
      'title',
      'entity_url',
      'external_ref',
      'app_unfurl_url',
      'message_ts',
      'thread_ts',
      'channel',
    ],
    because: 'a home page has no title; the rest is of previews of links',
  },
];
