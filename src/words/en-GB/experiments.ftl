### What a team tries: the form, the list, and what became of it. Nobody is named.

## The form

try-title = Try something
try-submit = Keep it
try-intro = What did { $team } agree to try? Its plans and verdicts will show it.
# Above it, when something else gives way.
try-changes = This takes the place of “{ $text }”, which then is over.
try-text = What we try
try-text-hint = For example: nothing is pulled in before the cards of the plan are finished.
try-ratio = The number that it should move
try-direction = Which way
# A choice.
try-direction-choice =
    { $direction ->
        [up] Up
       *[down] Down
    }

## What is being tried: in plans, verdicts and lists

# In brackets: what the number should do.
experiment =
    { $direction ->
        [up] { $text } ({ ratio-name } up)
       *[down] { $text } ({ ratio-name } down)
    }
# In a verdict. $before and $now: the number as a percentage, or that there is none.
experiment-result =
    { $reading ->
        [beyond] Trying: { $experiment }. { $before } before, { $now } now: more than ordinary variation.
        [ordinary] Trying: { $experiment }. { $before } before, { $now } now: ordinary variation.
       *[early] Trying: { $experiment }. { $before } before, { $now } now: too early to say whether that is more than ordinary variation.
    }
experiment-result-first =
    { $reading ->
        [beyond] Trying: { $experiment }. { $now } now, more than ordinary variation; no sprint to compare with.
        [ordinary] Trying: { $experiment }. { $now } now, ordinary variation; no sprint to compare with.
       *[early] Trying: { $experiment }. { $now } now; no sprint to compare with.
    }
experiment-no-number = no number
experiments-in-thread = What the team is trying
# A button below the verdict's one thing to try.
try-this = Try this
plan-trying = The team is trying: { SERIES($experiments) }.
experiment-kept = Kept: { $experiment }.
experiment-kept-next = The next plan shows it, and the next verdict says what the number was before and is now.
experiment-ended =
    { $outcome ->
        [keep] “{ $text }” is a habit now, and no longer on trial.
        [change] “{ $text }” is over. To keep what you try in its place: `/loadline try`.
       *[drop] “{ $text }” is dropped.
    }

## The question after three sprints

experiment-question = Three sprints on: what becomes of “{ $text }”?
# On a button.
experiment-outcome =
    { $outcome ->
        [keep] Keep it
        [change] Change it
       *[drop] Drop it
    }
experiment-question-means = Keep: it is a habit now. Change: something else is tried in its place. Ask the team first.

## The list

experiments-title = What { $team } tries
experiments-none = Nothing is being tried.
experiments-none-next = A facilitator keeps what the team agrees to try with `/loadline try`, or below a verdict.
experiments-open = { NUMBER($number) }. { $experiment }, since { DATE($since) }
experiments-past-title = Tried before
experiments-past =
    { $outcome ->
        [keep] { $experiment }: kept as a habit on { DATE($at) }
        [change] { $experiment }: changed on { DATE($at) }
       *[drop] { $experiment }: dropped on { DATE($at) }
    }
experiments-more = … and { NUMBER($count) } more.
experiments-how = To decide about one: `/loadline experiments keep 1`, or with change or drop in place of keep.
