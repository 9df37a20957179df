### How much to commit to: the commitment range.

## The advice in one sentence. It leads the answer and the preview of a plan.

range-at = At { POINTS($points) }: { SERIES($chances) }.
# The chances, in this order.
range-chance-kept = { TENTHS($chance) } to keep it
range-chance-finished = { TENTHS($chance) } to finish everything
range-chance-ran-out = { TENTHS($chance) } to run out of work
# After the chances of a commitment that was asked about.
range-start-from = The number to start from is { NUMBER($points) }: { SERIES($chances) }.
# After the advice: the commitment of the latest sprint.
range-last-commitment = Your last commitment was { NUMBER($points) }.

## What it means

range-span = { NUMBER($low) } to { POINTS($high) } serve you: of 10 sprints at least 8 are kept, 5 finished whole, at most 2 out of work.
range-span-one = With more you’d finish it less often, with less you’d run out of work in more than 2 of 10 sprints.
range-meaning =
    { $known ->
        [both] Kept: { PERCENT($floor) } or more finished. Out of work: over { PERCENT($ceiling) } pulled in.
       *[kept] Kept: { PERCENT($floor) } or more finished.
    }
# Before the sentence that says why.
range-ran-out-unknown = How likely you are to run out of work isn’t known.
# How the number was found, in the details.
range-chosen = It’s the largest number that serves you, and never needs more than you’ve finished before. Where none is finished whole in every second sprint, it’s the smallest that serves you otherwise. Where none serves both, it’s the one at which keeping it and not running out of work are about as likely.
range-ends-apart = Up to { POINTS($high) }, you keep it in 8 of 10 sprints or more; from { POINTS($low) } on, you run out of work in 2 of 10 or fewer.

## What would help where no commitment serves both

range-remedy-less-surprise = Surprise work was above its ceiling in { NUMBER($sprints) } of { NUMBER($of) } sprints: `/loadline odds` shows where to look for it.
range-remedy-smaller-cards = { NUMBER($sprints) } of { NUMBER($of) } sprints were missed by a single open card: smaller cards would help.
range-remedy-more-sprints = With { NUMBER($firmSprints) } sprints or more this gets firmer.
range-remedy-ask-what-differed = They finished { NUMBER($lowPoints) } to { POINTS($highPoints) }: ask why.
range-finish-anything = Look at what keeps cards from being finished before you look at the size of the commitment. Smaller cards, and fewer of them started at once, are a good beginning.

## What the range is for and based on

range-coming = For { $span }: { LIST($facts) }.
# The same where past sprints were scaled to it.
range-scaled = Scaled to { $scaledTo }: { $span }, { LIST($facts) }.
# The facts.
range-working-days =
    { $count ->
        [one] { NUMBER($count) } working day
       *[other] { NUMBER($count) } working days
    }
range-members =
    { $count ->
        [one] { NUMBER($count) } member
       *[other] { NUMBER($count) } members
    }
range-days-away =
    { $count ->
        [0] no days off known
        [one] { NUMBER($count) } day off or away
       *[other] { NUMBER($count) } days off or away
    }
# What the past sprints are scaled to.
range-scaled-to =
    { $measuredBy ->
        [member-days]
            { $time ->
                [one] { NUMBER($time) } member-day
               *[other] { NUMBER($time) } member-days
            }
        [working-days]
            { $time ->
                [one] { NUMBER($time) } working day
               *[other] { NUMBER($time) } working days
            }
       *[sprints] sprints of any length
    }
# Above the latest of those sprints.
range-basis =
    { $imported ->
        [none] Based on your latest { NUMBER($sprints) } sprints with a commitment. The last { NUMBER($shown) }:
        [all] Based on your latest { NUMBER($sprints) } sprints with a commitment, all of them imported. The last { NUMBER($shown) }:
       *[some] Based on your latest { NUMBER($sprints) } sprints with a commitment, { NUMBER($importedSprints) } of them imported. The last { NUMBER($shown) }:
    }
# One of those sprints, and the facts about it, in points.
range-past-sprint = { $name }: { SERIES($facts) }
range-past-committed = { NUMBER($points) } committed
range-past-finished = { NUMBER($points) } of them finished
range-past-pulled-in = { NUMBER($points) } pulled in
range-past-velocity = velocity { NUMBER($points) }
range-past-velocity-unknown = velocity not known
# The verdict's other test.
range-surprise-within =
    { $recordedIn ->
        [all] Surprise work stayed within its ceiling of { PERCENT($ceiling) } in all { NUMBER($of) } sprints.
       *[some] { $of ->
            [one] Surprise work stayed within its ceiling of { PERCENT($ceiling) } in the one sprint in which it is recorded.
           *[other] Surprise work stayed within its ceiling of { PERCENT($ceiling) } in all { NUMBER($of) } sprints in which it is recorded.
        }
    }
range-surprise-above =
    { $recordedIn ->
        [all] In { NUMBER($sprints) } of { NUMBER($of) } sprints surprise work went above its ceiling of { PERCENT($ceiling) }, which by itself makes a sprint missed.
       *[some] { $of ->
            [one] In the one sprint in which it is recorded, surprise work went above its ceiling of { PERCENT($ceiling) }, which by itself makes a sprint missed.
           *[other] In { NUMBER($sprints) } of the { NUMBER($of) } sprints in which it is recorded, surprise work went above its ceiling of { PERCENT($ceiling) }, which by itself makes a sprint missed.
        }
    }
range-surprise-hint = No commitment changes that; `/loadline odds` shows which card sizes to look into first.

## What the range doesn't know

range-missing-few-sprints = It’s based on { NUMBER($sprints) } sprints and partly on what is usual for teams. From { NUMBER($firmSprints) } sprints on, it’s based on the team’s own history.
range-missing-finish-not-recorded = In { NUMBER($sprints) } of { NUMBER($of) } sprints it isn’t recorded how much of the commitment was finished.
range-missing-working-time-unknown = Days off and members away aren’t known, so every sprint counts the same.
range-missing-members-away-unknown = Members away aren’t known, so only working days count.
range-missing-past-members-unknown =
    { $taken ->
        [members-then] For { NUMBER($sprints) } of { NUMBER($of) } sprints the import doesn’t say who was there, so the members of the day of the import are assumed. Its column “member days” would say.
        [members-around] For { NUMBER($sprints) } of { NUMBER($of) } sprints it isn’t known who was there, so as many as in the sprints around them are assumed.
       *[members-now] For { NUMBER($sprints) } of { NUMBER($of) } sprints it isn’t known who was there, so as many members as today are assumed. With more or fewer then, the range is off by as much.
    }
range-missing-coming-absence-unknown = Who will be away isn’t known, so everybody is assumed to be there.
range-unknown-changes = It assumes that a new member does as much as the others, and that the way of working stays as it is.
range-unknown-urgent-work = It takes all pulled-in work as a sign of spare time, which urgent work isn’t.

## The form

range-form-title = Commitment range
range-form-submit = Show the range
range-form-intro = How much should { $team } commit to? What past sprints achieved is scaled to the working time of this one.
range-form-first-day = First day
range-form-last-day = Last day
range-form-points = A commitment to look at
range-form-points-hint = In points. The answer says how likely it is to be kept.
# In the plan form as well.
away-days-label = Days off and away, all members together
away-days-hint = All of them, also those entered with /loadline off: none counts twice. Each holiday counts once for every member. Leave empty if you don’t know.
