### Days off that people say in advance, and the weekdays on which they work.

# A day, or the first and the last of several; each is an item of a list of days.
days-off-day = { DAY($first) }
days-off-span = { DAY($first) } to { DAY($last) }

# The reply to the person who said it. $days is a list of the messages above.
days-off-own =
    { $share ->
        [none] You’re off { LIST($days) }. I won’t ask you then, and the team’s working time counts without you.
        [half] You’re off for half of { LIST($days) }. I’ll still ask you then; the team’s working time counts half.
       *[all] You’re working { LIST($days) }.
    }
days-off-team =
    { $share ->
        [none] { $team } is off { LIST($days) }. I won’t ask anybody then, and these days don’t count as working days.
        [half] { $team } is off for half of { LIST($days) }. I’ll still ask; the working time counts half.
       *[all] { $team } is working { LIST($days) }.
    }
days-off-several-teams = This counts for all of your teams: { LIST($teams) }.

# The reply to a member who said on which weekdays they work. $days is a message of the weekdays.
weekdays-own = In { $team } you work { $days }. I’ll ask you on these days only.
weekdays-own-all = In { $team } you work on all of the team’s days: { $days }.
