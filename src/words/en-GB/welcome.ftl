### The first message in the direct messages, when somebody opens them for the first time.

welcome-title = Hello, I’m Loadline
welcome-team = I help { LIST($teams) } make commitments that the team keeps.
# For who is never asked about cards.
welcome-reader-type =
    You can type here, for example:
    • `/loadline status` to see how the sprint is going
    • `/loadline privacy` to see what is stored about you
    • `/loadline help` for everything else
welcome-member-type =
    You can type here, for example:
    • `2: 3` to say that your card 2 has 3 points left
    • `/loadline status` to see how the sprint is going
    • `/loadline privacy` to see what is stored about you
    • `/loadline help` for everything else
welcome-no-team = I help a team commit to the work that it will keep: I ask each member every working day what is left on their cards, and post in the team’s channel how the sprint went. You aren’t on a team here yet.
welcome-no-team-type =
    To begin:
    • type `/loadline setup` in your team’s channel to set the team up, or ask its facilitator to add you
    • type `/loadline help` here to see what I can do
    • type `/loadline privacy` here to see what is stored about you
