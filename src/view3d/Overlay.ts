import { ink, type Theme } from '../draw/ink.ts';
import type { Plate } from '../draw/labelPlaces.ts';
import type { Pointed } from '../editor/tools/pointed.ts';
import { Drawing } from './drawing/Drawing.ts';
import { PhotoSigns } from './labels/PhotoSigns.ts';
import { PlateLayer } from './labels/PlateLayer.ts';
import { SignLayer } from './labels/SignLayer.ts';
import type { Model } from './Model.ts';
import { platesOver } from './parts/rectsOver.ts';
import type { SignAt } from './pointedAt.ts';
import type { Spot } from './sheet.ts';
import { idOf, placeOfFaces } from './shown.ts';
import { themeNow } from './theme.ts';

/** Labels are placed anew once nothing has moved for so long, ms. */
const REST = 180;

/** Parts of the window that show other cameras than the plan's, out of which its labels keep; and those cameras. */
export interface Beside {
  readonly plates: readonly Plate[];
  readonly counts: (camera: string) => boolean;
}

/** What lies over the picture and moves with the view: signs, labels, and what is drawn and shaped. */
export class Overlay {
  readonly drawing: Drawing;
  private readonly signs: SignLayer;
  private readonly photos: PhotoSigns;
  private readonly plates: PlateLayer;
  private readonly layer: HTMLElement;
  private readonly model: Model;
  private resting = 0;

  constructor(layer: HTMLElement, model: Model) {
    this.layer = layer;
    this.model = model;
    this.signs = new SignLayer(layer);
    this.photos = new PhotoSigns(layer);
    this.plates = new PlateLayer(layer);
    this.drawing = new Drawing(layer);
  }

  tint(theme: Theme): void {
    this.signs.tint(ink[theme]);
  }

  /** The sign or handle under a place of the window. @param reach half a target's width, px */
  at(spot: Spot, reach: number): SignAt & Pick<Pointed, 'grip' | 'picture'> {
    const sign = this.signs.at(spot, reach);
    const grip = sign.handle === null ? this.drawing.at(spot, reach) : null;
    const isFree = sign.camera === null && sign.lamp === null && sign.handle === null && grip === null;
    return { ...sign, grip, picture: isFree ? this.photos.at(spot, reach) : null };
  }

  /** Follows the view; labels are carried along, and placed anew once it rests. */
  follow(): void {
    const { assessment, standing, view, solids, shown, editor, toolbox, here, cursor, pointer } = this.model;
    const { sheet, isPlan: plan } = view;
    const now = editor.store.getState();
    const { state } = toolbox.store.getState();
    this.signs.show({
      sheet,
      assessment,
      cameras: standing?.cameras ?? [],
      solids,
      selected: idOf(now.selected, 'camera'),
      hovered: idOf(now.hovered, 'camera'),
      lamps: shown?.lamps ?? [],
      lamp: { selected: idOf(now.selected, 'lamp'), hovered: idOf(now.hovered, 'lamp') },
      ghost: state.ghost,
      // Also what is picked elsewhere, in the camera's view.
      pinned: here.pinned ?? (pointer.getState().spot ? null : now.pointed),
      looked: assessment && placeOfFaces(assessment),
      counted: (id) => shown?.counted(id) !== false || this.model.beside.counts(id),
    });
    this.layer.dataset['veiled'] = String(shown?.veiled === true);
    this.photos.show(sheet, solids, now);
    if (assessment) this.plates.follow(sheet);
    else this.plates.clear();
    this.drawing.show({ sheet, solids, state, now, plan, cursor: cursor.at });
    clearTimeout(this.resting);
    this.resting = window.setTimeout(this.rest, REST);
  }

  private rest = (): void => {
    const { assessment, view, solids, shown, editor, element } = this.model;
    const { plan, selected, gesturing } = editor.store.getState();
    if (!assessment || gesturing || shown?.veiled) return;
    this.plates.place({
      sheet: view.sheet,
      assessment,
      solids,
      theme: themeNow(),
      unit: plan.settings.units,
      selected: selected?.kind === 'camera' ? selected.id : null,
      counted: shown?.counted ?? (() => true),
      names: ({ structure, name }) =>
        plan.structures[structure]?.name ?? plan.cameras[structure]?.name ?? name,
      taken: [
        ...this.signs.plates,
        ...this.photos.plates,
        ...this.drawing.plates,
        ...platesOver(element),
        ...this.model.beside.plates,
      ],
    });
  };

  dispose(): void {
    clearTimeout(this.resting);
  }
}
