### Days off that people say in advance, and the weekdays on which they work.

# A day, or the first and the last of several; each is an item of a list of days.
days-off-day = { DAY($first) }
days-off-span = { DAY($first) } to { DAY($last) }
days-off-half-day = { DAY($first) } (half)
days-off-half-span = { DAY($first) } to { DAY($last) } (half days)
# The same of days that are months ahead.
days-off-far-day = { DATE($first) }
days-off-far-span = { DATE($first) } to { DATE($last) }
# The last item of a list of days that is cut short.
days-off-more = { NUMBER($count) } more

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

## The form: /loadline off

days-off-title = Days off
days-off-submit = Save
days-off-intro = Nobody is asked on a day off, and the team’s working time counts without it. No reason is asked. For { $team }, and your other teams if you have any.
days-off-whose = Whose days off
days-off-whose-own = Mine
days-off-whose-team = The whole team’s
days-off-from = First day
days-off-to = Last day
days-off-to-hint = Leave it empty for a single day.
days-off-is-half = Half days
days-off-is-half-yes = Only half of each day
days-off-take-back = Take back
# An item of that list. $days is one of the messages above.
days-off-take-back-own = Mine: { $days }
days-off-take-back-team = Team: { $days }
days-off-weekdays = You work on
days-off-saved = Saved. Days off to come: { LIST($days) }.
days-off-saved-none = Saved. You have no days off to come.
days-off-saved-team = The team is off: { LIST($days) }.

days-off-file = Calendar file
days-off-file-hint = An iCalendar file (.ics) with days off. You see the days before they’re saved. Only the days are kept, no titles.
days-off-holidays = Public holidays of
days-off-holidays-hint = For the whole team: a country or a part of it, such as DE-BY or France. You see the days before they’re saved.

## What a calendar file gives, before it is saved

days-off-preview-lead =
    { $whose ->
        [team] “{ $file }”: days off for { $team } from { DAY($first) } to { DATE($last) }, { NUMBER($count) } in all.
       *[own] “{ $file }”: days off for you from { DAY($first) } to { DATE($last) }, { NUMBER($count) } in all.
    }
days-off-preview-none = “{ $file }” gives no new days off from { DAY($first) } to { DATE($last) }.
# $days is one of the messages of days at the top, $titles a list of what the calendar calls them.
days-off-preview-titled = • { $days }: { LIST($titles) }
days-off-preview-untitled = • { $days }
days-off-preview-more =
    { $count ->
        [one] … and { NUMBER($count) } more line; its day is saved as well.
       *[other] … and { NUMBER($count) } more lines; their days are saved as well.
    }
# Regions of a country, as codes with their names.
days-off-preview-regions = These are the holidays of the whole country. For those of a part, open the form again and add it to the country’s code: { $regions }.
days-off-preview-holidays = Holidays that fall on days that are off already, or on no working day, change nothing.
days-off-preview-rule = An event at times of a day takes the whole day from three quarters of the working day on, and half of it from a third on.
days-off-preview-left-out = *Left out*
days-off-preview-left-out-more =
    { $count ->
        [one] … and { NUMBER($count) } more event.
       *[other] … and { NUMBER($count) } more events.
    }
# A line each. $title is what the calendar calls the event, $days one of the messages of days at the top.
days-off-left-out =
    { $why ->
        [cancelled] • “{ $title }” ({ $days }): cancelled.
        [free] • “{ $title }” ({ $days }): marked as free.
        [too-short] • “{ $title }” ({ $days }): less than a third of the working day.
        [off-already] • “{ $title }” ({ $days }): off already.
        [no-working-day] • “{ $title }” ({ $days }): no working day.
       *[unreadable] • “{ $title }”: can’t be understood.
    }
days-off-left-out-outside =
    { $count ->
        [one] • { NUMBER($count) } event is outside this time.
       *[other] • { NUMBER($count) } events are outside this time.
    }
days-off-untitled = no title
# In place of the last of many days.
days-off-and-more = { $days } and { NUMBER($count) } more
days-off-takes-free = Marked as free
days-off-takes-free-yes = Take these as days off too
days-off-preview-submit = Save days off
days-off-preview-check = Check again

## On the home page

days-off-home = *Your days off:* { LIST($days) }
days-off-home-none = *Your days off:* none to come
days-off-home-button = Days off
# In place of the day's question.
days-off-today = You’re off today.

## In the preview of a plan, to the facilitator only

plan-time = { plan-time-days }.
plan-time-days =
    { $days ->
        [one] { NUMBER($days) } working day of all members together
       *[other] { NUMBER($days) } working days of all members together
    }
# $named: days off and away as the plan's form names them; $others: those of them that nobody has entered.
plan-time-named =
    { $others ->
        [0] { plan-time-days }. The { NUMBER($named) } off or away that you named are among the days off that are entered, and count once.
       *[other] { plan-time-days }, the { NUMBER($named) } off or away taken off. What nobody has entered with `/loadline off` ({ NUMBER($others) }) counts as spread over the whole sprint.
    }
plan-time-team-off = • The team is off { LIST($days) }.
plan-time-person-off = • { $person } is off { LIST($days) }.
plan-time-person-part = • { $person } works { $weekdays }.
plan-time-person-both = • { $person } works { $weekdays }, and is off { LIST($days) }.
plan-time-more =
    { $count ->
        [one] … and { NUMBER($count) } more person.
       *[other] … and { NUMBER($count) } more people.
    }
