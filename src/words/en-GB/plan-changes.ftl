### Corrections of a plan: the forms, the replies, and what is listed of them under the cards and the verdict.

## The form for a card: /loadline edit 3

edit-card-title = Edit a card
edit-submit = Save
edit-card-intro = Card { $number } of { $sprint }, { $card }. The change is kept with your name and the time, and the verdict lists it.
edit-card-name = Title
edit-card-link = Link
edit-card-link-hint = A web address. Empty: the card has none.
edit-card-key = Short name
edit-card-key-hint = Letters, a dash and digits, such as berth-3. Empty: the card is called by its number.
edit-card-estimate = Estimate, in points
edit-card-estimate-hint = Only to correct a slip: until the first answer about the card, and on the first working day of the sprint. A card that the sprint before has finished can be set to 0 after that, too.
edit-card-estimate-fixed = The estimate is part of the commitment and can’t be changed any more. If the work is larger or smaller, say so with the next answer; if it isn’t wanted, drop the card.

## The form for the sprint: /loadline edit

edit-sprint-title = Edit the sprint
edit-sprint-intro = { $sprint } began on { DAY($startsOn) }. A change is kept with your name and the time, and the verdict lists it.
edit-sprint-next = To edit a card, type `/loadline edit` and its number.

## Replies

edit-card-saved = Changed in { $sprint }: card { $number }, { $card }.
edit-sprint-saved = Changed. { $sprint } ends on { DAY($endsOn) } at { $closesAt }.
edit-nothing = Nothing was changed.
edit-next = See all changes with `/loadline cards`.

## The list of changes

plan-changed = The plan was changed on { LIST($days) }
plan-change-line = • { $change }
# Under the cards.
plan-change-line-by = • { DAY($day) }, { $person }: { $change }
plan-change-title = { $card } was called “{ $was }”
plan-change-link =
    { $change ->
        [added] { $card } got a link
        [removed] { $card } lost its link
       *[changed] { $card } got another link
    }
plan-change-key =
    { $change ->
        [added] { $card } got the short name { $became }
        [removed] { $card } lost the short name { $was }
       *[changed] { $card } had the short name { $was }
    }
plan-change-estimate = { $card }: estimate { NUMBER($became) } instead of { NUMBER($was) }
plan-change-undrop = the drop of { $card } was taken back
# $how: whether owners came, went, or both.
plan-change-owners =
    { $how ->
        [joined] { $card } got another owner
        [left] { $card } lost an owner
       *[handed-over] { $card } changed hands
    }
# Under the cards.
plan-change-owners-by =
    { $how ->
        [joined] { $card } is now also { LIST($owners) }’s
        [left] { $card } lost an owner
       *[given] { $card } is now { LIST($owners) }’s
    }
plan-change-goal =
    { $change ->
        [added] the sprint got a goal
        [removed] the goal was “{ $was }”
       *[changed] the goal was “{ $was }”
    }
plan-change-ends = last day { DAY($became) } instead of { DAY($was) }
plan-change-closes = closing time { $became } instead of { $was }
# Of all members together; 0: none were named.
plan-change-away-days = days off and away { NUMBER($became) } instead of { NUMBER($was) }
plan-changes-more =
    { $changes ->
        [one] … and { NUMBER($changes) } more change.
       *[other] … and { NUMBER($changes) } more changes.
    }
