### The text that a message gives to screen readers and notifications in place of its blocks, and every form's buttons.

message-more-lines =
    { $lines ->
        [one] The message itself has { NUMBER($lines) } more line.
       *[other] The message itself has { NUMBER($lines) } more lines.
    }
# Where a message that was wrong can’t be changed: in the new one, below its title.
message-replaces = This replaces an earlier message, which can’t be changed any more.
# $link: the address of the earlier message; the words after the bar are what one clicks.
message-replaces-linked = This replaces <{ $link }|an earlier message>, which can’t be changed any more.
message-chart = Chart: { $words }
message-buttons = Buttons: { SERIES($labels) }
form-cancel = Cancel
form-close = Close
# Where somebody mentioned the bot with a word that opens a form; below it is the button.
form-to-open = This command has a form. Press the button to open it.
form-open-button = Open the form
