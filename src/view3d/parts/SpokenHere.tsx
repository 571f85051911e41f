import { useStore } from 'zustand';
import { LiveRegion } from '../../fittings/LiveRegion.tsx';
import type { Model } from '../Model.ts';

/** Speaks what was found at the spot asked about. */
export function SpokenHere({ model }: { readonly model: Model }) {
  const { text, turn } = useStore(model.here.said);
  return <LiveRegion text={text} turn={turn} />;
}
