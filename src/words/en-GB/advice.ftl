### The answers to the planning questions (`/loadline range`, `odds`, `forecast`, `history`): what they have in common.

# Below an answer that only the asker sees.
advice-only-you = Only you see this.
# Below an answer in the channel.
advice-shared = Shared by { $person } on { DATE($on) }. Ask any time with `/loadline { $command }`.
# Above the list of what the answer can't take into account.
advice-unknown-title = What this doesn’t know
# At the end of a list that is cut off.
advice-more-lines = … and { NUMBER($count) } more.
# How to get a history; after a sentence that says that it is too short.
advice-import-hint = Every sprint that closes here adds one. You don’t have to wait: a facilitator can bring in past sprints with `/loadline import`.

## Buttons

advice-share-button = Share in the channel
# Shows how the answer was made, and what it doesn't know.
advice-details-button = How it’s made
advice-odds-button = Surprise odds
advice-range-button = Commitment range
advice-experiments-button = What we try
advice-history-button = History
advice-plan-button = Plan a sprint
advice-change-range-button = Other points or days away
advice-change-forecast-button = Change the numbers

## Cautions

# Wherever a trend is shown.
caution-people = These numbers are about the plan: don’t use them to appraise anyone or to compare teams.
# Before the bot is switched on.
caution-set-up = These numbers are about the team’s plan, not about people: don’t use them to appraise anyone or to compare teams. Asking people about their work every day may be regulated where you are. Before you switch this on, check local law and works agreements, and ask the person responsible for data protection.
