### Planning a sprint: the form, the preview, and what the channel reads.

## The form

plan-title = Plan a sprint
plan-submit = Preview
plan-intro = For { $team }. You see a preview before the team commits to anything.
# Cards of the sprint before, filled in.
plan-left-over =
    { $with ->
        [left]
            { $cards ->
                [one] { NUMBER($cards) } unfinished card of the sprint before is filled in with what was left; delete it if you don’t want it.
               *[other] { NUMBER($cards) } unfinished cards of the sprint before are filled in with what was left; delete what you don’t want.
            }
       *[new-estimate]
            { $cards ->
                [one] { NUMBER($cards) } unfinished card of the sprint before is filled in; estimate it where the question mark is, or delete it.
               *[other] { NUMBER($cards) } unfinished cards of the sprint before are filled in; estimate each where its question mark is, and delete what you don’t want.
            }
    }
plan-name = Sprint name
plan-goal = Goal
plan-goal-hint = One sentence: why this sprint is worth it.
plan-first-day = First day
plan-last-day = Last day
plan-closing-time = Closing time on the last day
plan-closing-time-hint = In the team’s time zone, { $timeZone }.
plan-cards = Cards, one a line
plan-cards-hint = title, estimate, @owner, or title (estimate) @owner. Lists, tables and rows of a spreadsheet work as well. A title may begin with a short name: berth-3: Fog horn. No cards: leave it empty.
plan-guests = Guests
plan-guests-hint = People who take part in this sprint only. They are told what is asked and stored.
plan-more-cards = More cards (field { NUMBER($place) } of { NUMBER($fields) })
plan-more-cards-hint = If they don’t all fit above: a field holds 3,000 characters. Lines are counted on through all fields.
plan-card-file = Or a CSV file of cards
plan-card-file-hint = As any sheet or tracker saves it, with the names of the columns in its first line. You see what was read from it before the preview.
# Above the form again, after the rows of a file were filled in.
plan-from-file =
    { $rows ->
        [one] { NUMBER($rows) } row of your file is filled in under “Cards”.
       *[other] { NUMBER($rows) } rows of your file are filled in under “Cards”.
    }

## A CSV file of cards: which column is read as what, before its rows are filled in

card-file-title = Cards from a file
card-file-submit = Fill in
card-file-check = Check
card-file-lead =
    { $cards ->
        [one] { NUMBER($cards) } card in { $file }
       *[other] { NUMBER($cards) } cards in { $file }
    }
card-file-unread = { $file } can’t be read
card-file-unread-why = { $file }: { $problem } Choose a corrected file below.
card-file-choose = Which columns of { $file } hold the cards?
card-file-choose-why = Choose at least the columns of titles and of estimates.
card-file-next = *Fill in* puts them into the plan, where you can still change them.
card-file-next-bad = *Fill in* puts all rows into the plan; correct the lines named above there. Or choose a corrected file below.
card-file-next-broken = *Fill in* leaves out lines that aren’t rows of the table. Or choose a corrected file below.
card-file-no-rows = There is no row below the names of the columns. Choose another file below.
card-file-too-many = A sprint holds { NUMBER($most) } cards, and this file has { NUMBER($rows) } rows. Take out the rows of other sprints, and choose the file again below.
card-file-unused = Columns that aren’t used: { LIST($columns) }.
card-file-bad-title = Lines with something wrong
card-file-more-bad =
    { $count ->
        [one] … and { NUMBER($count) } more line.
       *[other] … and { NUMBER($count) } more lines.
    }
card-file-column =
    { $field ->
        [title] Titles are in
        [estimate] Estimates are in
        [owner] Owners are in
        [link] Links are in
       *[key] Short names are in
    }
# A choice: no column holds this.
card-file-none = No column
# A column without a name.
card-file-unnamed = Column { NUMBER($place) }
card-file-again = A corrected file

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
plan-guests-line = Guests, in this sprint only: { LIST($guests) }.
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
        [one] • Card { LIST($cards) } has no owner yet, so nobody is asked about it until somebody takes it.
       *[other] • Cards { LIST($cards) } have no owner yet, so nobody is asked about them until somebody takes them.
    }
plan-check-still-in-work =
    { $count ->
        [one] • Card { SERIES($cards) } is still in work in { $sprint }. Once that has ended on { DAY($day) }, look at its points again; `/loadline edit` corrects them until the first working day is over.
       *[other] • Cards { SERIES($cards) } are still in work in { $sprint }. Once that has ended on { DAY($day) }, look at their points again; `/loadline edit` corrects them until the first working day is over.
    }
plan-check-finished-before =
    { $count ->
        [one] • Card { LIST($cards) } was finished in { $sprint }. If nothing is left to do on it, take it out: its points would count twice.
       *[other] • Cards { LIST($cards) } were finished in { $sprint }. If nothing is left to do on them, take them out: their points would count twice.
    }
plan-check-no-card = • There is no card, so there is no commitment: all work will count as pulled in, and the verdict will be “no plan”.
plan-check-no-points = • All estimates are 0, so there is no commitment: the verdict will be “no plan”.
plan-check-no-working-day = • This sprint has no working day of the team, so nobody will be asked.
plan-check-more = … and { NUMBER($warnings) } more.
plan-recent-title = The team’s latest sprints
plan-recent-none = No closed sprint to compare with yet.
# A sprint of another length than the plan's can't be compared without its days.
plan-recent-line =
    { $length ->
        [same] • { $sprint }: committed { NUMBER($committed) }, { $velocity }, { $outcome }
       *[another] • { $sprint }, { $days ->
            [one] { NUMBER($days) } working day
           *[other] { NUMBER($days) } working days
        }: committed { NUMBER($committed) }, { $velocity }, { $outcome }
    }
plan-recent-velocity = velocity { NUMBER($points) }
plan-recent-velocity-unknown = velocity not known
plan-recent-kept = kept
plan-recent-missed = missed
plan-recent-no-plan = no plan
plan-recent-imported = imported
# Over a line for each owner, with the numbers of the cards with a tick above.
plan-owners-title = Who has which card
plan-owner-line = • { $owner }: { SERIES($numbers) }
plan-owners-more =
    { $owners ->
        [one] … and { NUMBER($owners) } more owner.
       *[other] … and { NUMBER($owners) } more owners.
    }
# Over those that have no tick above.
plan-cards-title = The other cards
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
