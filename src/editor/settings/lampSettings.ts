import { setLamp } from '../../plan/commands/setLamp.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Lamp, Plan } from '../../plan/plan.ts';
import type { Photometry } from '../../optics/light.ts';
import type { Setting } from './setting.ts';

/** How far a lamp serves once its file is put away again, m: common practice, no source. */
const FIRST_RANGE = 6;

/** The numbers of a lamp that can be typed, in the order of the sheet. */
export function lampSettings({ id, at, height, light }: Lamp): readonly Setting[] {
  const place = (axis: 0 | 1, label: string): Setting => ({
    key: label,
    label,
    measure: 'length',
    bounds: LIMITS.coordinate,
    value: at[axis],
    change: (plan, value) => setLamp(plan, id, { at: axis === 0 ? [value, at[1]] : [at[0], value] }),
  });
  const shine: Setting =
    light.kind === 'range'
      ? {
          key: 'range',
          label: 'Lights as far as',
          measure: 'length',
          bounds: LIMITS.range,
          value: light.range,
          change: (plan, range) => setLamp(plan, id, { light: { kind: 'range', range } }),
        }
      : {
          key: 'turn',
          label: 'Turned to',
          measure: 'bearing',
          bounds: LIMITS.bearing,
          value: light.turn,
          change: (plan, turn) => setLamp(plan, id, { light: { ...light, turn } }),
        };
  return [
    place(0, 'East'),
    place(1, 'North'),
    {
      key: 'height',
      label: 'Height',
      measure: 'length',
      bounds: LIMITS.height,
      value: height,
      change: (plan, value) => setLamp(plan, id, { height: value }),
    },
    shine,
  ];
}

/** A lamp that shines as a photometric file measured; the way it is turned stays. */
export const setPhotometry = (plan: Plan, id: string, source: string, photometry: Photometry): Plan => {
  const light = plan.lamps[id]?.light;
  const turn = light?.kind === 'photometric' ? light.turn : 0;
  return setLamp(plan, id, { light: { kind: 'photometric', source, turn, photometry } });
};

/** A lamp that serves as far as a person judges. */
export const setRangeLight = (plan: Plan, id: string): Plan =>
  setLamp(plan, id, { light: { kind: 'range', range: FIRST_RANGE } });
