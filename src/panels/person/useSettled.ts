import { useEffect, useState } from 'react';

/** A value once it has stayed the same for a while, so that what takes long is not done with every move of a drag. */
export function useSettled<T>(value: T, busy: boolean, after: number): T {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    if (busy) return undefined;
    const timer = setTimeout(() => setSettled(value), after);
    return () => clearTimeout(timer);
  }, [value, busy, after]);
  return settled;
}
