### What one can do: the overview (`/loadline` alone) and the help. What each command does.

overview-title = What you can do now
overview-more-teams =
    { $teams ->
        [one] You have { NUMBER($teams) } more team: type `/loadline` in the team’s channel.
       *[other] You have { NUMBER($teams) } more teams: type `/loadline` in the team’s channel.
    }
overview-no-team = You aren’t in a team here. To set one up, type `/loadline setup` in the team’s channel; to join one, ask its facilitator to add you there.
overview-set-up = This channel has no team yet. Set one up with `/loadline setup`.
overview-help = All commands: `/loadline help`.
overview-product-owner = You are its product owner, so you see its sprints and may drop cards. Answers are for its members.
overview-no-sprint =
    { $role ->
        [facilitator] No sprint is running. Plan one when the team is ready.
       *[other-role] No sprint is running. A facilitator can plan one.
    }
overview-begins = { $sprint } begins on { DAY($on) } ({ $span }).
overview-running = { $sprint } is running and closes on { $closing }.
overview-no-card = You have no open card.
overview-cards = You have { cards-open-count }: { LIST($named) }.
# The last item of that list.
overview-cards-more = { NUMBER($cards) } more
overview-asked = Today’s question is waiting for your answer.
overview-answered = You have answered today.
overview-unchanged = You said today that nothing changed.
overview-away = You are away today.

## Buttons of the overview

overview-set-up-button = Set up a team
overview-help-button = Help
overview-privacy-button = What is stored about me
overview-answer-button = Answer
overview-change-answer-button = Change my answer
overview-status-button = Status
overview-cards-button = Cards
overview-pull-button = Pull in cards
overview-drop-button = Drop a card
overview-plan-button = Plan a sprint
overview-plan-another-button = Plan another sprint
overview-range-button = Commitment range
overview-odds-button = Surprise odds
overview-forecast-button = Forecast
overview-history-button = History
overview-edit-button = Edit the sprint
overview-close-button = Close the sprint
overview-cancel-button = Cancel the sprint
overview-reopen-button = Reopen the last sprint
overview-retro-button = Retrospective
overview-setup-button = Team and times
overview-setup-measures-button = Scale and thresholds
overview-value-button = Record a value
overview-digest-button = Morning digest
# Switches it on, and off again.
overview-verdict-button = Verdicts to me too
overview-no-verdict-button = No verdicts to me
overview-baseline-button = Baseline sprint
overview-import-button = Import past sprints
overview-export-button = Export

## The help: /loadline help

# What somebody uses most, by role, each in a line.
help-title-member = What you’ll use most
help-title-facilitator = What you’ll use most as a facilitator
help-title-product-owner = What you’ll use most as the product owner
# For somebody who is on no team here.
help-title-outside = You aren’t on a team here. Its facilitator can add you in the team’s channel.
help-line-answer = • `/loadline answer`: say what’s left on your cards; the daily question asks it too
help-line-status = • `/loadline status`: see how the sprint is going
help-line-pull = • `/loadline pull`: bring in cards
help-line-blocked = • `/loadline blocked`: say that a card is stuck, and on what
help-line-off = • `/loadline off`: say your days off
help-line-plan = • `/loadline plan`: plan the next sprint
help-line-range = • `/loadline range`: see how much to commit to
help-line-edit = • `/loadline edit`: correct the sprint or a card
help-line-history = • `/loadline history`: see the team’s trend
help-line-drop = • `/loadline drop`: take a card out of the sprint
help-line-goal = • `/loadline goal`: say whether the sprint goal was met
help-line-forecast = • `/loadline forecast`: see when a larger body of work will be finished
help-line-value = • `/loadline value`: record what a sprint was worth
help-line-setup = • `/loadline setup`: set up a team in its channel
help-line-privacy = • `/loadline privacy`: see what is stored about you
help-alone = `/loadline` alone shows what you can do now.
help-all-button = All commands
# All commands, behind the button.
help-title = What you can ask of Loadline
help-intro = `/loadline` alone shows what you can do now. Words after it do more:
help-member = For everyone on the team
help-team-and-owner = For everyone on the team and its product owner
help-product-owner = For product owners and facilitators
help-facilitator = For facilitators
help-anyone = For anyone
help-command = • `/loadline { $usage }`: { $summary }
help-privacy = The channel sees sums and cards, never who answered; what you own alone, the team sees with your numbers. [ ]: may be left out.

## What each command does, as the help lists it: first what may follow its word, then what it does

command-answer-usage = answer [day | card: left]
command-answer-summary = Say what is left on your cards, today or on an earlier day. For example `/loadline answer 3: 2 worked 1` or `/loadline answer yesterday 3: 2`.
command-cards-usage = cards [first number]
command-cards-summary = List the sprint’s cards, all or from one number on.
command-status-usage = status
command-status-summary = See how the sprint is going. Only you see it, unless you share it.
command-pull-usage = pull [title, estimate, @owner]
command-pull-summary = Bring in cards after planning, one a line. For example `/loadline pull Repair the tide gauge, 3, @ana`.
command-take-usage = take card …
command-take-summary = Become an owner of cards.
command-give-usage = give card … @name …
command-give-summary = Give your place on cards to others; co-owners stay.
command-release-usage = release card …
command-release-summary = Give up your place on cards.
command-assign-usage = assign card … @name …
command-assign-summary = Say whose cards are.
command-undrop-usage = undrop card
command-undrop-summary = Take back a drop that was a mistake.
command-blocked-usage = blocked card reason
command-blocked-summary = Say that a card is stuck, and on what. For example `/loadline blocked 2 waiting for the key`.
command-moving-usage = moving card
command-moving-summary = Say that a blocked card is moving again.
command-drop-usage = drop [card reason]
command-drop-summary = Take a card out of the sprint, with a reason.
command-reopen-usage = reopen [card]
command-reopen-summary = Open a finished card again; without a card, the closed sprint.
command-range-usage = range [points] [first day] [last day] [N away]
command-range-summary = See how much to commit to next; N: everybody’s days off and away. For example `/loadline range 30 Nov - 11 Dec, 6 away`.
command-odds-usage = odds
command-odds-summary = See which sizes of card tend to hold surprise work.
command-forecast-usage = forecast [points | by day | keep name points]
command-forecast-summary = See when work is finished, and how kept dates move.
command-history-usage = history
command-history-summary = See each ratio’s trend, what is usual, and what is a signal.
command-off-usage = off [days] [half]
command-off-summary = Say days off in advance, as a facilitator also the team’s. For example `/loadline off 24 Dec to 2 Jan`.
command-works-usage = works weekdays
command-works-summary = Say on which weekdays you work.
command-ask-usage = ask [time zone]
command-ask-summary = Choose when you are asked each day. For example `/loadline ask 10:30 Europe/Lisbon`; `/loadline ask team` for the team’s time.
command-plan-usage = plan
command-plan-summary = Plan the next sprint and commit to its cards.
command-edit-usage = edit [card]
command-edit-summary = Correct the sprint or a card.
command-guest-usage = guest [remove] @name …
command-guest-summary = Let people take part in this sprint only.
command-goal-usage = goal [yes | partly | no] [sentence]
command-goal-summary = Say whether the sprint goal was met.
command-close-usage = close
command-close-summary = Close the sprint before its time.
command-cancel-usage = cancel
command-cancel-summary = Cancel the sprint; its numbers never count as history.
command-value-usage = value [sprint:] [number]
command-value-summary = Record what a closed sprint was worth. For example `/loadline value Harbour 12: 1200`.
command-try-usage = try [what]
command-try-summary = Keep what the team agreed to try.
command-experiments-usage = experiments [keep which]
command-experiments-summary = See and decide about what it tries.
command-retro-usage = retro [sprint]
command-retro-summary = Get what a retrospective needs of a sprint.
command-digest-usage = digest [time]
command-digest-summary = Hear of the sprint each morning.
command-verdict-usage = verdict [on | off]
command-verdict-summary = Get verdicts as messages to you, too.
command-baseline-usage = baseline [sprint | first | first three]
command-baseline-summary = Choose what velocity growth is compared with.
command-import-usage = import
command-import-summary = Bring in past sprints from files.
command-import-remove-usage = import remove
command-import-remove-summary = Take an imported sprint out.
command-export-usage = export
command-export-summary = Get all of the team’s sprints and kept work as files, without who said what.
command-setup-usage = setup
command-setup-summary = Set up a team in its channel, or change it.
command-move-usage = move [team]
command-move-summary = Move your team to the channel in which you type it.
command-setup-measures-usage = setup measures
command-setup-measures-summary = Change closing time, scale, thresholds and more.
command-end-usage = end
command-end-summary = End the team.
command-resume-usage = resume
command-resume-summary = Take that back.
command-leave-usage = leave [team]
command-leave-summary = Leave the team, whatever you are on it.
command-privacy-usage = privacy
command-privacy-summary = See what is stored about you, get a copy, or be erased.
command-help-usage = help [command]
command-help-summary = See what you’ll use most, or how a command is used.
