### Setting a team up and changing it: the two forms, the post in the channel, and the replies.

## Who takes part, and when: /loadline setup

setup-title = Set up a team
setup-title-change = Change the team
setup-submit = Set up
setup-submit-change = Save
# $channel is the channel's mention.
setup-intro = For { $channel }. On working days of a sprint each member is asked, in a direct message, what is left on their cards. The verdict is posted in this channel.
# Only where everybody has left the channel's team. $sprints: those that it has behind it.
setup-deserted =
    { $sprints ->
        [0] Everybody has left the team of this channel. Set up again, it goes on with the settings that it had.
        [one] Everybody has left the team of this channel. Set up again, it goes on with its { NUMBER($sprints) } past sprint and the settings that it had.
       *[other] Everybody has left the team of this channel. Set up again, it goes on with its { NUMBER($sprints) } past sprints and the settings that it had.
    }
setup-name = Team name
# What is in the field while the team has no name yet.
setup-name-initial = Our team
# Another organisation reads the channel: in the form, in a refusal, and to the facilitators.
shared-channel-seen = People of another organisation read this channel too. They would see who is on the team, its plans with the goal, the titles and owners of cards, its verdicts with their numbers and charts, why cards were dropped, what members wrote of cards that grew or were blocked, and whatever is shared from a status or a forecast.
shared-channel-label = Post here all the same
shared-channel-yes = Yes, they may read that
setup-members = Members
setup-members-hint = The people who work on cards.
setup-facilitators = Facilitators
setup-facilitators-hint = They may plan, close and cancel sprints and change these settings.
setup-product-owner = Product owner
setup-time-zone = Time zone
setup-time-zone-hint = Region and city, for example Europe/Lisbon, America/New_York or Asia/Kolkata.
setup-prompt-time = When to ask each day
setup-prompt-time-hint = In the team’s time zone.
setup-working-days = Working days

## Closing time, reminder, scale and thresholds: /loadline setup measures

measures-title = Team measures
measures-submit = Save
measures-intro = For { $team }. These are the usual values or those the team chose before; change only what you need.
# A field for each setting.
setting-label =
    { $setting ->
        [closesAt] When a sprint closes on its last day
        [reminderAfterMinutes] How many minutes after the daily prompt to remind once
        [scale] Planning scale
        [weeklyLine] Whether the channel gets a line on the sprint each Friday
        [valueAfterDays] How many working days after a sprint to ask what it was worth
        [surpriseInVerdict] Whether surprise work counts in the verdict
        [carriedOver] What an unfinished card is planned with in the next sprint
       *[retentionMonths] How many months to keep the details of a sprint
    }
setting-hint =
    { $setting ->
        [closesAt] In the team’s time zone. A plan may set another time for its sprint.
        [reminderAfterMinutes] From 15 to 720.
        [scale] The sizes that an estimate may have, rising, for example 1, 2, 3, 5, 8, 13, 21.
        [weeklyLine] At closing time of the week’s last working day: points left, surprise work, blocked cards, days to go. Not on a sprint’s last day, when the verdict comes.
        [valueAfterDays] From 1 to 60; asks the product owner, else a facilitator. Leave it empty not to ask.
        [surpriseInVerdict] If it doesn’t, the kept share alone decides. Surprise work and estimate drift are shown either way.
        [carriedOver] The next plan begins with these cards; you can change each line.
       *[retentionMonths] From 1 to 120. After that a sprint is reduced to its totals, for good: cards, answers, prompts and posts are deleted; verdicts, ratios and history stay. Leave it empty to keep everything.
    }
setting-choice =
    { $choice ->
        [yes] Yes
        [no] No
        [left] What is left of it
       *[new-estimate] A new estimate
    }
measures-thresholds = Thresholds, in percent
# A field for each threshold.
threshold-label =
    { $threshold ->
        [keptShareAtLeast] Kept share at least (%)
        [surpriseRatioAtMost] Surprise ratio at most (%)
        [pullInRatioAtMost] Pull-in ratio at most (%)
        [planShareAtLeast] Plan share at least (%)
        [estimateAccuracyAtLeast] Estimate accuracy at least (%)
        [estimateAccuracyAtMost] Estimate accuracy at most (%)
        [velocityGrowthFirstMark] Velocity growth, first mark (%)
       *[velocityGrowthLongRangeMark] Velocity growth, long-range mark (%)
    }
threshold-hint =
    { $threshold ->
        [keptShareAtLeast] How much of the commitment must be finished for a sprint to be kept.
        [surpriseRatioAtMost] Surprise work as a share of the commitment. Above this the sprint is missed, if surprise work counts in the verdict.
        [pullInRatioAtMost] Pulled-in work as a share of the commitment. Above this there is a note.
        [planShareAtLeast] How much of what the sprint became had been planned. Below this there is a note.
        [estimateAccuracyAtLeast] Below this there is a note.
        [estimateAccuracyAtMost] Above this there is a note: estimating may cost more than it brings.
        [velocityGrowthFirstMark] Velocity, compared with the baseline sprint. At this mark there is a note. Leave it empty for no mark.
       *[velocityGrowthLongRangeMark] At this mark there is another note. Leave it empty for no mark.
    }

## Days of the week

weekday-1 = Monday
weekday-2 = Tuesday
weekday-3 = Wednesday
weekday-4 = Thursday
weekday-5 = Friday
weekday-6 = Saturday
weekday-7 = Sunday
weekdays-all = every day
weekdays-span = { $first } to { $last }
weekdays-some = { SERIES($days) }

## In the channel, and to the person who set the team up

# In the channel that the team moved to.
team-moved-here-title = { $team } has moved here
team-moved-here = { $person } moved the team to this channel. Plans and verdicts are posted here from now on; what was posted before stays where it is.
# To the person who moved it.
team-moved-reply = { $team } is in this channel now. I say so here, and in the channel that it left.
# In the channel that it left.
team-moved-away-title = { $team } has moved
team-moved-away = { $person } moved the team to { $channel }. Plans and verdicts are posted there from now on; what was posted here stays.
# Over a line for each setting that was changed.
team-changed = { $person } changed the settings of { $team }.
# $setting is the label of its field, $was and $became are values.
team-changed-line = • { $setting }: { $was } → { $became }
team-changed-people = { SERIES($people) }
team-changed-none = none
team-changed-no-limit = no limit
# $new: how many of them weren’t before, whom $people names.
team-changed-members =
    { $new ->
        [0] • Members: { NUMBER($was) } → { NUMBER($became) }
       *[other] • Members: { NUMBER($was) } → { NUMBER($became) }, with { SERIES($people) } new
    }
team-set-up-title =
    { $members ->
        [one] { $team } is set up with { NUMBER($members) } member
       *[other] { $team } is set up with { NUMBER($members) } members
    }
team-set-up-intro = On working days of a sprint ({ $days }), at { $time } ({ $timeZone }), I ask each member in a direct message what is left on their cards. When the sprint ends I post here whether the commitment was kept, and why.
team-members = Members: { SERIES($people) }
team-facilitators = Facilitators: { SERIES($people) }
team-product-owner = Product owner: { $person }
team-more-people = `/loadline setup` shows the rest.
team-set-up-privacy = Everybody can see what is stored about them, get a copy and be erased: `/loadline privacy`.
team-retention =
    { $months ->
        [one] { NUMBER($months) } month after its end a sprint is reduced to its totals.
       *[other] { NUMBER($months) } months after its end a sprint is reduced to its totals.
    }
team-retention-none = The details of past sprints are kept for good.
team-set-up-goes-on = { $sprint } goes on as it was planned. What else there is: `/loadline help`.
team-set-up-next = Next: a facilitator plans a sprint with `/loadline plan`. What else there is: `/loadline help`.
team-saved =
    { $change ->
        [new] { $team } is set up. While a sprint runs, members are asked at { $time } ({ $timeZone }), { $days }.
       *[changed] { $team } is changed. While a sprint runs, members are asked at { $time } ({ $timeZone }), { $days }.
    }
team-saved-next =
    { $change ->
        [new] Next: plan the first sprint with `/loadline plan`. Scale, thresholds and closing time have usual values; change them with `/loadline setup measures`.
       *[changed] Scale, thresholds and closing time: `/loadline setup measures`.
    }
team-measures-saved =
    { $minutes ->
        [one] Saved for { $team }. Sprints close at { $time }, the reminder comes { NUMBER($minutes) } minute after the prompt, and the scale is { SERIES($scale) }.
       *[other] Saved for { $team }. Sprints close at { $time }, the reminder comes { NUMBER($minutes) } minutes after the prompt, and the scale is { SERIES($scale) }.
    }
team-measures-from-when = A sprint that is already planned keeps its closing time. The new thresholds count from the next closing on.

## Ending the team, and taking that back: /loadline end, /loadline resume

end-title = End the team
end-submit = End the team
end-keep = Keep it
end-asked-no-more = • Nobody is asked anything about { $team } any more, from now on. (To close or cancel a sprint only: `/loadline close` or `/loadline cancel`.)
# $days: how long the sprint waits for the team to be taken back.
end-sprint-waits = • { $sprint } gets no verdict. If the team is taken back within { NUMBER($days) } days, it goes on; after that it is over.
end-erased = • What is stored of the team is kept until { DATE($day) }, then erased for good. Until then a facilitator can take this back with `/loadline resume`.
end-channel-told = • The channel hears of it. Nobody gets a direct message.
end-export = Before it ends
end-export-yes = Send me everything as CSV files first

# In the channel, and at its end in the reply to the person who ended it.
team-ended-title = { $team } was ended
team-ended-by = { $person } ended the team. Nobody is asked any more.
team-idle =
    { $months ->
        [one] It had no sprint for { NUMBER($months) } month, so I count it as ended.
       *[other] It had no sprint for { NUMBER($months) } months, so I count it as ended.
    }
team-ended-until = What is stored of it is kept until { DATE($day) }, then erased for good. Until then a facilitator can take this back: `/loadline resume`. To get it as CSV files, take it back and type `/loadline export`.
team-ended-no-more = It was taken back since.
team-ended-reply = { $team } is ended. The channel hears of it.
team-resumed-title = { $team } goes on
team-resumed-by = { $person } took back that the team was ended.
team-resumed-reply = { $team } goes on, and nothing is erased.
team-resumed-sprint = { $sprint } goes on as well.
team-resumed-plan = Next: plan a sprint with `/loadline plan`.

## Leaving the team: /loadline leave

leave-title = Leave the team
leave-submit = Leave
leave-asked-no-more = • You are asked nothing more about { $team }, from now on.
leave-alone =
    { $cards ->
        [one] • { NUMBER($cards) } open card that only you own becomes nobody’s, and the facilitators hear of it. To hand it over first: `/loadline give`.
       *[other] • { NUMBER($cards) } open cards that only you own become nobody’s, and the facilitators hear of it. To hand them over first: `/loadline give`.
    }
leave-shared =
    { $cards ->
        [one] • { NUMBER($cards) } open card stays with its other owners.
       *[other] • { NUMBER($cards) } open cards stay with their other owners.
    }
leave-last-facilitator = • Nobody else facilitates: until somebody is named, each member may act as a facilitator.
leave-product-owner = • The team has no product owner then, and a facilitator is asked about goals and values.
leave-answers-stay = • What you said about cards stays. To have your name taken out of it: `/loadline privacy`.
team-left = You have left { $team }, and are asked nothing more about it.
team-left-privacy = What is still stored about you: `/loadline privacy`. A facilitator can add you again with `/loadline setup`.
