### Cards: lists of them, bringing one in, dropping, taking and reopening one.

## Counts

cards-count =
    { $cards ->
        [one] { NUMBER($cards) } card
       *[other] { NUMBER($cards) } cards
    }
cards-open-count =
    { $cards ->
        [one] { NUMBER($cards) } open card
       *[other] { NUMBER($cards) } open cards
    }
cards-more-count =
    { $cards ->
        [one] { NUMBER($cards) } more card
       *[other] { NUMBER($cards) } more cards
    }
# The last line of a list that is cut off.
cards-more = … and { cards-more-count }.
# The same, with the command that shows the rest.
cards-more-from = … and { cards-more-count }: `/loadline cards { $from }`

## One card, as a line of a list

cards-line = { $number }. { $card }: { SERIES($facts) } ({ $owners })
# $on is empty when the words of the person who said it were erased.
cards-blocked = Blocked since { DAY($since) }: { $on }
cards-blocked-unsaid = Blocked since { DAY($since) }.
# A card of a plan.
cards-planned-line = { $number }. { $card }: { POINTS($points) } ({ $owners })
cards-estimate = estimate { NUMBER($points) }
cards-left =
    { $points ->
        [0] nothing left
       *[other] { POINTS($points) } left
    }
cards-finished = finished
cards-dropped = dropped
cards-pulled-in = pulled in
cards-surprise = surprise work { SIGNED($points) }
cards-drift = estimate drift { SIGNED($points) }
cards-owners = { SERIES($owners) }
cards-no-owner = nobody yet

## The list: /loadline cards

cards-title = { $sprint }: { cards-count }, { POINTS($left) } left
cards-title-none = { $sprint }: { cards-count }
# $reader is on the team, or its product owner who isn't.
cards-none =
    { $reader ->
        [team] No card is in the sprint yet. Bring one in with `/loadline pull`.
       *[owner] No card is in the sprint yet.
    }
cards-none-from = No card has the number { $from } or a higher one. See them all with `/loadline cards`.
cards-change =
    { $reader ->
        [team] Change a card by its number: `/loadline take 3`, `/loadline give 3 @name`, `/loadline drop 3 reason`, `/loadline reopen 3`.
       *[owner] Drop a card by its number: `/loadline drop 3 reason`. To take that back: `/loadline undrop 3`.
    }

## Replies

card-pulled = Pulled into { $sprint } as card { $number }: { $card }, { POINTS($points) } ({ $owners }).
# Over the list of the cards.
cards-pulled-title =
    { $cards ->
        [one] Pulled into { $sprint }: { NUMBER($cards) } card
       *[other] Pulled into { $sprint }: { NUMBER($cards) } cards
    }
card-pulled-total = Pulled-in work is now { POINTS($points) }.
card-pulled-total-share = Pulled-in work is now { POINTS($points) }, { PERCENT($share) } of the commitment.
# Of open cards of which one came in now. $number is that of the last of them.
card-pulled-alike = Cards { LIST($cards) } have the same title as another one. If one is a copy, drop it: `/loadline drop { $number } a copy`.
card-pulled-no-owner = Nobody is asked about it until somebody takes it: `/loadline take { $number }`.
card-dropped = Dropped from { $sprint }: card { $number }, { $card }.
card-dropped-reason = Reason: { $reason }
card-dropped-counts =
    { $part ->
        [planned] It keeps its { POINTS($points) } in the commitment and counts as not finished.
       *[pulled-in] It keeps its { POINTS($points) } in the pulled-in work and counts as not finished.
    }
card-undropped = The drop is taken back: card { $number } of { $sprint }, { $card }, is in the sprint again, with { $left }.

# Over the list of the cards.
cards-owners-title =
    { $act ->
        [take] { $cards ->
            [one] { $sprint }: this card is now yours
           *[other] { $sprint }: these cards are now yours
        }
        [release] { $cards ->
            [one] { $sprint }: this card was given back
           *[other] { $sprint }: these cards were given back
        }
       *[give] { $cards ->
            [one] { $sprint }: this card has changed hands
           *[other] { $sprint }: these cards have changed hands
        }
    }
cards-taken-next = The daily prompt will ask you. To answer now: `/loadline answer`.
cards-owners-next = The daily prompt asks the owners shown here. Nothing that was said about the cards has changed.

# To a facilitator.
cards-blocked-title =
    { $cards ->
        [one] A card of { $sprint } is blocked
       *[other] { NUMBER($cards) } cards of { $sprint } are blocked
    }
cards-blocked-over = The card of { $sprint } that was blocked is moving again.
cards-blocked-next = `/loadline status` begins with all blocked cards.

# To somebody who got cards: $by is who gave them.
cards-given-title =
    { $cards ->
        [one] { $by } gave you a card of { $sprint }
       *[other] { $by } gave you { NUMBER($cards) } cards of { $sprint }
    }

# To the product owner.
card-dropped-by = { $by } dropped card { $number } of { $sprint }, { $card }.
card-dropped-take-back = If that was a mistake, you can take it back.
# A button under the message that a card was dropped.
card-take-drop-back = Take it back
card-dropped-taken-back = The drop was taken back: the card is in the sprint again.
card-dropped-gone = A card of { $sprint } was dropped.

card-reopened = Card { $number } of { $sprint }, { $card }, is open again.
card-reopened-next = Say what is left on it: `/loadline answer`. Until then it counts as having nothing left.
card-blocked = Card { $number } of { $sprint }, { $card }, is blocked: { $reason }
card-blocked-next = The next answer about it ends that, or `/loadline moving { $number }`.
card-moving = Card { $number } of { $sprint }, { $card }, is moving again: { $left }.

## To a facilitator: open cards without an owner

cards-need-owner-title = { $cards ->
        [one] { cards-open-count } of { $sprint } needs an owner
       *[other] { cards-open-count } of { $sprint } need an owner
    }
cards-have-owner-title = Every open card of { $sprint } has an owner again
cards-need-owner-next =
    { $cards ->
        [one] Nobody is asked about it.
       *[other] Nobody is asked about them.
    } To take a card over, type `/loadline take { $number }`; to drop one that isn’t wanted any more, `/loadline drop { $number } reason`.
cards-need-owner-kept = What was said about these cards stays as it was.

## The form that brings cards in

pull-title = Pull in cards
pull-submit = Pull in
pull-days =
    { $days ->
        [0] { $sprint }: no working day comes after today.
        [one] { $sprint }: { NUMBER($days) } working day comes after today.
       *[other] { $sprint }: { NUMBER($days) } working days come after today.
    }
# The INVEST criteria of Bill Wake (2003), in our own words.
pull-checklist-title = Before you pull it in
pull-checklist-independent = • Independent: can it be finished without waiting for another card?
pull-checklist-negotiable = • Negotiable: may the team still choose how to do it?
pull-checklist-valuable = • Valuable: who will be glad that it is done this sprint?
pull-checklist-estimable = • Estimable: do you know enough to give it points?
pull-checklist-small =
    { $time ->
        [today] • Small: does it fit into today?
       *[days] • Small: does it fit into the time that is left?
    }
pull-checklist-testable = • Testable: how will you see that it is finished?
pull-cards-hint = title, estimate, @owner, and a link if there is one. Halves are fine, such as 0.5. Lists, tables and rows of a spreadsheet work as well. A title may begin with a short name: berth-3: Fog horn. Nobody is asked about a card without an owner.
# Where a message is to become a card, whose line has a question mark for its estimate.
pull-message =
    { $link ->
        [unknown] Put the card’s estimate in place of the question mark. The message’s address isn’t known here, so the card has no link yet. Paste one at the end of the line, or go on without.
       *[known] Put the card’s estimate in place of the question mark. The link leads to the message.
    }
pull-choose-team = You are on several teams with a running sprint.
pull-team = Pull in for

## The form that drops a card

drop-title = Drop a card
drop-submit = Drop
drop-nothing = { $sprint } has no card to drop. See its cards with `/loadline cards`.
drop-intro = A card dropped from { $sprint } still counts with its estimate, as not finished, and is listed with your reason. If it was a mistake, it can be taken back.
drop-card = Card
drop-choice = { $number }. { $card } ({ POINTS($points) })
drop-reason = Reason
drop-reason-hint = The channel reads it with the verdict.
