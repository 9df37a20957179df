/** The one place that reads from a request whose it is. */

/**
 * The workspace in which the bot is installed. The platform names it in one place or the other; two that differ would be
 * somebody's try. A form says it apart, since its `team` is that of the person, who may belong to another workspace when the
 * channel is shared (github.com/slackapi/bolt-js/issues/1614).
 */
export function workspaceIdOf(body: unknown): string | undefined {
  const { team_id, team, view } = body as {
    team_id?: unknown;
    team?: { id?: unknown } | null;
    view?: { app_installed_team_id?: unknown } | null;
  };
  if (typeof view?.app_installed_team_id === 'string') return view.app_installed_team_id;
  const [id, ...others] = [team_id, team?.id].filter((given) => given !== undefined && given !== null);
  return typeof id === 'string' && others.every((other) => other === id) ? id : undefined;
}
