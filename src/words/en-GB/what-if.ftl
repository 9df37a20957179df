### What if: a button of the status, its form, and the answer. Nothing is changed by it.

what-if-button = What if …?
what-if-title = What if …?
what-if-submit = Show
what-if-intro = What would it change in { $sprint }? Nothing is changed by asking, and nobody else sees it.
what-if-without = Without this card
what-if-away = With somebody away: working days
what-if-away-hint = 1 for somebody who is away tomorrow. It doesn’t ask who.
what-if-more = With so many points more

## The answer

what-if-kept =
    { $moves ->
        [not] The chance to finish at least { PERCENT($floor) } of the commitment would stay at { CHANCE($keptNow) } { $changes }; that of finishing everything would go from { CHANCE($allNow) } to { CHANCE($allThen) }.
       *[so] The chance to finish at least { PERCENT($floor) } of the commitment would go from { CHANCE($keptNow) } to { CHANCE($keptThen) } { $changes }; that of finishing everything from { CHANCE($allNow) } to { CHANCE($allThen) }.
    }
what-if-all = The chance of finishing everything would go from { CHANCE($allNow) } to { CHANCE($allThen) } { $changes }.
what-if-unknown = What would change { $changes } can’t be told yet.
# What was supposed, one to three of those that follow it.
what-if-changes = { LIST($changes) }
what-if-card-out = without { $card } ({ POINTS($points) })
what-if-days-away =
    { $days ->
        [one] with somebody away for { NUMBER($days) } working day
       *[other] with somebody away for { NUMBER($days) } working days
    }
what-if-points-more = with { POINTS($points) } more
what-if-committed-card = { $card } would stay in the commitment, and the others would have to make up for it.
what-if-average-day = Each day away is taken as { WHOLE_PERCENT($share) } of the team’s time to come, whoever it is.
what-if-unchanged = Nothing was changed.
