## To a facilitator: something can’t be delivered

channel-unreachable-title = I can’t post in the channel of { $team }
# $cause: why the platform refused it. $days: how long the channel may be closed.
channel-unreachable-why =
    { $cause ->
        [place-gone] { $channel } is closed to me: it was archived or deleted, or I am not in it. If it is still in use, type `/invite @loadline` there. If it is gone, move the team: type `/loadline move` in another channel. If it stays closed for { NUMBER($days) } days, I count the team as ended.
        [bot-left] I was removed from { $channel }. Type `/invite @loadline` there, so that I can go on posting.
        [permission] Your workspace doesn’t let me post in { $channel }. Ask somebody who administers the workspace or the channel to allow it.
        [token-gone] My access to your workspace has ended. Ask the person who runs Loadline to install it again.
        [tries-failed] { $channel } could not be reached, even after many tries. Ask the person who runs Loadline what is wrong.
        [person-gone] { $channel } can’t be posted to. Ask the person who runs Loadline what is wrong.
       *[our-defect] A message for { $channel } was refused as faulty. That is a mistake of mine: tell the person who runs Loadline.
    }
# Another organisation reads the team's channel now.
channel-shared-title = I post nothing in the channel of { $team } for now
channel-shared-where = { $channel } is shared with another organisation now, or one is invited.
channel-shared-until = If they may read that, type `/loadline setup` there and say so in the form. If not, move the team: type `/loadline move` in another channel. What waits is posted then.
member-unreachable-title = I can’t reach a member of { $team }
member-unreachable-why =
    { $cause ->
        [person-gone] { $person } can’t be written to, so nobody asks them about their cards. If they have left, take them off the team: `/loadline setup`.
        [place-gone] { $person } can’t be written to, so nobody asks them about their cards. If they have left, take them off the team: `/loadline setup`.
        [permission] Your workspace doesn’t let me write to { $person }, so nobody asks them about their cards. Ask somebody who administers the workspace to turn my messages tab on.
        [token-gone] My access to your workspace has ended, so { $person } isn’t asked. Ask the person who runs Loadline to install it again.
        [tries-failed] { $person } could not be reached, even after many tries. Ask the person who runs Loadline what is wrong.
       *[our-defect] A message to { $person } was refused as faulty. That is a mistake of mine: tell the person who runs Loadline.
    }
# Below either of the two.
unreachable-again = Nothing that was recorded is lost. Once this is fixed, the person who runs Loadline sends what is missing with `npm run posts -- retry all`.
