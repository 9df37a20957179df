### The words in the charts, and what each chart shows in sentences for people who can't see it (“alt”).
### There is little room for the words in a picture. A line break in such a message is one in the picture.

# Above a chart: what it shows, and the name of the team or the sprint.
chart-title = { $title }: { $name }
# How many of the sprints that a chart is about, below its title.
chart-sprints-imported =
    { $sprints ->
        [one] { NUMBER($sprints) } was imported.
       *[other] { NUMBER($sprints) } were imported.
    }
# Of an amount that isn't known.
chart-unknown = –

## Burndown: the points left, evening by evening

burndown-chart-title = Burndown
burndown-chart-points = points left
burndown-chart-ideal = ideal
burndown-chart-start = start
burndown-chart-today = today
burndown-chart-pulled-in =
    pulled-in
    work
burndown-chart-surprise =
    surprise
    work
# Beside the last point of the line.
burndown-chart-left = { NUMBER($points) } left
# What a day added, above its bar; and all days together, beside the bars.
burndown-chart-added = { SIGNED($points) }
burndown-chart-added-none = none
burndown-chart-added-in-all = { NUMBER($points) } in all

# Below the title, and in the description.
burndown-chart-no-days = The sprint has no working days.
burndown-chart-one-day = { DAY($day) } { YEAR($day) }, one working day.
burndown-chart-days = { DAY($from) } to { DAY($to) } { YEAR($to) }, { NUMBER($days) } working days.
burndown-chart-commitment =
    { $points ->
        [0] There was no commitment, so there is no ideal line.
       *[other] The commitment is { POINTS($points) }.
    }
burndown-chart-state =
    { $beside ->
        [more] { POINTS($points) } left on { DAY($day) }, { NUMBER($gap) } more than the ideal of { NUMBER($ideal) }.
        [fewer] { POINTS($points) } left on { DAY($day) }, { NUMBER($gap) } fewer than the ideal of { NUMBER($ideal) }.
        [same] { POINTS($points) } left on { DAY($day) }, right on the ideal.
       *[no-ideal] { POINTS($points) } left on { DAY($day) }.
    }
# A card-day is a card that was blocked in the evening of a working day.
burndown-chart-blocked =
    { $cardDays ->
        [one] Blocked cards: { NUMBER($cardDays) } card-day.
       *[other] Blocked cards: { NUMBER($cardDays) } card-days.
    }
# Beside the marks of the days in whose evening cards were blocked, with how many above each.
burndown-chart-blocked-row = blocked
burndown-chart-blocked-cards = { NUMBER($cards) }
burndown-chart-no-state = No day has numbers yet.

burndown-alt-subject = Burndown of the sprint “{ $sprint }”.
burndown-alt-today = Today is { DAY($day) }.
burndown-alt-added =
    { $happened ->
        [pulled-in] Pulled in: { POINTS($pulledIn) } in all. No surprise work.
        [surprise] Nothing was pulled in. Surprise work: { POINTS($surprise) } in all.
        [both] Pulled in: { POINTS($pulledIn) } in all. Surprise work: { POINTS($surprise) } in all.
       *[nothing] Nothing was pulled in, and there was no surprise work.
    }
# Before the days, of each of which one of the sentences after this one is said.
burndown-alt-days = Points by day, latest first.
burndown-alt-day = { DAY($day) }: { SERIES($facts) }.
burndown-alt-day-left = { NUMBER($points) } left
burndown-alt-day-pulled-in = { NUMBER($points) } pulled in
burndown-alt-day-surprise = { NUMBER($points) } surprise work
burndown-alt-day-not-needed = { NUMBER($points) } surprise work taken back
burndown-alt-day-blocked =
    { $cards ->
        [one] { NUMBER($cards) } card blocked
       *[other] { NUMBER($cards) } cards blocked
    }
burndown-alt-days-left-out =
    { $days ->
        [one] { NUMBER($days) } earlier day is left out here.
       *[other] { NUMBER($days) } earlier days are left out here.
    }

## Commitment range: the chances of possible commitments

range-chart-title = Commitment range
range-chart-committed = points committed
range-chart-chance = chance
# Above the line at the advised commitment.
range-chart-advised = { POINTS($points) }
# Beside the lines, in two lines: of what, and the chance at the advised commitment.
range-chart-label =
    { $id ->
        [kept] keep it:
            { TENTHS($chance) }
        [finishedWhole] finish everything:
            { TENTHS($chance) }
       *[ranOut] run out of work:
            { TENTHS($chance) }
    }

# Below the title, and in the description.
range-chart-basis =
    { $sprints ->
        [one] Based on { NUMBER($sprints) } sprint with a commitment, scaled to { $scaledTo }.
       *[other] Based on { NUMBER($sprints) } sprints with a commitment, scaled to { $scaledTo }.
    }

range-alt-subject = Commitment range of the team “{ $team }” for the sprint { DAY($from) } to { DAY($to) } { YEAR($to) }.
# Before the commitments, of each of which the sentence after this one is said.
range-alt-chances = The chances by commitment, in points.
range-alt-step = { NUMBER($points) }: { SERIES($facts) }.
range-alt-kept = { WHOLE_PERCENT($chance) } to keep it
range-alt-finished = { WHOLE_PERCENT($chance) } to finish everything
range-alt-ran-out = { WHOLE_PERCENT($chance) } to run out of work

## Surprise odds: how often cards of each size held surprise work

odds-chart-title = Surprise odds by size
odds-chart-estimate = estimate
odds-chart-chance =
    chance of
    surprise
odds-chart-cards =
    cards that
    held some
odds-chart-median =
    median
    surprise
odds-chart-all-sizes = all sizes { WHOLE_PERCENT($share) }
# In the column of the cards.
odds-chart-held = { NUMBER($withSurprise) } of { NUMBER($cards) }
odds-chart-none = none yet
odds-chart-median-points = { NUMBER($points) }
# What the marks mean.
odds-chart-own = from its own cards
odds-chart-borrows = fewer than { NUMBER($cards) } cards: borrows from the other sizes
odds-chart-interval = the true chance lies within the line 19 times in 20
# Below the title.
odds-chart-sizes = The { NUMBER($shown) } sizes of most cards are shown, of { NUMBER($of) }.

odds-alt-subject = Surprise odds by size, of the team “{ $team }”.
odds-alt-borrowing = Sizes of fewer than { NUMBER($cards) } cards borrow from the others.
# Before the sizes, of each of which one of the sentences after this one is said.
odds-alt-sizes = The chance of surprise work in a card, and where the true chance lies 19 times in 20:
odds-alt-size = { POINTS($points) }: { CHANCE($share) } ({ PERCENT_SPAN($low, $high) }), { SERIES($facts) }.
odds-alt-size-held =
    { $cards ->
        [0] no card yet
        [one] { NUMBER($withSurprise) } of { NUMBER($cards) } card
       *[other] { NUMBER($withSurprise) } of { NUMBER($cards) } cards
    }
odds-alt-size-borrows = borrows
odds-alt-size-median = median surprise { POINTS($points) }
odds-alt-sizes-left-out =
    { $sizes ->
        [one] { NUMBER($sizes) } size of fewer cards is left out here.
       *[other] { NUMBER($sizes) } sizes of fewer cards are left out here.
    }

## Forecast: the chance that a body of work is finished by the end of each sprint

forecast-chart-title = When { POINTS($points) } are done
forecast-chart-chance = chance to be finished
forecast-chart-sprint-ends =
    sprint
    ends
# Each date takes three lines: how sure it is, the date, and the sprint that it is in.
forecast-chart-date-chance =
    { $name ->
        [optimistic] optimistic: { WHOLE_PERCENT($chance) } by
        [likely] likely: { WHOLE_PERCENT($chance) } by
       *[pessimistic] pessimistic: { WHOLE_PERCENT($chance) } by
    }
forecast-chart-date-sprint =
    in sprint { NUMBER($sprint) },
    to { SHORT_DATE($endsOn) }
forecast-chart-no-date = no date
forecast-chart-not-within = not within { NUMBER($sprints) } sprints
# Below the title, and in the description.
forecast-chart-work =
    { $growth ->
        [0] Work starts on { SHORT_DATE($startsOn) } and is assumed not to grow.
       *[other] Work starts on { SHORT_DATE($startsOn) } and grows by { POINTS($growth) } a sprint.
    }

# Below the title, and in the description.
forecast-chart-by-day = By { SHORT_DATE($on) }: { CHANCE($chance) } (the diamond).

forecast-chart-basis = From your latest { NUMBER($sprints) } sprints.
forecast-alt-subject = Forecast of the team “{ $team }” for { POINTS($points) } of work.
forecast-alt-date =
    { $name ->
        [optimistic] Optimistic, with a chance of { WHOLE_PERCENT($chance) }: by { SHORT_DATE($on) }, in sprint { NUMBER($sprint) }, which runs to { SHORT_DATE($endsOn) }.
        [likely] Likely, with a chance of { WHOLE_PERCENT($chance) }: by { SHORT_DATE($on) }, in sprint { NUMBER($sprint) }, which runs to { SHORT_DATE($endsOn) }.
       *[pessimistic] Pessimistic, with a chance of { WHOLE_PERCENT($chance) }: by { SHORT_DATE($on) }, in sprint { NUMBER($sprint) }, which runs to { SHORT_DATE($endsOn) }.
    }
# Before the sentence that says why.
forecast-alt-no-date =
    { $name ->
        [optimistic] Optimistic, with a chance of { WHOLE_PERCENT($chance) }: no date.
        [likely] Likely, with a chance of { WHOLE_PERCENT($chance) }: no date.
       *[pessimistic] Pessimistic, with a chance of { WHOLE_PERCENT($chance) }: no date.
    }
forecast-alt-chances = Chance to be finished by the end of sprint { LIST($chances) }.
# One of them.
forecast-alt-chance = { NUMBER($sprint) } ({ SHORT_DATE($on) }) { CHANCE($chance) }
forecast-alt-chances-left-out =
    { $sprints ->
        [one] { NUMBER($sprints) } sprint in between is left out here.
       *[other] { NUMBER($sprints) } sprints in between are left out here.
    }

## History: each ratio over the closed sprints

history-chart-title = History
history-chart-value-and-velocity = Value and velocity
history-chart-no-value = No value was recorded.
history-chart-measured-by = { WHOLE_PERCENT(1) } = sprint to { SHORT_DATE($endsOn) }
# What the marks mean.
history-chart-sprint = a sprint
history-chart-imported = an imported sprint
history-chart-member-days = growth for each member-day
history-chart-ordinary = mean, and ordinary variation
history-chart-threshold = threshold or mark
history-chart-crossed = threshold crossed
history-chart-signal = signal: more than ordinary
# Beside the lines, and in the description.
history-chart-at-least = at least { PERCENT($share) }
history-chart-at-most = at most { PERCENT($share) }
history-chart-mark = mark { PERCENT($share) }
# Of a line that is higher than the picture. $line: one of these three
history-chart-above = { $line } above
# $share: like "35%"
history-chart-limit = limit { $share }
history-chart-mean = mean { $share }
history-chart-velocity = velocity { $share }
history-chart-value = value { $share }
# Short: there is little room.
history-chart-per-member-day = member-day { $share }
# In place of a percentage of five digits or more.
history-chart-times = { NUMBER($times) }×

# Below the title, and in the description.
history-chart-no-sprint = There is no closed sprint yet.
history-chart-sprints =
    { $sprints ->
        [one] { NUMBER($sprints) } closed sprint, to { SHORT_DATE($endsOn) }.
       *[other] { NUMBER($sprints) } closed sprints, to { SHORT_DATE($endsOn) }.
    }
history-chart-latest-shown = The latest { NUMBER($sprints) } are shown.
history-chart-usual-from = What is ordinary shows from { NUMBER($sprints) } sprints on.

history-alt-subject = History of the team “{ $team }”.
# The imported ones came before all others.
history-alt-imported =
    { $sprints ->
        [one] { NUMBER($sprints) } was imported: the one to { SHORT_DATE_NO_YEAR($to) }.
       *[other] { NUMBER($sprints) } were imported: all up to { SHORT_DATE_NO_YEAR($to) }.
    }
# A ratio and the facts about it.
history-alt-ratio = { $ratio }: { SERIES($facts) }.
history-alt-latest = latest { $share }
history-alt-latest-none = latest none
# Of velocity growth, where the team or the sprints aren't as large as then. $latest: one of the two above
history-alt-per-member-day = { $latest }, for each member-day { WHOLE_PERCENT($share) }
history-alt-no-sprint = no sprint yet
history-alt-mean = mean { WHOLE_PERCENT($share) }
history-alt-usual =
    { $limits ->
        [both] ordinarily { PERCENT_SPAN($low, $high) }
        [low] ordinarily { WHOLE_PERCENT($low) } or more
       *[high] ordinarily up to { WHOLE_PERCENT($high) }
    }
history-alt-marks = marks at { LIST($marks) }
history-alt-crossed =
    { $sprints ->
        [one] crossed in the sprint to { LIST($ends) }
       *[other] crossed in the sprints to { LIST($ends) }
    }
history-alt-crossed-often = crossed in { NUMBER($sprints) } of these sprints, last in that to { SHORT_DATE_NO_YEAR($last) }
history-alt-signal =
    { $sprints ->
        [one] signal in the sprint to { LIST($ends) }
       *[other] signal in the sprints to { LIST($ends) }
    }
history-alt-signal-often = signal in { NUMBER($sprints) } of these sprints, last in that to { SHORT_DATE_NO_YEAR($last) }
history-alt-value-growth = Growth of the recorded value
history-alt-velocity-growth = Growth of the velocity beside it
history-alt-last-known = last known { WHOLE_PERCENT($share) }
# After the facts about a ratio: its values. $values: the percentages without their sign
history-alt-all-values = Oldest first, in percent: { SERIES($values) }.
history-alt-latest-values = The latest { NUMBER($count) }, in percent: { SERIES($values) }.
history-alt-no-value = none
history-alt-ratios-left-out = What is ordinary for { NUMBER($ratios) } of these ratios is left out here, and so are the earlier values of all.
history-alt-values-left-out =
    { $values ->
        [one] Of each, { NUMBER($values) } earlier value is left out here.
       *[other] Of each, { NUMBER($values) } earlier values are left out here.
    }
