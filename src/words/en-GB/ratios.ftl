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
