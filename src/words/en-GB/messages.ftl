### The text that a message gives to screen readers and notifications in place of its blocks, and every form's buttons.

message-more-lines =
    { $lines ->
        [one] The message itself has { NUMBER($lines) } more line.
       *[other] The message itself has { NUMBER($lines) } more lines.
    }
message-chart = Chart: { $words }
message-buttons = Buttons: { SERIES($labels) }
form-cancel = Cancel
form-close = Close
