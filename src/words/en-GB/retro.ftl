### The retrospective sheet: /loadline retro, its post in the channel and its printable page. It names cards and days, and
### nobody.

retro-title = Retrospective of { $sprint }
# In place of the verdict.
retro-running = { $sprint } runs until { DAY($endsOn) }. This is the sprint so far.
retro-cancelled = { $sprint } was cancelled, so there is no verdict.
# $days: whether it is known what happened on which day.
retro-imported =
    { $days ->
        [known] { $sprint } was imported, so there is no verdict.
       *[unknown] { $sprint } was imported: its dates and totals are known, but not what happened on which day.
    }

## The days: a line each

retro-days-title = What happened, day by day
retro-nothing-happened = Nothing was recorded after planning.
retro-day = { DAY($day) } – { $events }
# Joins what happened on one day.
retro-events = { $before }; { $event }
retro-event =
    { $kind ->
        [pulled-in] pulled in: { LIST($cards) }
        [dropped] dropped: { LIST($cards) }
        [undropped] drop taken back: { LIST($cards) }
        [grew] grew: { LIST($cards) }
        [shrank] shrank: { LIST($cards) }
        [blocked] blocked: { LIST($cards) }
        [moving] moving again: { LIST($cards) }
        [reopened] reopened: { LIST($cards) }
       *[finished] finished: { LIST($cards) }
    }
retro-plan-changed = plan changed: { LIST($changes) }
# A card in such a list. $facts: its points, how it grew, what was written.
retro-card-with = { $card } ({ SERIES($facts) })
retro-points = { POINTS($points) }
retro-note = “{ $note }”
# The last item of such a list.
retro-more = { NUMBER($count) } more
retro-days-more =
    { $days ->
        [one] … and { NUMBER($days) } more day.
       *[other] … and { NUMBER($days) } more days.
    }

## The cards

retro-cards-title = Cards that taught something
retro-card = { $card }: { SERIES($lessons) }
# Of all cards.
retro-lesson-grew-most = grew most ({ LIST($growth) })
retro-lesson-off-scale = furthest off its estimate ({ NUMBER($estimatePoints) }, true size { NUMBER($sizePoints) })
retro-lesson-blocked-longest = blocked for longest ({ NUMBER($evenings) } evenings)
retro-lesson-pulled-in-before =
    { $openCards ->
        [one] pulled in and worked on ({ POINTS($workedPoints) }) while a committed card stayed unfinished
       *[other] pulled in and worked on ({ POINTS($workedPoints) }) while { NUMBER($openCards) } committed cards stayed unfinished
    }
retro-lesson-nearly-done = nearly done ({ NUMBER($leftPoints) } of { POINTS($sizePoints) } left)

## Questions

retro-questions-title = To talk about
retro-question = { NUMBER($number) }. { $fact } { $ask }

## Who sees it

retro-only-you = Only you see this. It names cards, and no people: share it when the team meets.
retro-shared-by = Shared by { $person }. See it any time with `/loadline retro`.
retro-share-button = Share in the channel
retro-page-button = Printable page
retro-shared-reply = The sheet goes to the team’s channel.

## The page to print: an HTML file with the charts, and room to write

retro-numbers-title = The numbers
# Above empty lines.
retro-agreed-title = What we agree to try
# With the file, in the direct messages.
retro-page-comment = The retrospective sheet of { $sprint }: open it in a browser and print it.
retro-page-sent = The page is in your direct messages with me. Open it in a browser and print it.
