### When the bot itself fails, or is slow.

# How far the request got: what it wrote is kept, is not, or is not known.
trouble-nothing = Something went wrong on our side, and nothing was recorded. Please try again. If it happens again, { trouble-operator }
trouble-uncertain = Something went wrong on our side, and it is not certain whether this was recorded. Look first, then try again if it is missing. If it happens again, { trouble-operator }
trouble-kept = This was recorded, but something went wrong on our side while showing it. You don’t need to do it again. If anything is missing, { trouble-operator }
trouble-operator = give the person who runs this bot the code `{ $reference }`.
# The database takes nothing in. Certain: no other process can have recorded it meanwhile.
trouble-database =
    { $certain ->
        [yes] Nothing was recorded: { trouble-database-why }
       *[no] I couldn’t record this: { trouble-database-why }
    }
trouble-database-why =
    { $why ->
        [database-full] my database has no room left.
        [database-read-only] my database can only be read at the moment.
       *[database-busy] my database has no connection left for me.
    }
trouble-database-fix =
    { $why ->
        [database-full] Please ask the person who runs this bot to make room on the disk of its database.
        [database-read-only] Please tell the person who runs this bot. It is mostly over within minutes.
       *[database-busy] It is mostly over within a minute. If it lasts, please tell the person who runs this bot.
    } { $certain ->
        [yes] Then try again.
       *[no] Then look whether this is there, and try again if it is missing.
    }
# For a form that arrived twice: the first one was carried out.
trouble-sent-twice = This form arrived twice. It was recorded once.
# In the place of a form whose work takes longer than the platform waits.
trouble-working = This takes a moment longer than usual. You’ll get a message when it is done.

## Titles

trouble-title = That went wrong
trouble-kept-title = Recorded
trouble-working-title = Still working
trouble-done-title = Done
trouble-refused-title = Not done
