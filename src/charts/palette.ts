/**
 * The colours of every chart. Nothing here may be the only carrier of a meaning: each mark also has its own
 * shape, line style or hatching, and a direct label.
 *
 * Charts bring their own opaque card, because the chat shows them on light and on dark.
 * The hues are from the palette of Okabe and Ito, "Color Universal Design" (2008), which people with any
 * common form of colour blindness can tell apart.
 */
export const palette = {
  card: '#ffffff',
  /** Keeps the card apart from a white chat; it carries nothing. */
  cardEdge: '#c9d1d6',
  gridLine: '#e6eaec',
  ink: '#1d2a33',
  quietInk: '#56646e',
  axis: '#7b8790',
  /** Okabe-Ito blue. */
  left: '#0072b2',
  ideal: '#6b7780',
  /** Okabe-Ito bluish green. */
  pulledIn: '#009e73',
  /** Okabe-Ito vermillion. */
  surprise: '#d55e00',
  today: '#1d2a33',
  /** Okabe-Ito blue: what was finished, as in the line of points left. */
  velocity: '#0072b2',
  commitment: '#6b7780',
  /** Okabe-Ito reddish purple: what is advised. */
  advice: '#cc79a7',
  adviceFill: '#f8e9f1',
  /** Okabe-Ito vermillion. */
  signal: '#d55e00',
  /** Where ordinary variation lies, behind the line; its edges and words carry it. */
  ordinaryFill: '#f0f3f5',
} as const;
