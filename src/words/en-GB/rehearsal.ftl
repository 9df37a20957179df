### The rehearsal: what it prints, and what its page shows beside the chat.

## The command

rehearsal-usage =
    Usage:
    { "  " }npm run rehearse                           open a workspace with a page to play in
    { "  " }npm run rehearse -- --load FILE            the same, with a scenario file preloaded
    { "  " }npm run rehearse -- --play FILE [--json]   play a scenario file and print every post, or the results as JSON
    { "  " }npm run rehearse -- --stand-in-only        open the stand-in for the chat platform without the bot, and print its addresses as JSON
    { "  " }npm run rehearse -- --port NUMBER          serve the page, or the stand-in, on this port
rehearsal-unread = These fields are not known and have no effect, perhaps misspelled: { SERIES($fields) }.
rehearsal-port-in-use = Port { $port } is in use, perhaps by another rehearsal. Choose one: npm run rehearse -- --port { $next }
rehearsal-json-alone = --json goes with --play FILE.
rehearsal-port-wrong = --port takes a number, such as 4747.
rehearsal-open = The rehearsal is open at { $url } (stop it with Ctrl+C).

## The page

# As in the app's manifest.
rehearsal-shortcut-answer = Answer for my cards
rehearsal-hint =
    It is the second morning of a sprint. Answer for { $member } below, or be somebody else.
    “To the sprint’s end” plays what the others say, and brings the verdict.
# Once the first sprint has ended.
rehearsal-hint-after =
    The verdict is in the channel; its thread says more.
    Be the facilitator and plan the next sprint: /loadline plan.
    Or set up a team from nothing in #{ $channel }: /loadline setup. The form of /loadline import has a file with past sprints.

# After the calendar was moved on.
rehearsal-wrote = { LIST($people) } wrote. It is { DAY($day) }, { $time }.
rehearsal-day = It is { DAY($day) }, { $time }.

## Steps of a scenario

rehearsal-set-up = The facilitator set up { $team }.
rehearsal-planned = The facilitator planned { $sprint }.
rehearsal-not-planned = { $sprint } could not be planned.
rehearsal-said = { DAY($day) }: messages from { LIST($people) }.
rehearsal-facilitator = the facilitator
rehearsal-closed = { $sprint } reached its closing time.

## A scenario that can't go on

rehearsal-threshold-unknown = There is no threshold { SERIES($names) }; the thresholds are { SERIES($known) }.
rehearsal-cards-too-long = The cards are too long for the plan form.
rehearsal-cards-fields = The plan form has too few fields for the cards.
rehearsal-no-member = The team has no member “{ $member }”.
rehearsal-silent = The bot opened no form and said nothing.
rehearsal-no-sprint = No sprint is running. As the facilitator, plan one with /loadline plan.
rehearsal-no-form = No form is open.

## A play, printed

rehearsal-sprint-heading = { $sprint }, { $first } to { $last }
rehearsal-refused-heading = Refused
rehearsal-post =
    { $seen ->
        [by-them-only] { $at } UTC → { $to }, only they see it
       *[by-all] { $at } UTC → { $to }
    }
rehearsal-post-updated =
    { $seen ->
        [by-them-only] { $at } UTC → { $to }, only they see it, updated since
       *[by-all] { $at } UTC → { $to }, updated since
    }
rehearsal-image = [Image: { $text }]
rehearsal-file = [File: { $name }]

## A scenario file that can't be played. Each problem follows its place in the file: "team.name: is missing".

scenario-refused = { $file } can’t be played:
scenario-problem = { $place }: { $problem }
scenario-whole-file = the file
scenario-no-json = It is not JSON: { $reason }.
scenario-unreadable = It can’t be read: { $reason }.
scenario-missing = is missing
scenario-type =
    { $expected ->
        [string] must be a text
        [number] must be a number
        [array] must be a list, in square brackets
       *[object] must be an object, in curly brackets
    }
scenario-empty-text = must not be empty
scenario-empty-list = must have at least one entry
scenario-weekday = must be a number from 1 for Monday to 7 for Sunday
scenario-true = must be true, or be left out
scenario-day = must be a date that exists, written like 2026-11-04
scenario-time = must be a time of day, written like 09:15
scenario-zone = there is no time zone “{ $zone }”; write one like Europe/Lisbon
scenario-event-none = must be exactly one of { SERIES($kinds) }; it is none
scenario-event-several = must be exactly one of { SERIES($kinds) }; it is { LIST($found) }
scenario-extend-nothing = must give endsOn, closesAt or both
scenario-goal-met = must be "yes", "partly" or "no"
# $ratios: names of the code.
scenario-ratio = must be one of { OR_LIST($ratios) }
scenario-direction = must be "up" or "down"
scenario-outcome = must be "keep", "change" or "drop"
scenario-event-nobody = must say who does it, as "by": the id of a member
scenario-member-twice = has two members with the id { $member }
