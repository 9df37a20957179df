### What is used everywhere: amounts, dates, people.
### How to write messages: see "Words" in DEVELOPERS.md.

# What POINTS() says.
amount-points =
    { $amount ->
        [one] { NUMBER($amount) } point
       *[other] { NUMBER($amount) } points
    }
# What CHANCE() says.
amount-chance = { WHOLE_PERCENT($amount) }
amount-chance-below = less than { WHOLE_PERCENT($amount) }
amount-chance-above = more than { WHOLE_PERCENT($amount) }
# What PERCENT_SPAN() says.
amount-percent-span = { WHOLE_PERCENT($amount) } to { WHOLE_PERCENT($high) }
# What IN_TEN() says: of ten sprints.
amount-in-ten =
    { $amount ->
        [0] less than 1 in 10
        [10] more than 9 in 10
       *[other] about { NUMBER($amount) } in 10
    }
# What TENTHS() says, beside others of its kind.
amount-tenths =
    { $amount ->
        [0] less than 1 in 10
        [10] more than 9 in 10
       *[other] { NUMBER($amount) } in 10
    }
# What TIMES_IN_TEN() says, at the end of a sentence.
amount-times-in-ten =
    { $amount ->
        [0] hardly ever
        [1] about 1 time in 10
        [10] nearly every time
       *[other] about { NUMBER($amount) } times in 10
    }
# In place of a person whose data was erased.
somebody = somebody
amount-percent = { PERCENT($share) }
amount-whole-percent = { WHOLE_PERCENT($share) }
amount-number = { NUMBER($amount) }
amount-day = { DAY($day) }
amount-short-date = { SHORT_DATE($day) }
amount-short-date-no-year = { SHORT_DATE_NO_YEAR($day) }
# The distance between two percentages. $amount: $count, with as many decimals as are needed.
amount-percentage-points =
    { $count ->
        [one] { $amount } percentage point
       *[other] { $amount } percentage points
    }
