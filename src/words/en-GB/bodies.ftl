### Bodies of work that a team keeps by name (`/loadline forecast`, `forecast keep`): their dates, and how these moved.
### “Likely” is the 50% date and “promise” goes with the 85% date, as in the forecast.

## The sentence that leads the answer: the first in order

kept-lead = { $name }, { POINTS($points) } left: likely by { DATE($likely) } ({ WHOLE_PERCENT($likelyChance) }), promise { DATE_BESIDE($pessimistic, $likely) } ({ WHOLE_PERCENT($pessimisticChance) }).
kept-lead-no-promise = { $name }, { POINTS($points) } left: likely by { DATE($likely) } ({ WHOLE_PERCENT($likelyChance) }), and no date to promise within { NUMBER($sprints) } sprints.
kept-lead-no-date = { $name }, { POINTS($points) } left: no likely date within { NUMBER($sprints) } sprints.
kept-lead-none = No work is kept yet.
kept-none = Keep a larger body of work by name, with the points left on it: `/loadline forecast keep Lighthouse 80`. It’s then forecast again after each sprint, and you see how its dates move.

## A line for each

# The parts of a line follow each other.
kept-line = *{ NUMBER($number) }. { $name }* ({ POINTS($points) } left): likely { DATE($likely) }, promise { DATE_BESIDE($pessimistic, $likely) }.
kept-line-no-promise = *{ NUMBER($number) }. { $name }* ({ POINTS($points) } left): likely { DATE($likely) }, no date to promise.
kept-line-no-date = *{ NUMBER($number) }. { $name }* ({ POINTS($points) } left): no likely date within { NUMBER($sprints) } sprints.
# Where there are no dates yet.
kept-name = { $name }: { POINTS($points) } left
kept-share = It has { WHOLE_PERCENT($share) } of your sprints.
kept-first-told = First told today.
kept-moved =
    { $way ->
        [later] The likely date is { kept-days } later than told on { DATE($since) }.
        [earlier] The likely date is { kept-days } earlier than told on { DATE($since) }.
       *[neither] The likely date is as told on { DATE($since) }.
    }
kept-days =
    { $days ->
        [one] { NUMBER($days) } day
       *[other] { NUMBER($days) } days
    }
kept-moved-in-all =
    { $way ->
        [later] Since { DATE($since) }, when it was first told: { kept-days } later.
        [earlier] Since { DATE($since) }, when it was first told: { kept-days } earlier.
       *[neither] It’s where it was when it was first told, on { DATE($since) }.
    }
# How much is left was last said before sprints that have closed since.
kept-stale =
    { $sprints ->
        [one] *Old number:* a sprint has closed since the { NUMBER($points) } were said, so the dates are too late if any of them got done.
       *[other] *Old number:* { NUMBER($sprints) } sprints have closed since the { NUMBER($points) } were said, so the dates are too late if any of them got done.
    }
kept-say-left = Say what’s left now: `/loadline forecast keep { $name } { NUMBER($points) }`, with the new number.

## How it was made, and what it doesn't know

kept-dates = *{ $name }:* optimistic { $optimistic } ({ WHOLE_PERCENT($optimisticChance) }), likely { $likely } ({ WHOLE_PERCENT($likelyChance) }), pessimistic { $pessimistic } ({ WHOLE_PERCENT($pessimisticChance) }).
kept-no-date = none
kept-turn = They’re taken to be done one after the other in this order: a later date goes by the sum of the points before it, each with its own growth. Work with a share runs beside them, on its share of each sprint.
kept-growth = { $name } is assumed to grow by { POINTS($points) } a sprint.
kept-again = After each sprint the dates are told again and kept, as they were told then. Do other teams keep parts of it by the same name? `/loadline forecast together 1` tells when all are done.
kept-done = { $name } was done on { DATE($on) }.
kept-done-told = { $name } was done on { DATE($on) }; on { DATE($since) } it was first told likely by { DATE($likely) }.
kept-unknown-running = What the running sprint gets done of it: work on it is reckoned from { DATE($startsOn) }, so say what’s left once a sprint has closed.
kept-unknown-order = Whether the work is really done in this order.

## Replies

kept-new = Kept: { $name }, { POINTS($points) } left. It’s forecast again after each sprint.
kept-again-said = { $name }: { POINTS($points) } left now, { NUMBER($before) } before.
kept-changed = Changed: { $name }, { POINTS($points) } left.
kept-ended =
    { $how ->
        [done] { $name } is done.
       *[removed] { $name } is kept no more, and what was told of it is forgotten.
    }
kept-ended-told = On { DATE($since) }, when it was first told, it was likely by { DATE($likely) }.

## Buttons and the form

kept-button = What’s kept
kept-new-button = Keep work
kept-forecast-button = Forecast other work
# On a button beside each.
kept-change-button = What’s left?
kept-form-title = Keep a forecast
kept-form-submit = Keep it
kept-form-intro = { $team } keeps it, forecasts it again after each sprint, and shows how its dates move.
kept-form-name = What it’s called
kept-form-name-hint = Without people’s names, please.
kept-form-points = Points left to do
kept-form-turn = Its turn
kept-form-turn-hint = 1 is worked on first. Leave empty for its place as it is, or the last.
kept-form-share-hint = It then runs beside the others on its share of each sprint. Leave empty if it waits for its turn.
kept-form-state = Is it still to do?
# A choice.
kept-form-state-choice =
    { $state ->
        [open] Still to do
        [done] Done
       *[removed] Forget it
    }

## The picture

kept-chart-title = How the dates moved
kept-chart-basis = Across: the day on which the dates were told. Upward: the dates.
kept-chart-left-out =
    { $bodies ->
        [one] { NUMBER($bodies) } more is not drawn.
       *[other] { NUMBER($bodies) } more are not drawn.
    }
# Beside the lines, the dates as they are told now.
kept-chart-optimistic = optimistic { SHORT_DATE($optimistic) }
kept-chart-likely = likely { SHORT_DATE($likely) }
kept-chart-pessimistic = promise { SHORT_DATE($pessimistic) }
kept-chart-key-likely = likely date (50%)
kept-chart-key-ends = optimistic (15%) and to promise (85%)
kept-chart-key-stale = by a number that was said before the sprint
kept-alt-subject = How the dates of the team “{ $team }” moved.
kept-alt-body = { $name }: { LIST($tellings) }.
# One of them.
kept-alt-telling = told on { SHORT_DATE($on) } likely { $likely }, to promise { $pessimistic }
