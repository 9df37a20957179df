### The bot’s home page: for each team of the person, what they have to do in it now.

# Above each team.
home-team = { $team }
home-team-sprint = { $team }: { $sprint }
home-cards =
    { $cards ->
        [one] *Your open card*
       *[other] *Your open cards*
    }
home-card = • { $card }: { $left }
home-cards-more = … and { NUMBER($cards) } more of your cards.

## Today

# Nobody has been asked yet today.
home-not-asked =
    { $when ->
        [today] Today’s question comes at { $time }. You can answer now.
       *[later] No question today.
    }
home-next-question = The next question comes on { $at }.

## The team's sprint

home-goal = *Goal:* { $goal }
home-days =
    { $left ->
        [0] No working day is left
        [one] { NUMBER($left) } of { NUMBER($of) } working days left, today included
       *[other] { NUMBER($left) } of { NUMBER($of) } working days left, today included
    }; it closes on { $closing }.
# The burndown in words.
home-burndown = { POINTS($left) } left. { NUMBER($committed) } were committed; a steady pace would leave { NUMBER($ideal) } this evening.
home-burndown-no-plan = { POINTS($left) } left. There was no commitment.

## What a facilitator has to do next, each beside its button

home-next-say-who-reads =
    { $posts ->
        [one] *Next:* { NUMBER($posts) } post waits, because the channel is shared with another organisation. If they may read it, say so in `/loadline setup`; if not, move the team: `/loadline move` in another channel.
       *[other] *Next:* { NUMBER($posts) } posts wait, because the channel is shared with another organisation. If they may read them, say so in `/loadline setup`; if not, move the team: `/loadline move` in another channel.
    }
home-next-find-owners =
    { $cards ->
        [one] *Next:* find an owner for { cards-open-count }. Nobody is asked about it.
       *[other] *Next:* find owners for { cards-open-count }. Nobody is asked about them.
    }
home-next-finish-corrections = *Next:* the sprint is open for corrections. Close it when they are done; else it closes by itself.
home-next-finish-draft = *Next:* finish your plan for { $sprint }. It is kept as you left it.
home-next-plan =
    { $when ->
        [now] *Next:* plan the next sprint.
       *[soon] *Next:* the sprint is about to end. Plan the next one.
    }

## Buttons

home-burndown-button = Show burndown
home-more-button = More
home-owners-button = Show cards
home-close-button = Close the sprint
home-plan-button = Plan a sprint
home-draft-button = Go on planning

## For somebody who is on no team

home-no-team-title = Welcome to Loadline
home-no-team = Loadline helps a team make commitments that it keeps. On each working day of a sprint it asks every member what is left on their cards, and at the end it posts in the team’s channel how the sprint went. It makes no statistics about single people.
