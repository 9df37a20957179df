/** `auth.test` and `users.*`. docs.slack.dev/reference/methods */
import type { JsonObject } from '../page-state.ts';
import type { Stage } from '../stage.ts';
import type { Person } from '../workspace.ts';
import { ApiFailure, type ApiMethods, pageOf } from './api-method.ts';

/** The platform's own helper: in every list of people, and said to be no bot. */
const PLATFORM_BOT: Omit<Person, 'teamId'> = {
  id: 'USLACKBOT',
  name: 'slackbot',
  realName: 'Slackbot',
  timeZone: 'Etc/UTC',
  isBot: false,
  deleted: false,
  isGuest: false,
};
/** Without a limit everybody comes at once, if the workspace is not large; from where on is not documented. */
const UNPAGED_PEOPLE = 1000;

export const peopleMethods: ApiMethods = {
  'auth.test': {
    tier: 'none',
    answer(_args, stage) {
      const { workspace } = stage;
      return {
        url: `${stage.url}/`,
        team: workspace.teamName,
        team_id: workspace.teamId,
        user: workspace.bot.name,
        user_id: workspace.bot.id,
        bot_id: workspace.botId,
        is_enterprise_install: false,
      };
    },
  },

  'users.info': {
    tier: 4,
    scope: 'users:read',
    answer(args, stage) {
      const person = stage.workspace.people.get(args.requiredText('user'));
      if (!person) throw new ApiFailure('user_not_found');
      return { user: personJson(person, stage) };
    },
  },

  'users.list': {
    tier: 2,
    scope: 'users:read',
    answer(args, stage) {
      const { workspace } = stage;
      const own = [...workspace.people.values()].filter((person) => !workspace.isOutsider(person));
      const everybody = [...own, { ...PLATFORM_BOT, teamId: workspace.teamId }];
      if (!args.has('limit') && everybody.length > UNPAGED_PEOPLE) throw new ApiFailure('limit_required');
      const page = pageOf(everybody, (person) => person.id, args, { absent: UNPAGED_PEOPLE, most: 1000 });
      const members = page.items.map((person) => personJson(person, stage));
      const cache_ts = Math.floor(stage.options.now().getTime() / 1000);
      return { members, cache_ts, response_metadata: { next_cursor: page.nextCursor } };
    },
  },
};

function personJson(person: Person, stage: Stage): JsonObject {
  const names = { real_name: person.realName, display_name: person.name };
  return {
    id: person.id,
    team_id: person.teamId,
    name: person.name,
    deleted: person.deleted,
    is_bot: person.isBot,
    is_app_user: person.isBot,
    is_admin: false,
    is_owner: false,
    is_primary_owner: false,
    is_restricted: person.isGuest,
    is_ultra_restricted: false,
    updated: 0,
    profile: {
      ...names,
      real_name_normalized: person.realName,
      display_name_normalized: person.name,
      ...NOTHING_TOLD,
      team: person.teamId,
    },
    // The platform leaves these out for people who have left.
    ...(person.deleted
      ? {}
      : {
          color: '9f69e7',
          is_email_confirmed: true,
          who_can_share_contact_card: 'EVERYONE',
          real_name: person.realName,
          ...zoneOf(person.timeZone, stage.options.now()),
        }),
  };
}

/** What somebody has not said of themselves is there, and empty. */
const NOTHING_TOLD = {
  title: '',
  phone: '',
  skype: '',
  status_text: '',
  status_text_canonical: '',
  status_emoji: '',
  status_emoji_display_info: [],
  status_expiration: 0,
  avatar_hash: '',
};

/** Offset in seconds at the given moment, as clock changes move it. */
function zoneOf(timeZone: string, now: Date): JsonObject {
  const part = (timeZoneName: 'longOffset' | 'long') =>
    new Intl.DateTimeFormat('en-GB', { timeZone, timeZoneName })
      .formatToParts(now)
      .find((one) => one.type === 'timeZoneName')?.value ?? '';
  const [, sign, hours, minutes] = /GMT([+-])(\d{2}):(\d{2})/.exec(part('longOffset')) ?? [];
  const seconds = (Number(hours ?? 0) * 60 + Number(minutes ?? 0)) * 60;
  return { tz: timeZone, tz_label: part('long'), tz_offset: sign === '-' ? -seconds : seconds };
}
