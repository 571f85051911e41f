import {
  AppWindow,
  ChevronsUpDown,
  DoorClosed,
  Droplet,
  Flame,
  Gauge,
  Lightbulb,
  PanelTop,
  Plug,
  ToggleLeft,
} from 'lucide-react';
import type { TreeItem } from '../../fittings/treeItem.ts';
import type { Opening, Service, Structure } from '../../model/structure.ts';
import { StructureIcon } from '../StructureIcon.tsx';
import { detailText, spokenText } from '../structureWords.ts';
import { leaf } from './leaf.ts';
import { rowOf } from './rowIds.ts';

const LOOK = { size: 16, strokeWidth: 1.6 };

/** Structures do not change while a camera moves: a row is made once a structure and state. */
const known = new WeakMap<Structure, Map<string, TreeItem>>();

/** A structure's row, and below it, where it is open, its openings and what is on its walls. */
export function structureRows(structure: Structure, level: number, isOpen: boolean): readonly TreeItem[] {
  const parts = partRows(structure, level + 1);
  const key = `${level} ${isOpen}`;
  const rows = known.get(structure) ?? new Map<string, TreeItem>();
  known.set(structure, rows);
  const row = rows.get(key) ?? {
    ...leaf(
      rowOf({ kind: 'structure', id: structure.id }),
      structure.name,
      structure.hidden ? 'not drawn' : detailText(structure),
      `${spokenText(structure)}${structure.locked ? ', locked' : ''}`,
      level,
    ),
    open: parts.length === 0 ? null : isOpen,
    icon: <StructureIcon structure={structure} />,
    faint: structure.hidden,
  };
  rows.set(key, row);
  return isOpen ? [row, ...parts] : [row];
}

function partRows(structure: Structure, level: number): readonly TreeItem[] {
  const on = structure.id;
  const openings = 'openings' in structure ? structure.openings : [];
  const services = 'services' in structure ? structure.services : [];
  return [
    ...openings.map((opening): TreeItem => {
      const { id, name, width, height } = opening;
      const spoken = `${name}, ${opening.kind} of ${structure.name}, ${width.toFixed(2)} by ${height.toFixed(2)}`;
      return {
        ...leaf(rowOf({ kind: 'opening', id, on }), name, `${width.toFixed(2)} m`, spoken, level),
        icon: <OpeningIcon kind={opening.kind} />,
      };
    }),
    ...services.map((service): TreeItem => {
      const { id, name, height, inside } = service;
      const where = inside ? 'inside' : 'outside';
      return {
        ...leaf(
          rowOf({ kind: 'service', id, on }),
          name,
          where,
          `${name}, ${service.kind} on a wall of ${structure.name}, ${where}, ${height.toFixed(2)} up`,
          level,
        ),
        icon: <ServiceIcon kind={service.kind} />,
      };
    }),
  ];
}

const OPENINGS = { door: DoorClosed, window: AppWindow, gate: ChevronsUpDown, archway: PanelTop } as const;

/** The sign of an opening in lists and heads. */
export function OpeningIcon({ kind }: { kind: Opening['kind'] }) {
  const Icon = OPENINGS[kind];
  return <Icon {...LOOK} />;
}

const SERVICES = {
  socket: Plug,
  switch: ToggleLeft,
  light: Lightbulb,
  tap: Droplet,
  meter: Gauge,
  flue: Flame,
} as const;

/** The sign of something on a wall. */
export function ServiceIcon({ kind }: { kind: Service['kind'] }) {
  const Icon = SERVICES[kind];
  return <Icon {...LOOK} />;
}
