/** The font of every chart: Atkinson Hyperlegible, drawn for readers with low vision, shipped with the bot. */
import { createRequire } from 'node:module';

/** The font is registered under a name of our own, so that one installed on the machine never takes its place. */
export const chartFont = 'Loadline Chart';

const fontFolder = '@expo-google-fonts/atkinson-hyperlegible';

/** Absolute paths of the regular and the bold cut. Throws when the package is not installed. */
export function chartFontFiles(): string[] {
  const { resolve } = createRequire(import.meta.url);
  return [
    resolve(`${fontFolder}/400Regular/AtkinsonHyperlegible_400Regular.ttf`),
    resolve(`${fontFolder}/700Bold/AtkinsonHyperlegible_700Bold.ttf`),
  ];
}
