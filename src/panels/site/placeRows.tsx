import { Image, ImageUp, Layers2, MapPin, SquareDashed, TrendingUp } from 'lucide-react';
import type { TreeItem } from '../../fittings/treeItem.ts';
import type { Picture, Plan } from '../../plan/plan.ts';
import { ringArea } from '../structureWords.ts';
import { leaf } from './leaf.ts';
import { rowOf } from './rowIds.ts';

const LOOK = { size: 16, strokeWidth: 1.6 };

/** The rows that lead the Site: pictures, boundary, ground and patches of it. */
export function placeRows(
  plan: Pick<Plan, 'boundary' | 'ground' | 'pictures' | 'pictureOrder' | 'patches' | 'patchOrder'>,
): readonly TreeItem[] {
  const { boundary, ground } = plan;
  const level = groundText(ground);
  const area = boundary && ringArea(boundary).toFixed(0);
  return [
    ...plan.pictureOrder.flatMap((id) => plan.pictures[id] ?? []).map(pictureRow),
    ...(boundary
      ? [
          {
            ...leaf('boundary', 'Site boundary', `${area} m²`, `Site boundary, ${area} square metres`),
            icon: <SquareDashed {...LOOK} />,
          },
        ]
      : []),
    { ...leaf('ground', 'Ground', level, `Ground, ${level}`), icon: <Layers2 {...LOOK} /> },
    ...plan.patchOrder
      .flatMap((id) => plan.patches[id] ?? [])
      .map(({ id, name, pitch }) => ({
        ...leaf(
          rowOf({ kind: 'patch', id }),
          name,
          `${pitch.toFixed(1)}°`,
          `${name}, sloped ground, ${pitch.toFixed(1)} degrees`,
        ),
        icon: <TrendingUp {...LOOK} />,
      })),
  ];
}

const ICONS = { site: Image, wall: ImageUp, photo: MapPin } as const;

function pictureRow({ id, name, use, hidden }: Picture): TreeItem {
  const Icon = ICONS[use.kind];
  const detail = hidden ? 'not drawn' : pictureText(use);
  return {
    ...leaf(rowOf({ kind: 'picture', id }), name, detail, `${name}, picture, ${detail}`),
    icon: <Icon {...LOOK} />,
    faint: hidden,
  };
}

function pictureText(use: Picture['use']): string {
  if (use.kind === 'site') return use.metresPerPixel === null ? 'no scale yet' : 'scale set';
  return use.kind === 'wall' ? 'on a wall' : 'photo';
}

function groundText(ground: Plan['ground']): string {
  if (ground.kind === 'spots') return `${ground.spots.length} spot heights`;
  if (ground.kind === 'grid') return `${ground.columns} × ${ground.rows} heights`;
  return ground.height === 0 ? 'flat' : `flat, ${ground.height.toFixed(2)} m`;
}
