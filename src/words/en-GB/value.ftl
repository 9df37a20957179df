### What sprints were worth, and the sprint that growth is compared with.

## The question for it, some working days after a sprint

value-question = What was { $sprint } worth, which ended { DAY($endsOn) }?
value-record = Record the value
value-correct = Correct it

## The form that records a value

value-title = Record a value
value-submit = Record
value-intro = What was a sprint of { $team } worth? One number for each sprint, always in the same unit. You then see its growth next to the growth of velocity.
value-sprint = Sprint
value-amount = Value
value-amount-hint = One number per sprint, in a unit of your choice: revenue, users, anything. A new number replaces the old one, which is kept on record.
value-file = Or values of several sprints, as a CSV file
value-file-hint = With the columns sprint and value, as in a file from `/loadline export`. You see what it would record first.
value-who-sees = Members and the product owner can see it with `/loadline history`, and may share that in the channel.
value-none-yet = no value yet
# A closed sprint in a list of choices, at most 75 characters with a name that is cut. $said: its value or velocity
past-sprint-choice = { $sprint }, ended { DATE($endsOn) }: { $said }
past-sprint-first-choice = First: { $sprint }, ended { DATE($endsOn) }: { $said }

## After a value was recorded

value-same = { $sprint } (ended { DATE($endsOn) }) already has the value { NUMBER($value) }; nothing changed.
value-recorded = Recorded for { $sprint } (ended { DATE($endsOn) }): { NUMBER($value) }.
value-replaced = Recorded for { $sprint } (ended { DATE($endsOn) }): { NUMBER($value) }. It replaces { NUMBER($previous) }, which is kept on record.
value-no-measure = Growth appears once a closed sprint in which points were finished has a value above 0.
value-is-measure = The growth of value is compared with this sprint. Record the sprints after it, and you see how value grows next to velocity.
# Before the sentence that says why.
value-no-growth = There is no growth for this sprint.
value-growth = Compared with { $sprint }, the value is { PERCENT($value) } and velocity is { PERCENT($velocity) }.
value-growth-point = Compared with { $sprint }, the value is { PERCENT($value) } and velocity is { PERCENT($velocity) }: a point brought { PERCENT($point) } of what it brought then.
value-not-said = What this doesn’t say: value often comes sprints after the work, and depends on more than the team’s work. That both grow doesn’t mean that one made the other grow.
value-another = Record another value
value-history = History

## The baseline sprint

baseline-title = Baseline sprint
baseline-submit = Save
baseline-intro = Velocity growth of { $team } compares the velocity of a sprint with that of the baseline sprint. Choose one in which the team worked as it usually did then, or the median of the first three.
baseline-sprint = Baseline sprint
baseline-effect = Verdicts that are posted keep their numbers. The next ones, and the history, use the new baseline.
baseline-older =
    { $sprints ->
        [one] { NUMBER($sprints) } older sprint isn’t in the list; name it with `/loadline baseline` and its name.
       *[other] { NUMBER($sprints) } older sprints aren’t in the list; name one with `/loadline baseline` and its name.
    }
baseline-median-choice =
    { $known ->
        [known] The median of the first three: { POINTS($velocity) }
       *[not-yet] The median of the first three, from the third on
    }
baseline-median =
    { $known ->
        [known] the median of the team’s first three sprints ({ POINTS($velocity) })
       *[not-yet] the median of the team’s first three sprints, once there are three
    }
baseline-which =
    { $place ->
        [first] { $sprint } (ended { DATE($endsOn) }, { POINTS($velocity) } finished), the first sprint with a velocity
       *[later] { $sprint } (ended { DATE($endsOn) }, { POINTS($velocity) } finished)
    }
baseline-unchanged = Velocity growth of { $team } is compared with { $baseline }, as before.
baseline-changed = Velocity growth of { $team } is now compared with { $baseline }. Until now it was { $before }.
baseline-latest =
    { $change ->
        [none] For { $sprint }, the latest, it stays at { PERCENT($after) }.
       *[some] For { $sprint }, the latest, it is now { PERCENT($after) } instead of { PERCENT($before) }.
    }

## Values of several sprints, from a file

# The preview's heads; the sprints or the bad lines follow, one a line.
values-new = *The file would record:*
values-nothing = There is nothing new in the file.
values-bad = *Nothing was recorded. Correct these lines, then give the file again:*
values-sprint = • { $sprint } (ended { DATE($endsOn) }): { NUMBER($value) }
values-sprint-replaced = • { $sprint } (ended { DATE($endsOn) }): { NUMBER($value) }, in place of { NUMBER($previous) }
values-more = … and { NUMBER($count) } more.
values-same =
    { $sprints ->
        [one] { NUMBER($sprints) } sprint has the value of the file already.
       *[other] { NUMBER($sprints) } sprints have the value of the file already.
    }
values-without =
    { $rows ->
        [one] { NUMBER($rows) } row has no value and is left out.
       *[other] { NUMBER($rows) } rows have no value and are left out.
    }
values-recorded =
    { $sprints ->
        [one] *The value of { NUMBER($sprints) } sprint is recorded:*
       *[other] *The values of { NUMBER($sprints) } sprints are recorded:*
    }
