### What a plan means before the team commits to it; in its preview.

## The commitment range, and where this commitment is

plan-range-title = How much to commit to
plan-range-basis = From { NUMBER($sprints) } closed sprints with a commitment, scaled to { $scaledTo }; `/loadline range` says more.
plan-run-out = This plan of { POINTS($points) }: { $chance }.

## The chances of these very cards

plan-set-title = The chances of these cards
# $floor is that of the kept share. The verdict's other test, the surprise ratio, is not in it.
plan-set-chances = The chance to finish at least { PERCENT($floor) } of these { POINTS($points) } is { IN_TEN($kept) }, and to finish all of them { IN_TEN($all) }.
# Where all the cards have to be finished for that, such as both of 13 and 7 points for 80% of 20.
plan-set-all-needed = Finishing at least { PERCENT($floor) } of these { POINTS($points) } takes every card, and the chance of that is { IN_TEN($kept) }.
# $kept: of as many points, however they are cut, as the range tells it.
plan-set-smaller = In smaller cards the same points would be at { IN_TEN($kept) }, for only whole cards count as finished.
plan-set-endangering = Card { $number }, { $card } ({ POINTS($points) }), endangers that most: without it, the chance to finish at least { PERCENT($floor) } of the rest is { IN_TEN($without) }.
plan-set-basis =
    { $sprints ->
        [one] This goes by the sizes of the cards and by what the team finished in { NUMBER($sprints) } closed sprint. It doesn’t know in which order you will work, or how much surprise work the cards hold.
       *[other] This goes by the sizes of the cards and by what the team finished in { NUMBER($sprints) } closed sprints. It doesn’t know in which order you will work, or how much surprise work the cards hold.
    }
# The names of the fields in which cards are ticked, ten in each.
plan-ticks = Commit to these cards
plan-ticks-more = Commit to these cards ({ NUMBER($from) } to { NUMBER($to) })
plan-ticks-hint = Take a tick away to leave a card out; what is said here then follows. Only ticked cards are committed to.
plan-ticks-hint-largest =
    { $others ->
        [one] Take a tick away to leave a card out; what is said here then follows. The smallest card isn’t listed and is committed to with the ticked ones.
       *[other] Take a tick away to leave a card out; what is said here then follows. The { NUMBER($others) } smallest cards aren’t listed and are committed to with the ticked ones.
    }
plan-tick = { $number }. { $card }: { POINTS($points) }
plan-left-out-now = Left out: { $cards ->
        [one] { NUMBER($cards) } card
       *[other] { NUMBER($cards) } cards
    } with { POINTS($points) }.
# In the reply, above the cards, each as it can be pasted again.
plan-left-out = Left out, in case you need them again:
plan-left-out-card = • { $title }, { NUMBER($points) }
plan-cards-left-out-more = … and { cards-more-count }.

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
