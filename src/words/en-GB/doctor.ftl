### What the doctor finds (npm run doctor), a line each: what is the case and, where something is wrong, what to do.
### What it finds in settings, at the platform and of the database is in start.ftl.

# Columns: how bad a finding is, and what was checked. At most 8 and 12 letters.
doctor-level =
    { $level ->
        [ok] ok
        [warning] warning
       *[fix] fix
    }
doctor-check =
    { $check ->
        [settings] settings
        [database] database
        [data-folder] data folder
        [token-keys] token keys
        [tokens] tokens
        [scopes] scopes
        [clock] clock
        [port] port
        [manifest] manifest
        [charts] charts
       *[time-zones] time zones
    }
doctor-usage =
    Usage:
    { "  " }npm run doctor                        check everything, a line for each finding
    { "  " }npm run doctor -- --json              the same as one JSON document
    { "  " }npm run doctor -- --manifest FILE     check this app manifest instead of the one that comes with the bot
    It ends with code 0 when nothing needs fixing, otherwise with 1.
doctor-check-failed = The check itself failed ({ $reason }). Run it again; if it fails again, report this line.

## Settings

doctor-node-too-old = Node.js { $version } is too old. Use Node.js { $oldest } or later.
doctor-settings-fine =
    All are valid: { $mode } mode, { $database ->
        [postgres] Postgres
       *[data-folder] data folder { $folder }
    }, metrics { $metrics ->
        [on] on port { $metricsPort }
       *[off] off
    }, log level { $logLevel }. Teams are set up by { $setUpBy ->
        [anybody] anybody in their channel who is no guest
        [admins] those who administer the workspace
        [named] those whom LOADLINE_SETUP_USERS names
       *[admins-and-named] those who administer the workspace and those whom LOADLINE_SETUP_USERS names
    }.
doctor-settings-unknown = The bot knows no { LIST($names) } and takes no notice of it. docs/operating.md lists its settings.
doctor-log-holds-words = The log level is { $logLevel }, at which the log holds what people typed. Set LOG_LEVEL=info unless you are looking for something.
doctor-settings-first = Database, tokens, clock and port were not checked. Correct the settings first, then run this again.

## Database

doctor-database-none = None yet; the first start creates it in the data folder.
doctor-database-in-use = In use by a running bot, as it should be; stop the bot to look into it.
doctor-database-answers = Postgres { $version } answers.
doctor-way-encrypted = The way to it is encrypted, and its certificate was checked.
doctor-way-on-this-machine = It is on this machine; the way to it is not encrypted and need not be.
doctor-way-unencrypted = The way to it is not encrypted, as sslmode=disable in DATABASE_URL asks. That is right only in a network that nobody else can listen to; otherwise remove it there.
doctor-no-tables = No tables yet; the first start creates them.
doctor-migrations-changed = The migrations that were applied are not those of this version: one of the two was changed. Run an unchanged release of Loadline, or restore the database from a backup.
doctor-migrations-newer = The database was brought up to date by a newer version of Loadline. Run that version; an older one may run next to it during an upgrade, but not for long.
doctor-migrations-applied =
    { $count ->
        [one] The { NUMBER($count) } migration is applied.
       *[other] All { NUMBER($count) } migrations are applied.
    }
doctor-migrations-pending =
    { $count ->
        [one] { NUMBER($count) } migration is not yet applied. Start this version; it applies it.
       *[other] { NUMBER($count) } migrations are not yet applied. Start this version; it applies them.
    }
doctor-writable = It can be written to.
doctor-read-only = The database is read-only. Point DATABASE_URL at the primary server, not at a replica or a former primary.
doctor-no-room = The disk of the database is full. Make room there; until then the bot records nothing and tells people so, and it goes on by itself afterwards.
doctor-tables-not-writable = The database user may not write to the tables ({ $reason }). Make the user the owner of the database and of the schemas loadline and pgboss.
doctor-schemas-not-allowed = The database user may not create schemas ({ $reason }). Make the user the owner of the database and of the schemas loadline and pgboss.
doctor-encoding = The database is encoded in { $encoding }, which can’t hold every language. Create a database with ENCODING UTF8, and restore a backup into it.
doctor-few-connections =
    { $free ->
        [one] The server has { NUMBER($free) } connection left; one process of the bot needs up to { NUMBER($needed) }. Raise the server’s max_connections, or run fewer processes on it.
       *[other] The server has { NUMBER($free) } connections left; one process of the bot needs up to { NUMBER($needed) }. Raise the server’s max_connections, or run fewer processes on it.
    }
doctor-posts-waiting =
    { $count ->
        [one] { NUMBER($count) } post is waiting to be delivered.
       *[other] { NUMBER($count) } posts are waiting to be delivered.
    }
doctor-posts-late =
    { $count ->
        [one] { NUMBER($count) } post has been waiting to be delivered for { NUMBER($minutes) } minutes. Check that the bot runs and the platform answers; the log says why deliveries fail.
       *[other] { NUMBER($count) } posts are waiting to be delivered, one of them for { NUMBER($minutes) } minutes. Check that the bot runs and the platform answers; the log says why deliveries fail.
    }
doctor-posts-held-back =
    { $count ->
        [one] { NUMBER($count) } post waits, because its channel is shared with another organisation. The team’s facilitators say in /loadline setup whether they may read it; they were told.
       *[other] { NUMBER($count) } posts wait, because their channels are shared with another organisation. The teams’ facilitators say in /loadline setup whether they may read them; they were told.
    }
doctor-posts-undelivered = { operator-undelivered } npm run posts -- list names each.

## Keys of the stored tokens

doctor-tokens-unused = The database holds tokens of workspaces, which this bot for one workspace doesn’t use. Give the settings for many workspaces, or ignore this if the bot is to serve only one from now on.
doctor-keys-missing = Keys of stored tokens are missing in LOADLINE_TOKEN_KEYS: { SERIES($names) }. Add them after the others, then run npm run rotate-keys.
doctor-keys-former = Tokens are still stored under former keys: { SERIES($names) }. Run npm run rotate-keys; then you can remove the former keys.
doctor-keys-fine = The keys of all stored tokens are given.

## Data folder

doctor-folder-not-a-folder = { $folder } is not a folder. Give a folder in LOADLINE_DATA_FOLDER.
doctor-folder-not-writable = { $folder } can’t be written to ({ $reason }). Make the user that runs the bot its owner, or set LOADLINE_DATA_FOLDER to a folder that it owns.
doctor-folder-writable = { $folder } can be written to.
doctor-folder-absent = { $folder } doesn’t exist yet; the first start creates it.
doctor-folder-open = Other users of this machine can look into { $folder }, which holds people’s answers. Run: chmod 700 { $folder }
doctor-disk-filling = { NUMBER($megabytes) } MB are left on the disk of { $folder }. Free some space, or move the data folder to another disk.
doctor-disk-full = { NUMBER($megabytes) } MB are left on the disk of { $folder }, too few for the bot to record anything. Free some space, or move the data folder to another disk.

## Tokens and scopes

doctor-token-fine = The bot token is valid for the workspace { $workspace }.
doctor-scopes-fine = All that the bot needs are granted.
doctor-scope-lacking = { start-scope-missing } Until then the bot works without it.
doctor-scopes-unneeded = The bot token may do more than the bot needs: { SERIES($scopes) }. Remove these under OAuth & Permissions, Bot Token Scopes, and install the app to the workspace again.
doctor-signing-secret-set = A signing secret is set. Whether it is the right one shows with the first request: type /loadline.
doctor-socket-opens = The app-level token opens a socket. The platform allows ten at once, so at most ten processes of the bot can run in socket mode.

## Clock

doctor-clock-agrees =
    { $other ->
        [database] It agrees with that of the database.
       *[platform] It agrees with that of the platform.
    }
doctor-clock-off = { doctor-clock-difference } Let a time service (NTP) set the clock of the machine that is wrong.
doctor-clock-far-off = { doctor-clock-difference } Let a time service (NTP) set the clock of the machine that is wrong.
doctor-clock-difference =
    { $other ->
        [database] This machine’s clock is { NUMBER($seconds) } s { $direction ->
            [behind] behind
           *[ahead] ahead of
        } that of the database.
       *[platform] This machine’s clock is { NUMBER($seconds) } s { $direction ->
            [behind] behind
           *[ahead] ahead of
        } that of the platform.
    }
doctor-clock-unread = The platform’s clock could not be read. Check that the platform can be reached, and run this again.

## Port

doctor-port-any = Any free port is available.
doctor-port-free = Port { $port } is free.
doctor-port-ours = A running bot uses port { $port }.
doctor-port-taken = Another program uses port { $port }. Stop that program, or set PORT to another one.
doctor-address-not-here = This machine has no address { $address }. Set LOADLINE_HOST to one that it has, or leave it out.
doctor-port-refused = Port { $port } can’t be used ({ $reason }). Stop the program that uses it, or set PORT to another one.

## App manifest

doctor-manifest-unreadable = The manifest can’t be read ({ $reason }). { doctor-manifest-save }
doctor-manifest-no-json = The manifest can’t be read: it is not a manifest in JSON. { doctor-manifest-save }
doctor-manifest-save = Save it as JSON from the page App Manifest of your app, and name that file with --manifest.
doctor-manifest-fine = It has the command, scopes and events that the bot needs.
doctor-manifest-for-sockets = The manifest that comes with the bot is for sockets, and the settings say HTTP. Switch Socket Mode off in your app and set its request URLs; check the result with --manifest.
doctor-manifest-apply = Then save, and install the app to the workspace again.
doctor-manifest-command = The command { $command } is missing. Add it under features.slash_commands on the page App Manifest of your app. { doctor-manifest-apply }
doctor-manifest-escape = The command { $command } doesn’t escape names, so the bot can’t tell owners apart. Set should_escape to true on the page App Manifest of your app. { doctor-manifest-apply }
doctor-manifest-scopes = Scopes are missing: { SERIES($scopes) }. Add them under oauth_config.scopes.bot on the page App Manifest of your app. { doctor-manifest-apply }
doctor-manifest-events = Events are missing: { SERIES($events) }. Add them under settings.event_subscriptions.bot_events on the page App Manifest of your app. { doctor-manifest-apply }
doctor-manifest-buttons = Buttons and forms are off. Set settings.interactivity.is_enabled to true on the page App Manifest of your app. { doctor-manifest-apply }
doctor-manifest-home = The home page or the direct messages of the bot are off. Set home_tab_enabled and messages_tab_enabled under features.app_home to true on the page App Manifest of your app. { doctor-manifest-apply }
doctor-manifest-rotation = { start-no-rotation }
doctor-manifest-return = The address to which browsers come back after an installation is missing. Add { $address } under oauth_config.redirect_urls on the page App Manifest of your app, and save.
doctor-manifest-socket-off = Socket Mode is off in the manifest, and the settings say socket. Switch it on, on the page Socket Mode of your app, or set LOADLINE_MODE=http.
doctor-manifest-socket-on = Socket Mode is on in the manifest, and the settings say HTTP: requests would not arrive. Switch it off, on the page Socket Mode of your app, or set LOADLINE_MODE=socket.
doctor-manifest-urls = Request URLs don’t lead to the bot: { SERIES($fields) }. Set each of them to https://your-host/slack/events.

## Libraries

doctor-charts-fine = The drawing library and its font load.
doctor-charts-broken = Charts can’t be drawn ({ $reason }). Run npm ci --omit=dev on this machine; a node_modules folder from another kind of machine doesn’t work.
doctor-zones-fine = Known, with their clock changes.
doctor-zones-unknown = This Node.js doesn’t know the world’s time zones. Use an official build of Node.js, which includes them.
