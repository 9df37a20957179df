/** What an app's manifest must hold for the bot to work, beside the scopes; `deploy/app-manifest.json` holds it. */

/** What the listeners listen to. */
export const NEEDED_EVENTS = ['app_home_opened', 'message.im'] as const;
