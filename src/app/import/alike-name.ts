/** Whether two names of sprints are the same to people. */

/** The name without what doesn't tell names apart: case and spaces. */
export function alikeName(name: string): string {
  return name.normalize('NFKC').replace(/\s+/g, ' ').trim().toLowerCase();
}
