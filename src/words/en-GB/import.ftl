### Bringing past sprints in from files or pasted lines, and handing a team's sprints out as files.
### Names of columns are the same in every language: write them between backticks.

# The form.
import-title = Import sprints
import-submit = Import
import-check = Check
import-check-again = Check again
import-intro = Bring in sprints of { $team } that are over, so that ranges, odds and forecasts have something to go by.
import-known-none = The team has no closed sprint yet.
import-known =
    { $sprints ->
        [one] The team has { NUMBER($sprints) } closed sprint already; it is never changed. One that was imported can be taken out with `/loadline import remove`.
       *[other] The team has { NUMBER($sprints) } closed sprints already; those are never changed. One that was imported can be taken out with `/loadline import remove`.
    }
import-shown-first = You see what would be imported before anything is.
import-example =
    A file or pasted lines, the first of them with the names of the columns, for example:
    `name, first day, last day, commitment, finished`
    `Harbour 1, 2026-01-05, 2026-01-16, 20, 18`
import-kept = Files already given
import-kept-hint = Untick the files that you don’t want.
import-files = CSV files
import-files-hint = A file of sprints is enough. Add the other files of an export to bring in everything that was known there.
import-more-files = More files, or corrected ones
import-more-files-hint = A file replaces an earlier one of the same name.
import-paste = Or lines pasted from a spreadsheet
import-paste-hint = Columns: `name, first day, last day, commitment, pulled in, surprise, finished, points worked`. Only the first four are needed.
import-more-lines = More lines ({ NUMBER($field) } of { NUMBER($fields) } fields)
import-more-lines-hint = A field holds { NUMBER($characters) } characters. Lines are counted through all fields.
# Where something is wrong, in place of a file's name.
import-pasted-lines = the pasted lines
# The form is shown again; files can't be kept in it.
import-pick-again = Please choose these files again, because the form couldn’t keep them: { SERIES($files) }.

# The preview, when something is wrong.
import-bad-lines =
    { $lines ->
        [one] Nothing can be imported yet: { NUMBER($lines) } line has something wrong
       *[other] Nothing can be imported yet: { NUMBER($lines) } lines have something wrong
    }
import-bad-file = • *{ $file }*: { $problem }
import-bad-places = • *{ $file }, { $places }*: { $problem }
# $lines are numbers of lines, and runs of them.
import-places =
    { $count ->
        [one] line { LIST($lines) }
       *[other] lines { LIST($lines) }
    }
import-places-run = { $first } to { $last }
import-more-items = { NUMBER($count) } more
import-more-problems =
    { $count ->
        [one] … and { NUMBER($count) } more thing is wrong; correct these first.
       *[other] … and { NUMBER($count) } more things are wrong; correct these first.
    }
import-correct = Nothing was imported. Correct the file or the pasted lines, give them again below, and check again.

# The preview, when nothing is wrong.
import-to-import =
    { $sprints ->
        [one] { NUMBER($sprints) } sprint to import, from { DATE_BESIDE($first, $last) } to { DATE($last) }
       *[other] { NUMBER($sprints) } sprints to import, from { DATE_BESIDE($first, $last) } to { DATE($last) }
    }
import-nothing-new = Nothing new to import: all that the files hold is left out
import-nothing = Nothing to import: there is no sprint in the file
# Where no sprint is to come in.
import-bodies-to-import =
    { $bodies ->
        [one] { NUMBER($bodies) } body of work to import
       *[other] { NUMBER($bodies) } bodies of work to import
    }
import-only-sums = Only the totals of these sprints are given, not their cards. That is enough for ranges and release forecasts; the odds by size need cards.
import-with-cards =
    { $cards ->
        [one] With { NUMBER($cards) } card
       *[other] With { NUMBER($cards) } cards
    } and { $answers ->
        [one] { NUMBER($answers) } answer about them.
       *[other] { NUMBER($answers) } answers about them.
    }
import-cards-of-some = Cards are given for { NUMBER($given) } of { NUMBER($sprints) } sprints.
import-sprints-head = *Sprints*
# $facts are the messages below.
import-sprint = • { $sprint } ({ DATE_BESIDE($first, $last) } to { DATE($last) }): { SERIES($facts) }
import-committed = committed { NUMBER($points) }
import-finished = finished { NUMBER($points) }
import-finished-unknown = finished not known
import-cards =
    { $cards ->
        [one] { NUMBER($cards) } card
       *[other] { NUMBER($cards) } cards
    }
import-more-sprints =
    { $count ->
        [one] … and { NUMBER($count) } more sprint.
       *[other] … and { NUMBER($count) } more sprints.
    }
import-bodies-head = *Bodies of work that the team keeps from then on*
import-body =
    { $state ->
        [done] • { $body }: done
       *[to-do] • { $body }: { POINTS($points) } to do
    }
import-left-out-head = *Left out*
import-left-out =
    { $why ->
        [known] • { $sprint } ({ DATE($first) }) is already here, with the same days; its record stays as it is.
        [cancelled] • { $sprint } ({ DATE($first) }) was cancelled, so it doesn’t count as history.
       *[running] • { $sprint } ({ DATE($first) }) was still running when the file was made.
    }
import-body-left-out =
    { $why ->
        [long-done] • { $body } was done too long ago: a team keeps the { NUMBER($most) } that were done last.
       *[known] • { $body } is kept here already; it stays as it is.
    }
# Below the list, where an imported sprint of the file is already here.
import-correct-known = To correct a sprint that was imported, take it out first with `/loadline import remove`, then import it again.
import-check-head = *Please check*
import-more = … and { NUMBER($count) } more.
# $columns are names of columns as they are in the file.
import-unused-columns =
    { $count ->
        [one] • { $file }: the column { LIST($columns) } isn’t known here and isn’t used.
       *[other] • { $file }: the columns { LIST($columns) } aren’t known here and aren’t used.
    }
import-unused-experiments = • { $file }: what a team tried isn’t imported.
import-unused-column = “{ $column }”
import-becomes-history = Imported sprints count as history from then on. They are posted nowhere and can’t be reopened.

# After the import.
import-done =
    { $sprints ->
        [one] Imported { NUMBER($sprints) } sprint of { $team }, from { DATE_BESIDE($first, $last) } to { DATE($last) }.
       *[other] Imported { NUMBER($sprints) } sprints of { $team }, from { DATE_BESIDE($first, $last) } to { DATE($last) }.
    }
import-done-bodies =
    { $bodies ->
        [one] { NUMBER($bodies) } body of work is kept by { $team } from now on, with the dates that were told of it.
       *[other] { NUMBER($bodies) } bodies of work are kept by { $team } from now on, with the dates that were told of them.
    }
import-done-cards =
    { $cards ->
        [one] With them came { NUMBER($cards) } card
       *[other] With them came { NUMBER($cards) } cards
    } and { $answers ->
        [one] { NUMBER($answers) } answer.
       *[other] { NUMBER($answers) } answers.
    }
import-done-left-out =
    { $sprints ->
        [one] { NUMBER($sprints) } sprint of the file was left out, as shown.
       *[other] { NUMBER($sprints) } sprints of the file were left out, as shown.
    }
import-done-known =
    { $sprints ->
        [one] The team now has { NUMBER($sprints) } closed sprint to go by. Nothing was posted in its channel.
       *[other] The team now has { NUMBER($sprints) } closed sprints to go by. Nothing was posted in its channel.
    }

# Taking an imported sprint out again.
remove-title = Take out a sprint
remove-submit = Next
remove-intro = Sprints that were imported into { $team } can be taken out again, for example to import them anew with a correction. Sprints that were run here stay.
remove-none = { $team } has no imported sprint. Sprints that were run here stay.
remove-sprint = Imported sprint
remove-older =
    { $sprints ->
        [one] { NUMBER($sprints) } older imported sprint isn’t in the list; take out later ones to get to it.
       *[other] { NUMBER($sprints) } older imported sprints aren’t in the list; take out later ones to get to them.
    }
# The question, before it goes.
remove-confirm-title = Take it out?
remove-confirm-submit = Take out
remove-confirm-lead = { $sprint }, { DATE_BESIDE($first, $last) } to { DATE($last) }
remove-confirm-what = Its numbers go, with the cards and answers that were imported. This can’t be undone, but the sprint can be imported again.
remove-confirm-left =
    { $sprints ->
        [0] No closed sprint is left then: the commitment range and the forecast have nothing to go by.
        [one] Range, odds, forecast and velocity growth are reckoned again from the { NUMBER($sprints) } closed sprint that is left.
       *[other] Range, odds, forecast and velocity growth are reckoned again from the { NUMBER($sprints) } closed sprints that are left.
    } Verdicts that are posted keep their numbers. The channel reads that you took it out.
remove-done = { $sprint } is taken out. To bring it in again: `/loadline import`.
# In the channel.
import-removed-post = { $person } took the imported sprint { $sprint } out of the team’s history. Ranges, odds and forecasts no longer go by it.

# The export. $held and $marked are the messages below.
export-done =
    { $files ->
        [one] Exported { $team }: { LIST($held) }, in { NUMBER($files) } CSV file.
       *[other] Exported { $team }: { LIST($held) }, in { NUMBER($files) } CSV files.
    }
export-sprints =
    { $count ->
        [one] { NUMBER($count) } sprint
       *[other] { NUMBER($count) } sprints
    }
export-cards =
    { $count ->
        [one] { NUMBER($count) } card
       *[other] { NUMBER($count) } cards
    }
export-answers =
    { $count ->
        [one] { NUMBER($count) } answer
       *[other] { NUMBER($count) } answers
    }
export-changes =
    { $count ->
        [one] { NUMBER($count) } change
       *[other] { NUMBER($count) } changes
    }
export-bodies =
    { $count ->
        [one] { NUMBER($count) } body of work
       *[other] { NUMBER($count) } bodies of work
    }
export-experiments =
    { $count ->
        [one] { NUMBER($count) } experiment
       *[other] { NUMBER($count) } experiments
    }
# More than an import takes at once.
export-parts = They come in { NUMBER($parts) } parts, since an import takes only so much at once: give it those without a number first, then those with -2 in their names, and so on.
export-marked = Sprints that an import leaves out, marked so in the files: { LIST($marked) }.
export-running = { NUMBER($count) } still running
export-cancelled = { NUMBER($count) } cancelled
export-caution = They don’t say who owns a card or who answered. Titles, goals, notes, reasons and names of work are as they were typed: look through them before you pass the files on.
export-where = The files are in your direct messages with me.
