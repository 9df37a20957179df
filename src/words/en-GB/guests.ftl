### People who take part in one sprint only

# To the facilitator who named or removed them.
guests-changed =
    { $act ->
        [added] { $count ->
            [one] { LIST($guests) } is a guest of { $sprint } now. I’ve told them what I ask and what is stored.
           *[other] { LIST($guests) } are guests of { $sprint } now. I’ve told them what I ask and what is stored.
        }
       *[removed] { $count ->
            [one] { LIST($guests) } is no longer a guest of { $sprint }. What they said stays.
           *[other] { LIST($guests) } are no longer guests of { $sprint }. What they said stays.
        }
    }

# To the guest.
guest-welcome-title = You are a guest of { $sprint } in { $team }
guest-welcome-asked =
    { $days ->
        [one-day] { $by } asked you to take part on { DAY($from) }.
       *[several] { $by } asked you to take part from { DAY($from) } to { DAY($to) }.
    } On each working day I ask you here what is left on your cards. Your answers are shown by card and in the team’s sums, never by person. On a card that you own alone, the team sees your numbers.
guest-welcome-after = When the sprint has closed, I ask you nothing more. To see what is stored about you, type `/loadline privacy`; to leave before, `/loadline leave`. Days off in between: `/loadline off`.
