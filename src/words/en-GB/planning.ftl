### Planning a sprint: the form, the preview, and what the channel reads.

## The form

plan-title = Plan a sprint
plan-submit = Preview
plan-intro = For { $team }. You see a preview before the team commits to anything.
# Cards of the sprint before, filled in.
plan-left-over =
    { $cards ->
        [one] { NUMBER($cards) } unfinished card of the last sprint is filled in with what was left; delete it if you don’t want it.
       *[other] { NUMBER($cards) } unfinished cards of the last sprint are filled in with what was left; delete what you don’t want.
    }
plan-name = Sprint name
plan-goal = Goal
plan-goal-hint = One sentence: why this sprint is worth it.
plan-first-day = First day
plan-last-day = Last day
plan-closing-time = Closing time on the last day
plan-closing-time-hint = In the team’s time zone, { $timeZone }.
plan-cards = Cards, one a line
plan-cards-hint = title, estimate, @owner, or title (estimate) @owner. Lists, tables and rows of a spreadsheet work as well. A title may begin with a short name such as berth-3. No cards: leave it empty.
plan-more-cards = More cards (field { NUMBER($place) } of { NUMBER($fields) })
plan-more-cards-hint = If they don’t all fit above: a field holds 3,000 characters. Lines are counted on through all fields.

## The preview

plan-preview-title = Commit to this?
plan-preview-submit = Commit
plan-preview-back = Back
plan-preview-lead = { $sprint }: { POINTS($points) } on { cards-count }
plan-preview-days =
    { $days ->
        [one] { $span }, { NUMBER($days) } working day.
       *[other] { $span }, { NUMBER($days) } working days.
    } It closes at { $time } on its last day ({ $timeZone }).
plan-goal-line = Goal: { $goal }
plan-check-title = Please check
plan-check-alike = • Cards { SERIES($cards) } have the same title as another one. If one is a copy, take it out.
plan-check-off-scale =
    { $count ->
        [one] • The estimate of card { SERIES($cards) } isn’t on your scale ({ SERIES($scale) }), so the on-scale share can never count it.
       *[other] • The estimates of cards { SERIES($cards) } aren’t on your scale ({ SERIES($scale) }), so the on-scale share can never count them.
    }
plan-check-no-owner =
    { $count ->
        [one] • Card { SERIES($cards) } has no owner yet, so nobody is asked about it until somebody takes it.
       *[other] • Cards { SERIES($cards) } have no owner yet, so nobody is asked about them until somebody takes them.
    }
plan-check-no-card = • There is no card, so there is no commitment: all work will count as pulled in, and the verdict will be “no plan”.
plan-check-no-working-day = • This sprint has no working day of the team, so nobody will be asked.
plan-check-more = … and { NUMBER($warnings) } more.
plan-recent-title = The team’s latest sprints
plan-recent-none = No closed sprint to compare with yet.
plan-recent-line = • { $sprint }: committed { NUMBER($committed) }, { $velocity }, { $outcome }
plan-recent-velocity = velocity { NUMBER($points) }
plan-recent-velocity-unknown = velocity not known
plan-recent-kept = kept
plan-recent-missed = missed
plan-recent-no-plan = no plan
plan-recent-imported = imported
plan-cards-title = Cards
plan-cards-more = … and { cards-more-count }, committed to as well.
plan-preview-after = After this, estimates stay as they are. Cards that come in later count as pulled-in work.

## Replies and the post in the channel

plan-committed = { $sprint } is planned: { POINTS($points) } on { cards-count }. The channel sees the plan, and the sprint closes by itself on { $closing }.
plan-committed-next = See how it is going at any time: `/loadline status`.
plan-post-title = { $sprint }: the team commits to { POINTS($points) } on { cards-count }
plan-post-title-none = { $sprint } begins without a plan
plan-post-when = { $span }. It closes by itself on { $closing } ({ $timeZone }). Planned by { $person }.
plan-post-none = There is no commitment, so every card that comes in counts as pulled-in work: `/loadline pull`.
plan-post-next = Work that comes in later: `/loadline pull`. How it is going: `/loadline status`.
