### Why a number doesn't exist. Each is a sentence of its own, shown in place of the number or after
### "No range yet." and the like.

undefined-no-commitment = There was no commitment.
undefined-no-load = There was no work in the sprint.
undefined-no-card-finished = No card was finished.
undefined-no-work-reported = No work was reported.
undefined-no-baseline = There is no baseline sprint yet.
undefined-nobody-asked = Nobody was asked.

undefined-no-values = There are no values.
undefined-nothing-to-count = There is nothing to count yet.
undefined-few-values =
    { $known ->
        [one] This needs { NUMBER($needed) } values; there is { NUMBER($known) }.
       *[other] This needs { NUMBER($needed) } values; there are { NUMBER($known) }.
    }
# $having: what each of the sprints must have; "number": the number in question.
undefined-few-sprints =
    { $having ->
        [commitment]
            { $known ->
                [one] This needs { NUMBER($needed) } closed sprints with a commitment; there is { NUMBER($known) }.
               *[other] This needs { NUMBER($needed) } closed sprints with a commitment; there are { NUMBER($known) }.
            }
        [number]
            { $known ->
                [one] This needs { NUMBER($needed) } closed sprints with these numbers; there is { NUMBER($known) }.
               *[other] This needs { NUMBER($needed) } closed sprints with these numbers; there are { NUMBER($known) }.
            }
        [finished-points]
            { $known ->
                [one] This needs { NUMBER($needed) } closed sprints in which the finished work was recorded; there is { NUMBER($known) }.
               *[other] This needs { NUMBER($needed) } closed sprints in which the finished work was recorded; there are { NUMBER($known) }.
            }
        [pulled-in-points]
            { $known ->
                [one] This needs { NUMBER($needed) } closed sprints in which pulled-in work was recorded; there is { NUMBER($known) }.
               *[other] This needs { NUMBER($needed) } closed sprints in which pulled-in work was recorded; there are { NUMBER($known) }.
            }
       *[closed]
            { $known ->
                [one] This needs { NUMBER($needed) } closed sprints; there is { NUMBER($known) }.
               *[other] This needs { NUMBER($needed) } closed sprints; there are { NUMBER($known) }.
            }
    }
# "Signal": something has changed, in contrast to the usual ups and downs.
undefined-no-signal-yet =
    { $known ->
        [one] It takes { NUMBER($needed) } sprints with this number to tell a signal from ordinary variation; there is { NUMBER($known) }.
       *[other] It takes { NUMBER($needed) } sprints with this number to tell a signal from ordinary variation; there are { NUMBER($known) }.
    }

undefined-nobody-there = Nobody is there to work in the coming sprint.
undefined-nothing-committed = Without a commitment there is nothing to keep or to measure by.
undefined-too-little-finished = No commitment would be kept: too often, hardly any of it was finished.
undefined-pulled-in-before-finishing = No commitment serves both: in { NUMBER($sprints) } of { NUMBER($of) } sprints, work came in while committed work was open. Finish that first.
undefined-varies-too-much = No commitment serves both: your sprints differ too much, or are too few.

undefined-no-closed-card = There is no card of a closed sprint yet.
undefined-no-card-of-size = No closed card was estimated at { POINTS($estimatePoints) }.
undefined-no-surprise-of-size = No closed card estimated at { POINTS($estimatePoints) } held surprise work.
undefined-few-pulled-in =
    { $known ->
        [one] Only { NUMBER($known) } card has been pulled in so far. It takes { NUMBER($needed) } to know how often one gets finished.
       *[other] Only { NUMBER($known) } cards have been pulled in so far. It takes { NUMBER($needed) } to know how often one gets finished.
    }
undefined-no-day-for-card = No working day is left for { POINTS($estimatePoints) }.

undefined-no-backlog = There is no work left to forecast.
undefined-no-velocity =
    { $sprints ->
        [one] The latest sprint finished no points.
       *[other] None of the latest { NUMBER($sprints) } sprints finished any points.
    }
undefined-too-far-off =
    { $sprints ->
        [one] Even after { NUMBER($sprints) } sprint the chance is below { WHOLE_PERCENT($chance) }.
       *[other] Even after { NUMBER($sprints) } sprints the chance is below { WHOLE_PERCENT($chance) }.
    }

undefined-no-valued-sprint = There is no closed sprint yet that has both a velocity and a recorded value above 0.
undefined-before-valued-sprint = The sprint came before the one that growth is compared with.
undefined-no-value = No value was recorded for the sprint.
undefined-nothing-finished = Nothing was finished in the sprint.
undefined-velocity-unknown = It isn’t known how many points were finished in the sprint.

undefined-cards-not-imported = The import has no cards.
undefined-finished-commitment-not-imported = The import doesn’t say how much of the commitment was finished.
undefined-pulled-in-work-not-imported = The import doesn’t say how much was pulled in.
undefined-surprise-work-not-imported = The import doesn’t say how much surprise work there was.
undefined-load-not-imported = The import doesn’t say how much was pulled in, or how much surprise work there was.
undefined-work-not-imported = The import doesn’t say how much was finished, or how much was worked.
undefined-ended-before-ratio = The sprint ended before Loadline had this ratio.
# A sentence that an earlier version posted, shown as it was.
undefined-as-posted = { $sentence }

undefined-not-begun = The sprint hasn’t begun.
undefined-corrections-only = The sprint is open for corrections only.
undefined-no-working-day = None of the team’s working days is in this sprint.
undefined-last-day-over = The last working day is over: what is finished by the closing time counts.
undefined-no-points = There are no points in the sprint.
undefined-nobody-answered = Nobody has answered in this sprint yet, so it isn’t known what is left.
undefined-no-work-yet = There is no work in the sprint yet.
undefined-few-days =
    { $needed ->
        [one] The pace shows after { NUMBER($needed) } working day of answers.
       *[other] The pace shows after { NUMBER($needed) } working days of answers.
    }

### In place of an answer to a question, followed by the reason.

no-answer =
    { $what ->
        [forecast] No forecast.
       *[range] No range.
    }
no-answer-yet =
    { $what ->
        [forecast] No forecast yet.
       *[range] No range yet.
    }
# In place of a ratio, below or after its name.
ratio-none = None. { $reason }
