### What a plan means before the team commits to it; in its preview.

## The commitment range, and where this commitment is

plan-range-title = How much to commit to
plan-range-basis = From { NUMBER($sprints) } closed sprints with a commitment, scaled to { $scaledTo }; `/loadline range` says more.
plan-place-below = This plan of { POINTS($points) } is below that: the team may run out of work.
plan-place-above = This plan of { POINTS($points) } is above that: it may be more than the team can keep.
plan-place-within = This plan of { POINTS($points) } is within that.
plan-place-unknown = This plan has { POINTS($points) }.
plan-chances = The chances: { LIST($chances) }.
plan-chance-kept = { IN_TEN($chance) } to keep it (at least { PERCENT($floor) } finished)
plan-chance-pulled-in = { IN_TEN($chance) } to pull in more than { PERCENT($ceiling) } on top

## The odds of its big cards

plan-odds-title = Surprise odds of the big cards
plan-odds-none = Not known yet: no card of a closed sprint is known.
plan-odds-cards =
    { $count ->
        [one] In this plan: card { LIST($numbers) }.
       *[other] In this plan: cards { LIST($numbers) }.
    }
# The last of those numbers, where there are too many.
plan-odds-more-cards = { NUMBER($count) } more
plan-odds-advice = Before you commit to those that often hold some: ask what could turn up, split them, or timebox a first look inside.
