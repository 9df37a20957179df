/** Lets one after the other: nobody stops the database while somebody looks into it. */
export type InTurn = <T>(work: () => Promise<T>) => Promise<T>;

export function oneAfterTheOther(): InTurn {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const next = last.then(work);
    last = next.catch(() => undefined);
    return next;
  };
}
