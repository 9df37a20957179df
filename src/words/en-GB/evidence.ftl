### What the ledger shows about how a sprint went, in the verdict: a fact ("evidence-…"), a question to the team
### ("evidence-…-ask"), and one thing to try ("evidence-…-try"). Causes are asked about and never asserted, and nobody is
### named. $unfinished: points of the commitment that were not finished.

# $card: the one that was blocked for longest. $cardDays: evenings on which it was blocked, of all cards together.
evidence-blocked =
    { $cards ->
        [one] { $card } was blocked on { NUMBER($cardDays) } evenings; it has { NUMBER($points) } of the { POINTS($unfinishedPoints) } not finished.
       *[other] { NUMBER($cards) } cards with { NUMBER($points) } of the { POINTS($unfinishedPoints) } not finished were blocked, for { NUMBER($cardDays) } card-days in all; for longest { $card }.
    }
evidence-blocked-ask = What would have got it moving sooner?
evidence-blocked-try = When a card is blocked in the evening, take it up together the next morning.

evidence-plan-changed =
    { $droppedCards ->
        [one] The plan changed: a committed card with { POINTS($droppedPoints) } was dropped, and cards with { POINTS($pulledInPoints) } came in after planning.
       *[other] The plan changed: { NUMBER($droppedCards) } committed cards with { POINTS($droppedPoints) } were dropped, and cards with { POINTS($pulledInPoints) } came in after planning.
    }
evidence-plan-changed-ask = What was learnt after planning that could have been known before it?
evidence-plan-changed-try = At the next planning, ask what could still change the plan. Keep room for it, or plan for fewer days.

# $from: the day on which the first of these cards came.
evidence-pulled-in-before = { POINTS($pulledInPoints) } of work went into cards pulled in from { DAY($from) } on, while { POINTS($unfinishedPoints) } of the commitment stayed unfinished.
evidence-pulled-in-before-ask = Could the pulled-in work have waited?
evidence-pulled-in-before-try = Before you pull a card in, ask whether everything committed is safe.

# $part: whether it is everything that was not finished.
evidence-dropped =
    { $part ->
        [all] { $cards ->
            [one] All that wasn’t finished is a committed card with { POINTS($points) } that was dropped.
           *[other] All that wasn’t finished is { NUMBER($cards) } committed cards with { POINTS($points) } that were dropped.
        }
       *[some] { $cards ->
            [one] A committed card with { POINTS($points) } was dropped; in all, { POINTS($unfinishedPoints) } stayed unfinished.
           *[other] { NUMBER($cards) } committed cards with { POINTS($points) } were dropped; in all, { POINTS($unfinishedPoints) } stayed unfinished.
        }
    }
evidence-dropped-ask = What would have shown at planning that they were not ready, or not needed?
evidence-dropped-try = At the next planning, ask of each card what would make you drop it. Leave out the ones that wait for an answer.

# $part: whether it is everything that was not finished. $after: whether it grew by surprise work.
evidence-one-card =
    { $part ->
        [all] { $after ->
            [surprise] All that stayed unfinished is one card, { $card }: { POINTS($leftPoints) } left, after { POINTS($surprisePoints) } of surprise work.
           *[nothing] All that stayed unfinished is one card, { $card }: { POINTS($leftPoints) } left.
        }
       *[some] { $after ->
            [surprise] One card holds { NUMBER($points) } of the { POINTS($unfinishedPoints) } not finished, { $card }: { POINTS($leftPoints) } left, after { POINTS($surprisePoints) } of surprise work.
           *[nothing] One card holds { NUMBER($points) } of the { POINTS($unfinishedPoints) } not finished, { $card }: { POINTS($leftPoints) } left.
        }
    }
evidence-one-card-ask = Could a part of it have been finished by itself?
evidence-one-card-try = At the next planning, split cards as large as that into parts that can each be finished.

# $by: what the growth was called.
evidence-grew =
    { $by ->
        [drift] The committed cards grew by { POINTS($growthPoints) }, and { POINTS($unfinishedPoints) } of the commitment stayed unfinished. Nobody called it surprise work: the same work was larger than estimated.
        [surprise] The committed cards grew by { POINTS($growthPoints) } of surprise work, and { POINTS($unfinishedPoints) } of the commitment stayed unfinished.
       *[both] The committed cards grew by { POINTS($growthPoints) } ({ NUMBER($surprisePoints) } surprise work, { NUMBER($driftPoints) } estimate drift), and { POINTS($unfinishedPoints) } of the commitment stayed unfinished.
    }
evidence-grew-ask = What did the team learn about these cards that it could have asked at planning?
evidence-grew-try = Take the card that grew most and write down what would have shown it. Ask that about the large cards at the next planning.

# Member-days.
evidence-days-off = { NUMBER($daysOff) } of the team’s { NUMBER($of) } usual member-days were days off or away.
evidence-days-off-ask = Did the commitment allow for that?
evidence-days-off-try = Before you commit, see what fits the days on which people are there: `/loadline range`.

evidence-never-begun = { NUMBER($cards) } committed cards with { POINTS($points) } were never begun; in all, { POINTS($unfinishedPoints) } stayed unfinished.
evidence-never-begun-ask = Was there room for them when the team committed?
evidence-never-begun-try = At the next planning, stop adding cards at what the team has lately finished.

evidence-open-on-last-morning = { NUMBER($cards) } of { NUMBER($of) } committed cards were still open on the last morning.
evidence-open-on-last-morning-ask = Were more cards in work at once than needed?
evidence-open-on-last-morning-try = Finish a card before starting another: agree how many may be in work at once.

evidence-nearly-done =
    { $cards ->
        [one] The card not finished had { POINTS($leftPoints) } left of its { NUMBER($unfinishedPoints) }.
       *[other] The { NUMBER($cards) } cards not finished had { POINTS($leftPoints) } left of their { NUMBER($unfinishedPoints) }.
    }
evidence-nearly-done-ask = Would fewer cards in work at once have let some of them get finished?
evidence-nearly-done-try = Finish a card before starting another: agree how many may be in work at once.

evidence-worked-less = The team worked { POINTS($workedPoints) } on a commitment of { NUMBER($commitmentPoints) }.
evidence-worked-less-ask = What else took the team’s time?
evidence-worked-less-try = At the next planning, stop adding cards at what the team has lately finished.

# $part: whether it is all of the surprise work.
evidence-surprise-one-card =
    { $part ->
        [all] All of the surprise work came in one card, { $card }.
       *[some] { NUMBER($surprisePoints) } of the { POINTS($allPoints) } of surprise work came in one card, { $card }.
    }
evidence-surprise-one-card-ask = Which question at planning would have shown it?
evidence-surprise-one-card-try = Write that question down, and ask it about the large cards at the next planning.

# $sizePoints: the smallest of these cards.
evidence-surprise-large-cards =
    { $cards ->
        [one] { NUMBER($surprisePoints) } of the { POINTS($allPoints) } of surprise work came in the one card of { POINTS($sizePoints) } or more.
       *[other] { NUMBER($surprisePoints) } of the { POINTS($allPoints) } of surprise work came in the { NUMBER($cards) } cards of { POINTS($sizePoints) } or more.
    }
evidence-surprise-large-cards-ask = What did those cards hide at planning?
evidence-surprise-large-cards-try = Split cards of that size before you estimate them.

evidence-surprise-spread = Surprise work came up in { NUMBER($cards) } of { NUMBER($of) } cards, with no card holding half of it.
evidence-surprise-spread-ask = What do these cards have in common?
evidence-surprise-spread-try = Write down the question that would have shown each surprise. Ask the best of them at the next planning.

evidence-pulled-in-after = { NUMBER($points) } of { POINTS($allPoints) } pulled in came when everything committed was finished.
evidence-pulled-in-after-ask = Could the team have committed to that work?
evidence-pulled-in-after-try = Commit to a little more next time.

# $from: the day on which the first of these cards came.
evidence-pulled-in-late = { NUMBER($points) } of { POINTS($allPoints) } pulled in came late, from { DAY($from) } on, while committed cards were still open.
evidence-pulled-in-late-ask = Could they have waited for the next planning?
evidence-pulled-in-late-try = In the last third of a sprint, let new cards wait for the next planning, unless somebody says what they push out.

evidence-pulled-in-while-open = { NUMBER($points) } of { POINTS($allPoints) } pulled in came while committed cards were still open.
evidence-pulled-in-while-open-ask = Could it have been planned, or did it come from outside?
evidence-pulled-in-while-open-try = Agree who lets work in, and keep room for what can’t be planned.

# $part: whether it is all of the points by which estimates were off.
evidence-estimates-one-card =
    { $part ->
        [all] All of the estimate error is one card, { $card }: estimate { NUMBER($estimatePoints) }, true size { NUMBER($sizePoints) }.
       *[some] { NUMBER($offPoints) } of the { POINTS($allPoints) } by which estimates were off are one card, { $card }: estimate { NUMBER($estimatePoints) }, true size { NUMBER($sizePoints) }.
    }
evidence-estimates-one-card-ask = What would the team have had to know to see its size?
evidence-estimates-one-card-try = Go through that card together, and split the next one of its kind before you estimate it.

# $larger: how many of them turned out larger than estimated.
evidence-estimates-spread = { NUMBER($cards) } of { NUMBER($of) } cards were off their estimates, by { POINTS($allPoints) } in all; { NUMBER($larger) } of them turned out larger.
evidence-estimates-spread-ask = What do these cards have in common?
evidence-estimates-spread-try = Before the next planning, compare new cards with two of these, and estimate them by what those came to.

evidence-all-finished =
    { $daysLeft ->
        [0] { evidence-all-cards } finished, the last on { DAY($day) }, the last day.
        [one] { evidence-all-cards } finished by { DAY($day) }, { NUMBER($daysLeft) } working day before the end.
       *[other] { evidence-all-cards } finished by { DAY($day) }, { NUMBER($daysLeft) } working days before the end.
    }
evidence-all-cards =
    { $cards ->
        [one] The committed card was
        [2] Both committed cards were
       *[other] All { NUMBER($cards) } committed cards were
    }
evidence-all-finished-ask = What made that work, and how does the team keep it?
evidence-nothing-grew = No card grew.
evidence-nothing-grew-ask = What made these estimates hold?
evidence-little-surprise =
    { $surprisePoints ->
        [0] There was no surprise work.
       *[other] Surprise work stayed at { POINTS($surprisePoints) } of { NUMBER($commitmentPoints) } committed.
    }
evidence-little-surprise-ask = What did the team know at planning that kept surprises small?

## Leading notes without evidence of one card or one day

evidence-went-well-try = Ask at the retrospective what made it hold, and do that again.
evidence-no-plan = There was no commitment, so there was nothing to keep.
# $pulledIn: estimates of the cards that came in; $finished: of those that were finished.
evidence-no-plan-facts = Cards with { POINTS($pulledIn) } came in as the sprint went on, and { POINTS($finished) } were finished.
evidence-no-plan-ask = What kept the team from planning?
evidence-no-plan-try = Commit to what the team can finish, even if it is little: `/loadline plan`.
