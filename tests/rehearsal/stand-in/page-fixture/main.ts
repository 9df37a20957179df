/** Served by the tests of the page API: a typed module that must go out as JavaScript. */
export const left: number = 3;
