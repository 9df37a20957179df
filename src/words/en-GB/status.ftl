### The state of the running sprint: /loadline status.

status-begins = { $sprint } begins on { DAY($day) }
status-planned =
    { $workingDays ->
        [one] { $span }, { NUMBER($workingDays) } working day.
       *[other] { $span }, { NUMBER($workingDays) } working days.
    } Committed: { POINTS($committed) } on { cards-count }. Once it runs, this shows how likely the commitment is to be kept.
status-title = { $sprint } on { DAY($day) }: { POINTS($left) } left on { cards-open-count }
status-finished = Finished: { NUMBER($finished) } of { POINTS($committed) } committed.
status-finished-no-plan = Finished: { POINTS($finished) }. There was no commitment.
status-surprise = Surprise work alone would make it missed: its ratio is { $value }, above the ceiling of { $threshold }.
status-no-owner =
    { $cards ->
        [one] { cards-open-count } needs an owner: { LIST($names) }.
       *[other] { cards-open-count } need an owner: { LIST($names) }.
    } Take one with `/loadline take { $number }`.
# Ends the list of names.
status-no-owner-more = { NUMBER($count) } more
status-days =
    { $left ->
        [0] No working day of the sprint comes after today; it closes on { $closes }.
        [one] { NUMBER($left) } of { NUMBER($of) } working days comes after today; the sprint closes on { $closes }.
       *[other] { NUMBER($left) } of { NUMBER($of) } working days come after today; the sprint closes on { $closes }.
    }
# Days off and away that the plan named, by their number only.
status-days-named =
    { $days ->
        [one] The plan names { NUMBER($days) } day off or away that nobody has entered with `/loadline off`; it counts as spread over the whole sprint.
       *[other] The plan names { NUMBER($days) } days off or away that nobody has entered with `/loadline off`; they count as spread over the whole sprint.
    }
status-closes-again = It closes again on { $closes }.
status-answered =
    { $asked ->
        [0] Nobody is asked today.
        [one] Answers today: { NUMBER($answered) } of { NUMBER($asked) } member.
       *[other] Answers today: { NUMBER($answered) } of { NUMBER($asked) } members.
    }
# At the top, before everything else.
status-blocked-title =
    { $cards ->
        [one] { NUMBER($cards) } card is blocked
       *[other] { NUMBER($cards) } cards are blocked
    }
status-blocked-card = { $number }. { $card }: since { DAY($since) }
status-blocked-card-on = { $number }. { $card }: { $on } (since { DAY($since) })
status-blocked-more = … and { cards-more-count }: `/loadline cards`
status-blocked-days = Blocked cards: { $days ->
        [one] { NUMBER($days) } card-day
       *[other] { NUMBER($days) } card-days
    } so far.
status-ratios-title = Ratios so far
status-growth-title = What grew or shrank
status-growth-none = No card has grown or shrunk so far.
status-growth-card = { $card }: { SERIES($growth) }
status-growth-answer = { DAY($day) }, { $card }: { SERIES($growth) }
status-growth-answer-note = { DAY($day) }, { $card }: { SERIES($growth) } – { $note }
status-growth-more =
    { $kind ->
        [changes]
            { $count ->
                [one] … and { NUMBER($count) } more change; `/loadline cards` shows every card.
               *[other] … and { NUMBER($count) } more changes; `/loadline cards` shows every card.
            }
       *[cards]
            { $count ->
                [one] … and { NUMBER($count) } more card; `/loadline cards` shows every card.
               *[other] … and { NUMBER($count) } more cards; `/loadline cards` shows every card.
            }
    }
status-share = Share in the channel
status-only-you = Only you see this. The channel gets the same numbers, without the notes.
status-shared-by = Shared by { $person }. See it any time with `/loadline status`.
