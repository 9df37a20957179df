/** The two ways in which a card grows, explained wherever one is asked to tell them apart. */
export const GROWTH_EXPLAINED =
  'Surprise work: nobody foresaw it, and the card cannot be accepted without it. Estimate drift: the same work turned out larger than estimated.';
