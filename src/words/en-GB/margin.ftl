### How far off commitments and estimates were so far; in the forecast and the history.

margin-none = How far off commitments and estimates usually are is known from { NUMBER($sprints) } sprints on.
margin-title = How far off the team was so far
margin-commitments = Commitments: what was finished, pulled-in work included, was typically { WHOLE_PERCENT($median) } of the commitment, and { margin-span }.
margin-estimates = Estimates: typically { WHOLE_PERCENT($median) } accurate, and { margin-span }. The rest up to 100% is the part of the load by which estimates were off.
# Before the sentence that says why.
margin-commitments-unknown = Commitments: not known yet.
margin-estimates-unknown = Estimates: not known yet.
margin-span = { PERCENT_SPAN($low, $high) } { $span ->
        [whole] over all { NUMBER($sprints) } sprints, which are too few to say what is usual
       *[usual] in 8 of 10 sprints (from { NUMBER($sprints) })
    }
