import { createStore } from 'zustand/vanilla';
import type { AnswersStore } from '../answers/store.ts';
import type { Assessment } from '../assess/assessment.ts';
import type { Vec3 } from '../base/vector.ts';
import { ink } from '../draw/ink.ts';
import type { Editor, Selected } from '../editor/editor.ts';
import type { Pointed } from '../editor/tools/pointed.ts';
import { createToolbox, type Toolbox } from '../editor/tools/toolbox.ts';
import type { Solid } from '../model/solid.ts';
import type { Plan } from '../plan/plan.ts';
import { GROUND, groundParts } from './ground/terrainFaces.ts';
import { HoverName } from './labels/HoverName.ts';
import { SignLayer } from './labels/SignLayer.ts';
import { PlateLayer } from './labels/PlateLayer.ts';
import { Drawing } from './drawing/Drawing.ts';
import { homeBox, middleOf, siteBox, thingBox, withPictures } from './modelBox.ts';
import { ModelScene, type Shown } from './ModelScene.ts';
import { idOf, placeOfFaces, shownNow } from './shown.ts';
import { Hands } from './navigate/Hands.ts';
import { Here } from './navigate/Here.ts';
import { KeyCursor } from './navigate/KeyCursor.ts';
import { nextBehind } from './navigate/nextBehind.ts';
import { View } from './navigate/View.ts';
import { followLens } from './navigate/ways.ts';
import { platesOver } from './parts/rectsOver.ts';
import { pickable, type Pickable } from './picking.ts';
import type { PictureBitmap } from './pictures/PictureLayer.ts';
import { pointedAt, type Held } from './pointedAt.ts';
import type { Sheet, Spot } from './sheet.ts';
import { themeNow, watchTheme } from './theme.ts';
import { Typing } from './typing/Typing.ts';

/** The device's pixels count up to here; finer ones cost more than they show. */
const MOST_RATIO = 2;
/** Labels are placed anew once nothing has moved for so long, ms. */
const REST = 180;

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
  private readonly canvas: HTMLCanvasElement;
  private readonly scene: ModelScene;
  private readonly signs: SignLayer;
  private readonly plates: PlateLayer;
  readonly drawing: Drawing;
  private readonly stops: (() => void)[] = [];
  private readonly followers = new Set<(sheet: Sheet) => void>();
  private solids: Pickable = pickable([]);
  private frame = 0;
  /** The picture itself is to be painted, not only what lies over it. */
  private stale = true;
  private resting = 0;
  private fitted: string | null = null;
  private picked: { readonly solids: readonly Solid[]; readonly structures: Plan['structures'] | null } = {
    solids: [],
    structures: null,
  };
  private shown: Shown | null = null;

  constructor(
    canvas: HTMLCanvasElement,
    layer: HTMLElement,
    editor: Editor,
    answers: AnswersStore,
    bitmap: PictureBitmap,
  ) {
    this.canvas = canvas;
    this.editor = editor;
    this.answers = answers;
    this.toolbox = createToolbox(editor);
    this.here = new Here(this);
    this.typing = new Typing(this);
    this.cursor = new KeyCursor(this);
    this.scene = new ModelScene(canvas, bitmap, this.invalidate);
    this.signs = new SignLayer(layer);
    this.plates = new PlateLayer(layer);
    this.drawing = new Drawing(layer);
    this.hands = new Hands(this, layer, canvas);
    const name = new HoverName(layer, this);
    canvas.addEventListener('webglcontextrestored', this.invalidate);
    const resize = new ResizeObserver(() => this.resize());
    resize.observe(canvas);
    this.stops.push(
      () => resize.disconnect(),
      this.view.subscribe(this.invalidate),
      this.toolbox.store.subscribe(({ state }, { state: before }) => {
        // Ghosts and sketches lie over the picture, which stays as it is.
        if (state !== before) this.redraw();
      }),
      answers.subscribe((now, before) => {
        if (now.assessment !== before.assessment) this.invalidate();
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
      }),
      watchTheme(() => this.retint()),
      () => this.toolbox.dispose(),
      () => name.dispose(),
    );
    this.retint();
    this.resize();
  }

  get assessment(): Assessment | null {
    return this.answers.getState().assessment;
  }

  /** What lies under a place of the window. */
  pointed(spot: Spot, held: Held): Pointed {
    const reach = held.pointerType === 'touch' || held.pointerType === 'pen' ? 22 : 12;
    const sign = this.signs.at(spot, reach);
    const grip = sign.handle === null ? this.drawing.at(spot, reach) : null;
    const scene = this.assessment?.scene ?? null;
    return pointedAt(this.view.sheet, spot, scene, this.solids, { ...sign, grip }, held);
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
    this.canvas.parentElement?.focus();
  }

  /** A key that was meant for the Model although the focus was beside it. */
  pressKey(key: string): void {
    this.focus();
    this.canvas.parentElement?.dispatchEvent(
      new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }),
    );
  }

  /** What a turn of the view is about: the point given, else the selection, else the site. */
  pivotFor(point: Vec3 | null): Vec3 {
    if (point) return point;
    const box = this.boxOf(this.editor.store.getState().selected);
    return box ? middleOf(box) : this.view.middle;
  }

  boxOf(thing: Selected | null) {
    return thingBox(this.assessment?.scene ?? null, this.shown, thing);
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
    const { view, assessment } = this;
    if (this.stale) {
      this.stale = false;
      if (assessment) this.take(assessment);
      followLens(this);
      this.scene.paint(view.orbit, view.width, view.height);
    }
    this.tellView();
    this.follow();
    clearTimeout(this.resting);
    this.resting = window.setTimeout(this.rest, REST);
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
    this.shown = shownNow(now, assessment, this.shown);
    const { solids } = assessment.scene;
    if (this.picked.solids !== solids || this.picked.structures !== plan.structures) {
      this.picked = { solids, structures: plan.structures };
      // What is left out of the picture is not there to point at either.
      const there = solids.filter(({ structure }) => plan.structures[structure]?.hidden !== true);
      this.solids = pickable(there.flatMap((solid) => (solid.id === GROUND ? groundParts(solid) : solid)));
    }
    this.scene.show(assessment, this.shown);
    this.view.site = withPictures(siteBox(assessment.scene), this.shown.pictures);
    this.view.homeBox = withPictures(homeBox(assessment.scene), this.shown.pictures);
    if (this.fitted !== plan.id && this.view.width > 1) {
      this.fitted = plan.id;
      this.view.home(false);
    }
  }

  /** Calls back with each picture, for what is carried along with it. Returns how to stop. */
  follows(follower: (sheet: Sheet) => void): () => void {
    this.followers.add(follower);
    this.redraw();
    return () => this.followers.delete(follower);
  }

  /** Moves signs and labels with the view. */
  private follow(): void {
    const { assessment, view } = this;
    const { selected, hovered } = this.editor.store.getState();
    this.signs.show({
      sheet: view.sheet,
      assessment,
      solids: this.solids,
      selected: idOf(selected, 'camera'),
      hovered: idOf(hovered, 'camera'),
      lamps: this.shown?.lamps ?? [],
      lamp: { selected: idOf(selected, 'lamp'), hovered: idOf(hovered, 'lamp') },
      ghost: this.toolbox.store.getState().state.ghost,
      pinned: this.here.pinned,
      looked: assessment && placeOfFaces(assessment),
      counted: this.shown?.counted ?? (() => true),
    });
    this.plates.follow(view.sheet);
    const { state } = this.toolbox.store.getState();
    const now = this.editor.store.getState();
    const { sheet, isPlan: plan } = view;
    this.drawing.show({ sheet, solids: this.solids, state, now, plan, cursor: this.cursor.at });
    this.canvas.style.cursor = this.hands.cursor;
    for (const follower of this.followers) follower(sheet);
  }

  private rest = (): void => {
    const { assessment, view } = this;
    const { plan, selected, gesturing } = this.editor.store.getState();
    if (!assessment || gesturing) return;
    this.plates.place({
      sheet: view.sheet,
      assessment,
      solids: this.solids,
      theme: themeNow(),
      unit: plan.settings.units,
      selected: selected?.kind === 'camera' ? selected.id : null,
      counted: this.shown?.counted ?? (() => true),
      names: ({ structure, name }) =>
        plan.structures[structure]?.name ?? plan.cameras[structure]?.name ?? name,
      taken: [...this.signs.plates, ...this.drawing.plates, ...platesOver(this.canvas.parentElement)],
    });
  };

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
    this.signs.tint(ink[theme]);
    this.invalidate();
  }

  dispose(): void {
    cancelAnimationFrame(this.frame);
    clearTimeout(this.resting);
    for (const stop of this.stops) stop();
    this.scene.dispose();
  }
}
