### What the operator's commands print.

## npm run erase

operator-erase-usage = Usage: npm run erase -- --workspace ID --user ID [--messages], with the ids of the chat platform. With --messages the bot’s messages to the person are deleted as well.
operator-erased =
    { $records ->
        [one] Erased. { NUMBER($records) } record no longer mentions the person.
       *[other] Erased. { NUMBER($records) } records no longer mention the person.
    }
operator-erased-messages =
    { $known ->
        [yes] The bot’s messages to the person are deleted while it runs; they hear how many went.
       *[no] No message to the person is on record, so none is deleted.
    }
operator-erased-teams = Teams: { SERIES($teams) }.

## npm run forget

operator-forget-usage = Usage: npm run forget -- --workspace ID [--yes], with the id of the chat platform. Without --yes it asks on a terminal.
operator-forget-unknown = Nothing is stored of the workspace { $workspace }.
operator-forget-knows = Known workspaces:
operator-forget-knows-none = No workspace is known.
# A line of the list, and what is asked about.
operator-forget-tenant =
    { $teams ->
        [one] { $workspace } ({ NUMBER($teams) } team)
       *[other] { $workspace } ({ NUMBER($teams) } teams)
    }
operator-forget-tenant-named =
    { $teams ->
        [one] { $workspace }, { $name } ({ NUMBER($teams) } team)
       *[other] { $workspace }, { $name } ({ NUMBER($teams) } teams)
    }
# $tenant: a line of the list.
operator-forget-ask = Everything of { $tenant } will be erased for good, its token included. Type yes to go on:{ " " }
operator-forget-not = Nothing was erased.
operator-forgotten =
    { $records ->
        [one] Erased: { NUMBER($records) } row of the workspace { $workspace }.
       *[other] Erased: { NUMBER($records) } rows of the workspace { $workspace }.
    }
operator-forgotten-table = { "  " }{ $table }: { NUMBER($rows) }
operator-forgotten-elsewhere = Messages stay on the chat platform, and backups hold the workspace until they are overwritten. Ids of requests stay for a day, without its name. If the app is still installed there, remove it: a message to it begins anew.

## npm run posts

operator-posts-usage = Usage: npm run posts -- list | retry ID… | drop ID… (“all” instead of an ID means every listed post)
operator-posts-none = No posts need attention.
# A post that is no longer tried. Its id comes first, so that it can be copied.
operator-post = { $id }  { $kind }, { $workspace }, { $channel }: { $reason }
operator-post-error = { $id }  { $kind }, { $workspace }, { $channel }: { $reason }, { $error }
operator-post-direct = a direct message
# Below the list, and in what the doctor says: why posts were not delivered, and what to do. $codes: the platform’s own, or ours.
operator-undelivered =
    { $count ->
        [one] { NUMBER($count) } post was not delivered
       *[other] { NUMBER($count) } posts were not delivered
    } { $cause ->
        [place-gone] because the channel or message is gone or closed to the bot ({ SERIES($codes) }). A facilitator has to invite the bot there, or to move the team: /loadline move in another channel. They were told.
        [person-gone] because the person can’t be written to ({ SERIES($codes) }). If they have left, a facilitator has to take them off the team.
        [token-gone] because the bot’s token is void ({ SERIES($codes) }). Install the app to the workspace again and give the new token.
        [permission] because the workspace doesn’t allow it ({ SERIES($codes) }). Ask somebody who administers the workspace; a scope that is missing is added under OAuth & Permissions.
        [our-defect] because the platform found it faulty ({ SERIES($codes) }). That is a defect of Loadline: please report it with these codes.
       *[tries-failed] although it was tried for about an hour ({ SERIES($codes) }). Look for "post given up" in the log.
    } Then send what is missing with npm run posts -- retry all, or drop it with npm run posts -- drop ID.
operator-posts-retried =
    { $count ->
        [one] { NUMBER($count) } post is queued again.
       *[other] { NUMBER($count) } posts are queued again.
    }
operator-posts-dropped =
    { $count ->
        [one] { NUMBER($count) } post was dropped.
       *[other] { NUMBER($count) } posts were dropped.
    }

## npm run rotate-keys

operator-no-keys = There are no keys to rotate: LOADLINE_TOKEN_KEYS is not set.
operator-keys-rotated =
    { $count ->
        [one] { NUMBER($count) } token was encrypted again. All tokens now use the key { $key }.
       *[other] { NUMBER($count) } tokens were encrypted again. All tokens now use the key { $key }.
    }

# Below the sentence above.
operator-token-damaged = The token of the workspace { $workspaceId } is damaged and was left as it is; that workspace has to install the bot again.

## npm run dump, npm run restore

operator-folder-usage =
    Usage, with the bot stopped and LOADLINE_DATA_FOLDER set as for the bot:
    { "  " }npm run dump -- FILE       write the data folder to a new file
    { "  " }npm run restore -- FILE    create the data folder from such a file
operator-dumped = Written to { $file }.
operator-restored = Restored to { $folder }.
operator-file-unusable = The file { $file } can’t be used ({ $reason }).

## npm run own-record

operator-own-usage = Usage: npm run own-record [-- --json]
operator-own-none = Nothing to score yet: no team has more than { NUMBER($sprints) } closed sprints of which it is known how each card went.
operator-own-lead = How the two models of a running sprint would have done here: every sprint foretold from those of its team before it, after the first { NUMBER($sprints) }, all teams together. In a status a team’s own latest sprints decide which model speaks, from { NUMBER($needed) } scored ones on; before that, sums do. This judges the forecast; never use it to judge people or to compare teams.
# $share of the working days gone; errors in points.
operator-own-line = At { WHOLE_PERCENT($share) } of the time ({ NUMBER($scored) } sprints): the guess was off by { NUMBER($sumsError) } points by sums and { NUMBER($cardsError) } card by card; 80% intervals held { WHOLE_PERCENT($sumsHeld) } and { WHOLE_PERCENT($cardsHeld) }. { $nearer ->
        [cards] As a whole forecast (CRPS), card by card was nearer.
       *[sums] As a whole forecast (CRPS), sums were nearer.
    }
