### When a member wants to be asked: the form and its confirmation.

# On the home page, beside the button for days off.
own-prompt-home-button = When I’m asked
own-prompt-title = When I ask you
own-prompt-submit = Save
own-prompt-intro = Choose your own time for the daily question about your cards of { LIST($teams) }. It must lie on the team’s working day, an hour before closing time at the latest. A reminder follows as long after it as usual.
own-prompt-at = When
own-prompt-at-hint = For example 10:30. Leave it empty for the team’s time.
own-prompt-zone = Time zone
own-prompt-zone-hint = Region and city, for example Europe/Lisbon.
own-prompt-set = I ask you at { $time } ({ $zone }) about your cards of { LIST($teams) }.
own-prompt-set-next = Back to the team’s time: `/loadline ask team`.
own-prompt-team = I ask you at the team’s time about your cards of { LIST($teams) }.
