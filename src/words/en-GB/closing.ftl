### The end of a sprint: its verdict, closing it early, cancelling and reopening it.

## Whether the sprint goal was met: the question an hour before closing, and its form

goal-question = { $sprint }: was the sprint goal met?
goal-question-goal = Goal: { $goal }. The sprint closes on { $closes }.
goal-question-shown = The verdict shows your answer. It changes none of the numbers.
# On a button, and as a choice in the form.
goal-answer =
    { $met ->
        [yes] Yes
        [partly] Partly
       *[no] No
    }
goal-explain = Change or explain
goal-title = Sprint goal
goal-submit = Record
goal-form = Goal of { $sprint }: { $goal }
goal-form-unnamed = { $sprint } was planned without a goal.
goal-met = Was it met?
goal-note = In a sentence
goal-note-hint = The verdict shows it in the channel.

## The verdict: the post in the channel

verdict-title = { $sprint }: { $verdict }
# After the name of the sprint and a colon. $share: of the commitment. $failed: which of the two tests failed.
verdict-kept = kept. Finished { NUMBER($finished) } of { POINTS($committed) } committed ({ $share }).
verdict-missed =
    { $failed ->
        [keptShare] missed. Finished { NUMBER($finished) } of { POINTS($committed) } committed ({ $share }).
        [surpriseRatio] missed for its surprise work alone. Finished { NUMBER($finished) } of { POINTS($committed) } committed ({ $share }).
       *[both] missed. Finished { NUMBER($finished) } of { POINTS($committed) } committed ({ $share }), with { POINTS($surprise) } of surprise work.
    }
verdict-no-plan = no plan. There was no commitment. Finished: { POINTS($finished) }.
# $note: a sentence that somebody typed.
verdict-goal =
    { $met ->
        [yes] Sprint goal met: { $goal }
        [partly] Sprint goal partly met: { $goal }
        [no] Sprint goal not met: { $goal }
       *[unsaid] Goal: { $goal }
    }
verdict-goal-unnamed =
    { $met ->
        [yes] Sprint goal met.
        [partly] Sprint goal partly met.
       *[no] Sprint goal not met.
    }
verdict-goal-note = “{ $note }”

## The four numbers, each with its limit

verdict-finished =
    { $is ->
        [within] Finished: { NUMBER($finished) } of { POINTS($committed) } committed, { $value } (floor { $threshold })
       *[beyond] Finished: { NUMBER($finished) } of { POINTS($committed) } committed, { $value }: below the floor of { $threshold }
    }
verdict-finished-no-plan = Finished: { POINTS($finished) }, nothing committed
verdict-surprise =
    { $is ->
        [within] Surprise work: { POINTS($points) }, { $value } of the commitment (ceiling { $threshold }){ $drift ->
            [0] {""}
           *[other] ; estimate drift { SIGNED($drift) }
        }
       *[beyond] Surprise work: { POINTS($points) }, { $value } of the commitment: above the ceiling of { $threshold }{ $drift ->
            [0] {""}
           *[other] ; estimate drift { SIGNED($drift) }
        }
    }
verdict-surprise-no-plan = Surprise work: { POINTS($points) }{ $drift ->
        [0] {""}
       *[other] ; estimate drift { SIGNED($drift) }
    }
verdict-pulled-in =
    { $is ->
        [within] Pulled in: { POINTS($points) }, { $value } of the commitment (ceiling { $threshold })
       *[beyond] Pulled in: { POINTS($points) }, { $value } of the commitment: above the ceiling of { $threshold }
    }
verdict-pulled-in-no-plan = Pulled in: { POINTS($points) }
# $value: of the baseline sprint's velocity, or why there is no such number.
verdict-velocity =
    { $baseline ->
        [itself] Velocity: { POINTS($points) }; this is the baseline sprint
        [named] Velocity: { POINTS($points) }, { $value } of { $baselineName } (baseline)
        [first-three] Velocity: { POINTS($points) }, { $value } of the median of the first three sprints (baseline)
       *[none] Velocity: { POINTS($points) }
    }
# $velocity: the message above. Team or sprint are not as large as in the baseline.
verdict-velocity-per-member-day = { $velocity }; { PERCENT($growth) } for each member-day

verdict-try = *One thing to try:* { $try }
verdict-in-thread = All numbers, cards and notes are in this post’s thread.
# Below a verdict in somebody's direct messages, and the replies to their choice.
verdict-direct-how = You get this beside the channel. `/loadline verdict off` ends it.
verdict-direct-on = You get each verdict of { $team } as a direct message too, with all numbers, cards and notes.
verdict-direct-end = `/loadline verdict off` ends it. What the latest one said: `/loadline retro`.
verdict-direct-off = The verdicts of { $team } are posted in its channel; you don’t get them as direct messages.
verdict-direct-begin = `/loadline verdict on` sends them to you as well. What the latest one said: `/loadline retro`.
# A card-day is a card that was blocked in the evening of a working day.
verdict-blocked-days =
    { $days ->
        [one] Blocked cards: { NUMBER($days) } card-day.
       *[other] Blocked cards: { NUMBER($days) } card-days.
    }
verdict-numbers-title = { $sprint }: all numbers
verdict-cards-title = { $sprint }: the cards
verdict-notes-title = { $sprint }: notes
verdict-cards-as-planned = Every card was finished at the size of its estimate, and nothing was pulled in or dropped.
verdict-no-notes = No number crossed one of the team’s limits.

verdict-open-again = Open again for corrections, so these numbers may still change.
verdict-corrected = Reopened for corrections. These are the corrected numbers (version { NUMBER($version) }).
# $span: from when to when it was planned.
verdict-closed-early = Closed early, on { DAY($day) }; planned for { $span }.
verdict-next-plan = Next: plan the coming sprint with `/loadline plan`.
verdict-next-planned = Next: { $sprint }, from { DAY($startsOn) }.
# $cards were planned there before this sprint finished them; $number is that of the first.
verdict-next-overtaken =
    { $more ->
        [0] Finished by now, but planned there with points: { SERIES($cards) }. As long as nobody has answered for them there, a facilitator can set them to 0: `/loadline edit { $number }`.
       *[other] Finished by now, but planned there with points: { SERIES($cards) } and { NUMBER($more) } more. As long as nobody has answered for them there, a facilitator can set them to 0: `/loadline edit { $number }`.
    }
verdict-next-correct = Next: correct what’s wrong, then close it with `/loadline close`.
verdict-reopen-until = If a number is wrong, a facilitator can reopen the sprint until { $moment }.
verdict-retro = Retrospective
verdict-reopen = Reopen for corrections
verdict-reopen-title = Reopen the sprint?
verdict-reopen-text = Answers can then be corrected. The sprint closes again by itself, and this post is updated.
verdict-reopen-yes = Reopen
verdict-reopen-no = Keep it closed

## The cards below a verdict

verdict-changed-title = Cards that turned out larger or smaller
# $is: whether the true size is nearest to the estimate on the scale.
verdict-changed-card =
    { $is ->
        [on-scale] { $card }: estimate { NUMBER($estimate) }, true size { NUMBER($size) } ({ SERIES($growth) }); within its size on the scale
       *[off-scale] { $card }: estimate { NUMBER($estimate) }, true size { NUMBER($size) } ({ SERIES($growth) })
    }
# Below them: the words that members gave, without who gave them.
verdict-said-title = What came up, in the team’s words
verdict-said =
    { $about ->
        [block] { $card }, blocked on { DAY($day) }: { $note }
       *[growth] { $card }, { DAY($day) }: { $note }
    }
verdict-pulled-in-title = Pulled in after planning
verdict-pulled-in-card = { $card }: { POINTS($estimate) }, { $progress }
verdict-dropped-title = Dropped
verdict-dropped-card = { $card }: { POINTS($estimate) }
verdict-dropped-card-reason = { $card }: { POINTS($estimate) } – { $reason }
verdict-open-title = Not finished
verdict-open-card = { $card }: { $progress } (estimate { NUMBER($estimate) })
verdict-more-cards = … and { cards-more-count }, counted in the numbers above. A facilitator’s `/loadline export` lists them all.

## A cancelled sprint: the post in the channel

cancelled-title = { $sprint } was cancelled
cancelled-by = Cancelled by { $person }.
cancelled-by-reason = Cancelled by { $person }. Reason: { $reason }
cancelled-counts = There is no verdict. The numbers below are kept and marked as cancelled; they never count as history.

## The forms that ask before a sprint is closed or cancelled

close-title = Close the sprint?
close-submit = Close now
close-leave = Keep it open
close-when = { $sprint } would close by itself on { $closes }.
close-finished = Finished so far: { NUMBER($finished) } of { POINTS($committed) } committed.
close-all-finished = Every card is finished or dropped.
close-open =
    { $cards ->
        [one] { cards-count } with { POINTS($left) } left will count as not finished.
       *[other] { cards-count } with { POINTS($left) } left will count as not finished.
    }
close-what-follows = The verdict is posted in the channel. A facilitator can reopen the sprint until closing time on the next working day.
cancel-title = Cancel the sprint?
cancel-submit = Cancel it
cancel-leave = Keep it
cancel-what-follows = { $sprint } ends at once and without a verdict. Its numbers are kept, and never count as history. This can’t be undone.
cancel-reason = Reason
cancel-reason-hint = The channel reads it.

## Replies to the person who did it

goal-recorded =
    { $met ->
        [yes] Recorded for { $sprint }: the goal was met.
        [partly] Recorded for { $sprint }: the goal was partly met.
       *[no] Recorded for { $sprint }: the goal was not met.
    }
goal-recorded-next = The verdict shows it. To change it, say it again.
closed-reply = { $sprint } is closed: { $verdict }
closed-reply-next = The verdict goes to the team’s channel. If a number is wrong, reopen the sprint by closing time on the next working day: `/loadline reopen`.
cancelled-reply = { $sprint } is cancelled, and the channel will see it. Its numbers are kept, and never count as history.
reopened-reply = { $sprint } is open again for corrections. It closes by itself on { $moment }, or earlier with `/loadline close`.
reopened-reply-next = To correct an answer of a certain day: `/loadline answer { $day }`.
status-shared-reply = The status goes to the team’s channel.
advice-shared-reply = The answer goes to the team’s channel.
