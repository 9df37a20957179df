### What is wrong with a file of an import, one of its lines or a cell. Each goes on after “sprints.csv, line 7: ”.
### $typed is what is in the cell; $column names a column, the same in every language. Days are as in the files.

# A file.
file-no-csv = this isn’t a CSV file. In the spreadsheet, save or download the sheet as CSV, and give that file.
file-too-many-characters = the file has { NUMBER($count) } characters; { NUMBER($most) } is the most. Give it in several parts, each with the line of column names.
file-empty = the file is empty.
file-no-line = line { NUMBER($line) }: { $problem }
file-too-many-columns = it has { NUMBER($count) } columns; { NUMBER($most) } is the most.
file-too-many-lines = it has { NUMBER($count) } lines; { NUMBER($most) } is the most. Give it in several parts, each with the line of column names.
file-same-columns = two columns mean the same, “{ $first }” and “{ $second }”: both are read as “{ $column }”. Delete or rename one of them.
file-no-column-names = its first line doesn’t name the columns. Begin with a line of names; past sprints need: { SERIES($needed) }.
file-missing-columns =
    { $kind ->
        [sprints] it looks like a file of sprints, but has no column { SERIES($missing) }. Its first line must name at least: { SERIES($needed) }.
        [cards] it looks like a file of cards, but has no column { SERIES($missing) }. Its first line must name at least: { SERIES($needed) }.
        [answers] it looks like a file of answers, but has no column { SERIES($missing) }. Its first line must name at least: { SERIES($needed) }.
        [bodies] it looks like a file of bodies of work, but has no column { SERIES($missing) }. Its first line must name at least: { SERIES($needed) }.
        [dates] it looks like a file of dates that were told, but has no column { SERIES($missing) }. Its first line must name at least: { SERIES($needed) }.
        [experiments] it looks like a file of what a team tried, which isn’t imported, but has no column { SERIES($missing) }. Untick it.
        [values] it has no column { SERIES($missing) }. Its first line must name at least: { SERIES($needed) }.
       *[changes] it looks like a file of changes, but has no column { SERIES($missing) }. Its first line must name at least: { SERIES($needed) }.
    }
# In a list of columns, or of words that may be in a cell.
file-quoted = “{ $text }”
file-all-too-long = all files together have more than { NUMBER($most) } lines, blank ones included. Take out what is blank, or import them in several parts, each with whole sprints.
file-too-many-in-all = all files together have more than { NUMBER($most) } lines. Import them in several parts, each with whole sprints.
file-needs-file =
    { $kind ->
        [sprints] it goes with a file of sprints; give `sprints.csv` as well.
        [cards] it goes with a file of cards; give `cards.csv` as well.
        [answers] it goes with a file of answers; give `answers.csv` as well.
        [bodies] it goes with a file of bodies of work; give `bodies.csv` as well.
        [dates] it goes with a file of dates that were told; give `dates.csv` as well.
       *[changes] it goes with a file of changes; give `changes.csv` as well.
    }

# A line.
file-misplaced-quote = a double quote is misplaced. Put the whole cell in double quotes, and write a quote inside of it twice.
file-too-many-quotes = too many double quotes are misplaced; the file isn’t read from here on.
file-endless-line = it has more than { NUMBER($most) } characters, or a double quote in it is never closed.
file-too-many-cells =
    { $separator ->
        [tab] it has { NUMBER($cells) } cells for { NUMBER($columns) } columns. Put a cell that holds a tab in double quotes.
        [semicolon] it has { NUMBER($cells) } cells for { NUMBER($columns) } columns. Put a cell that holds a semicolon in double quotes.
       *[comma] it has { NUMBER($cells) } cells for { NUMBER($columns) } columns. Put a cell that holds a comma in double quotes.
    }
file-far-too-many-cells =
    { $separator ->
        [tab] it has far more cells than { NUMBER($columns) } columns. Put a cell that holds a tab in double quotes.
        [semicolon] it has far more cells than { NUMBER($columns) } columns. Put a cell that holds a semicolon in double quotes.
       *[comma] it has far more cells than { NUMBER($columns) } columns. Put a cell that holds a comma in double quotes.
    }

# A cell.
file-no-day = “{ $typed }” in “{ $column }” can’t be read as a day. Write year, month and day like 2026-11-02; in a spreadsheet, give the column the date format yyyy-mm-dd.
file-no-such-day = “{ $typed }” in “{ $column }” is a day that doesn’t exist. Write year, month and day like 2026-11-02.
file-no-count = “{ $typed }” in “{ $column }” isn’t a whole number.
file-no-share = “{ $typed }” in “{ $column }” isn’t a share up to { NUMBER($most) }. Write it like 0.85, or as 85%.
file-no-choice = “{ $typed }” in “{ $column }” isn’t known; write { OR_LIST($choices) }, or leave it empty.
file-no-points = “{ $typed }” in “{ $column }” isn’t an amount of points: write a multiple of 0.5, such as 3 or 0.5.
file-out-of-bounds = “{ $typed }” in “{ $column }” is out of bounds: write points from { NUMBER($least) } to { NUMBER($most) }.
file-no-number = in “{ $column }”: { $problem }
file-too-large = the number in “{ $column }” is too large.
file-too-long = the text in “{ $column }” has { NUMBER($length) } characters; { NUMBER($most) } is the most.
file-no-cell = “{ $column }” is empty; every line needs it.

# A sprint.
file-member-days = “member days” may be { NUMBER($most) } at most.
file-days-reversed = the last day, { $last }, comes before the first day, { $first }.
file-sprint-too-long = the sprint lasts { NUMBER($days) } days; { NUMBER($most) } is the most.
file-too-early = the first day, { $first }, is before { $earliest }; is the year right?
file-finished-more = { POINTS($finished) } are finished, but commitment and pulled-in work are { NUMBER($held) } together. “finished” adds up estimates, not work done.
file-finished-of-commitment = “finished of commitment” is more than the commitment, or more than was finished at all.
file-finished-beside = more is finished beside the commitment than was pulled in.
file-too-many-sprints = these are { NUMBER($sprints) } sprints; { NUMBER($most) } is the most at once.
file-days-taken = it shares days with { $sprint } ({ $first } to { $last }), which the team already has.
file-sprint-twice =
    { $where ->
        [here] { $sprint } is already on line { NUMBER($line) }.
       *[elsewhere] { $sprint } is already on line { NUMBER($line) } of { $file }.
    }
file-days-shared =
    { $where ->
        [here] it shares days with { $sprint } on line { NUMBER($line) }. If one of them was closed before its last day, say so in “closed on”.
       *[elsewhere] it shares days with { $sprint } on line { NUMBER($line) } of { $file }. If one of them was closed before its last day, say so in “closed on”.
    }
file-closed-before = it can’t be closed on { $day }, before its first day.
file-closed-later = it can’t be closed on { $day }, which is still to come.
file-not-over = its last day, { $last }, isn’t over yet. Import only sprints that are over; plan the others with `/loadline plan`.
file-several-sprints = several sprints are called “{ $sprint }”; say in “sprint first day” which one is meant.
# A line with what a sprint was worth.
file-not-closed = the team has no closed sprint called “{ $sprint }”.
file-not-closed-then = the team has no closed sprint called “{ $sprint }” with the first day { $first }.
# A line about a sprint of another file.
file-no-such-sprint = there is no sprint “{ $sprint }” in the file of sprints.
file-no-such-sprint-then = there is no sprint “{ $sprint }” with the first day { $first } in the file of sprints.
file-no-cards = the cards of { $sprint } aren’t given; give its lines of cards.csv as well.
file-answers-denied = “daily answers” is no, but there are answers about its cards. Write yes, or leave them out.
# $sums are the message below.
file-sums-differ = { SERIES($sums) }. Correct one or the other, or leave the cell empty.
file-sum-differs = “{ $column }” is { NUMBER($said) } but its cards add up to { NUMBER($is) }

# A card.
file-too-many-cards = it has { NUMBER($cards) } cards in the file of cards; a sprint holds { NUMBER($most) } at most.
file-card-link = “link” must be a web address of { NUMBER($most) } characters at most that begins with https:// or http://, without a user name or password.
file-number-zero = “card” must be 1 or more.
file-number-twice = card { NUMBER($number) } of { $sprint } is already on line { NUMBER($line) }.
file-name-twice = a card with the short name { $name } is already on line { NUMBER($line) }; each card of a sprint needs its own.
file-no-coming-day = the card was pulled in, so “came in on” must say on which day.
file-coming-day-outside = it came in on { $day }, which isn’t a day of { $sprint }.
file-planned-later = a planned card comes in on the sprint’s first day, { $first }. If it came later, write “pulled in” in “came in”.
file-no-end = say in “left” how many points were left on the card at the end, or in “state” how it ended.
file-nothing-left = nothing is left on the card, so it is finished and not open. If it was reopened, give answers.csv and changes.csv as well.
file-worked-out-of-bounds = “worked” comes out as { NUMBER($worked) }; it must be 0 to { NUMBER($most) }.
file-end-outside = { $day } isn’t a day on which the card was in { $sprint }.
file-grown-too-large = estimate and surprise are more than { NUMBER($most) } points together.
file-unbalanced = estimate + surprise + drift is { NUMBER($held) }, but worked + left is { NUMBER($done) }; they must be the same.
file-amount-differs = “{ $column }” is { NUMBER($said) }, but by what else is said of the card it is { POINTS($is) }.
# $said and $is are a day, or a word of the file such as “open”.
file-end-differs = “{ $column }” is { $said }, but by what else is said of the card it is { $is }.
file-never-ended = “{ $column }” is { $said }, but by what else is said of the card that never happened.

# An answer or a change.
file-no-such-card = { $sprint } has no card “{ $card }” in the file of cards.
file-day-outside = { $day } isn’t a day of { $sprint }, which runs from { $first } to { $last }.
file-before-card = the card came in on { $came }, after { $day }.
file-after-drop = the card was dropped on { $dropped }, before { $day }.
file-answer-twice = answer { NUMBER($answer) } about this card on { $day } is already on line { NUMBER($line) }; number them 1, 2, 3.
file-surprise-differs = worked { NUMBER($worked) } + left { NUMBER($left) } − left before { NUMBER($before) } makes a growth of { NUMBER($growth) }, of which { NUMBER($said) } can’t be surprise work; { NUMBER($most) } can.
file-growth-differs = worked { NUMBER($worked) } + left { NUMBER($left) } − left before { NUMBER($before) } makes a growth of { NUMBER($growth) }, which must be surprise + drift; they are { NUMBER($said) }.
file-dropped-twice = the card is already dropped on line { NUMBER($line) }.
file-change-alone = a change like this has its place among answers; give the sprint’s answers.csv as well.
file-after-answer = “after answer” is { NUMBER($said) }, but that day has { NUMBER($answers) } answers about the card.

# A body of work, or a telling of its dates.
file-body-name = “body” must be a name of at most { NUMBER($most) } characters with a letter in it.
file-body-points = “to do” must be more than 0 and at most { NUMBER($most) }.
file-body-growth = “growth” and “growth at most” may be { NUMBER($most) } at most.
file-body-growth-alone = “growth at most” goes with “growth”; fill that in as well.
file-body-growth-reversed = “growth at most” is { NUMBER($most) }, which is less than “growth”, { NUMBER($least) }.
file-body-share = “share” must be { NUMBER($least) } or more; leave it empty for work that waits for its turn.
file-body-shares = the shares of the sprints come to { WHOLE_PERCENT($share) } with it; together they may be 100% at most, and less while another body waits for its turn.
file-bodies-many = the team would keep { NUMBER($count) } bodies of work to do; { NUMBER($most) } is the most. Take some out of the file, or mark what is done.
file-day-early = “{ $column }” is { $day }, before { $earliest }; is the year right?
file-day-not-come = “{ $column }” is { $day }, a day that hasn’t come yet.
file-before-kept = “{ $column }” is { $day }, before it was kept on { $kept }.
file-body-twice = { $body } is already on line { NUMBER($line) } of { $file }.
file-turn-twice = { $body }, on line { NUMBER($line) } of { $file }, has the same turn, { NUMBER($turn) }.
file-no-body = the file of bodies of work has no “{ $body }”.
file-no-body-then = the file of bodies of work has no “{ $body }” that is kept since { $kept }.
file-several-bodies = the file of bodies of work has more than one “{ $body }”; say in “kept on” since when it is kept.
file-told-order = the likely date can’t come before the optimistic one or without it, nor the pessimistic one before or without the likely date.
file-told-twice = what was told of { $body } on { $day } is already on line { NUMBER($line) } of { $file }.

# What may be a slip. $sprints are names.
import-warning-same-name = More than one sprint is called { LIST($sprints) }; their days differ, so each is imported.
import-warning-no-finished =
    { $count ->
        [one] It isn’t said what was finished in { LIST($sprints) }, so forecasts and ranges can learn little from it. Add the column “finished” if you know it.
       *[other] It isn’t said what was finished in { LIST($sprints) }, so forecasts and ranges can learn little from them. Add the column “finished” if you know it.
    }
import-warning-no-working-day =
    { $count ->
        [one] { LIST($sprints) } has no working day of the team.
       *[other] { LIST($sprints) } have no working day of the team.
    }
