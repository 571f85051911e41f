import { Check } from '../../fittings/Check.tsx';
import { angles, lengths, numbers } from '../../fittings/measure.ts';
import { Segmented } from '../../fittings/Segmented.tsx';
import { Select } from '../../fittings/Select.tsx';
import { sensors, sensorTypeOf } from '../../editor/settings/sensors.ts';
import type { Unknown } from '../../draw/sum/solved.ts';
import type { Band } from '../../coverage/band.ts';
import type { Sum, SumAsked } from '../../optics/quickSum.ts';
import type { PlanSettings } from '../../plan/plan.ts';
import { Stepped } from './Stepped.tsx';
import { SUM_BOUNDS, type SumChoice } from './sumChoice.ts';
import styles from './sum.module.css';

const MILLIMETRES = numbers('mm', 0.1, [1, 3]);
const PIXELS = numbers('px', 1, [0, 0]);
const DENSITIES = numbers('px/m', 1, [0, 1]);

/** Focal lengths that lenses are sold with, mm (common practice, no source). */
const LENSES = [2.8, 4, 6, 8, 12] as const;

interface SumFieldsProps {
  readonly choice: SumChoice;
  /** What came of it; null where nothing did. */
  readonly sum: Sum | null;
  readonly settings: PlanSettings;
  readonly bands: readonly Band[];
  set(choice: SumChoice): void;
}

/** What goes into the sum. Whatever is worked out is shown among the answers instead. */
export function SumFields({ choice, sum, settings, bands, set }: SumFieldsProps) {
  const { asked, unknown, wanted } = choice;
  const put = (part: Partial<SumAsked>) => set({ ...choice, asked: { ...asked, ...part } });
  const inMetres = lengths(settings.units);
  return (
    <div className={styles.fields}>
      <div className={styles.find}>
        <span aria-hidden="true">Work out</span>
        <Segmented<Unknown>
          label="What to work out"
          viewing
          value={unknown}
          choices={[
            { value: 'density', label: 'Pixels' },
            { value: 'distance', label: 'Distance' },
            { value: 'lens', label: 'Lens' },
          ]}
          set={(next) => set({ ...choice, unknown: next, ...keep(next, sum) })}
        />
      </div>
      <Stepped
        label="Lens height"
        value={asked.height}
        measure={inMetres}
        bounds={SUM_BOUNDS.height}
        by={0.1}
        set={(height) => put({ height })}
      />
      {unknown !== 'lens' && <LensFields asked={asked} sum={sum} put={put} />}
      {unknown !== 'distance' && (
        <Stepped
          label="Distance"
          value={asked.distance}
          measure={inMetres}
          bounds={SUM_BOUNDS.distance}
          by={0.5}
          set={(distance) => put({ distance })}
        />
      )}
      {unknown !== 'density' && (
        <>
          <Stepped
            label="Pixels a metre"
            value={wanted}
            measure={DENSITIES}
            bounds={SUM_BOUNDS.density}
            by={5}
            set={(density) => set({ ...choice, wanted: density })}
          />
          <Segmented
            label="Where a band begins"
            viewing
            value={bands.find(({ density }) => density === wanted)?.key ?? ''}
            choices={bands.map(({ key, name }) => ({ value: key, label: name }))}
            set={(key) =>
              set({ ...choice, wanted: bands.find((band) => band.key === key)?.density ?? wanted })
            }
          />
        </>
      )}
      <Segmented
        label="Target"
        viewing
        value={targetOf(asked.targetHeight, settings)}
        choices={[
          { value: 'ground', label: 'Ground' },
          { value: 'plate', label: `Plate ${settings.plateHeight}` },
          { value: 'face', label: `Face ${settings.faceHeight}` },
        ]}
        set={(kind) =>
          put({
            targetHeight:
              kind === 'ground' ? 0 : kind === 'plate' ? settings.plateHeight : settings.faceHeight,
          })
        }
      />
      <details className={styles.more}>
        <summary>Sensor, pixels, tilt, other target</summary>
        <MoreFields {...{ asked, sum, put, units: settings.units }} />
      </details>
    </div>
  );
}

/** What is worked out no more keeps the value that was found. */
function keep(next: Unknown, sum: Sum | null): Partial<SumChoice> {
  if (sum === null) return {};
  return {
    asked: sum.asked,
    ...(next === 'density' || sum.density === null ? {} : { wanted: rounded(sum.density) }),
  };
}

const rounded = (density: number): number => Number(density.toFixed(1));

const targetOf = (height: number, { plateHeight, faceHeight }: PlanSettings): string =>
  height === 0 ? 'ground' : height === faceHeight ? 'face' : height === plateHeight ? 'plate' : '';

interface PartProps {
  readonly asked: SumAsked;
  readonly sum: Sum | null;
  put(part: Partial<SumAsked>): void;
}

type Knows = 'focalLength' | 'hfov' | 'both';

function LensFields({ asked: { lens }, sum, put }: PartProps) {
  const knows: Knows = lens.focalLength === null ? 'hfov' : lens.hfov === null ? 'focalLength' : 'both';
  const focalLength = lens.focalLength ?? Number((sum?.camera.focalLength ?? LENSES[0]).toFixed(2));
  const hfov = lens.hfov ?? Number((sum?.hfov ?? 90).toFixed(1));
  const know = (next: Knows) =>
    put({
      lens: { focalLength: next === 'hfov' ? null : focalLength, hfov: next === 'focalLength' ? null : hfov },
    });
  return (
    <>
      {knows !== 'hfov' && (
        <>
          <Stepped
            label="Focal length"
            value={focalLength}
            measure={MILLIMETRES}
            bounds={SUM_BOUNDS.focalLength}
            by={0.1}
            set={(next) => put({ lens: { focalLength: next, hfov: lens.hfov } })}
          />
          <Segmented
            label="Common lenses, mm"
            viewing
            value={String(focalLength)}
            choices={LENSES.map((one) => ({ value: String(one), label: String(one) }))}
            set={(next) => put({ lens: { focalLength: Number(next), hfov: null } })}
          />
        </>
      )}
      {knows !== 'focalLength' && (
        <Stepped
          label="Angle across"
          value={hfov}
          measure={angles}
          bounds={SUM_BOUNDS.hfov}
          by={1}
          set={(next) => put({ lens: { focalLength: lens.focalLength, hfov: next } })}
        />
      )}
      <Segmented<Knows>
        label="What is known of the lens"
        viewing
        value={knows}
        choices={[
          { value: 'focalLength', label: 'By mm' },
          { value: 'hfov', label: 'By angle' },
          { value: 'both', label: 'Both' },
        ]}
        set={know}
      />
    </>
  );
}

function MoreFields({ asked, sum, put, units }: PartProps & { readonly units: PlanSettings['units'] }) {
  const { sensor, frame, tilt, targetHeight, roll } = asked;
  const type = sensorTypeOf(sensor)?.key ?? OWN;
  return (
    <>
      <Select
        label="Sensor"
        viewing
        value={type}
        choices={[
          ...(type === OWN ? [{ value: OWN, label: 'its own size' }] : []),
          ...sensors.map(({ key, name }) => ({ value: key, label: name })),
        ]}
        set={(key) => {
          const found = sensors.find((one) => one.key === key);
          if (found) put({ sensor: { width: found.width, height: found.height } });
        }}
      />
      {(['width', 'height'] as const).map((side) => (
        <Stepped
          key={`sensor ${side}`}
          label={`Sensor ${side}`}
          value={sensor[side]}
          measure={MILLIMETRES}
          bounds={SUM_BOUNDS.sensor}
          by={0.1}
          set={(next) => put({ sensor: { ...sensor, [side]: next } })}
        />
      ))}
      {(['width', 'height'] as const).map((side) => (
        <Stepped
          key={`pixels ${side}`}
          label={side === 'width' ? 'Pixels across' : 'Pixels down'}
          value={frame[side]}
          measure={PIXELS}
          bounds={SUM_BOUNDS.pixels}
          by={16}
          set={(next) => put({ frame: { ...frame, [side]: next } })}
        />
      ))}
      <Stepped
        label="Target height"
        value={targetHeight}
        measure={lengths(units)}
        bounds={SUM_BOUNDS.targetHeight}
        by={0.1}
        set={(next) => put({ targetHeight: next })}
      />
      <Check
        label="Tilt follows the target"
        checked={tilt === null}
        set={(follows) => put({ tilt: follows ? null : Number((sum?.camera.tilt ?? 0).toFixed(1)) })}
      />
      {tilt !== null && (
        <Stepped
          label="Tilt down"
          value={tilt}
          measure={angles}
          bounds={SUM_BOUNDS.tilt}
          by={1}
          set={(next) => put({ tilt: next })}
        />
      )}
      <Check
        label="Picture on its side"
        checked={Math.abs(roll) === 90}
        set={(side) => put({ roll: side ? 90 : 0 })}
      />
    </>
  );
}

const OWN = 'own';
