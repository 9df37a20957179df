### The team's own trend. A signal means that something has changed; anything else is ordinary variation.

## The sentence that leads the answer

history-none = No history yet: no sprint has closed.
history-one-signal = There is a signal.
history-signals = Signals in { NUMBER($count) } numbers: { LIST($ratios) }.
history-ordinary = No signal: the ups and downs of your { NUMBER($sprints) } sprints are ordinary variation.
history-changed-before = No new signal since { LIST($ratios) } changed.
history-too-early =
    { $sprints ->
        [one] Too early to tell a signal from ordinary variation: that takes { NUMBER($needed) } sprints, and there is { NUMBER($sprints) }.
       *[other] Too early to tell a signal from ordinary variation: that takes { NUMBER($needed) } sprints, and there are { NUMBER($sprints) }.
    }
history-too-early-each = Too early to tell a signal from ordinary variation: that takes { NUMBER($needed) } sprints with the same number, and no number has so many.

## A signal, and what to do with it

history-signal =
    { $kind ->
        [above] Your { ratio-name } of { PERCENT($value) } is far above what is usual for you ({ PERCENT_SPAN($low, $high) }).
        [below] Your { ratio-name } of { PERCENT($value) } is far below what is usual for you ({ PERCENT_SPAN($low, $high) }).
        [rise] Your { ratio-name } has risen: { WHOLE_PERCENT($mean) } on average in the last { NUMBER($sprints) } sprints, { WHOLE_PERCENT($before) } before.
       *[fall] Your { ratio-name } has fallen: { WHOLE_PERCENT($mean) } on average in the last { NUMBER($sprints) } sprints, { WHOLE_PERCENT($before) } before.
    }
history-ask = Ask the team what was different: keep what helped, fix what didn’t.

## Lines that are often crossed, although that is ordinary for the team

history-often-crossed = Ordinary doesn’t mean on target. Often crossed lately: { LIST($ratios) }. That takes a change in how the team plans or works.
# One of those ratios.
history-often =
    { $line ->
        [floor] { ratio-name } (below its floor of { PERCENT($floor) } in { NUMBER($sprints) } of { NUMBER($of) })
        [ceiling] { ratio-name } (above its ceiling of { PERCENT($ceiling) } in { NUMBER($sprints) } of { NUMBER($of) })
       *[band] { ratio-name } (outside its range of { PERCENT($floor) } to { PERCENT($ceiling) } in { NUMBER($sprints) } of { NUMBER($of) })
    }

## The short answer's lines: the latest value of a ratio

history-glance-title = Latest sprint
# Of one sprint there is no mean.
history-glance =
    { $sprints ->
        [1] { ratio-title }: { PERCENT($value) }
       *[other] { ratio-title }: { PERCENT($value) }, mean { WHOLE_PERCENT($mean) }
    }

## Each ratio in a line: its latest value, what is usual, and how often a line was crossed lately

# Of the sprints of which somebody said whether the goal was met.
history-goals = Goals met: { NUMBER($met) } of { NUMBER($sprints) }{ $partly ->
        [0] {""}
       *[other] , { NUMBER($partly) } partly
    }; commitments kept: { NUMBER($kept) }.
history-lines-title = Latest sprint, and what is usual
history-latest = *{ ratio-title }:* { PERCENT($value) }.
# Before the sentence that says why.
history-latest-none = *{ ratio-title }:* none in the latest sprint.
history-unknown = *{ ratio-title }:* not known from these sprints.
history-usual =
    { $reading ->
        [signal] Mean { WHOLE_PERCENT($mean) }, usually { PERCENT_SPAN($low, $high) }: a signal.
        [unusual] Mean { WHOLE_PERCENT($mean) }, usually { PERCENT_SPAN($low, $high) }: unusual, but no signal yet.
       *[ordinary] Mean { WHOLE_PERCENT($mean) }, usually { PERCENT_SPAN($low, $high) }: ordinary variation.
    }
# After a usual mean, when the number has changed for good.
history-changed = That’s over the { NUMBER($sprints) } sprints since it changed; the mean was { WHOLE_PERCENT($before) } before.
history-mean = Mean { WHOLE_PERCENT($mean) } of { NUMBER($sprints) } sprints.
history-first = This is the first sprint with this number.
history-marks = Marks to reach: { LIST($marks) }.
history-floor =
    { $often ->
        [once] It’s below its floor of { PERCENT($floor) }.
        [never] Never below its floor of { PERCENT($floor) } in the last { NUMBER($of) } sprints.
        [always] Below its floor of { PERCENT($floor) } in all of the last { NUMBER($of) } sprints.
       *[sometimes] Below its floor of { PERCENT($floor) } in { NUMBER($sprints) } of the last { NUMBER($of) } sprints.
    }
history-ceiling =
    { $often ->
        [once] It’s above its ceiling of { PERCENT($ceiling) }.
        [never] Never above its ceiling of { PERCENT($ceiling) } in the last { NUMBER($of) } sprints.
        [always] Above its ceiling of { PERCENT($ceiling) } in all of the last { NUMBER($of) } sprints.
       *[sometimes] Above its ceiling of { PERCENT($ceiling) } in { NUMBER($sprints) } of the last { NUMBER($of) } sprints.
    }
history-band =
    { $often ->
        [once] It’s outside its range of { PERCENT($floor) } to { PERCENT($ceiling) }.
        [never] Never outside its range of { PERCENT($floor) } to { PERCENT($ceiling) } in the last { NUMBER($of) } sprints.
        [always] Outside its range of { PERCENT($floor) } to { PERCENT($ceiling) } in all of the last { NUMBER($of) } sprints.
       *[sometimes] Outside its range of { PERCENT($floor) } to { PERCENT($ceiling) } in { NUMBER($sprints) } of the last { NUMBER($of) } sprints.
    }
history-reading = “Usually” shows how far a number goes up and down without any special cause. A signal is a value far outside of that, or { NUMBER($sprints) } sprints in a row that clearly differ from those before. One unusual value may be chance.
history-reading-from = What is usual for a number is known from { NUMBER($needed) } sprints on.

## How velocity and the recorded value grew

history-velocity-growth = Velocity growth is compared with { $sprint }: { WHOLE_PERCENT(1) } is what that sprint finished.
history-velocity-growth-median = Velocity growth is compared with the median of the first three sprints, which is { WHOLE_PERCENT(1) }.
history-growth-per-member-day = For each member-day, the latest sprint is at { PERCENT($growth) }, as team or sprint are not as large as then.
history-velocity-growth-none = Velocity growth appears once a sprint in which something was finished has closed.
history-value-none = What the sprints were worth isn’t recorded. The product owner or a facilitator can record it with `/loadline value`, to see whether value grows with velocity.
history-value-unknown = Value growth appears once a sprint in which something was finished has a value above 0.
history-value-first = Value growth is compared with { $sprint }; record the value of later sprints to see it.
history-value = In { $latest } the recorded value was { PERCENT($value) } of that in { $first }.
history-value-velocity = In { $latest } the recorded value was { PERCENT($value) } of that in { $first }, and velocity was { PERCENT($velocity) }.
history-value-point = In { $latest } the recorded value was { PERCENT($value) } of that in { $first }, and velocity was { PERCENT($velocity) }: a point brought { PERCENT($point) } of what it brought then.

## What it covers, and what it doesn't know

history-basis =
    { $sprints ->
        [one] This covers { NUMBER($sprints) } closed sprint, from { DATE_BESIDE($startsOn, $endsOn) } to { DATE($endsOn) }.
       *[other] This covers { NUMBER($sprints) } closed sprints, from { DATE_BESIDE($startsOn, $endsOn) } to { DATE($endsOn) }.
    }
history-basis-imported =
    { $imported ->
        [one] { NUMBER($imported) } was imported.
       *[other] { NUMBER($imported) } were imported.
    }
history-cancelled = Cancelled sprints are left out.
history-unknown-cause = What changed. A signal says that something did, not what or why: only the team can say.
history-unknown-target = Whether ordinary variation is good enough. That is what floors and ceilings are for.
history-unknown-value = Whether one growth caused the other. Value often comes sprints after the work, and depends on much else.
