### What is stored about a person, as they read it when they ask; their copy, and the form that erases them.

privacy-nothing = Nothing is stored under your id
privacy-nothing-others = Titles, goals and notes that others typed may mention you, but nothing leads from them to your id.

privacy-stored = What is stored about you

# What is stored of each kind; each is the first part of privacy-kind.
privacy-memberships =
    { $count ->
        [one] { NUMBER($count) } membership of a team, with your name
       *[other] { NUMBER($count) } memberships of teams, with your name
    }
privacy-product-owner-of =
    { $count ->
        [one] { NUMBER($count) } team that names you as product owner
       *[other] { NUMBER($count) } teams that name you as product owner
    }
privacy-answers =
    { $count ->
        [one] { NUMBER($count) } answer about a card, with its note
       *[other] { NUMBER($count) } answers about cards, with their notes
    }
privacy-prompts =
    { $count ->
        [one] { NUMBER($count) } daily prompt, and how you responded
       *[other] { NUMBER($count) } daily prompts, and how you responded
    }
privacy-cards-owned =
    { $count ->
        [one] { NUMBER($count) } card that you own
       *[other] { NUMBER($count) } cards that you own
    }
privacy-cards-added =
    { $count ->
        [one] { NUMBER($count) } card that you added
       *[other] { NUMBER($count) } cards that you added
    }
privacy-card-changes =
    { $count ->
        [one] { NUMBER($count) } card dropped, brought back, reopened, blocked, moving again or given from hand to hand, with your reason
       *[other] { NUMBER($count) } cards dropped, brought back, reopened, blocked, moving again or given from hand to hand, with your reasons
    }
privacy-drafts =
    { $count ->
        [one] { NUMBER($count) } draft of a plan
       *[other] { NUMBER($count) } drafts of plans
    }
privacy-plan-changes =
    { $count ->
        [one] { NUMBER($count) } change that you made to a plan
       *[other] { NUMBER($count) } changes that you made to plans
    }
privacy-goals-judged =
    { $count ->
        [one] { NUMBER($count) } sprint goal of which you said whether it was met
       *[other] { NUMBER($count) } sprint goals of which you said whether they were met
    }
privacy-experiments-begun =
    { $count ->
        [one] { NUMBER($count) } thing to try that you kept for your team
       *[other] { NUMBER($count) } things to try that you kept for your team
    }
privacy-experiments-ended =
    { $count ->
        [one] { NUMBER($count) } thing that was tried and about which you decided
       *[other] { NUMBER($count) } things that were tried and about which you decided
    }
privacy-recorded-values =
    { $count ->
        [one] { NUMBER($count) } value that you recorded
       *[other] { NUMBER($count) } values that you recorded
    }
privacy-messages-to-you =
    { $count ->
        [one] { NUMBER($count) } record of a message to you
       *[other] { NUMBER($count) } records of messages to you
    }
privacy-posts-by-you =
    { $count ->
        [one] { NUMBER($count) } record of a post that you caused
       *[other] { NUMBER($count) } records of posts that you caused
    }
privacy-visits =
    { $count ->
        [one] { NUMBER($count) } note of when you first opened Loadline’s home page or messages
       *[other] { NUMBER($count) } notes of when you first opened Loadline’s home page or messages
    }
privacy-installations =
    { $count ->
        [one] { NUMBER($count) } installation of Loadline by you
       *[other] { NUMBER($count) } installations of Loadline by you
    }

# A line of the list. $what is one of the messages above; $teams are names.
privacy-kind =
    { $span ->
        [undated] • { $what }
        [day] • { $what }, of { DATE($first) }
       *[days] • { $what }, from { DATE($first) } to { DATE($last) }
    }
privacy-kind-in-teams =
    { $span ->
        [undated] • { $what } ({ LIST($teams) })
        [day] • { $what }, of { DATE($first) } ({ LIST($teams) })
       *[days] • { $what }, from { DATE($first) } to { DATE($last) } ({ LIST($teams) })
    }
# The end of a list of teams.
privacy-more-teams = { NUMBER($count) } more

privacy-why = *Why:* to ask you about your cards, and to add up what is left on the team’s.
privacy-who-sees-it = *Who sees it:* you. Everybody else sees your answers only as numbers of a card. Members see who owns the card, so on a card that you own alone they see your numbers; its notes are read in the status and below the verdict, without a name, unless you begin them with “private:”. Nobody gets sums by person. The person who runs Loadline can read its database.
privacy-how-long = *How long:*
privacy-kept-until = • { $team } was ended: everything of it is erased on { DATE($day) }.
privacy-kept-for-ever = • { $team } keeps the details of its sprints without a time limit.
privacy-kept-for =
    { $months ->
        [one] • { $team } keeps the details of a sprint for { NUMBER($months) } month after its end, then only its totals.
       *[other] • { $team } keeps the details of a sprint for { NUMBER($months) } months after its end, then only its totals.
    }
privacy-and-more-teams =
    { $count ->
        [one] … and { NUMBER($count) } more team.
       *[other] … and { NUMBER($count) } more teams.
    }
privacy-only-you = Only you see this. What others typed may mention you; it isn’t in the copy. Messages that were sent stay on the chat platform for as long as it keeps them.

# Buttons.
privacy-copy-button = Send me a copy
privacy-erase-button = Erase me

# Comes with the copy, in the person's direct messages.
privacy-copy-comment =
    { $records ->
        [one] Everything that is stored under your id: { NUMBER($records) } record, as a JSON file. Points are as you gave them; times are in UTC. Only you get it.
       *[other] Everything that is stored under your id: { NUMBER($records) } records, as a JSON file. Points are as you gave them; times are in UTC. Only you get it.
    }
privacy-copy-sent =
    { $records ->
        [one] A copy of { NUMBER($records) } record is in your direct messages with me. It stays there until you delete the message.
       *[other] A copy of { NUMBER($records) } records is in your direct messages with me. It stays there until you delete the message.
    }

privacy-erased =
    { $records ->
        [one] You are erased: { NUMBER($records) } record no longer refers to you.
       *[other] You are erased: { NUMBER($records) } records no longer refer to you.
    }
privacy-left-teams = You are no longer part of { LIST($teams) }.
privacy-erased-elsewhere = Messages that were sent stay on the chat platform, and so does a copy that you asked for: delete them there. Backups of the database are overwritten after a while; the person who runs Loadline knows when.

# In place of the sentence above, for who asked for their messages to be deleted. $known: whether there are any.
privacy-erased-messages =
    { $known ->
        [yes] I am deleting my messages to you here; that takes some minutes, at most 40 messages a minute. Then I say how many went. Replies in threads, files that you asked for and what you wrote stay: delete them yourself. Backups of the database are overwritten after a while; the person who runs Loadline knows when.
       *[no] I have no record of a message to you, so I delete none. Messages that were sent stay on the chat platform: delete them there. Backups of the database are overwritten after a while; the person who runs Loadline knows when.
    }

# In the direct messages of somebody who was erased, once their messages are deleted.
privacy-messages-removed =
    { $count ->
        [one] Done: { NUMBER($count) } of my messages to you is deleted.
       *[other] Done: { NUMBER($count) } of my messages to you are deleted.
    }
privacy-messages-left =
    { $count ->
        [one] { NUMBER($count) } more stays: your workspace doesn’t let me delete it. Somebody who administers the workspace can.
       *[other] { NUMBER($count) } more stay: your workspace doesn’t let me delete them. Somebody who administers the workspace can.
    }

# The form that asks before somebody is erased. In each list, a line for each thing.
privacy-erase-title = Erase me?
privacy-erase-submit = Erase me
privacy-erase-keep = Keep everything
privacy-erase-goes-head = *What goes:*
privacy-erase-goes =
    • your id and your name, everywhere
    • your notes, and the reasons that you gave
    • your prompts, drafts, and the record of messages to you
    • your place on teams, as facilitator and as product owner
privacy-erase-stays-head = *What stays:*
privacy-erase-stays =
    • the points that you reported, as the team’s, so that every number stays as it was posted; nothing shows whose they were
    • titles of cards and goals of sprints; where others wrote your name, it says “somebody”
    • messages that were sent, unless you tick below that my messages to you go as well
privacy-erase-then = Your open cards will have no owner, and the facilitators hear that they need one. You get no more questions. If somebody adds you to a team again, you start from nothing.
privacy-erase-messages = My messages to you
privacy-erase-messages-hint = Daily prompts and everything else that I wrote in our direct messages. It takes some minutes.
privacy-erase-messages-yes = Delete them on the chat platform as well
privacy-erase-for-good = *This can’t be undone. Get a copy first if you want one.*
