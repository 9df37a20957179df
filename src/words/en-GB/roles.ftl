### To somebody who was made something on a team

role-given-title = You are { LIST($roles) } of { $team } now
role-name =
    { $role ->
        [member] a member
        [facilitator] a facilitator
       *[product-owner] the product owner
    }
role-given-by = { $person } added you.
role-given-member = On each working day of a sprint I ask you here what is left on your cards.
role-given-facilitator = As a facilitator you can plan, close and cancel sprints and change the team’s settings. I write to you when something needs you, such as an open card without an owner.
role-given-product-owner = As the product owner you can see the team’s cards and numbers and drop cards. Before a sprint closes I ask you here whether its goal was met, and afterwards, if the team wants that, what it was worth.
# To members.
role-given-stored = I store your name, what you answer and when, and days off that you tell me. Your answers are shown by card and in the team’s sums, never by person. On a card that you own alone, the team sees your numbers.
role-given-more = To see what is stored about you, type `/loadline privacy`; to leave, `/loadline leave`; for everything else, `/loadline help`.

## To somebody whom a facilitator took off a team

taken-off-title = You aren’t on { $team } any more
taken-off-by = { $person } took you off the team, so I won’t ask you about its cards any more.
taken-off-cards = An open card that you shared stays with its other owners; one that was yours alone needs another owner, which I tell the facilitators.
taken-off-product-owner = You are still the team’s product owner.
taken-off-record = What you have answered stays in the team’s record. To see what is stored about you, or to have it erased, type `/loadline privacy`.

## To those who lead a team, and to who did, when the platform says of somebody that they can't any more

role-ended-facilitator-title = Somebody who facilitated { $team } is a guest of this workspace now
role-ended-facilitator =
    { $count ->
        [0] Guests don’t facilitate. Nobody else does, so each member who isn’t a guest may plan and close sprints until somebody is named.
        [one] Guests don’t facilitate. { LIST($people) } does now.
       *[other] Guests don’t facilitate. { LIST($people) } do now.
    }
role-ended-product-owner-title = { $team } has no product owner any more
role-ended-product-owner = Their account is gone, or isn’t one of this workspace any more. To name another, type `/loadline setup` in the team’s channel.

## To those who stay when the last facilitator has left

no-facilitator-title = { $team } has no facilitator any more
no-facilitator-until = Until somebody is named, each of you may plan and close sprints and change the team. To name a facilitator, type `/loadline setup` in the team’s channel.
