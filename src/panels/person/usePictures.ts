import { useEffect, useState } from 'react';
import type { PersonSeen } from '../../assess/person/personAt.ts';
import {
  partPictures,
  personLooked,
  type PartPictures,
  type PersonLook,
} from '../../draw/person/personPictures.ts';

/** What pictures are made of. */
export interface Asked {
  readonly seen: PersonSeen;
  readonly look: PersonLook;
}

interface Made {
  /** What the last of them was made of; null: none is complete. */
  readonly of: Asked | null;
  /** In the order of the parts; undefined until there is one, null where there can be none. */
  readonly pictures: readonly (PartPictures | null | undefined)[];
}

/** Pictures follow so long after the last change, ms: making one takes longer than a frame. */
const REST = 80;

/**
 * The pictures of all parts, made one a task once nothing has changed for a while; until then the former stay.
 * @param busy a drag goes on: it waits for its end
 */
export function usePictures(asked: Asked, busy: boolean): Made {
  const [made, setMade] = useState<Made>({ of: null, pictures: [] });
  useEffect(() => {
    if (busy) return undefined;
    const { seen, look } = asked;
    const parts = personLooked(seen, look);
    let timer = 0;
    const make = (at: number) => {
      const part = parts[at];
      if (part === undefined) return setMade(({ pictures }) => ({ of: asked, pictures }));
      const picture = partPictures(part, seen.camera, look);
      setMade(({ of, pictures }) => ({
        of,
        pictures: parts.map((_, place) => (place === at ? picture : pictures[place])),
      }));
      timer = window.setTimeout(make, 0, at + 1);
    };
    timer = window.setTimeout(make, REST, 0);
    return () => window.clearTimeout(timer);
  }, [asked, busy]);
  return made;
}
