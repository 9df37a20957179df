/**
 * Prepares quick starts, after an installation: has Node.js compile what a start imports (`main.js` keeps it), and makes the
 * image that new databases start from. Nothing depends on it.
 */
export async function prepareStart(imageFolder?: string): Promise<void> {
  try {
    await import('./run-bot.ts');
    const { makeImage } = await import('./store/embedded/make-data-folder-image.ts');
    await makeImage(imageFolder);
  } catch (error) {
    // An installation that can't keep anything, for instance because it is read only, works all the same.
    console.warn(`Starts will take longer than they could: ${(error as Error).message}`);
  }
}
