### A joint date of parts that several teams do (`/loadline forecast together`). Nothing here may tell one team from another.

joint-lead = { $name }: all parts are done by { DATE($surely) }, with a chance of { WHOLE_PERCENT($chance) } at least.
joint-lead-none = { $name }: no day in sight by which all parts are done with a chance of { WHOLE_PERCENT($chance) } for sure.
joint-lead-unknown = { $name }: no joint date yet.
joint-unknown =
    { $count ->
        [one] { LIST($teams) } can’t forecast its part yet: it takes three closed sprints that finished something.
       *[other] { LIST($teams) } can’t forecast their parts yet: it takes three closed sprints that finished something.
    }
joint-soonest = If the parts went well and badly together, { WHOLE_PERCENT($chance) } would be reached by { DATE($soonest) } already; nobody knows how far they do.
joint-even = An even chance ({ WHOLE_PERCENT($chance) }): { DATE($surely) }.
joint-even-between = An even chance ({ WHOLE_PERCENT($chance) }): some day from { DATE($soonest) } to { DATE($surely) }.
joint-even-from = An even chance ({ WHOLE_PERCENT($chance) }): { DATE($soonest) } or later.
joint-even-none = An even chance ({ WHOLE_PERCENT($chance) }) is nowhere in sight.
joint-parts = The parts are those that { LIST($teams) } keep by this name.
joint-stale = *Old number:* nobody has said what’s left since the latest sprint closed of { LIST($teams) }. In those channels: `/loadline forecast keep { $name }`, with the points.
# The last item of such a list.
joint-more-teams = { NUMBER($count) } more

## What it doesn't know

joint-unknown-together = How far the parts hang together. The day holds even if they get in each other’s way as much as can be, as long as each part’s own forecast is right: on three real projects such days held in 68 to 96 of 100 cases, where 85 were told. Chances are never multiplied, for sprints go well and badly together.
joint-unknown-fit = The work of fitting the parts together, unless it’s among their points.
joint-unknown-parts = Parts that are kept by another name, or by a team that you may not read.

## The picture

joint-chart-title = All parts done
joint-chart-basis =
    { $parts ->
        [one] { NUMBER($parts) } part. The chance lies between the two lines.
       *[other] { NUMBER($parts) } parts. The chance lies between the two lines.
    }
joint-chart-chance = chance that all are done
joint-chart-surely = { WHOLE_PERCENT($chance) } at least by
joint-chart-key-least = at least, however they hang together
joint-chart-key-most = at most, if they hang together fully
joint-alt-subject =
    { $parts ->
        [one] Chance that { NUMBER($parts) } part of “{ $name }” is done.
       *[other] Chance that all { NUMBER($parts) } parts of “{ $name }” are done.
    }
joint-alt-chances = By the end of the day: { LIST($chances) }.
# One of them.
joint-alt-chance = { SHORT_DATE($on) } { CHANCE($least) } to { CHANCE($most) }
