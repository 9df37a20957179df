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

# As a heading beside a number of one sprint: a value below 100% is a fall, which nobody calls growth.
ratio-velocity-title = Velocity against the baseline

## What a ratio is made of, after its value in brackets, from the sums in src/sprint/totals.ts

ratio-of-keptShare = { NUMBER($committedFinishedPoints) } of { POINTS($commitmentPoints) } committed
ratio-of-surpriseRatio = { POINTS($surprisePoints) } of surprise work
ratio-of-pullInRatio = { POINTS($pulledInPoints) } pulled in
ratio-of-planShare = { NUMBER($commitmentPoints) } of { POINTS($loadPoints) } of load planned
# An error within a card's size on the scale counts as none; then the plain error says whether there was one.
ratio-of-estimateAccuracy =
    { $estimateErrorPoints ->
        [0] { $plainEstimateErrorPoints ->
            [0] no estimate was off
           *[other] every card is within its size on the scale
        }
       *[other] estimates off by { POINTS($estimateErrorPoints) }
    }
ratio-of-onScaleShare =
    { $finishedCards ->
        [one] { NUMBER($onScaleCards) } of { NUMBER($finishedCards) } finished card within its size on the scale
       *[other] { NUMBER($onScaleCards) } of { NUMBER($finishedCards) } finished cards within their size on the scale
    }
ratio-of-finishShare = { POINTS($velocityPoints) } finished, { NUMBER($workedPoints) } worked
# $baselineName: the sprint that it is compared with. $change, $by: how velocity differs from it.
ratio-of-velocityGrowth =
    { $baseline ->
        [itself] this is the baseline sprint
        [first-three] { $change ->
            [fell] { PERCENT($by) } below the median of the first three sprints
            [same] as much as the median of the first three sprints
            [rose] { PERCENT($by) } above the median of the first three sprints
           *[so-far] compared with the median of the first three sprints
        }
        [named] { $change ->
            [fell] { PERCENT($by) } below { $baselineName }
            [same] as much as { $baselineName }
            [rose] { PERCENT($by) } above { $baselineName }
           *[so-far] compared with { $baselineName }
        }
       *[not-noted] { $change ->
            [fell] { PERCENT($by) } below the baseline sprint
            [same] as much as the baseline sprint
            [rose] { PERCENT($by) } above the baseline sprint
           *[so-far] compared with the baseline sprint
        }
    }
# $madeOf: the message above. Team or sprint are not as large as in the baseline.
ratio-of-velocityGrowth-per-member-day = { $madeOf }; { PERCENT($growth) } for each member-day, as team or sprint are not as large as then
ratio-fact = { $value } ({ $madeOf })

# All the work of a sprint.
ratio-load = Load { POINTS($load) }: { NUMBER($committed) } committed, { NUMBER($pulledIn) } pulled in, { NUMBER($surprise) } surprise work. Velocity { POINTS($velocity) }.
