/** The `Charts` port. */
import type { Charts } from '../app/ports.ts';
import { burndownAltText } from './burndown-alt-text.ts';
import { burndownPng } from './burndown-png.ts';

export const burndownCharts: Charts = {
  async burndown(burndown) {
    return { png: await burndownPng(burndown), altText: burndownAltText(burndown) };
  },
};
