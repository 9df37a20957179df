### Coaching notes below a verdict: what was crossed (a heading), what it may mean, and one thing to try in the
### next sprint. They speak to the team about its way of working, never about a person.
### $value, $threshold: percentages; $distance: percentage points between them, with their unit.

note-kept-share-low-crossed = The kept share is { $value }, { $distance } below its floor of { $threshold }.
note-kept-share-low-may-mean = The team committed to more than the sprint could hold, or started many cards and finished few.
note-kept-share-low-try = At the next planning, stop adding cards at what the team has lately finished, not at what it wishes for. And finish a card before starting another.

note-surprise-ratio-high-crossed = The surprise ratio is { $value }, { $distance } above its ceiling of { $threshold }.
note-surprise-ratio-high-may-mean = Cards held work that nobody could see at planning: a dependency, old code, a rule that nobody asked about.
note-surprise-ratio-high-try = Look at the cards that held surprises and write down the question that would have revealed each one. Ask those questions about the big cards at the next planning.

note-pull-in-ratio-high-crossed = The pull-in ratio is { $value }, { $distance } above its ceiling of { $threshold }.
note-pull-in-ratio-high-may-mean = The team commits to too little and fills the sprint later, or urgent work comes in from outside.
note-pull-in-ratio-high-try = Ask of each pulled-in card whether it could have been planned. If most could, commit to more next time. If most couldn’t, keep room for them and agree who lets work in.

note-plan-share-low-crossed = The plan share is { $value }, { $distance } below its floor of { $threshold }.
note-plan-share-low-may-mean = A good part of the sprint was work that planning didn’t see, so the plan steered less than it should.
note-plan-share-low-try = Split the unplanned part into pulled-in work and surprise work, and discuss only the larger of the two at the retrospective.

note-estimate-accuracy-low-crossed = The estimate accuracy is { $value }, { $distance } below its floor of { $threshold }.
note-estimate-accuracy-low-may-mean = Cards were not well understood, the code was unfamiliar, or a skill was missing.
note-estimate-accuracy-low-try = Take the card that missed its estimate by most and go through it together: what would the team have had to know? Split the next card of that kind before estimating it.

note-estimate-accuracy-high-crossed = The estimate accuracy is { $value }, { $distance } above its ceiling of { $threshold }.
note-estimate-accuracy-high-may-mean = Estimates this exact are fine if they come cheaply. If they take long talks, the time may cost more than it brings.
note-estimate-accuracy-high-try = Timebox estimating: 90 seconds a card is a usual limit. See whether the accuracy stays good enough.

# A mark is good to reach. "right" where the value is exactly the mark.
note-velocity-growth-first-mark-crossed =
    { $place ->
        [right] The velocity growth is { $value }, right on the mark.
       *[past] The velocity growth is { $value }, { $distance } past the mark of { $threshold }.
    }
note-velocity-growth-first-mark-may-mean = At this mark most teams can steer themselves, unless the points have merely grown with time.
note-velocity-growth-first-mark-try = Check that a 3 of today is about a 3 of the baseline sprint. If it is, let the team run the next planning by itself, with the facilitator listening.

note-velocity-growth-long-range-mark-crossed =
    { $place ->
        [right] The velocity growth is { $value }, right on the mark.
       *[past] The velocity growth is { $value }, { $distance } past the mark of { $threshold }.
    }
note-velocity-growth-long-range-mark-may-mean = The team has reached the long-range mark, unless the points have merely grown with time.
note-velocity-growth-long-range-mark-try = Check the size of a point against old cards, write down what brought the growth, and choose a new baseline sprint to go on from.

# $sprints: in a row, for one card.
note-carry-over-repeated-crossed =
    { $cards ->
        [one] A card has now been open at the end of { NUMBER($sprints) } sprints in a row.
       *[other] { NUMBER($cards) } cards have now been open at the end of two or more sprints in a row.
    }
note-carry-over-repeated-may-mean = A card that is carried over again and again may be too large for a sprint, wait for something outside the team, or matter less than it did.
note-carry-over-repeated-try = At the next planning, split it into parts that can each be finished, or drop it. Plan it whole only when what held it up is gone.
# In the list below the note.
note-carried-card =
    { $sprints ->
        [one] { $card }: open at the end of { NUMBER($sprints) } sprint in a row
       *[other] { $card }: open at the end of { NUMBER($sprints) } sprints in a row
    }

note-answer-rate-low-crossed =
    { $met ->
        [one] The answer rate is { $value }, { $distance } below its floor of { $threshold }: { NUMBER($met) } of { NUMBER($prompts) } daily prompts was answered. A card that nobody answers for counts as unchanged, so what grew or was finished there shows late or never.
       *[other] The answer rate is { $value }, { $distance } below its floor of { $threshold }: { NUMBER($met) } of { NUMBER($prompts) } daily prompts were answered. A card that nobody answers for counts as unchanged, so what grew or was finished there shows late or never.
    }
note-answer-rate-low-may-mean = The prompts may come at an awkward time, or ask about more cards than are in work.
note-answer-rate-low-try = Ask at the retrospective what would make the prompt easy to answer: another time of day, or fewer cards in work at once. “Nothing changed” takes one click, and so does “away”.

## What the team's history says of the crossed number

note-history-first = This is the first sprint with this number.
note-history-often =
    { $line ->
        [mark] Reached in { NUMBER($sprints) } of the latest { NUMBER($of) } sprints, this one included.
       *[threshold] Crossed in { NUMBER($sprints) } of the latest { NUMBER($of) } sprints, this one included.
    }
note-history-signal =
    { $kind ->
        [above] That is a signal: it’s far above what is usual for the team ({ PERCENT_SPAN($low, $high) }).
        [below] That is a signal: it’s far below what is usual for the team ({ PERCENT_SPAN($low, $high) }).
        [rise] That is a signal: the last { NUMBER($sprints) } sprints were at { WHOLE_PERCENT($mean) } on average, the sprints before at { WHOLE_PERCENT($before) }.
       *[fall] That is a signal: the last { NUMBER($sprints) } sprints were at { WHOLE_PERCENT($mean) } on average, the sprints before at { WHOLE_PERCENT($before) }.
    } Something has changed; what was different?
note-history-usual = Usual for the team: { PERCENT_SPAN($low, $high) } (over { NUMBER($sprints) } sprints). { $so ->
        [mark] See whether the next sprints reach it as well.
        [unusual] This one is outside of that, which one sprint may be by chance: see whether the next one is as well.
        [often] It usually goes like this, so only a change in the way of working will change it.
       *[seldom] So this is no signal.
    }
# Once, below all notes.
note-history-ordinary = What is usual for a team is ordinary variation: one sprint proves little, so look at the way of working behind all of them rather than at this one.

## How much to commit to next

note-range-basis =
    { $sprints ->
        [one] (from { NUMBER($sprints) } sprint, for { $scaledTo }; this time it was { NUMBER($committed) })
       *[other] (from { NUMBER($sprints) } sprints, for { $scaledTo }; this time it was { NUMBER($committed) })
    }
note-range-next = Next, at { POINTS($points) }: { SERIES($chances) } { $basis }.
# Before the sentence that says why.
note-range-unknown = How much to try next isn’t known.
note-range-usually-kept = The team usually keeps a commitment of this size: before committing to less, ask what was different this time.
note-try-next = Try next: { $try }
