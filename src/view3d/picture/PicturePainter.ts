import type { AnswersStore } from '../../answers/store.ts';
import type { Editor } from '../../editor/editor.ts';
import { themeNow, watchTheme } from '../theme.ts';
import { PictureScene } from './PictureScene.ts';

/** The device's pixels count up to here; finer ones cost more than they show. */
const MOST_RATIO = 2;

/** Keeps the picture of one camera painted: in the very frame in which an answer comes, like the Model. */
export class PicturePainter {
  private readonly scene: PictureScene;
  private readonly canvas: HTMLCanvasElement;
  private readonly editor: Editor;
  private readonly answers: AnswersStore;
  private readonly stops: (() => void)[];
  private camera: string | null = null;
  private wash = 0;
  private frame = 0;

  constructor(canvas: HTMLCanvasElement, editor: Editor, answers: AnswersStore) {
    this.canvas = canvas;
    this.editor = editor;
    this.answers = answers;
    this.scene = new PictureScene(canvas);
    const resize = new ResizeObserver(() => this.resize());
    resize.observe(canvas);
    canvas.addEventListener('webglcontextrestored', this.invalidate);
    this.stops = [
      () => resize.disconnect(),
      () => canvas.removeEventListener('webglcontextrestored', this.invalidate),
      answers.subscribe((now, before) => {
        if (now.assessment !== before.assessment || now.ahead !== before.ahead) this.invalidate();
      }),
      editor.store.subscribe((now, before) => {
        if (now.gesturing !== before.gesturing || now.plan.structures !== before.plan.structures)
          this.invalidate();
      }),
      watchTheme(() => this.retint()),
    ];
    this.retint();
    this.resize();
  }

  /** Whose picture is painted. @param wash how much of the wash is drawn, 0 to 1 */
  show(camera: string | null, wash: number): void {
    if (this.camera === camera && this.wash === wash) return;
    [this.camera, this.wash] = [camera, wash];
    this.invalidate();
  }

  private readonly invalidate = (): void => {
    if (this.frame === 0) this.frame = requestAnimationFrame(this.paint);
  };

  private readonly paint = (): void => {
    this.frame = 0;
    const { assessment, ahead } = this.answers.getState();
    const { plan, gesturing } = this.editor.store.getState();
    const coverage = assessment?.cameras.find(({ camera }) => camera.id === this.camera);
    if (!assessment || !coverage) return;
    this.scene.show(assessment, {
      camera: coverage.camera,
      coverage,
      structures: plan.structures,
      standing: ahead ?? assessment.scene,
      veiled: ahead !== null,
      dragged: gesturing,
      wash: this.wash,
    });
    this.scene.paint();
    // For whoever drives the app from outside.
    this.canvas.dataset['painted'] = String(assessment.revision);
  };

  private resize(): void {
    const { clientWidth, clientHeight } = this.canvas;
    if (clientWidth === 0 || clientHeight === 0) return;
    this.scene.resize(clientWidth, clientHeight, Math.min(MOST_RATIO, window.devicePixelRatio));
    // A canvas is cleared by its new size, so it is painted before the browser shows it.
    cancelAnimationFrame(this.frame);
    this.paint();
  }

  private retint(): void {
    this.scene.tint(themeNow());
    this.invalidate();
  }

  dispose(): void {
    cancelAnimationFrame(this.frame);
    for (const stop of this.stops) stop();
    this.scene.dispose();
  }
}
