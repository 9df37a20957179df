### When the bot doesn't do what somebody asked for: what is wrong, and in a second message (…-fix) what to do about it.
### Both are shown together; in a form, as plain text beside a field.

refusal-no-team-here = This channel has no team yet.
refusal-no-team-here-fix = Set one up here with `/loadline setup`, or use the command in your team’s own channel.

refusal-set-up-in-channel = A team is set up in its channel, not in direct messages.
refusal-set-up-in-channel-fix = Go to the team’s channel and type `/loadline setup` there.

# To somebody of another workspace, in a channel that the two share.
refusal-outsider = You belong to another workspace than this team, so I can’t add you to it or show you its sprint.
refusal-outsider-fix = Ask the team in this channel. To use me in your own workspace, ask somebody there to install me.

refusal-set-up-from-outside = You are not in this channel, and only somebody who is in it can set up its team.
refusal-set-up-from-outside-fix = Join the channel and type `/loadline setup` again.
# The operator has named who may.
refusal-set-up-left-to-others = Only some people may set up a team here, and you aren’t one of them.
refusal-set-up-left-to-others-fix =
    { $admins ->
        [yes] Ask somebody who administers this workspace to set it up and to make you its facilitator.
       *[no] Ask the person who runs Loadline for you who may.
    }
refusal-guest-set-up = You are a guest in this workspace, and guests can’t set up a team.
refusal-guest-set-up-fix = Ask a colleague in this channel to type `/loadline setup` and to add you as a member.

refusal-channel-not-seen = I can’t see this channel: it’s private and I’m not in it, so nobody would read what I post.
refusal-channel-not-seen-fix = Type `/invite @loadline` in the channel, then try again.

refusal-channel-archived = This channel is archived, so I can’t post in it.
refusal-channel-archived-fix = Take the channel out of the archive, or use another channel for the team.

# $act: what was to be done there. What others would read is said before, in shared-channel-seen.
refusal-channel-shared-fix =
    { $act ->
        [set-up] If they may read that, open `/loadline setup` again and say so in the form. If not, use a channel of your own for the team.
       *[move] If they may read that, type `{ $command }`. If not, use a channel of your own for the team.
    }
refusal-no-team-of-yours = You aren’t on the team that this belongs to.
refusal-no-team-of-yours-fix = Ask the team’s facilitator to add you with `/loadline setup`, or set up a team in its channel.

refusal-several-teams = You are on { NUMBER($count) } teams ({ SERIES($teams) }), so it isn’t clear which one you mean.
refusal-several-teams-fix = Name the team after the command, as in `/loadline status { $example }`, or type the command in the team’s channel. To answer, use the buttons of the daily question or reply in its thread.

refusal-not-a-member = Only members of { $team } can see or change its sprint.
refusal-not-a-member-fix = Ask the team’s facilitator to add you with `/loadline setup`.

# Nobody is on the team any more.
refusal-team-deserted = Everybody has left { $team }.
refusal-team-deserted-fix = Whoever is in its channel can set it up again there with `/loadline setup`. Its past sprints stay with it.

# The person is the team's product owner, but not one of its members.
refusal-owner-not-a-member = You are the product owner of { $team } but not a member of it, so you can’t answer for its cards or change its sprint, except by dropping cards.
refusal-owner-not-a-member-fix = You can use `/loadline status`, `/loadline cards`, `/loadline drop`, `/loadline undrop`, `/loadline goal`, `/loadline history`, `/loadline forecast`, `/loadline range`, `/loadline odds` and `/loadline value`, get each verdict with `/loadline verdict on`, and stop being it with `/loadline leave`. To work on cards as well, ask the team’s facilitator to add you as a member with `/loadline setup`.

refusal-not-a-facilitator =
    { $act ->
        [plan] Only a facilitator of { $team } can plan a sprint.
        [edit] Only a facilitator of { $team } can change the plan of a sprint.
        [close] Only a facilitator of { $team } can close a sprint.
        [cancel] Only a facilitator of { $team } can cancel a sprint.
        [reopen] Only a facilitator of { $team } can reopen a sprint.
        [assign] Only a facilitator of { $team } can say whose a card is.
        [guests] Only a facilitator of { $team } can say who its guests are.
        [undrop] Only a facilitator of { $team }, its product owner or the person who dropped the card can take that back.
        [end-team] Only a facilitator of { $team } can end the team, or take that back.
        [move] Only a facilitator of { $team } can move the team to another channel.
        [change-settings] Only a facilitator of { $team } can change the team’s settings.
        [change-measures] Only a facilitator of { $team } can change how the team measures.
        [choose-baseline] Only a facilitator of { $team } can choose the baseline sprint.
        [try] Only a facilitator of { $team } can keep what it tries.
        [end-experiment] Only a facilitator of { $team } can say what becomes of what it tries.
        [watch] Only a facilitator of { $team } can get its morning digest.
        [days-off] Only a facilitator of { $team } can say when the whole team is off.
        [import] Only a facilitator of { $team } can import past sprints.
       *[export] Only a facilitator of { $team } can export its sprints.
    }

refusal-not-a-goal-keeper = Only the product owner of { $team } or a facilitator can say whether the sprint goal was met.

refusal-not-a-value-keeper = Only the product owner of { $team } or a facilitator can record what a sprint was worth.

refusal-not-a-body-keeper = Only a facilitator of { $team } or its product owner can change the list of work that is forecast again after each sprint.

refusal-no-other-part = No other team that you may read keeps work called “{ $name }”.
refusal-no-other-part-fix = What other teams keep by this name counts as a part of it: `/loadline forecast keep { $name }`, with the points, in their channels.

refusal-no-such-body = The team keeps no work of that name.
refusal-no-such-body-fix =
    { $any ->
        [yes] It keeps: { SERIES($bodies) }. Give the number in that order, or the first words.
       *[no] To keep some: `/loadline forecast keep Lighthouse 80`.
    }

refusal-no-such-experiment = The team tries nothing of that name.
refusal-no-such-experiment-fix =
    { $any ->
        [yes] It tries: { SERIES($experiments) }. Give the number in that order, or the first words.
       *[no] To keep something that the team agreed to try: `/loadline try`.
    }
refusal-experiment-over = It has been decided already what becomes of “{ $text }”.
refusal-experiment-over-fix = To see what the team tries: `/loadline experiments`.

# Who can do it instead. $people are mentions.
refusal-ask-people = Ask { OR_LIST($people) }.
refusal-nobody-to-ask = The team no longer has anybody who can. Ask the person who runs Loadline for you.

refusal-no-work-to-be-off = You work on no team’s cards, so I don’t ask you anything.
refusal-no-work-to-be-off-fix = Members are chosen with `/loadline setup`. When the whole team is off, write for example `/loadline off team 24 Dec`.

refusal-nothing-stored = Nothing is stored about you here.
refusal-nothing-stored-fix = There is nothing to copy and nothing to erase.

refusal-move-in-channel = A team is moved from the channel that it moves to, not from direct messages.
refusal-move-in-channel-fix = Go to the team’s new channel and type `/loadline move` there.

# Whatever somebody asks of it.
refusal-team-ended = { $team } was ended, so nothing can be asked of it or recorded any more.
refusal-team-ended-fix = A facilitator can take that back until { DATE($day) } with `/loadline resume`; then everything of the team is erased.
refusal-team-not-ended = { $team } was not ended, so there is nothing to take back.
refusal-team-not-ended-fix = To plan its next sprint, type `/loadline plan`.
refusal-team-is-here = { $team } is in this channel already.
refusal-team-is-here-fix = To move it, type `/loadline move` in the channel that it moves to.

# $teams: those that the person facilitates. $example: one of them.
refusal-which-team-moves = You are a facilitator of { LIST($teams) }, so it isn’t clear which team moves here.
refusal-which-team-moves-fix = Type the team’s name as well, for example `/loadline move { $example }`.

# $teams: those that the person is on. $example: one of them.
refusal-which-team-is-left = You are on { LIST($teams) }, so it isn’t clear which team you leave.
refusal-which-team-is-left-fix = Type the team’s name as well, for example `/loadline leave { $example }`.

refusal-channel-has-a-team = This channel already belongs to { $team }.
refusal-channel-has-a-team-fix = Change that team with `/loadline setup`, or set up the new one in a channel of its own.

refusal-not-about-cards = Nothing was recorded: that doesn’t read like an answer about your cards.
refusal-not-about-cards-fix = For anything else there are commands, such as `/loadline status`; `/loadline help` lists them.

# $problems are whole sentences.
refusal-bad-input = { $problems }
refusal-bad-input-fix = Not recorded. Please correct it and send it again.

refusal-no-sprint-running = No sprint is running.
refusal-no-sprint-running-fix = A facilitator can plan one with `/loadline plan`.

refusal-sprint-not-begun = { $sprint } begins on { DAY($day) }.
refusal-sprint-not-begun-fix = Come back on that day. If the sprint isn’t needed after all, a facilitator can cancel it with `/loadline cancel`.

refusal-sprint-over =
    { $state ->
        [closed] { $sprint } is closed, so its numbers are final.
       *[cancelled] { $sprint } was cancelled, so its numbers are final.
    }
refusal-sprint-over-fix =
    { $state ->
        [closed] Until closing time on the next working day, a facilitator can reopen it for corrections with `/loadline reopen`.
       *[cancelled] A facilitator can plan a new sprint with `/loadline plan`.
    }

refusal-day-outside-sprint = “{ $day }” isn’t a day of { $sprint }, which runs from { DAY($first) } to { DAY($last) }.
# $example is the sprint's first day, as it can be typed in every language.
refusal-day-outside-sprint-fix = Give a day of the sprint, for example `/loadline answer { $example }`.

refusal-day-not-come = { DAY($day) } is still to come.
refusal-day-not-come-fix = Answer for today or for an earlier day of the sprint.

refusal-no-such-card = There is no card “{ $card }” in this sprint.
refusal-card-not-given = Which card?
# $cards are numbers and short names, 20 at most.
refusal-no-such-card-fix =
    { $more ->
        [no] Use its number or short name. Cards: { SERIES($cards) }. `/loadline cards` shows their titles.
       *[yes] Use its number or short name. Cards: { SERIES($cards) }, …. `/loadline cards` shows their titles.
    }
refusal-no-cards-at-all-fix = The sprint has no cards yet; bring one in with `/loadline pull`.

refusal-card-dropped = Card { $card } was dropped from the sprint.
refusal-card-dropped-fix = If that was a mistake, a facilitator can take it back with `/loadline undrop`.

refusal-card-not-finished = Card { $card } isn’t finished, so there is nothing to reopen.
refusal-card-not-finished-fix = Say what is left on it with `/loadline answer`.

refusal-card-finished = Card { $card } is finished, so it can’t be blocked.
refusal-card-finished-fix = If it isn’t done after all, reopen it first with `/loadline reopen`.

refusal-card-not-blocked = Card { $card } isn’t blocked.
refusal-card-not-blocked-fix = `/loadline cards` shows which cards are.

refusal-takes-no-cards = You have no part in the work of this sprint of { $team }, so you can’t own its cards.
refusal-takes-no-cards-fix = Give the card to a member with `/loadline assign`, or make yourself a member with `/loadline setup`.

refusal-already-owner = Card { $card } is already yours.
refusal-already-owner-fix = Answer for it with `/loadline answer`.

refusal-card-not-dropped = Card { $card } wasn’t dropped, so there is nothing to take back.
refusal-card-not-dropped-fix = `/loadline cards` shows which cards were dropped.

refusal-not-card-owner =
    { $act ->
        [reopen] Only an owner of card { $card } or a facilitator can reopen it.
        [block] Only an owner of card { $card } or a facilitator can say that it is blocked or moving again.
        [release] Only an owner of card { $card } or a facilitator can give it back.
       *[give] Only an owner of card { $card } or a facilitator can give it to others.
    }
refusal-not-card-owner-fix = Ask one of them, or become an owner first with `/loadline take`.

refusal-too-many-cards = A sprint holds at most { NUMBER($limit) } cards.
refusal-too-many-cards-fix = Put small things together on one card.

refusal-no-cards-of-yours = You have no open card in { $sprint }.
refusal-no-cards-of-yours-fix = Become an owner of one with `/loadline take` and its number; `/loadline cards` lists them.

# $problems are whole sentences.
refusal-unclear-words = Not recorded. { $problems }
# The card is one of the person's own. The numbers are what to type.
refusal-unclear-words-fix =
    { $cards ->
        [single] For “{ $card }” with { POINTS($left) } left, write `{ NUMBER($left) }`; if it’s finished, `done`. `same` and `away` work too.
       *[several] For “{ $card }” with { POINTS($left) } left, write `{ $reference }: { NUMBER($left) }`; if it’s finished, `{ $reference } done`. `same` and `away` work too.
    }

refusal-no-sprint-to-reopen = There is no closed sprint to reopen.
refusal-no-sprint-to-reopen-fix = `/loadline status` shows the one that is running.

refusal-nothing-to-export = { $team } has no sprint yet, so there is nothing to export.
refusal-nothing-to-export-fix = Plan its first sprint with `/loadline plan`, or bring in past sprints with `/loadline import`.

refusal-no-closed-sprint =
    { $needed ->
        [velocity] { $team } has no closed sprint yet in which anything was finished.
       *[any] { $team } has no closed sprint yet.
    }
refusal-no-closed-sprint-fix = Come back when its first sprint has closed, or let a facilitator bring in past sprints with `/loadline import`.

refusal-no-such-sprint = There is no closed sprint called “{ $sprint }”.
refusal-sprint-not-given = That isn’t one of the team’s closed sprints.
refusal-no-such-sprint-fix =
    { $more ->
        [no] Write its name as in its verdict, or leave it out for the latest one. Closed sprints: { SERIES($sprints) }.
       *[yes] Write its name as in its verdict, or leave it out for the latest one. Closed sprints: { SERIES($sprints) }, ….
    }

refusal-sprint-not-closed =
    { $state ->
        [open] { $sprint } hasn’t closed yet.
       *[cancelled] { $sprint } was cancelled.
    }
refusal-sprint-not-closed-fix =
    { $state ->
        [open] Come back when its verdict is posted, or choose a sprint that has closed.
       *[cancelled] Cancelled sprints never count as history; choose a sprint that has closed.
    }

refusal-no-velocity =
    { $finished ->
        [unknown] It isn’t known how many points were finished in { $sprint }, so nothing can be compared with it.
       *[nothing] Nothing was finished in { $sprint }, so nothing can be compared with it.
    }
refusal-no-velocity-fix = Choose a closed sprint in which something was finished.

# An imported sprint can be taken out of the history; this one can't.
refusal-sprint-stays =
    { $why ->
        [run-here] { $sprint } was run here, so it stays: only imported sprints can be taken out.
       *[named-baseline] { $sprint } is the sprint that the team chose as its baseline, so it stays for now.
    }
refusal-sprint-stays-fix =
    { $why ->
        [run-here] Choose an imported sprint.
       *[named-baseline] Choose another baseline with `/loadline baseline`, then take it out.
    }

refusal-days-taken = { $sprint } can’t be open at the same time as { $other }: they share some days.
refusal-days-taken-fix = Close or cancel { $other } first, or bring the correction up at the retrospective.

refusal-reopen-too-late = { $sprint } could be reopened until closing time on the working day after it. That’s over, so its numbers are final.
refusal-reopen-too-late-fix = Bring up at the retrospective what was wrong with them.

refusal-unknown-command = There is no command “{ $word }”.
refusal-unknown-command-fix =
    { $wanted ->
        [split] Keep the card, and answer with what is left of all its parts; `/loadline assign` gives it several owners. To drop it and pull its parts in changes the plan, and counts as that.
       *[any] `/loadline help` lists them all.
    }
refusal-unknown-command-near-fix = Did you mean `/loadline { $near }`? `/loadline help` lists them all.

# $problem is a whole sentence.
refusal-bad-argument = `/loadline { $command }` isn’t clear. { $problem }
refusal-bad-argument-fix = Write it like this, for example: `/loadline { $command } { $example }`
# What may follow the command word.
refusal-drop-example = 3 the harbour office withdrew the wish
refusal-off-example = 24 Dec to 2 Jan
refusal-blocked-example = 3 waiting for the harbour office
refusal-goal-example = partly: berths can be booked, and not yet paid
refusal-cancel-example = the sprint goal became obsolete

refusal-key-taken = { $sprint } already has a card { $name }.
refusal-key-taken-fix = Give the new card a short name of its own.

refusal-estimate-is-fixed =
    { $why ->
        [answered] Somebody has answered about card { $card }, so its estimate is part of the commitment and stays.
       *[first-day-over] The first working day is over, so the estimate of card { $card } is part of the commitment and stays.
    }
refusal-estimate-is-fixed-fix = If the work is larger or smaller than estimated, say so with the next answer. If it isn’t wanted, drop it: `/loadline drop { $number } reason`.

refusal-sprint-was-closed = { $sprint } was closed and is open for corrections only, so its days stay as they were.
refusal-sprint-was-closed-fix = Plan the time after it as a sprint of its own: `/loadline plan`.

refusal-no-draft = This plan has already been committed to, or its draft is gone.
refusal-no-draft-fix = `/loadline status` shows the running sprint; `/loadline plan` begins a new plan.
refusal-plan-changed = This plan was changed after the preview was shown, so the ticks may mean other cards.
refusal-plan-changed-fix = Go back and look at the preview again, or begin with `/loadline plan`.

refusal-sprint-changed = Not recorded: the sprint’s cards have changed since this form was opened.
refusal-sprint-changed-fix = Open the form again with `/loadline answer`.

refusal-answered-since = There is a later answer about card { $card }, so this question is over and nothing was changed.
refusal-answered-since-fix = If the later answer is wrong, change it with `/loadline answer`.

refusal-too-much-at-once = That was too much at once, so it wasn’t done.
refusal-too-much-at-once-fix =
    { $seconds ->
        [one] Try again in { NUMBER($seconds) } second.
       *[other] Try again in { NUMBER($seconds) } seconds.
    }

refusal-held-up = Not recorded: others are recording something for the same team, and it takes unusually long.
refusal-held-up-fix = Try again in a minute.
refusal-reading-yours = Your files of before are still being read, so these weren’t taken.
refusal-reading-yours-fix = Wait until you hear what came of them, then send these.
refusal-reading-others = Others’ files are being read just now, so yours weren’t taken.
refusal-reading-others-fix = Send them again in a minute; the form keeps them. Smaller files have their turn sooner.

refusal-file-too-large = “{ $file }” is larger than 5 MB.
refusal-file-too-large-fix = Split it into several files, or leave out what isn’t asked for.
refusal-file-not-text = “{ $file }” is not a text file.
refusal-file-not-text-fix = Lines come from a spreadsheet as CSV (UTF-8), or pasted into the form; a calendar comes as an iCalendar file (.ics).
refusal-file-no-answer = The chat platform didn’t send “{ $file }” in time.
refusal-file-no-answer-fix = Send the form again in a minute. Lines can be pasted into their form instead.
refusal-file-not-calendar = “{ $file }” is not an iCalendar file.
refusal-file-not-calendar-fix = Export the calendar from your calendar program as .ics and choose that file.
refusal-file-too-long = Reading “{ $file }” takes longer than one file may.
refusal-file-too-long-fix = Split it, for example into one file for each year, and give one part after the other.
refusal-file-too-much = “{ $file }” holds more events than one file may.
refusal-file-too-much-fix = Export a calendar that holds the days off only, and choose that file.
refusal-file-not-handed-over = The chat platform didn’t hand over “{ $file }”.
refusal-file-not-handed-over-fix = Choose the file again. Lines can be pasted into their form instead. If that doesn’t help, ask the person who runs Loadline whether it may read files (`files:read`).

# A button or a form of an old message.
refusal-stale-control = Not recorded: this button or form is too old to be read.
refusal-stale-control-fix = Type `/loadline` and start from there.
refusal-form-too-late = Not recorded: it took too long to open the form.
refusal-form-too-late-fix = Please try again.
refusal-form-closed = Not recorded: the form was closed before its next step.
refusal-form-closed-fix = Please open it again.
refusal-not-installed = Not recorded: Loadline isn’t installed in this workspace, or was removed from it.
refusal-not-installed-fix = Somebody who may install apps here can add it: { $url }
refusal-platform-pause = The chat platform asks for a pause.

# Heads the list when a form has several problems.
refusal-things-wrong =
    { $count ->
        [one] { NUMBER($count) } thing is wrong
       *[other] { NUMBER($count) } things are wrong
    }
refusal-more-things = … and { NUMBER($count) } more.
# In place of a person whose name can't be looked up.
refusal-a-colleague = a colleague
