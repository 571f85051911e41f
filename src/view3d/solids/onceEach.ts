import type { Vec3 } from '../../base/vector.ts';

/** Works something out once for each thing and keeps it as long as the thing is there: things never change, others come. */
export function onceEach<K extends object, T>(make: (thing: K) => T): (thing: K) => T {
  const kept = new WeakMap<K, T>();
  return (thing) => {
    const known = kept.get(thing);
    if (known !== undefined) return known;
    const made = make(thing);
    kept.set(thing, made);
    return made;
  };
}

/** The same for what depends on the origin too, which hardly ever moves: only the latest is kept. */
export function onceEachFrom<K extends object, T>(
  make: (thing: K, origin: Vec3) => T,
): (thing: K, origin: Vec3) => T {
  const kept = new WeakMap<K, { readonly origin: Vec3; readonly made: T }>();
  return (thing, origin) => {
    const known = kept.get(thing);
    if (known?.origin === origin) return known.made;
    const made = make(thing, origin);
    kept.set(thing, { origin, made });
    return made;
  };
}
