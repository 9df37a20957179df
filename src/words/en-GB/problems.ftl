### What is wrong with what somebody typed, and how to correct it: beside a field of a form, or in reply to a command.
### $typed is what they wrote, shortened. $most and $least are the largest and the smallest that may be.

# Numbers.
problem-no-number = There is no number. Write one in digits, for example 1200.
problem-not-a-number = “{ $typed }” isn’t a number. Write it in digits only, for example 1200 or −3.5.
# $first and $second are the two ways to write it.
problem-two-numbers = “{ $typed }” may mean { $first } or { $second }. Write it in one of these two ways.
problem-too-many-digits = “{ $typed }” is too long. Write it with { NUMBER($digits) } digits at most, and no more than { NUMBER($decimals) } of them after the point.
problem-not-points = Write points in halves from 0 to { NUMBER($most) }, for example 3 or 0.5.

# The team's settings.
problem-team-name = Give the team a name of 1 to { NUMBER($most) } characters.
problem-no-time-zone = This isn’t a time zone. Write it as region and city, for example Europe/Lisbon or America/New_York.
problem-value-after-days = Write a whole number of working days from { NUMBER($least) } to { NUMBER($most) }, or leave it empty.
problem-no-choice = Choose one of the list.
problem-prompt-too-late = Choose a time on { $team }’s working day, { $latest } ({ $zone }) at the latest.
problem-no-time = Write the time as hours and minutes, for example { $example }.
problem-no-working-day = Choose at least one working day.
problem-no-members = Choose at least one member.
problem-no-facilitators = Choose at least one facilitator.
problem-is-bot = { $person } is a bot; choose people only.
problem-is-member-already = { $person } is a member of the team already, and so takes part in each sprint.
problem-is-deactivated = The account of { $person } is deactivated; take this person out.
problem-is-outsider = { $person } belongs to another workspace, and only people of yours can be on the team; take this person out.
problem-not-in-channel = { $person } is not in this channel, where what members do together can be read; invite this person to the channel first, or take them out.
problem-is-guest = { $person } is a guest of your workspace, and guests can’t be facilitators; choose somebody else.
problem-reminder-minutes = Write whole minutes, from { NUMBER($least) } to { NUMBER($most) }.
problem-retention-months = Write whole months, from { NUMBER($least) } to { NUMBER($most) }, or leave it empty to keep everything.
problem-no-percentage = Write a percentage from 0 to { NUMBER($most) }, for example { NUMBER($example) }.
problem-threshold-out-of-range = A threshold must be from 0% to { PERCENT($most) }.
problem-accuracy-crossed = The lowest estimate accuracy is above the highest.
problem-growth-marks-crossed = The first mark of the velocity growth is above the long-range mark.
problem-not-a-scale = Write rising sizes, for example 1, 2, 3, 5, 8.
problem-scale-empty = A scale needs at least one size.
problem-scale-too-long = A scale may have { NUMBER($most) } sizes at most.
problem-scale-no-size = { NUMBER($size) } isn’t a size: sizes are multiples of 0.5 from 0 to { NUMBER($most) }.
problem-scale-not-rising = A scale must rise, but { NUMBER($size) } comes after { NUMBER($before) }.
problem-scale-only-zero = A scale needs a size above 0.
problem-not-weekdays = Name weekdays on which the team works.

# Days off.
problem-off-no-day = Say which days.
problem-off-one-end = “{ $typed }” leaves one end open: say the first and the last day off.
problem-off-somebody-else = Everybody enters their own days off. Ask them to write `/loadline off` with the days; the whole team’s are `/loadline off team 1 May`.
problem-off-every-week = To be off on a weekday of every week, say on which you work, such as `/loadline works mon-thu`.
problem-off-not-a-day = “{ $typed }” isn’t a day. Write it as 24 Dec or 2026-12-24.
problem-off-reversed = { DAY($last) } comes before { DAY($first) }. Name the first day first.
problem-off-too-long = That is more than { NUMBER($most) } days at once.
problem-off-no-country = No public holidays are known of “{ $typed }”. Write a country or a part of it, such as DE-BY or France.
problem-off-no-region = “{ $typed }” names no part of that country. There are { LIST($regions) }.
problem-off-gone-by = { DAY($last) } has gone by. Name coming days.

# The plan of a sprint.
problem-sprint-name = Give the sprint a name of 1 to { NUMBER($most) } characters.
problem-goal-length = Keep the goal within { NUMBER($most) } characters.
problem-no-first-day = Choose a first day.
problem-no-last-day = Choose a last day.
problem-days-reversed = The last day, { DAY($last) }, comes before the first day, { DAY($first) }.
problem-sprint-too-long = A sprint may last { NUMBER($most) } days at most; this one lasts { NUMBER($days) }.
problem-sprint-over-already = The sprint would be over already: it closes on { DAY($last) } at { $time }.
problem-overlap = { $sprint } runs from { DAY($first) } to { DAY($last) }. Begin after it, or close or cancel it first.
problem-overlap-at-end = { $sprint } runs from { DAY($first) } to { DAY($last) }. End before it, or cancel it first.
problem-too-many-cards = A sprint holds { NUMBER($most) } cards at most; these are { NUMBER($cards) }.
# “3 members × 10 working days = 30, …”
problem-no-away-days = Give the days off and away of all members together as whole or half days, for example 6 or 2.5.
problem-too-many-away-days =
    { $members ->
        [one] { NUMBER($members) } member
       *[other] { NUMBER($members) } members
    } × { $workingDays ->
        [one] { NUMBER($workingDays) } working day
       *[other] { NUMBER($workingDays) } working days
    } = { NUMBER($most) }, so no more than that can be off or away; you gave { NUMBER($given) }.

# A line of pasted cards. $problem is one of the sentences below.
problem-bad-line = Line { NUMBER($line) }: { $problem }
# $lines are the numbers of further bad lines.
problem-more-bad-lines =
    { $count ->
        [one] And { NUMBER($count) } more line: { SERIES($lines) }.
       *[other] And { NUMBER($count) } more lines: { SERIES($lines) }.
    }
problem-name-twice = { $name } is already on line { NUMBER($line) }; each card needs a short name of its own.
problem-no-title = The title is missing. Write: title, estimate, @owner.
problem-title-too-long = The title has { NUMBER($length) } characters; { NUMBER($most) } is the most.
# A line of a pasted plan.
problem-total = This looks like the sum of the cards. Delete the line, or give the card another title.
problem-no-estimate = The estimate is missing. Write: title, estimate, @owner.
problem-estimate-in-title = The estimate is missing. If it’s { $typed }, put a comma before it: “{ $title }, { $typed }”.
problem-not-an-estimate = “{ $typed }” isn’t an estimate; it must be a multiple of 0.5 from 0 to { NUMBER($most) }.
# A row of a table or a sheet. $first and $second are cells of it.
problem-two-estimates = The estimate may be { $first } or { $second }: keep one of them, or paste the names of the columns above the rows.
problem-open-quote = A double quote is opened and never closed.
# $people are names, each with the id that tells people of one name apart.
problem-several-people = { $typed } may be { OR_LIST($people) }; write the whole name, or what is in brackets.
problem-person-and-id = { $person } (@{ $id })
problem-no-such-person = { $typed } isn’t a member of the team. Members: { SERIES($people) }.

# What sprints were worth.
problem-value-beside-file = Leave the number empty when you give a file, or take the file out.

# Cards.
problem-card-link = A link begins with https:// or http://, holds no user name and no password, and has { NUMBER($most) } characters at most.
problem-card-title = Give the card a title of 1 to { NUMBER($most) } characters.
problem-which-card = Say which card, by its number or short name.
problem-one-card = Name one card at a time, and say why.
problem-which-guests = Say who, for example @ana.
problem-guests-at-once = Name { NUMBER($most) } people at most at a time.
problem-no-such-guest = { $typed } isn’t a guest of this sprint.
problem-which-people = Say to whom, for example @ana.
problem-card-key = Write a short name as letters, a dash and digits, such as berth-3, or leave it empty.
problem-try-text-missing = Say what the team tries.
problem-try-text-length = Keep it within { NUMBER($most) } characters.
problem-try-already = The team is trying that already.
problem-try-many = The team is trying { NUMBER($most) } things already. Decide about one of them first: `/loadline experiments`.
problem-try-ratio = Choose the number that it should move.
problem-try-direction = Choose up or down.
problem-goal-word = Say yes, partly or no, and a sentence if you like.
problem-first-card = Write the number of the first card to show.
problem-drop-reason = Say in up to { NUMBER($most) } characters why the card is dropped.
problem-blocked-on = Say in up to { NUMBER($most) } characters what it is waiting for.
problem-blocked-finished = { $card } has nothing left, so it can’t be blocked.
problem-cancel-reason = Keep the reason within { NUMBER($most) } characters.

# An answer. $card is the card's name.
problem-note-length = Keep the note within { NUMBER($most) } characters.
problem-not-your-card = { $card } isn’t one of your cards. Its owners answer for it; if you work on it too, become an owner with “take { $number }”.
problem-nobodys-card = { $card } has no owner yet. To answer for it, become one first with “take { $number }”.
problem-card-dropped = { $card } was dropped on { DAY($day) }, so nothing can be left on it.
problem-card-finished = { $card } was finished on { DAY($day) }. If it isn’t done after all, reopen it first with “reopen { $number }”.
# The sprint before finished it after it was planned here. $number is the card's in this sprint.
problem-counted-before = { $card } was finished in { $sprint } and counts there. If it’s the same work, ask a facilitator to set the card to 0 here with “/loadline edit { $number }”, then say “done”. If it’s other work, say as well how much you worked on it.
problem-card-came-later = { $card } came into the sprint on { DAY($day) }; answer for that day or a later one.
problem-surprise-of-growth = The card grew by { POINTS($growth) }, so surprise work is from 0 to { NUMBER($most) }.
problem-surprise-without-growth = The card didn’t grow, so no surprise work came up: leave this at 0.
problem-surprise-without-any = The card shrank and holds no surprise work that could have fallen away: leave this at 0.
problem-surprise-of-shrinking = The card shrank by { POINTS($shrunk) }, so surprise work that wasn’t needed is from { NUMBER($least) } to 0.
problem-growth-unexplained = The card grew by { POINTS($growth) }: say how many of them were surprise work.
problem-answer-day = Write the day like “3 Nov” or 2026-11-03.

# An answer in words.
unclear-comma-two-ways = “{ $typed }” can be read in two ways: write `{ $half }` for a number with a half, or `{ $two }` for two numbers.
unclear-space-two-ways = “{ $typed }” can be read in two ways: write `{ $card }: { $left }` for what is left on card { $card }, or `{ $card }, { $left }` for two cards.
unclear-number-two-ways = “{ $typed }” can be a card or what is left: write `{ $typed } done` if card { $typed } is finished, or `{ $place }: { $typed }` for what is left on card { $place }.
unclear-done-two-ways = “{ $typed }” can be the card or points: write `done` if your card is finished, or the points that are left.
unclear-nothing-two-ways = “{ $typed }” can be read in two ways: write `done` if nothing is left, or `same` if nothing has changed.
unclear-blocked-two-ways = “{ $typed }” can be a card or what is left: write `{ $typed }: blocked reason` if card { $typed } is blocked, or name the card as well, `1: { $typed } blocked reason`.
unclear-which-blocked = Which card is blocked? Name it: `1: blocked reason`.
unclear-blocked-on-what = Say what the card is waiting for: `1: 2 blocked reason`.
unclear-which-done = Which card is done? Name it, or write `all done`.
unclear-not-an-answer = “{ $typed }” isn’t clear.
unclear-no-amount = “{ $typed }” doesn’t say how many points are left.
unclear-not-halves = “{ $typed }” isn’t possible: points go in halves, such as 2, 2.5 or 3.
unclear-too-many-points = “{ $typed }” is too much: a card has { POINTS($most) } at most.
unclear-not-points = “{ $typed }” isn’t an amount of points.
unclear-no-such-card = There is no card “{ $typed }” in your list.
unclear-extra-of-several = “{ $typed }” is about several cards: say of each what was worked on it or was surprise, `1: 3 worked 1 surprise 1`.
unclear-number-of-which = “{ $typed }” comes after a card that has its answer: if it’s about card { $place }, write `{ $place }: { $typed }`.
unclear-done-or-worked = “{ $typed } done” can be a card or work: write `card { $typed } done` if card { $typed } is finished, or `1: 3 worked { $typed }` for points worked on card 1 with 3 left.
unclear-said-twice =
    { $what ->
        [worked] “{ $typed }” says twice what was worked.
       *[surprise] “{ $typed }” says twice what was surprise work.
    }
unclear-answered-twice = Card { $card } is answered twice in one message.
unclear-wrong-count =
    { $cards ->
        [one] You have { NUMBER($cards) } open card, but the message gives { $numbers ->
            [one] { NUMBER($numbers) } number.
           *[other] { NUMBER($numbers) } numbers.
        }
       *[other] You have { NUMBER($cards) } open cards, but the message gives { $numbers ->
            [one] { NUMBER($numbers) } number.
           *[other] { NUMBER($numbers) } numbers.
        }
    }

problem-no-files = Choose a file, or paste its lines: nothing was given.

# Questions about the coming sprint, about a body of work, and the value of a sprint.
problem-not-a-day =
    { $which ->
        [first] “{ $typed }” isn’t a day. Write the first day like “30 Nov” or 2026-11-30.
       *[last] “{ $typed }” isn’t a day. Write the last day like “11 Dec” or 2026-12-11.
    }
problem-too-far-ahead = That is more than { NUMBER($years) } years ahead; is the year right?
problem-sprint-gone-by = That sprint is over: { DAY($last) } has gone by. Name coming days.
problem-what-if-away-days = Give whole or half working days, such as 1 or 2.5; { NUMBER($most) } are still to come, of all members together.
problem-what-if-points = Give whole or half points, such as 2 or 0.5.
problem-what-if-nothing = Say at least one thing: a card, days away, or points.
problem-commitment-points = Give a commitment above 0, { NUMBER($most) } points at most, in whole or half points.
problem-backlog-points = Give the points that are left to do: above 0, { NUMBER($most) } at most, in whole or half points.
problem-growth-points = Give the points by which the work grows with each sprint: 0 or more, { NUMBER($most) } at most, in whole or half points.
problem-growth-reversed = Give the smaller growth first: { NUMBER($least) } to { NUMBER($most) }.
problem-body-name = Give it a name with a letter in it, of { NUMBER($most) } characters at most.
problem-body-name-taken = Other work is kept by that name already.
problem-body-new-name = Say which work it is, and then what it’s to be called.
problem-body-turn = Give its turn as a whole number from 1 to { NUMBER($most) }.
problem-bodies-many = The team keeps { NUMBER($most) } bodies of work already. Say of one that it’s done: `/loadline forecast done 1`.
problem-body-shares = That would give away { WHOLE_PERCENT($share) } of your sprints: leave something for the work that waits its turn.
problem-share-percent = Give the share of your sprints that goes to this work: from 1 to 100%.
problem-share-twice = Say only once which share of your sprints goes to it.
problem-by-not-a-day = “{ $typed }” isn’t a day. Write it like “31 March” or 2027-03-31.
problem-by-day-gone = Work on it begins on { DAY($startsOn) }. Name that day or a later one.
problem-by-twice = Name one day only.
problem-no-colon = Put a colon between the sprint’s name and the number.
problem-away-without-number = Say how many days are off or away before “{ $typed }”.
problem-not-away-days = “{ $typed }” isn’t a number of days; whole and half days are fine, such as 6 or 2.5.
problem-lone-word = “{ $typed }” can’t be understood. Write days like “30 Nov” or 2026-11-30.
problem-commitment-twice = Name one number of points only. For days off and away, of all members together, write “6 away”.
problem-too-many-days = Name two days at most, the first and the last of the sprint.
problem-growth-twice = Say only once by how much it grows.
problem-no-backlog = Say how many points are left to do.
problem-no-backlog-or-day = Say how many points are left to do, or by which day you ask.
problem-no-growth = Say by how many points it grows.
