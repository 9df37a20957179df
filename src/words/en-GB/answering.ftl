### The daily prompt, the reminders, the answer form, and the question why a card grew. Only the member sees them.

## The daily prompt: one message, changed in place through the day

prompt-asked = { DAY($day) }: what is left on your cards?
prompt-cards = In { $sprint } you have { cards-count }:
# On the sprint's first morning: a list, and no question.
# Over the part of a message that is about this team; such a message is about several.
prompt-team = { $team }
prompt-listed = { DAY($day) }: { $sprint } begins
prompt-listed-cards = You have { cards-count }:
prompt-listed-next =
    { $rest ->
        [more] Nothing to answer yet: from the next working day on I ask what is left. If you know more already, answer here.
       *[none] Nothing to answer yet. If you know more already, answer here.
    }
prompt-answered = Recorded for { DAY($day) } in { $sprint }
prompt-unchanged = Recorded for { DAY($day) } in { $sprint }: nothing changed
prompt-still-left = Still left:
prompt-away = Recorded for { DAY($day) } in { $sprint }: you are away
prompt-away-next = Your cards stay as they are, and you won’t be asked again for this day.
prompt-over = { $sprint } is over
prompt-over-day = The question for { DAY($day) } no longer needs an answer.
prompt-over-answered = You had answered:
# The cards were given away or dropped since the message was sent.
prompt-no-card = You have no open card in { $sprint } any more, so there is nothing to answer.
# A card in the list, with the number by which an answer in words calls it.
prompt-card-line = { $place }. { $card }: { $left }
prompt-more-cards = … and { NUMBER($cards) } more of your cards: `/loadline cards` lists them.
prompt-answered-line = • { $card }: { SERIES($facts) }
prompt-answered-line-note = • { $card }: { SERIES($facts) } – { $note }
prompt-worked = worked { NUMBER($points) }
prompt-more-answers =
    { $answers ->
        [one] … and { NUMBER($answers) } more answer, recorded as well.
       *[other] … and { NUMBER($answers) } more answers, recorded as well.
    }
prompt-untouched = Not answered, so as before:
# Below the question.
prompt-closes = The sprint closes on { $closing }.

## How to answer in words

prompt-words-one = Or write here what is left, for example `3`. To say what you worked as well: `3 worked 1`. Stuck? `3 blocked reason`.
prompt-words-two = Or write here what is left: `3, 0` in this order, or `2: 3` for card 2 alone. To say what you worked as well: `2: 3 worked 1`. Stuck? `2: 3 blocked reason`.
prompt-words-three = Or write here what is left: `3, 0, 5` in this order, or `2: 3` for card 2 alone. To say what you worked as well: `2: 3 worked 1`. Stuck? `2: 3 blocked reason`.
prompt-words-several = Or write here what is left: `2: 3` for card 2 alone. To say what you worked as well: `2: 3 worked 1`. Stuck? `2: 3 blocked reason`.

## Buttons

# $place is the card's number in the list above; one blocked card needs no number.
prompt-moving-button =
    { $cards ->
        [only] Moving again
       *[several] Card { $place } is moving again
    }
prompt-answer-button = Answer
prompt-unchanged-button = Nothing changed
prompt-away-button = Away today
prompt-change-button = Change my answer
prompt-after-all-button = Answer after all

## The reminder and the last call

reminder-title = Reminder: what is left on your cards in { $sprint }?
reminder-only-one = There is no second reminder today.
last-call-title = Last call: { $sprint } closes on { $closing }
last-call-question = Is this still so? Without an answer your cards count as listed here:
# A card that nobody has answered for yet.
last-call-line-never = { $place }. { $card }: { $left }, as nobody has answered for it yet
# What the person who reads it said.
last-call-line = { $place }. { $card }: { $left }, you said on { $moment }
last-call-line-other = { $place }. { $card }: { $left }, { $who } said on { $moment }
last-call-still-so-button = Still so

## Why a card grew, after an answer in words

growth-title =
    { $cards ->
        [one] A card grew. Why?
       *[other] { cards-count } grew. Why?
    }
# In place of the title, when another owner has said another number on the same day.
growth-title-other = Which number is later?
growth-line-other = • { $card }: { $who } said { $left } on { $moment }. Is yours after that? Then it grew by { POINTS($points) }.
growth-keep-other-button = No, keep theirs
growth-line = • { $card }: grew by { POINTS($points) }
growth-not-recorded = Nothing is recorded yet. Say why, and it will be:
# In place of the question; the day's prompt shows what was recorded.
growth-recorded = Recorded. Today’s message above shows your answers.
growth-explained = Surprise work: nobody foresaw it, and the card can’t be accepted without it. Estimate drift: the same work turned out larger than estimated.
growth-surprise-button = All surprise work
growth-drift-button = All estimate drift
growth-each-button = Some of each…
growth-form-button = Answer in the form…

## The answer form

answer-title = What is left?
answer-title-growth = Why did it grow?
answer-submit = Record
answer-intro = { $sprint }, { DAY($day) }. Fill in what has changed; a card that you leave empty stays as it is. Points go in halves, such as 2.5.
answer-intro-none = { $sprint }, { DAY($day) }. You own no open card; you can take one here.
answer-intro-growth =
    { $cards ->
        [one] A card grew, so please say why. Nothing is recorded yet.
       *[other] { cards-count } grew, so please say why. Nothing is recorded yet.
    }
# Below the field of a card, when another owner has said another number on the same day.
answer-said-by-other = { $who } said { $left } on { $moment }. If your number is from before that, empty the field: theirs stays.
# Label of a card's first field.
answer-left = { $place }. { $card }: points left (was { NUMBER($before) })
answer-worked = { $card }: points worked since the last answer
answer-worked-hint = Only needed when it isn’t simply the difference.
answer-surprise = { $card }: surprise work in this change, in points
answer-surprise-grown = { $card }: of the { POINTS($growth) } of growth, how many were surprise work?
answer-surprise-hint = The rest of the growth counts as estimate drift.
answer-surprise-hint-grown = From 0 to { NUMBER($growth) }; the rest counts as estimate drift.
answer-surprise-hint-before = { POINTS($points) } of surprise work on this card so far. If some wasn’t needed after all, write it with a minus, such as -1.
answer-note = { $card }: what came up?
answer-note-hint = A few words about the work. The status and the verdict show them without your name. Begin with “private:” to keep them to yourself.
answer-blocked = { $card }: blocked, and on what?
answer-blocked-hint =
    { $state ->
        [blocked] It is blocked now. Left empty, your answer says that it is moving again.
       *[moving] Only when the card is stuck. The facilitator hears of it today.
    }
# Opens the fields of the chosen cards in the same form.
answer-more = More to say about
answer-more-hint = Points worked, a note, a block, or surprise work that wasn’t needed: the form then asks about these cards, and keeps what you typed.
answer-too-many = This form shows { NUMBER($shown) } of { cards-count }. Record these, then open the form again for the others, or answer those in words.
# In place of the form, when the shortcut was used by somebody who has cards in several teams.
answer-choose = You have cards in the sprints of several teams.
answer-choose-sprint = Answer for
answer-choose-choice = { $team }: { $sprint }
answer-choose-submit = Next
answer-take = Take cards that nobody owns yet
answer-take-hint = You become their owner and are asked about them from now on.
answer-take-choice = { NUMBER($left) } left: { $card }

## Somebody edited or deleted what they had written

thanks-answer = You’re welcome.
# What somebody said beside an answer.
answer-left-out = Recorded, but without “{ $words }”. To leave a note for the team, write it behind `note:`.
answer-left-out-near = Recorded, but without “{ $words }”. Did you mean `/loadline { $near }`?

edit-unread =
    { $change ->
        [deleted] Deleting a message takes nothing back that was recorded from it.
       *[edited] I don’t read edits, so that one changed nothing.
    }
edit-unread-next = If it was an answer, write it anew, or press “Change my answer” below the day’s question.
