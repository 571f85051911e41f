import { Box, Car, Fence, House, Square, TreeDeciduous, Truck, Umbrella } from 'lucide-react';
import type { Structure } from '../model/structure.ts';

/** The sign of a kind of structure in lists and heads. */
export function StructureIcon({ structure }: { structure: Structure }) {
  const look = { size: 16, strokeWidth: 1.6 };
  switch (structure.kind) {
    case 'building':
      return <House {...look} />;
    case 'barrier':
      return structure.sort === 'wall' ? <Square {...look} /> : <Fence {...look} />;
    case 'canopy':
      return <Umbrella {...look} />;
    case 'tree':
      return <TreeDeciduous {...look} />;
    case 'vehicle':
      return structure.sort === 'van' ? <Truck {...look} /> : <Car {...look} />;
    case 'block':
      return <Box {...look} />;
  }
}
