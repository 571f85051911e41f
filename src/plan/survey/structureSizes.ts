import { tan } from '../../base/angle.ts';
import type { Vec2 } from '../../base/vector.ts';
import { cornerAt } from '../../model/ring.ts';
import { span } from '../../model/segment.ts';
import type { Building, Got, Opening, Structure } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';
import { chainOf } from '../reshape/chainOf.ts';
import { edgeCount } from '../reshape/reshaped.ts';
import { levelOffBy, offBy, placeOffBy, type Size } from './size.ts';

/** More edges than this are not read out one by one. */
const MOST_EDGES = 8;

/** Every size of a structure and of what is in its walls, as it was drawn first to last. */
export function structureSizes(plan: Plan, structure: Structure): readonly Size[] {
  const { id, name } = structure;
  const hosted = camerasOn(plan, id);
  const soffit = hosted.filter(({ kind }) => kind === 'soffit');
  const size = (
    what: string,
    got: Got,
    uncertainty: number,
    value: Size['value'],
    touches: readonly { readonly name: string }[] = [],
  ): Size => ({
    thing: { kind: 'structure', id },
    name,
    what,
    value,
    got,
    uncertainty,
    touches: touches.map((camera) => camera.name),
  });
  const height = (
    what: string,
    value: number,
    got: Got,
    touches: readonly { readonly name: string }[] = [],
  ) => size(what, got, offBy(got, value, 'height'), (length) => length(value), touches);
  const edges = (what: string, got: Got): Size => {
    const lengths = edgeLengths(structure);
    const longest = lengths.reduce((a, b) => Math.max(a, b), 0);
    return size(what, got, offBy(got, longest, 'plan'), (length) => edgesInWords(lengths, length), hosted);
  };
  switch (structure.kind) {
    case 'building':
      return [
        edges('outline', structure.got.outline),
        height('wall height', structure.height, structure.got.height, soffit),
        size(
          'base',
          structure.got.base,
          levelOffBy(structure.got.base),
          (length) => length(structure.base),
          soffit,
        ),
        size(
          'roof',
          structure.got.roof,
          roofOffBy(structure),
          (length) => roofInWords(structure, length),
          soffit,
        ),
        ...structure.openings.map((opening) => openingSize(structure, opening)),
        ...structure.services.map((service): Size => ({
          thing: { kind: 'service', id: service.id, on: id },
          name: service.name,
          what: `place on ${name}`,
          value: (length) => `${length(service.along)} along, ${length(service.height)} up`,
          got: service.got,
          uncertainty: Math.max(
            offBy(service.got, service.along, 'plan'),
            offBy(service.got, service.height, 'height'),
          ),
          touches: [],
        })),
      ];
    case 'barrier':
      return [
        edges('line', structure.got.line),
        height('height', structure.height, structure.got.height),
        size(
          'thickness',
          structure.got.thickness,
          offBy(structure.got.thickness, structure.thickness, 'plan'),
          (length) => length(structure.thickness),
          hosted,
        ),
        ...structure.openings.map((opening) => openingSize(structure, opening)),
      ];
    case 'canopy':
      return [
        edges('outline', structure.got.outline),
        height('top', structure.top, structure.got.top, hosted),
        height('thickness', structure.thickness, structure.got.thickness, hosted),
      ];
    case 'block':
      return [
        edges('outline', structure.got.outline),
        height('height', structure.height, structure.got.height),
        size('base', structure.got.base, levelOffBy(structure.got.base), (length) => length(structure.base)),
      ];
    case 'tree':
      return [
        size('place', structure.got.at, placeOffBy(structure.got.at), () => ''),
        height('height', structure.height, structure.got.height),
        size(
          'crown',
          structure.got.crown,
          offBy(structure.got.crown, Math.max(structure.crownRadius, structure.clear), 'plan'),
          (length) => `${length(2 * structure.crownRadius)} across, from ${length(structure.clear)} up`,
        ),
      ];
    case 'vehicle':
      return [
        size('place', structure.got.at, placeOffBy(structure.got.at), () => ''),
        size('size', structure.got.size, offBy(structure.got.size, structure.length, 'plan'), (length) =>
          [structure.length, structure.width, structure.height].map(length).join(' by '),
        ),
      ];
  }
}

function openingSize(structure: Structure, opening: Opening): Size {
  const { got, along, width, height, sill } = opening;
  return {
    thing: { kind: 'opening', id: opening.id, on: structure.id },
    name: opening.name,
    what: `size and place in ${structure.name}`,
    value: (length) =>
      `${length(width)} wide, ${length(height)} high, ${length(along)} along${sill > 0 ? `, sill ${length(sill)} up` : ''}`,
    got,
    uncertainty: Math.max(offBy(got, Math.max(along, width), 'plan'), offBy(got, sill + height, 'height')),
    touches: [],
  };
}

const camerasOn = (plan: Plan, host: string): { readonly name: string; readonly kind: string }[] =>
  plan.cameraOrder.flatMap((id) => {
    const camera = plan.cameras[id];
    return camera && 'host' in camera.mount && camera.mount.host === host
      ? [{ name: camera.name, kind: camera.mount.kind }]
      : [];
  });

function edgeLengths(structure: Structure): readonly number[] {
  const chain = chainOf(structure);
  if (!chain) return [];
  return Array.from({ length: edgeCount(chain) }, (_, k) =>
    span(cornerAt(chain.corners, k), cornerAt(chain.corners, k + 1)),
  );
}

function edgesInWords(lengths: readonly number[], length: (metres: number) => string): string {
  const told = lengths.slice(0, MOST_EDGES).map(length).join(', ');
  return lengths.length > MOST_EDGES ? `${told} and ${lengths.length - MOST_EDGES} more edges` : told;
}

/** A roof is off by the rise that its pitch gives over half of the narrower side of its box. */
function roofOffBy({ roof, outline, got }: Building): number {
  const widths = [0, 1].map((axis) => spread(outline, axis));
  const rise = isPitched(roof.kind) ? (tan(roof.pitch) * Math.min(...widths)) / 2 : 0;
  return offBy(got.roof, Math.max(rise, roof.overhang, roof.parapet), 'height');
}

const isPitched = (kind: Building['roof']['kind']): boolean => kind !== 'flat' && kind !== 'parapet';

const spread = (outline: readonly Vec2[], axis: number): number => {
  const values = outline.map((corner) => corner[axis] ?? 0);
  return Math.max(...values) - Math.min(...values);
};

function roofInWords({ roof }: Building, length: (metres: number) => string): string {
  const parts = [
    roof.kind === 'monopitch' ? 'mono-pitch' : roof.kind,
    ...(isPitched(roof.kind) ? [`${roof.pitch.toFixed(1)}°`] : []),
    ...(roof.kind === 'parapet'
      ? [`upstand ${length(roof.parapet)}`]
      : [`overhang ${length(roof.overhang)}`]),
  ];
  return parts.join(', ');
}
