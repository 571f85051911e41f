import type { Wanted } from '../assess/shares.ts';

/** Shares cameras out among workers. */
export interface Sharing {
  /**
   * What each worker is to do, by its number; those that have nothing to do are left out.
   * @param first  cameras that must not wait for others, such as the one that is dragged
   * @param isBusy whether a worker is still leaving off what it was asked before
   */
  share(
    wanted: Wanted,
    first: ReadonlySet<string>,
    isBusy: (worker: number) => boolean,
  ): ReadonlyMap<number, Wanted>;
}

/** Cameras stay with the worker that knows them, unless that would have more than its share of the work. */
export function createSharing(workers: number): Sharing {
  const homes = new Map<string, number>();

  const shareAmong = (ids: readonly string[], among: readonly number[], into: Map<number, string[]>) => {
    const most = Math.ceil(ids.length / among.length);
    const load = (worker: number) => into.get(worker)?.length ?? 0;
    const give = (id: string, worker: number) => {
      homes.set(id, worker);
      into.set(worker, [...(into.get(worker) ?? []), id]);
    };
    const astray = ids.filter((id) => {
      const home = homes.get(id);
      if (home === undefined || !among.includes(home) || load(home) >= most) return true;
      give(id, home);
      return false;
    });
    for (const id of astray) {
      const [least = 0] = among.toSorted((one, two) => load(one) - load(two));
      give(id, least);
    }
  };

  return {
    share: (wanted, first, isBusy) => {
      const ids = [...wanted.whole, ...wanted.causes];
      const [urgent, others] = [ids.filter((id) => first.has(id)), ids.filter((id) => !first.has(id))];
      const all = Array.from({ length: workers }, (_, worker) => worker);
      const shares = new Map<number, string[]>();
      const idle = all.filter((worker) => !isBusy(worker));
      if (urgent.length > 0) shareAmong(urgent, idle.length > 0 ? idle : all, shares);
      // Whoever has what is urgent has nothing else, where there are others to do that.
      const free = all.filter((worker) => !shares.has(worker));
      const apart = new Map<number, string[]>();
      if (others.length > 0) shareAmong(others, free.length > 0 ? free : all, apart);
      for (const [worker, more] of apart) shares.set(worker, [...(shares.get(worker) ?? []), ...more]);
      return new Map(
        [...shares].map(([worker, mine]) => [
          worker,
          {
            whole: mine.filter((id) => wanted.whole.includes(id)),
            causes: mine.filter((id) => wanted.causes.includes(id)),
          },
        ]),
      );
    },
  };
}
