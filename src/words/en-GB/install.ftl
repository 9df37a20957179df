### The pages that people see in the browser while they install the bot in their workspace.

install-again = Start again
install-nothing = Nothing was installed.

install-begin-title = Install Loadline
install-begin-what = Loadline helps a team commit to what it can finish.
install-begin-next = You choose the workspace on the next page, and see there what Loadline may do in it. The link works for ten minutes.
install-begin-link = Choose the workspace

install-done-title = Loadline is installed
install-done-what = It now works in the workspace { $workspace }. You can close this page.
install-done-next = Next: invite Loadline to your team’s channel and type /loadline setup there.

install-declined-title = Loadline was not installed
install-declined-what = The installation was not approved on the previous page, so nothing has changed.

install-stale-title = This link no longer works
install-stale-what = It works within ten minutes, and in the browser in which you began the installation. { install-nothing }

install-not-allowed-title = This bot doesn’t serve your workspace
install-not-allowed-what = The person who runs it decides which workspaces may use it. Give them your workspace’s id, { $workspaceId }, and install it again once it is on their list. Until then nothing was stored, and you can remove the app in your workspace.

install-trouble-title = Something went wrong
install-trouble-what = { install-nothing } Please try again.
install-trouble-what-reference = { install-nothing } Please try again. If it happens again, give the person who runs this bot the code { $reference }.

install-no-answer-title = The chat platform didn’t answer
install-code-refused-title = The chat platform refused the code
install-code-refused-what = It was used before, or it took too long. { install-nothing }
install-settings-refused-title = This bot is not set up for installations
install-settings-refused-what = Its settings don’t fit its app. The person who runs it finds the reason in its log. { install-nothing }
install-tokens-rotate-what = Token rotation is switched on for its app, so the access that you gave would end within hours. The person who runs this bot has to create another app without it. { install-nothing }
install-organisation-title = Loadline is installed workspace by workspace
install-organisation-what = The request was for a whole organisation at once, which Loadline doesn’t support. { install-nothing }
install-scopes-title = Loadline lacks permissions
install-scopes-what = These permissions were not granted: { SERIES($scopes) }. Loadline can’t work without them, so nothing was installed.
