### When a larger body of work will be finished: three dates.
### “Likely” means the 50% date and nothing else, anywhere; the number is beside it.

## The sentence that leads the answer

forecast-lead = { POINTS($points) }: likely by { DATE($likely) } ({ WHOLE_PERCENT($likelyChance) }), optimistic { DATE_BESIDE($optimistic, $likely) } ({ WHOLE_PERCENT($optimisticChance) }), pessimistic { DATE_BESIDE($pessimistic, $optimistic) } ({ WHOLE_PERCENT($pessimisticChance) }).
forecast-lead-without-pessimistic = { POINTS($points) }: likely by { DATE($likely) } ({ WHOLE_PERCENT($likelyChance) }), optimistic { DATE_BESIDE($optimistic, $likely) } ({ WHOLE_PERCENT($optimisticChance) }), no pessimistic date.
forecast-lead-optimistic-only = { POINTS($points) }: optimistic { DATE($optimistic) } ({ WHOLE_PERCENT($optimisticChance) }), no likely date ({ WHOLE_PERCENT($likelyChance) }) within { NUMBER($sprints) } sprints.
forecast-lead-no-date = { POINTS($points) }: no date within { NUMBER($sprints) } sprints.

# When a day was asked about; the three dates follow.
forecast-by-day-lead = { POINTS($points) } by { DATE($on) }: { CHANCE($chance) } chance. By then, { POINTS($surePoints) } are what to count on ({ WHOLE_PERCENT($sureChance) }), and { POINTS($evenPoints) } an even chance ({ WHOLE_PERCENT($evenChance) }).
# When a day was asked about, and no amount of work was named.
forecast-amounts-lead = By { DATE($on) }, { POINTS($surePoints) } are what to count on ({ WHOLE_PERCENT($sureChance) }), and { POINTS($evenPoints) } an even chance ({ WHOLE_PERCENT($evenChance) }).
forecast-amounts-promise =
    { NUMBER($points) ->
        [0] *Promise nothing by then.* If somebody needs a part of it, talk about a later day.
       *[other] *Promise no more than { POINTS($points) }.* If somebody needs more by then, talk about which part is worth having first.
    }

## The three dates

forecast-date = *{ $name ->
        [optimistic] Optimistic
        [likely] Likely
       *[pessimistic] Pessimistic
    }: { DATE($on) }*, in the { ORDINAL($sprint) ->
        [one] { NUMBER($sprint) }st
        [two] { NUMBER($sprint) }nd
        [few] { NUMBER($sprint) }rd
       *[other] { NUMBER($sprint) }th
    } sprint. { WHOLE_PERCENT($chance) } chance: { $name ->
        [optimistic] fine to hope for, not to plan with
        [likely] it could just as well be later as sooner
       *[pessimistic] this is the one to promise
    }.
# Before the sentence that says why.
forecast-date-none = *{ $name ->
        [optimistic] Optimistic
        [likely] Likely
       *[pessimistic] Pessimistic
    }: none.*
forecast-promise = *Promise the pessimistic date.* If somebody needs an earlier one, talk about doing less of the work, not about doing it faster.
forecast-promise-none = *There is no date to promise.* Talk about doing less of the work, or pick a part that is worth having by itself and ask about that.

## What it is based on

forecast-basis = Based on your latest { NUMBER($sprints) } sprints, the recent ones most. Their pace comes to { NUMBER($pacePoints) } points in the first coming sprint.
forecast-graded =
    { $forecasts ->
        [one] The chances allow for how { NUMBER($forecasts) } such forecast would have come out before.
       *[other] The chances allow for how { NUMBER($forecasts) } such forecasts would have come out before.
    }
forecast-basis-imported =
    { $sprints ->
        [one] Of { NUMBER($sprints) } known closed sprint, { NUMBER($imported) } was imported.
       *[other] Of { NUMBER($sprints) } known closed sprints, { NUMBER($imported) } were imported.
    }
forecast-rhythm =
    { $days ->
        [one] Work on it begins on { DATE($startsOn) }, with a new sprint every day.
       *[other] Work on it begins on { DATE($startsOn) }, with a new sprint every { NUMBER($days) } days.
    }
forecast-growth =
    { $pace ->
        [none] The work is assumed not to grow.
        [slow] The work is assumed to grow by { POINTS($points) } with each sprint.
        [half] The work is assumed to grow by { POINTS($points) } with each sprint, so half of the effort or more only keeps up with it.
       *[faster] The work is assumed to grow by { POINTS($points) } with each sprint, faster than it gets finished.
    }
forecast-share = { WHOLE_PERCENT($share) } of what your sprints finish is taken to be this work.
# After the sentence before.
forecast-growth-span = In 8 of 10 cases that is { NUMBER($low) } to { NUMBER($high) }.
forecast-growth-measured = So much of what you take in comes after planning, by your last { NUMBER($sprints) } sprints.
forecast-growth-settled = Say `growing 0` if it’s settled.
forecast-mid-sprint = A date in the middle of a sprint means that the work is done when that sprint ends.

## What the forecast doesn't know

forecast-unknown-other-work = How much of a sprint goes to other work. It assumes that everything your sprints finish belongs to these points.
forecast-unknown-share = Whether that share of a sprint really goes to this work, sprint after sprint.
forecast-unknown-size = Whether these points are the same size as those in your past sprints.
forecast-unknown-future = Who will join or leave, and days off that nobody has entered yet; those that are known are counted.
forecast-unknown-measured = Whether this work grows as yours did so far. Cards that you pull in from the same backlog are no growth, and can’t be told apart.
forecast-unknown-growth = Whether the work grows while you do it. If it does, change the numbers and say by how much.

## The form, and what is asked where no form can be opened

forecast-form-title = Forecast
forecast-form-submit = Show the dates
forecast-form-intro = When will { $team } have finished a larger body of work?
forecast-form-pace =
    { $sprints ->
        [0] No closed sprint shows yet how much it finishes.
        [one] Its latest sprint finished { LIST($amounts) } points.
       *[other] Its latest sprints finished { LIST($amounts) } points.
    }
forecast-form-points = Points left to do
forecast-form-points-hint = The sum of the estimates of all its cards, in the team’s own points.
forecast-form-growth = Growth, in points a sprint
forecast-form-growth-hint = By how much the work grows while you do it: new wishes, forgotten cards. Such as 5, or 2-8 if you are unsure. Leave empty for as much as measured so far; 0 is none.
forecast-form-share = Share of your sprints that goes to it, in percent
forecast-form-share-hint = The rest goes to other work. Leave empty if all of it does.
forecast-form-by-day = Is there a day by which it’s wanted?
forecast-form-by-day-hint = Then the answer also says how likely that is, and how much will be finished by then. Without points above, it says only that.
forecast-question = How many points are left to do? Type `/loadline forecast 120`, or `/loadline forecast 120 growing 5` if the work grows by about 5 points with each sprint. With `using 60%` only so much of your sprints goes to it; with `by 31 March` you also hear how likely that day is. `/loadline forecast by 31 March` says how many points can be done by then.
forecast-question-button = Fill in a form
