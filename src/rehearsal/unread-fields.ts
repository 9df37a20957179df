/** Finds the fields of a file that nobody reads, which are most often misspelled. */

/**
 * @param given what was in the file.
 * @param read what was made of it; it lacks the fields that are not known.
 * @returns paths such as `sprints.0.events.3.answer.0.suprise`
 */
export function unreadFields(given: unknown, read: unknown, path: readonly string[] = []): string[] {
  if (typeof given !== 'object' || given === null || typeof read !== 'object' || read === null) return [];
  return Object.entries(given).flatMap(([name, value]) => {
    const here = [...path, name];
    return Object.hasOwn(read, name)
      ? unreadFields(value, (read as Record<string, unknown>)[name], here)
      : [here.join('.')];
  });
}
