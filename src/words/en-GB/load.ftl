### The mid-sprint reading: does the sprint carry too much or too little? In the status and the form to pull a card in.

## Why there is no reading. After the sentence that says so.

load-none = No load signal.
load-none-yet = No load signal yet.

## From the team's history

# $floor is that of the kept share; the verdict's other test, the surprise ratio, is not in the chance.
load-heavy = The load is heavy: the chance of finishing at least { PERCENT($floor) } of the commitment is { CHANCE($keep) }.
load-on-the-line = The load is on the line: the chance of finishing at least { PERCENT($floor) } of the commitment is { CHANCE($keep) }, that of finishing everything { CHANCE($all) }.
# Where all the cards have to be finished for that, such as both of 13 and 7 points for 80% of 20.
load-all-needed =
    { $signal ->
        [heavy] The load is heavy: finishing at least { PERCENT($floor) } of the commitment takes every card that is open, and the chance of that is { CHANCE($keep) }.
       *[on-the-line] The load is on the line: finishing at least { PERCENT($floor) } of the commitment takes every card that is open, and the chance of that is { CHANCE($keep) }.
    }
load-light = The load is light: the chance of finishing everything is { CHANCE($all) }.
load-all-done =
    { $signal ->
        [light] The load is light: everything in the sprint is finished.
       *[on-the-line] The load is on the line: everything in the sprint is finished.
    }
load-no-commitment = No load signal: there was no commitment, so there is nothing to keep. The chance of finishing everything in the sprint is { CHANCE($all) }.
load-end = About { POINTS($points) } will probably be finished by the end.
load-end-wide =
    { $ends ->
        [same] Of 10 sprints like this, 8 end at { NUMBER($high) }.
       *[apart] Of 10 sprints like this, 8 end between { NUMBER($low) } and { NUMBER($high) }.
    }
load-end-narrow =
    { $ends ->
        [same] Half of them end at { NUMBER($high) }.
       *[apart] Half of them end between { NUMBER($low) } and { NUMBER($high) }.
    }
# In place of both.
load-end-unknown = How far off that may be is known once { NUMBER($sprints) } sprints have been watched to their end.
load-basis =
    { $sprints ->
        [one] Based on { NUMBER($sprints) } closed sprint of the team.
       *[other] Based on { NUMBER($sprints) } closed sprints of the team; those most like this one count most.
    }
# Which of two models speaks, and over how many sprints it was the nearer one.
load-basis-model =
    { $model ->
        [cards] Reckoned card by card, from size, days without a move and what waits in one queue: over your latest { NUMBER($sprints) } sprints that was nearer than sums alone.
       *[sums] Reckoned from sums: over your latest { NUMBER($sprints) } sprints that was nearer than card by card.
    }
load-basis-others = A little comes from other teams.
load-basis-unlike = Hardly any of them was like this one, so the answer is wide.
load-unknown = It doesn’t know who will be away, what kind of work the open cards hold, or what hasn’t been answered yet.

## From this sprint's pace alone. Points are whole and without a sign.

# In the first half of a sprint: the direction only, for a few days say nothing of the amount.
load-pace-early =
    { $signal ->
        [heavy] The load may be heavy: at the pace of the first { NUMBER($days) } working days, work would be left at the end. So few days can’t say how much.
        [light] The load may be light: at the pace of the first { NUMBER($days) } working days, everything would be finished early. So few days can’t say whether there is room for more.
       *[on-the-line] The load may be on the line: at the pace of the first { NUMBER($days) } working days, everything would be finished about in time. After so few days, that can still change.
    }
load-pace-heavy = The load is heavy: at the pace so far, about { POINTS($points) } will be left at the end.
load-pace-light = The load is light: at the pace so far, there is room for about { POINTS($points) } more.
load-pace-even = The load is on the line: at the pace so far, everything will be finished just in time.
load-pace-even-left = The load is on the line: at the pace so far, about { POINTS($points) } will be left at the end.
load-pace-even-room = The load is on the line: at the pace so far, everything will be finished, with room for about { POINTS($points) } more.
load-pace-plain = This is the plain pace of this sprint, which knows days off and otherwise treats every day the same.
load-pace-history =
    { $sprints ->
        [one] From { NUMBER($needed) } closed sprints on, the team’s own history gives the chance that the commitment is kept; so far there is { NUMBER($sprints) }. Past sprints can be brought in with `/loadline import`.
       *[other] From { NUMBER($needed) } closed sprints on, the team’s own history gives the chance that the commitment is kept; so far there are { NUMBER($sprints) }. Past sprints can be brought in with `/loadline import`.
    }
