### What the ratios are called.

# In the middle of a sentence.
ratio-name =
    { $ratio ->
        [keptShare] kept share
        [surpriseRatio] surprise ratio
        [pullInRatio] pull-in ratio
        [planShare] plan share
        [estimateAccuracy] estimate accuracy
        [onScaleShare] on-scale share
        [finishShare] finish share
       *[velocityGrowth] velocity growth
    }
# As a heading or at the beginning of a line.
ratio-title =
    { $ratio ->
        [keptShare] Kept share
        [surpriseRatio] Surprise ratio
        [pullInRatio] Pull-in ratio
        [planShare] Plan share
        [estimateAccuracy] Estimate accuracy
        [onScaleShare] On-scale share
        [finishShare] Finish share
       *[velocityGrowth] Velocity growth
    }

## What a ratio is made of, after its value in brackets, from the sums in src/sprint/totals.ts

ratio-of-keptShare = { NUMBER($committedFinishedPoints) } of { POINTS($commitmentPoints) } committed
ratio-of-surpriseRatio = { POINTS($surprisePoints) } of surprise work
ratio-of-pullInRatio = { POINTS($pulledInPoints) } pulled in
ratio-of-planShare = { NUMBER($commitmentPoints) } of { POINTS($loadPoints) } of load planned
ratio-of-estimateAccuracy = estimates off by { POINTS($estimateErrorPoints) }
ratio-of-onScaleShare =
    { $finishedCards ->
        [one] { NUMBER($onScaleCards) } of { NUMBER($finishedCards) } finished card as large as estimated
       *[other] { NUMBER($onScaleCards) } of { NUMBER($finishedCards) } finished cards as large as estimated
    }
ratio-of-finishShare = { POINTS($velocityPoints) } finished, { NUMBER($workedPoints) } worked
# $baselineName: the sprint that it is compared with.
ratio-of-velocityGrowth =
    { $baseline ->
        [itself] this is the baseline sprint
        [first-three] compared with the median of the first three sprints
        [named] compared with { $baselineName }
       *[not-noted] compared with the baseline sprint
    }
# $madeOf: the message above. Team or sprint are not as large as in the baseline.
ratio-of-velocityGrowth-per-member-day = { $madeOf }; { PERCENT($growth) } for each member-day, as team or sprint are not as large as then
ratio-fact = { $value } ({ $madeOf })

# All the work of a sprint.
ratio-load = Load { POINTS($load) }: { NUMBER($committed) } committed, { NUMBER($pulledIn) } pulled in, { NUMBER($surprise) } surprise work. Velocity { POINTS($velocity) }.
