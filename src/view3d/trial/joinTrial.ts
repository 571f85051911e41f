import type { Plate } from '../../draw/labelPlaces.ts';
import { rightOf, variantsIn, type TrialStore } from '../../editor/trial/trial.ts';
import { PlateLayer } from '../labels/PlateLayer.ts';
import type { Model } from '../Model.ts';
import { platesOver } from '../parts/rectsOver.ts';
import { themeNow } from '../theme.ts';
import { SplitPainter, type Split } from './SplitPainter.ts';

/** Labels are placed anew once nothing has moved for so long, ms. */
const REST = 200;

/** Has a Model show two settings of a camera left and right of a divider. Returns how to stop. */
export function joinTrial(model: Model, trial: TrialStore): () => void {
  const now = (): Split | null => {
    const state = trial.getState();
    const { of, at, band, marked } = state;
    return of === null ? null : { left: of, right: rightOf(state), at, band, marked };
  };
  model.splitBy((halves) => new SplitPainter(halves, now));
  const plates = new PlateLayer(model.layer);
  let resting = 0;

  /** The part of the window left or right of the divider. */
  const part = (side: 'left' | 'right'): Plate => {
    const { width, height } = model.view;
    const middle = (now()?.right ? (now()?.at ?? 1) : 1) * width;
    const [from, to] = side === 'left' ? [0, middle] : [middle, width];
    return { x: (from + to) / 2, y: height / 2, width: to - from, height, angle: 0 };
  };

  const place = () => {
    const { assessment, view, solids, editor, element } = model;
    const split = now();
    const { plan, gesturing } = editor.store.getState();
    if (!assessment || !split?.right || gesturing) return plates.clear();
    plates.place({
      sheet: view.sheet,
      assessment,
      solids,
      theme: themeNow(),
      unit: plan.settings.units,
      selected: split.right,
      counted: (id) => id === split.right,
      names: ({ structure, name }) => plan.structures[structure]?.name ?? name,
      taken: [...platesOver(element), part('left')],
    });
  };

  /** The divider begins on the axis, where both settings look. */
  const settle = () => {
    const split = now();
    const { at, placed } = trial.getState();
    if (placed || !split?.right) return;
    const axis = model.assessment?.cameras.find(({ camera }) => camera.id === split.left)?.frustum.axisEnd;
    const spot = axis && model.view.sheet.spotFromSite(axis);
    const share = spot ? spot.x / model.view.width : at;
    trial.setState({ placed: true, at: Math.min(0.9, Math.max(0.1, share)) });
  };

  const follow = () => {
    model.beside = {
      plates: [part('right')],
      counts: (id) => variantsIn(trial.getState()).some((one) => one.id === id),
    };
    settle();
    plates.follow(model.view.sheet);
    clearTimeout(resting);
    resting = window.setTimeout(place, REST);
  };

  const stops = [
    model.follows(follow),
    trial.subscribe((state, before) => {
      if (state.at !== before.at) plates.clear();
      model.invalidate();
    }),
  ];
  return () => {
    clearTimeout(resting);
    for (const stop of stops) stop();
    plates.clear();
    model.beside = { plates: [], counts: () => false };
    model.splitBy(null);
  };
}
