### How often cards of each size held surprise work.

odds-none = No odds yet: no card of a closed sprint is known.
odds-none-hint = You don’t have to do anything: when a sprint closes here, each of its cards counts. Until then, ask about every big card what could turn up in it.

## The sentence about one size. It leads the answer and is beside the big cards of a plan.

odds-size-never = Cards of { POINTS($points) } have held no surprise work so far.
odds-size-always = Cards of { POINTS($points) } have always held surprise work so far.
odds-size-larger = Cards of { POINTS($points) } are larger than any you’ve done; going by size, they hold surprise work { TIMES_IN_TEN($share) }, and anything from { PERCENT_SPAN($low, $high) } is possible.
odds-size-unseen = Cards of { POINTS($points) } are new here; going by the other sizes, they hold surprise work { TIMES_IN_TEN($share) }, and anything from { PERCENT_SPAN($low, $high) } is possible.
odds-size-little-seen =
    { $cards ->
        [one] Cards of { POINTS($points) } probably hold surprise work { TIMES_IN_TEN($share) }, going by { NUMBER($cards) } card and the other sizes; anything from { PERCENT_SPAN($low, $high) } is possible.
       *[other] Cards of { POINTS($points) } probably hold surprise work { TIMES_IN_TEN($share) }, going by { NUMBER($cards) } cards and the other sizes; anything from { PERCENT_SPAN($low, $high) } is possible.
    }
odds-size-known = Cards of { POINTS($points) } hold surprise work { TIMES_IN_TEN($share) }.
# After it: how much surprise work such a card holds when it holds some.
odds-typical = When they do, { POINTS($points) } is typical.
# The same of too few cards to say what is typical.
odds-typical-of-few = When they did, it was about { POINTS($points) }.
# In place of all that, when no card ever held any.
odds-no-surprise =
    { $cards ->
        [one] No surprise work so far: the one card of your closed sprints held none.
       *[other] No surprise work so far: none of the { NUMBER($cards) } cards of your closed sprints held any.
    }

## Each size in a line

odds-sizes-title = Cards that held surprise work, by size
odds-line-short =
    { $cards ->
        [one] { POINTS($points) }: { NUMBER($withSurprise) } of { NUMBER($cards) } card ({ CHANCE($share) })
       *[other] { POINTS($points) }: { NUMBER($withSurprise) } of { NUMBER($cards) } cards ({ CHANCE($share) })
    }
# The same with its span; of few cards never without.
odds-line =
    { $cards ->
        [one] { POINTS($points) }: { NUMBER($withSurprise) } of { NUMBER($cards) } card ({ CHANCE($share) }, span { PERCENT_SPAN($low, $high) })
       *[other] { POINTS($points) }: { NUMBER($withSurprise) } of { NUMBER($cards) } cards ({ CHANCE($share) }, span { PERCENT_SPAN($low, $high) })
    }
odds-line-borrowed =
    { $cards ->
        [one] { POINTS($points) }: { NUMBER($withSurprise) } of { NUMBER($cards) } card; borrowed { CHANCE($share) }, span { PERCENT_SPAN($low, $high) }
       *[other] { POINTS($points) }: { NUMBER($withSurprise) } of { NUMBER($cards) } cards; borrowed { CHANCE($share) }, span { PERCENT_SPAN($low, $high) }
    }
# Goes at the end of such a line. $line: the line
odds-line-typical = { $line }; typically { POINTS($points) }
odds-line-typical-span = { $line }; typically { POINTS($points) }, span { NUMBER($low) } to { NUMBER($high) }
odds-reading = A span holds the truth 19 times in 20. “Typically” is how much surprise work there was when there was any.
odds-reading-open = A card still open at the sprint’s end counts by how much of it was done, and one never begun not at all.
odds-reading-borrowed = “Borrowed” marks sizes of fewer than { NUMBER($cards) } cards: their share leans on the other sizes until they have a history of their own.
odds-advice = *Before you commit to a card of a size that often holds surprises*: ask what could turn up in it, split it, or timebox a first look inside.
odds-basis =
    { $sprints ->
        [one] { $cards ->
            [one] Based on { NUMBER($cards) } card of { NUMBER($sprints) } closed sprint; { NUMBER($withSurprise) } of them held surprise work ({ WHOLE_PERCENT($share) }).
           *[other] Based on { NUMBER($cards) } cards of { NUMBER($sprints) } closed sprint; { NUMBER($withSurprise) } of them held surprise work ({ WHOLE_PERCENT($share) }).
        }
       *[other] Based on { NUMBER($cards) } cards of { NUMBER($sprints) } closed sprints; { NUMBER($withSurprise) } of them held surprise work ({ WHOLE_PERCENT($share) }).
    }
odds-without-cards =
    { $sprints ->
        [one] Of { NUMBER($sprints) } more sprint, the cards aren’t known.
       *[other] Of { NUMBER($sprints) } more sprints, the cards aren’t known.
    }

## What the odds don't know

odds-unknown-kind = What the cards are: a new part of the system and an old one look alike at the same size.
odds-unknown-drift = What wasn’t called surprise work when a card grew: growth put down to the estimate isn’t counted.
odds-unknown-changes = What changes from here on: a team that splits its big cards changes its odds.
