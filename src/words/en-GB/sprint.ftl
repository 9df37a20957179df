### A sprint's days and times, wherever they are named.

sprint-span =
    { $days ->
        [single] { DAY($from) }
       *[several] { DAY($from) } to { DAY($to) }
    }
# When a sprint closes by itself.
sprint-closing-time = { DAY($day) } at { $time }
# What is shown of a time where the chat platform can’t show it in the reader's own zone.
sprint-moment = { sprint-closing-time } ({ $timeZone })
# The platform puts its own date and time in place of what is in braces.
sprint-moment-pattern = { "{date_short}" } at { "{time}" }
