/** What an app's manifest must hold for the bot to work, beside the scopes; `deploy/app-manifest.json` holds it. */

/** What the listeners listen to. */
export const NEEDED_EVENTS = ['app_home_opened', 'message.im'] as const;

/** What it listens to besides where workspaces install it by themselves. */
export const DISTRIBUTION_EVENTS = ['app_uninstalled', 'tokens_revoked'] as const;
