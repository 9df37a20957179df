/** Lets one after the other: whoever looks into the database does so while nobody stops it. */
export type InTurn = <T>(work: () => Promise<T>) => Promise<T>;

export function oneAfterTheOther(): InTurn {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const next = last.then(work);
    last = next.catch(() => undefined);
    return next;
  };
}
