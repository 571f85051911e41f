import { createStore } from 'zustand/vanilla';
import type { AnswersStore } from '../answers/store.ts';
import type { Assessment } from '../assess/assessment.ts';
import type { Scene } from '../assess/scene.ts';
import type { Vec3 } from '../base/vector.ts';
import type { Editor, Selected } from '../editor/editor.ts';
import type { Pointed } from '../editor/tools/pointed.ts';
import { createToolbox, type Toolbox } from '../editor/tools/toolbox.ts';
import type { Solid } from '../model/solid.ts';
import type { Plan } from '../plan/plan.ts';
import { GROUND, groundOf, groundParts } from './ground/terrainFaces.ts';
import { HoverName } from './labels/HoverName.ts';
import type { Drawing } from './drawing/Drawing.ts';
import { homeBox, middleOf, siteBox, thingBox, withPictures } from './modelBox.ts';
import { ModelScene, type Halves, type Shown, type SplitPaint } from './ModelScene.ts';
import { shownNow } from './shown.ts';
import { Arrival } from './navigate/arrival.ts';
import { Hands } from './navigate/Hands.ts';
import { Here } from './navigate/Here.ts';
import { KeyCursor } from './navigate/KeyCursor.ts';
import { nextBehind } from './navigate/nextBehind.ts';
import { View } from './navigate/View.ts';
import { followLens } from './navigate/ways.ts';
import { isHidden, whenPaintable } from './paintable.ts';
import { pickable, type Pickable } from './picking.ts';
import type { PictureBitmap } from './pictures/pictureTexture.ts';
import { Overlay, type Beside } from './Overlay.ts';
import { pointedAt, type Held } from './pointedAt.ts';
import type { Sheet, Spot } from './sheet.ts';
import { themeNow, watchTheme } from './theme.ts';
import { Typing } from './typing/Typing.ts';

/** The device's pixels count up to here; finer ones cost more than they show. */
const MOST_RATIO = 2;

const NO_KEYS: Held = { shiftKey: false, ctrlKey: false, metaKey: false };

interface PointerState {
  readonly spot: Spot | null;
  /** What touched or moved last. */
  readonly by: Pointed['by'];
}

/** Joins what the Model draws with the plan, the answers and the view. Paints only when something changed. */
export class Model {
  readonly view = new View();
  /** Where the pointer is over the Model, px; null where it is not. */
  readonly pointer = createStore<PointerState>(() => ({ spot: null, by: 'mouse' }));
  readonly toolbox: Toolbox;
  readonly here: Here;
  readonly typing: Typing;
  readonly cursor: KeyCursor;
  readonly hands: Hands;
  readonly editor: Editor;
  readonly answers: AnswersStore;
  /** What lies over the picture. */
  readonly layer: HTMLElement;
  private readonly canvas: HTMLCanvasElement;
  private readonly scene: ModelScene;
  private readonly overlay: Overlay;
  private readonly stops: (() => void)[] = [];
  private readonly followers = new Set<(sheet: Sheet) => void>();
  /** What of the picture can be pointed at. */
  solids: Pickable = pickable([]);
  shown: Shown | null = null;
  beside: Beside = { plates: [], counts: () => false };
  private frame = 0;
  /** The picture itself is to be painted, not only what lies over it. */
  private stale = true;
  private fitted: string | null = null;
  private readonly arrival = new Arrival();
  private picked: { readonly solids: readonly Solid[]; readonly structures: Plan['structures'] | null } = {
    solids: [],
    structures: null,
  };

  constructor(
    canvas: HTMLCanvasElement,
    layer: HTMLElement,
    editor: Editor,
    answers: AnswersStore,
    bitmap: PictureBitmap,
  ) {
    this.canvas = canvas;
    this.layer = layer;
    this.editor = editor;
    this.answers = answers;
    this.toolbox = createToolbox(editor);
    this.here = new Here(this);
    this.typing = new Typing(this);
    this.cursor = new KeyCursor(this);
    this.scene = new ModelScene(canvas, bitmap, this.invalidate);
    this.overlay = new Overlay(layer, this);
    this.hands = new Hands(this, layer, canvas);
    const name = new HoverName(layer, this);
    const resize = new ResizeObserver(() => this.resize());
    resize.observe(canvas);
    this.stops.push(
      () => resize.disconnect(),
      whenPaintable(canvas, this.invalidate),
      this.view.subscribe(this.invalidate),
      this.toolbox.store.subscribe(({ state }, { state: before }) => {
        // Ghosts and sketches lie over the picture, which stays as it is.
        if (state !== before) this.redraw();
      }),
      answers.subscribe((now, before) => {
        if (now.assessment !== before.assessment || now.ahead !== before.ahead) this.invalidate();
      }),
      editor.store.subscribe((now, before) => {
        if (
          now.plan !== before.plan ||
          now.selection !== before.selection ||
          now.tool !== before.tool ||
          now.hovered !== before.hovered ||
          now.gesturing !== before.gesturing
        )
          this.invalidate();
        else if (now.pointed !== before.pointed) this.redraw();
      }),
      watchTheme(() => this.retint()),
      () => this.toolbox.dispose(),
      () => name.dispose(),
      () => this.overlay.dispose(),
    );
    this.retint();
    this.resize();
  }

  get assessment(): Assessment | null {
    return this.answers.getState().assessment;
  }

  /** What stands in the picture: ahead of the assessment while something is shaped. */
  get standing(): Scene | null {
    const { assessment, ahead } = this.answers.getState();
    return ahead ?? assessment?.scene ?? null;
  }

  get drawing(): Drawing {
    return this.overlay.drawing;
  }

  /** The element that takes the keys. */
  get element(): HTMLElement | null {
    return this.canvas.parentElement;
  }

  /** What lies under a place of the window. */
  pointed(spot: Spot, held: Held): Pointed {
    const reach = held.pointerType === 'touch' || held.pointerType === 'pen' ? 22 : 12;
    return pointedAt(this.view.sheet, spot, this.standing, this.solids, this.overlay.at(spot, reach), held);
  }

  /** What a second click at the same place means: the thing behind the selected one. */
  behind(at: Pointed): Pointed {
    const { selected } = this.editor.store.getState();
    return nextBehind(at, this.solids, selected && 'id' in selected ? selected.id : null);
  }

  /** What lies under the keyboard's cursor, else under the pointer, else in the middle of the window. */
  pointedNow(held: Held = NO_KEYS): Pointed {
    const { width, height, sheet } = this.view;
    const keyed = this.cursor.at && sheet.spotFromSite(this.cursor.at);
    const spot = keyed ?? this.pointer.getState().spot ?? { x: width / 2, y: height / 2 };
    return this.pointed(spot, held);
  }

  /** The same, but nothing where neither cursor nor pointer is over the Model. */
  pointedOver(): Pointed | null {
    return (this.cursor.at ?? this.pointer.getState().spot) ? this.pointedNow() : null;
  }

  focus(): void {
    this.element?.focus();
  }

  /** A key that was meant for the Model although the focus was beside it. */
  pressKey(key: string): void {
    this.focus();
    this.element?.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
  }

  /** What a turn of the view is about: the point given, else the selection, else the site. */
  pivotFor(point: Vec3 | null): Vec3 {
    if (point) return point;
    const box = this.boxOf(this.editor.store.getState().selected);
    return box ? middleOf(box) : this.view.middle;
  }

  boxOf(thing: Selected | null) {
    return thingBox(this.standing, this.shown, thing);
  }

  /** Has the picture painted in two halves; null: whole again. */
  splitBy(make: ((halves: Halves) => SplitPaint) | null): void {
    this.scene.splitBy(make);
    this.invalidate();
  }

  fit(thing: Selected | null): void {
    const box = this.boxOf(thing);
    if (box) this.view.fit(box, 0.22);
  }

  invalidate = (): void => {
    this.stale = true;
    this.redraw();
  };

  /** What lies over the picture is drawn anew, the picture not. */
  redraw = (): void => {
    if (this.frame === 0) this.frame = requestAnimationFrame(this.paint);
  };

  private paint = (): void => {
    this.frame = 0;
    if (isHidden(this.canvas)) return;
    const { view, assessment } = this;
    if (this.stale) {
      this.stale = false;
      if (assessment) this.take(assessment);
      followLens(this);
      this.scene.paint(view.orbit, view.width, view.height);
    }
    this.tellView();
    this.overlay.follow();
    this.canvas.style.cursor = this.hands.cursor;
    for (const follower of this.followers) follower(view.sheet);
  };

  /**
   * How the site lies on the window, for whoever drives the app from outside: pivot, bearing, elevation, distance; and
   * where the keyboard's cursor stands.
   */
  private tellView(): void {
    const { pivot, bearing, elevation, distance } = this.view.orbit;
    const told = [...pivot, bearing, elevation, distance].join(' ');
    const { dataset } = this.canvas;
    if (dataset['view'] !== told) dataset['view'] = told;
    dataset['cursor'] = this.cursor.at?.join(' ') ?? '';
  }

  /** Hands over what changed since the last picture. */
  private take(assessment: Assessment): void {
    const now = this.editor.store.getState();
    const { plan } = now;
    this.shown = shownNow(now, this.answers.getState(), assessment, this.shown);
    const { solids } = this.shown.standing;
    if (this.picked.solids !== solids || this.picked.structures !== plan.structures) {
      this.picked = { solids, structures: plan.structures };
      // What is left out of the picture is not there to point at either.
      const there = solids.filter(({ structure }) => plan.structures[structure]?.hidden !== true);
      const uneven = groundOf(assessment.scene);
      this.solids = pickable(
        there.flatMap((solid) => (uneven && solid.id === GROUND ? groundParts(uneven) : solid)),
      );
    }
    this.scene.show(assessment, this.shown);
    this.view.site = withPictures(siteBox(assessment.scene), this.shown.pictures);
    this.view.homeBox = withPictures(homeBox(assessment.scene), this.shown.pictures);
    if (this.fitted !== plan.id && this.view.width > 1) {
      this.fitted = plan.id;
      this.view.home(false);
    }
    const shown = { plan: plan.id, solids, resting: now.tool === 'rest' };
    if (this.arrival.outOfView(shown, this.view)) this.view.whole();
  }

  /** Calls back with each picture, for what is carried along with it. Returns how to stop. */
  follows(follower: (sheet: Sheet) => void): () => void {
    this.followers.add(follower);
    this.redraw();
    return () => this.followers.delete(follower);
  }

  private resize(): void {
    const { clientWidth, clientHeight } = this.canvas;
    if (clientWidth === 0 || clientHeight === 0) return;
    this.scene.resize(clientWidth, clientHeight, Math.min(MOST_RATIO, window.devicePixelRatio));
    this.view.resize(clientWidth, clientHeight);
    // A canvas is cleared by its new size, so it is painted before the browser shows it.
    cancelAnimationFrame(this.frame);
    this.stale = true;
    this.paint();
  }

  private retint(): void {
    const theme = themeNow();
    this.scene.tint(theme);
    this.overlay.tint(theme);
    this.invalidate();
  }

  dispose(): void {
    cancelAnimationFrame(this.frame);
    for (const stop of this.stops) stop();
    this.scene.dispose();
  }
}
