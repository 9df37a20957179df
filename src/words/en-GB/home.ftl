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
