/**
 * What the first release wrote, statement by statement, with its columns and no others. A later schema has to
 * keep such rows, and take them from processes of that release while an upgrade is under way.
 */
import { SPOKEN_SUMMARY } from './spoken-summary.ts';

export const FIRST_RELEASE_MIGRATIONS = 3;

const SUMMARY = JSON.stringify(SPOKEN_SUMMARY);

/** @param mark one for each set of rows */
export function firstReleaseRows(mark: string): string[] {
  return [
    `insert into loadline.teams (id, workspace_id, channel_id, name, time_zone, prompt_at, reminder_after_minutes,
      closing_time, working_days, scale, kept_share_at_least, surprise_ratio_at_most, pull_in_ratio_at_most,
      plan_share_at_least, estimate_accuracy_at_least, estimate_accuracy_at_most, velocity_growth_first_mark,
      velocity_growth_long_range_mark, product_owner_id)
     values ('team-${mark}', 'W1', 'C-${mark}', 'Harbour', 'Europe/Lisbon', '09:15', 180, '17:00', '{1,2,3,4,5}',
      '{1,2,3,5,8,13,21}', 0.8, 0.2, 0.2, 0.8, 0.8, 0.95, 2.4, 5, 'U-ana')`,
    `insert into loadline.members (team_id, user_id, name, is_facilitator, is_active)
     values ('team-${mark}', 'U-ana', 'Ana', true, true), ('team-${mark}', 'U-ben', 'Ben', false, false)`,
    `insert into loadline.sprints (id, team_id, name, goal, starts_on, ends_on, closing_time, closes_at, state,
      closed_at, next_prompt_at)
     values ('closed-${mark}', 'team-${mark}', 'S1', 'Moor', '2026-10-19', '2026-10-30', '17:00',
       '2026-10-30T17:00Z', 'closed', '2026-10-30T17:00Z', null),
      ('open-${mark}', 'team-${mark}', 'S2', '', '2026-11-02', '2026-11-13', '17:00',
       '2026-11-13T17:00Z', 'open', null, '2026-11-04T09:15Z')`,
    `update loadline.teams set baseline_sprint_id = 'closed-${mark}' where id = 'team-${mark}'`,
    `insert into loadline.cards (id, sprint_id, number, key, title, estimate_points, origin, entered_on, added_by)
     values ('card-1-${mark}', 'open-${mark}', 1, 'LP-1', 'Splice the line', 2.5, 'planned', '2026-11-02', 'U-ana'),
      ('card-2-${mark}', 'open-${mark}', 2, 'LP-2', 'Tar the hull', 5, 'pulled-in', '2026-11-03', 'U-ben')`,
    `insert into loadline.card_owners (card_id, user_id, position)
     values ('card-1-${mark}', 'U-ana', 1), ('card-1-${mark}', 'U-ben', 2)`,
    `insert into loadline.answers (id, card_id, member_id, day, fact_order, worked_points, left_points,
      surprise_points, note, recorded_at, supersedes_id)
     values ('answer-1-${mark}', 'card-1-${mark}', 'U-ana', '2026-11-03', nextval('loadline.fact_order'), 1, 2.5, 1,
       'wet rope', '2026-11-03T09:20Z', null),
      ('answer-2-${mark}', 'card-1-${mark}', 'U-ana', '2026-11-03', nextval('loadline.fact_order'), null, 2, 0, '',
       '2026-11-03T10:20Z', 'answer-1-${mark}')`,
    `insert into loadline.card_changes (id, card_id, kind, member_id, day, fact_order, note, recorded_at)
     values ('change-${mark}', 'card-2-${mark}', 'drop', 'U-ana', '2026-11-04', nextval('loadline.fact_order'),
       'sold', '2026-11-04T10:00Z')`,
    `insert into loadline.posts (id, workspace_id, channel_id, user_id, kind, sprint_id, team_id, subject_user_id,
      subject_day, by_user_id, reason, state, posted_channel_id, posted_ts, wanted_version, sent_version)
     values ('prompt-post-${mark}', 'W1', null, 'U-ana', 'daily-prompt', 'open-${mark}', null, 'U-ana', '2026-11-03',
       null, null, 'sent', 'D-${mark}', '1.000${mark.length}', 1, 1),
      ('verdict-${mark}', 'W1', 'C-${mark}', null, 'verdict', 'closed-${mark}', null, null, null, null, null,
       'pending', null, null, 1, 0),
      ('set-up-${mark}', 'W1', 'C-${mark}', null, 'team-set-up', null, 'team-${mark}', null, null, 'U-ana', null,
       'dead', null, null, 1, 0)`,
    `insert into loadline.prompts (sprint_id, user_id, day, state, post_id, answered_at)
     values ('open-${mark}', 'U-ana', '2026-11-03', 'answered', 'prompt-post-${mark}', '2026-11-03T09:20Z'),
      ('open-${mark}', 'U-ben', '2026-11-03', 'asked', null, null)`,
    `insert into loadline.sprint_results (sprint_id, version, recorded_at, cancelled, summary, commitment_points,
      pulled_in_points, surprise_points, drift_points, worked_points, velocity_points, load_points)
     values ('closed-${mark}', 1, '2026-10-30T17:00Z', false, '${SUMMARY}', 20, 3, 1, -0.5, 0, 15, 24)`,
    `insert into loadline.plan_drafts (team_id, user_id, draft) values ('team-${mark}', 'U-ana', '{"name": "S3"}')`,
    `insert into loadline.seen_events (event_id, seen_at) values ('event-${mark}', '2026-11-03T09:20Z')`,
  ];
}

/** What the first release changes in rows that are there, its columns and no others. */
export function firstReleaseChanges(mark: string): string[] {
  return [
    `update loadline.sprints set state = 'closed', closed_at = '2026-11-13T17:00Z', next_prompt_at = null
     where id = 'open-${mark}'`,
    `update loadline.posts set state = 'sent', posted_channel_id = 'C-${mark}', posted_ts = '2.000${mark.length}',
      sent_version = wanted_version, sending_since = null where id = 'verdict-${mark}'`,
    `update loadline.posts set wanted_version = wanted_version + 1 where id = 'prompt-post-${mark}'`,
    `update loadline.prompts set state = 'away', answered_at = '2026-11-03T11:00Z'
     where sprint_id = 'open-${mark}' and user_id = 'U-ben'`,
    `update loadline.members set is_active = true where team_id = 'team-${mark}'`,
    `update loadline.teams set name = 'Quay' where id = 'team-${mark}'`,
    `delete from loadline.plan_drafts where team_id = 'team-${mark}'`,
  ];
}
