### Will a card be finished when it is pulled in now? In the form, and in the reply after a card came in.

## In the form

pull-in-title = Will it be finished?
# Each size in a line. $known: whether so many comparable cards were pulled in before
pull-in-size =
    { $known ->
        [none] { POINTS($points) }: { CHANCE($after) } chance after the open work, { CHANCE($first) } if done first
       *[some] { POINTS($points) }: { CHANCE($after) } chance after the open work, { CHANCE($first) } if done first; of { NUMBER($cards) } such cards { NUMBER($finished) } were finished
    }
# The same where nothing else is open.
pull-in-size-alone =
    { $known ->
        [none] { POINTS($points) }: { CHANCE($first) } chance
       *[some] { POINTS($points) }: { CHANCE($first) } chance; of { NUMBER($cards) } such cards { NUMBER($finished) } were finished
    }
pull-in-too-large =
    { $sizes ->
        [1] { POINTS($points) }: hardly, even if done first
       *[other] { POINTS($points) } or more: hardly, even if done first
    }
pull-in-basis =
    { $sprints ->
        [one] Based on { NUMBER($sprints) } closed sprint of the team and the surprise work that cards of each size tend to hold.
       *[other] Based on { NUMBER($sprints) } closed sprints of the team and the surprise work that cards of each size tend to hold.
    }
pull-in-queue = It assumes one queue for the whole team: if the card’s owner is free and the others aren’t, look at “done first”. What is done first leaves that much less time for the { POINTS($points) } of open work.
pull-in-nothing-open = Nothing else is open.
# Before the sentence that says why, and a hint after it.
pull-in-no-chance = The chance isn’t known.
pull-in-import-hint = More history: `/loadline import`.
pull-in-empty-scale = The scale is empty.
pull-in-record =
    { $cards ->
        [0] No card has been pulled into a closed sprint yet, so there is no record to look at.
        [one] { $finished ->
            [0] One card was pulled in before; it wasn’t finished in its sprint.
           *[other] One card was pulled in before; it was finished in its sprint.
        }
       *[other] { $finished ->
            [one] Of { NUMBER($cards) } cards pulled in before, { NUMBER($finished) } was finished in the same sprint.
           *[other] Of { NUMBER($cards) } cards pulled in before, { NUMBER($finished) } were finished in the same sprint.
        }
    }

## In the reply

pull-in-reply-fits = Going by the team’s history, its chance of being finished by the end is { CHANCE($after) }, or { CHANCE($first) } if it’s done before the open work.
pull-in-reply-first-only = Going by the team’s history, its chance of being finished after the open work is { CHANCE($after) }. Done first, it’s { CHANCE($first) }, and the open work waits.
pull-in-reply-hardly = Going by the team’s history, it probably won’t be finished by the end: the chance is { CHANCE($after) } after the open work, { CHANCE($first) } if done first.
pull-in-reply-alone = Going by the team’s history, its chance of being finished by the end is { CHANCE($first) }.
pull-in-reply-alone-hardly = Going by the team’s history, it probably won’t be finished by the end: the chance is { CHANCE($first) }.
pull-in-way-out = If it can wait, leave it for the next planning; if not, split off a part that fits, or agree which card waits in its place.
# Before the sentence that says why.
pull-in-reply-unknown = Whether it fits isn’t known.
pull-in-reply-record =
    { $which ->
        [comparable] Of { NUMBER($cards) } cards like it, { NUMBER($finished) } were finished; expect { PERCENT_SPAN($low, $high) } of the next ones.
       *[all] Of { NUMBER($cards) } cards pulled in before, { NUMBER($finished) } were finished; expect { PERCENT_SPAN($low, $high) } of the next ones.
    }
