import type { Assessment } from '../../assess/assessment.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import type { Theme } from '../../draw/ink.ts';
import type { Halves, Shown, SplitPaint } from '../ModelScene.ts';
import { askedOfCells, cellLabels, type CellLabels } from '../wash/cellLabels.ts';
import { Wash } from '../wash/Wash.ts';
import { ChangeMarks } from './ChangeMarks.ts';

/** What stands left and right of the divider. */
export interface Split {
  readonly left: string;
  /** Null: there is nothing to compare with yet, and the left one has the whole window. */
  readonly right: string | null;
  /** Where the divider stands, as a share of the width. */
  readonly at: number;
  readonly band: number;
  readonly marked: boolean;
}

interface Side {
  readonly coverage: CameraCoverage;
  /** Where cells are judged before the lens. */
  readonly labels: CellLabels | null;
}

/** One scene painted twice, left and right of a divider, each time with the wash of another setting of a camera. */
export class SplitPainter implements SplitPaint {
  private readonly halves: Halves;
  private readonly now: () => Split | null;
  private readonly other = new Wash();
  private readonly marks: ChangeMarks;
  private assessment: Assessment | null = null;
  private key = '';
  private origin: Vec3 = [0, 0, 0];
  private left: Side | null = null;
  private right: Side | null = null;

  /** @param now what is to stand left and right */
  constructor(halves: Halves, now: () => Split | null) {
    this.halves = halves;
    this.now = now;
    this.marks = new ChangeMarks(halves.washed, halves.window);
    halves.group.add(this.marks.mesh);
  }

  show(assessment: Assessment, shown: Shown, origin: Vec3): void {
    const split = this.now();
    const key = JSON.stringify([split?.left, split?.right, split?.band, shown.dragged]);
    if (assessment === this.assessment && key === this.key && origin === this.origin) return;
    [this.assessment, this.key, this.origin] = [assessment, key, origin];
    const { wash, target } = this.halves;
    const side = (id: string | null | undefined): Side | null => {
      const coverage = assessment.cameras.find(({ camera }) => camera.id === id);
      const asked = askedOfCells(assessment);
      const labels = coverage && asked !== 'nothing' ? cellLabels(assessment, [coverage], asked) : null;
      return coverage ? { coverage, labels } : null;
    };
    [this.left, this.right] = [side(split?.left), side(split?.right)];
    const both = [this.left, this.right].flatMap((one) => one?.coverage ?? []);
    wash.show(assessment, both.slice(0, 1), origin);
    this.other.show(assessment, both.slice(1), origin);
    // Lines are drawn where the wash differs across them, so that those of both serve either side.
    target.show(assessment, both, origin, shown);
    if (this.left && this.right && split)
      this.marks.show(assessment, this.left.coverage, this.right.coverage, split.band, origin);
  }

  wash(): void {
    const { renderer, camera, wash } = this.halves;
    wash.render(renderer, camera);
    if (this.right) this.other.render(renderer, camera);
  }

  paint(width: number, height: number): void {
    const { renderer, wash, washed } = this.halves;
    const { left, right } = this;
    const split = this.now();
    const middle = right && split ? Math.round(split.at * width) : width;
    renderer.setScissorTest(true);
    this.half(left, [0, middle, height], false);
    if (right) {
      washed.value = this.other.texture;
      this.half(right, [middle, width, height], split?.marked === true);
      washed.value = wash.texture;
    }
    renderer.setScissorTest(false);
  }

  private half(
    side: Side | null,
    [from, to, height]: readonly [number, number, number],
    marked: boolean,
  ): void {
    if (to <= from) return;
    const { renderer, graph, camera, cameras, target, wash } = this.halves;
    const { assessment, origin } = this;
    if (side?.labels && assessment) {
      const [x, y] = assessment.surface === null ? origin : [0, 0];
      target.washed.ask(side.labels, askedOfCells(assessment), [x, y]);
    }
    cameras.show(side?.coverage ?? null, origin);
    this.marks.mesh.visible = marked && target.washed.mesh.visible;
    if (marked) this.marks.lieOn(target.washed, wash.texture);
    renderer.setScissor(from, 0, to - from, height);
    renderer.render(graph, camera);
  }

  tint(theme: Theme): void {
    this.marks.tint(theme);
  }

  resize(width: number, height: number): void {
    this.other.resize(width, height);
  }

  dispose(): void {
    this.halves.group.remove(this.marks.mesh);
    this.marks.dispose();
  }
}
