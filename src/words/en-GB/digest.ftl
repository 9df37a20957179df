### What a facilitator hears of a running sprint by themselves: the morning digest, and a word when something turns. Cards and sums, never people.

digest-title = { $sprint } on the morning of { DAY($day) }
digest-last-day = Today is the last day: the sprint closes at { $time }.
digest-no-answers = Nobody answered on { DAY($day) }, so the cards may be further than this says.
digest-answers = { NUMBER($answered) } of { NUMBER($asked) } members answered on { DAY($day) }, so some cards may be further than this says.
digest-change =
    { $before ->
        [light] The load signal was light the working day before.
        [on-the-line] The load signal was on the line the working day before.
        [heavy] The load signal was heavy the working day before.
        [same] The load signal is the same as the working day before.
       *[none] There was no load signal the working day before.
    }
digest-surprise = Surprise work so far: { POINTS($points) }, { $value } of the commitment; its ceiling is { $threshold }.{ $drift ->
        [0] {""}
       *[other] {" "}Estimate drift: { SIGNED($drift) }.
    }
digest-surprise-no-plan = Surprise work so far: { POINTS($points) }. There was no commitment to compare it with.{ $drift ->
        [0] {""}
       *[other] {" "}Estimate drift: { SIGNED($drift) }.
    }
digest-blocked-title = Blocked
digest-blocked = { $card } since { DAY($since) }
digest-blocked-on = { $card } since { DAY($since) }: { $on }
digest-still-title = Not moved for three working days or more
digest-still =
    { $days ->
        [one] { $card }: { NUMBER($days) } working day, { POINTS($left) } left
       *[other] { $card }: { NUMBER($days) } working days, { POINTS($left) } left
    }
digest-more = … and { cards-more-count }.
digest-none-still = No card is blocked, and none has stood still for three working days.
digest-how = Only you see this. Change the time or end it with `/loadline digest`.

watch-turned-light = { $sprint }: the load signal is now light
watch-turned-on-the-line = { $sprint }: the load signal is now on the line
watch-turned-heavy = { $sprint }: the load signal is now heavy
watch-above-surpriseRatio = { $sprint }: surprise work has crossed its ceiling
watch-above-pullInRatio = { $sprint }: pulled-in work has crossed its ceiling
watch-ratio = It is { $value } of the commitment; the ceiling is { $threshold }.
watch-next = `/loadline status` shows why. Only you see this; `/loadline digest off` ends such messages.

## In the channel, at closing time of a week's last working day, if the team wants it

weekly-line-title =
    { $days ->
        [one] { $sprint } at the end of the week: { NUMBER($days) } working day to go
       *[other] { $sprint } at the end of the week: { NUMBER($days) } working days to go
    }
weekly-line-left =
    { $committed ->
        [0] There was no commitment.
       *[other] { POINTS($left) } left of { NUMBER($committed) } committed.
    }
weekly-line-surprise = Surprise work so far: { $value } of the commitment; the ceiling is { $threshold }.
weekly-line-surprise-no-plan = Surprise work so far: { POINTS($points) }.
weekly-line-blocked =
    { $cards ->
        [0] No card is blocked.
        [one] { NUMBER($cards) } card is blocked.
       *[other] { NUMBER($cards) } cards are blocked.
    }

## The form and its confirmation

digest-form-title = Morning digest
digest-submit = Save
digest-intro = On each working day of a sprint of { $team } you can get its load signal, what is blocked or stands still, and surprise work against its ceiling; and a word when the signal turns or a ceiling is crossed. Verdicts come to you as well with `/loadline verdict on`.
digest-at = When
digest-at-hint = For example 08:30, in the team’s time zone ({ $zone }). Leave it empty for none.
digest-set = You get the digest of { $team } at { $time } on each working day of its sprints, and a word when the load signal turns or a ceiling is crossed.
digest-off = You get no digest of { $team }, and no other word by itself.
digest-off-next = To have it again: `/loadline digest 08:30`.
