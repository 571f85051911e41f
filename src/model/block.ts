import { validFootprint } from './footprint.ts';
import { madeOf, unmade, type Made } from './made.ts';
import { prism } from './prism.ts';
import { numberFaults, sizeFaults } from './size.ts';
import type { Block } from './structure.ts';

/** A plain prism over its outline. */
export function blockSolids(block: Block): Made {
  const wrong = [
    ...numberFaults(block.base, ['base'], block.name),
    ...sizeFaults(block.height, ['height'], block.name),
  ];
  const valid = validFootprint(block.outline, [], block.name);
  if (!valid.ok) return unmade([...wrong, ...valid.faults]);
  if (wrong.length > 0) return unmade(wrong);
  const mesh = prism([valid.value.outline], block.base, block.base + block.height);
  return madeOf(block, mesh, block.passage, valid.notes);
}
