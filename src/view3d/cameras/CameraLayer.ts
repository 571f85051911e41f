import type { Group } from 'three';
import { length, subtract, type Vec2, type Vec3 } from '../../base/vector.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import type { Ink } from '../../draw/ink.ts';
import { partsWithin } from '../../draw/region.ts';
import { FRAME_EDGE_CODE, pointOn } from '../planeFrame.ts';
import { frameEdge } from '../wash/frameEdge.ts';
import { FatLines } from '../lines/FatLines.ts';
import type { WindowUniforms } from '../shading.ts';

/** The selected camera in space: two lower edges of its frame, what the frame cuts from the ground, its axis. */
export class CameraLayer {
  private readonly traceCasing: FatLines;
  private readonly trace: FatLines;
  private readonly edgeCasing: FatLines;
  private readonly edges: FatLines;
  private readonly axisCasing: FatLines;
  private readonly axis: FatLines;

  constructor(group: Group, window: WindowUniforms) {
    this.traceCasing = new FatLines({ width: 3.8, order: 40 }, window);
    this.trace = new FatLines({ width: 2, order: 41 }, window);
    this.edgeCasing = new FatLines({ width: 2.9, order: 42 }, window);
    this.edges = new FatLines({ width: 1.5, order: 43 }, window);
    this.axisCasing = new FatLines({ width: 2.9, dash: [7, 5], order: 42 }, window);
    this.axis = new FatLines({ width: 1.5, dash: [7, 5], order: 43 }, window);
    group.add(...this.all.map(({ mesh }) => mesh));
  }

  private get all(): FatLines[] {
    return [this.traceCasing, this.trace, this.edgeCasing, this.edges, this.axisCasing, this.axis];
  }

  tint({ saffron, casing }: Ink): void {
    for (const lines of [this.traceCasing, this.edgeCasing, this.axisCasing]) lines.tint(casing);
    for (const lines of [this.trace, this.edges, this.axis]) lines.tint(saffron);
  }

  show(coverage: CameraCoverage | null, origin: Vec3): void {
    if (!coverage) {
      for (const lines of this.all) lines.show([]);
      return;
    }
    const { camera, frustum } = coverage;
    const from = subtract(camera.eye, origin);
    const steepness = (end: Vec3): number =>
      (end[2] - camera.eye[2]) / (length(subtract(end, camera.eye)) || 1);
    const lower = frustum.corners.toSorted((a, b) => steepness(a) - steepness(b)).slice(0, 2);
    const edges = lower.flatMap((end) => [...from, ...subtract(end, origin)]);
    const axis = [...from, ...subtract(frustum.axisEnd, origin)];
    const trace = traceOf(coverage, origin);
    for (const lines of [this.traceCasing, this.trace]) lines.show(trace);
    for (const lines of [this.edgeCasing, this.edges]) lines.show(edges);
    for (const lines of [this.axisCasing, this.axis]) lines.show(axis);
  }
}

/** Where the frame's edges run over the target plane in plain sight. */
function traceOf({ sight }: CameraCoverage, origin: Vec3): number[] {
  const { plane, beyondScreens } = sight;
  const segment = (from: Vec2, to: Vec2): number[] => [
    ...subtract(pointOn(plane, ...from), origin),
    ...subtract(pointOn(plane, ...to), origin),
  ];
  if (sight.framed)
    return beyondScreens.pieces
      .filter(({ beyond }) => beyond === FRAME_EDGE_CODE)
      .flatMap(({ from, to }) => segment(from, to));
  return frameEdge(sight).flatMap((line) =>
    line.flatMap((to, i) => {
      const from = line[i - 1];
      return from ? partsWithin(beyondScreens.rings, from, to).flatMap(([a, b]) => segment(a, b)) : [];
    }),
  );
}
