### What is used everywhere: amounts, dates, people.
### How to write messages: see "Words" in DEVELOPERS.md.

# What POINTS() says.
amount-points =
    { $amount ->
        [one] { NUMBER($amount) } point
       *[other] { NUMBER($amount) } points
    }
# In place of a person whose data was erased.
somebody = somebody
amount-percent = { PERCENT($share) }
