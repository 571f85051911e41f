import { useMemo, type ReactNode } from 'react';
import type { Vec2 } from '../../base/vector.ts';
import type { Target } from '../../coverage/target.ts';
import type { Moving } from '../../draw/person/shownPerson.ts';
import type { Editor, Standing } from '../../editor/editor.ts';
import { namedPlaces } from '../../editor/namedPlaces.ts';
import { Button } from '../../fittings/Button.tsx';
import { Check } from '../../fittings/Check.tsx';
import type { NumberEdit } from '../../fittings/edit.ts';
import { bearings, lengths, numbers } from '../../fittings/measure.ts';
import { NumberField } from '../../fittings/NumberField.tsx';
import { Segmented } from '../../fittings/Segmented.tsx';
import { Select, type Choice } from '../../fittings/Select.tsx';
import { UnwritableProvider } from '../../fittings/writable.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { otherCamera, otherLens } from './lenses.ts';
import type { Compare, PersonChoice, Way } from './personChoice.ts';
import styles from './person.module.css';

interface PersonControlsProps {
  readonly editor: Editor;
  readonly plan: Plan;
  readonly camera: PlanCamera;
  readonly target: Target;
  readonly standing: Standing;
  readonly choice: PersonChoice;
  set(choice: PersonChoice): void;
}

const [AHEAD, PICKED] = ['ahead', 'picked'];
const REACH = { least: 0.5, most: 500 };
const TURN = { least: -360, most: 360 };
const LENGTH = { least: 0.5, most: 200 };

/** Where somebody stands, which way they look, with a cap, moving, and what to compare with. Nothing of it is in the plan. */
export function PersonControls(props: PersonControlsProps) {
  const { editor, plan, camera, target, standing, choice, set } = props;
  const places = useMemo(() => namedPlaces(plan).filter(({ isTarget }) => isTarget), [plan]);
  const change = (part: Partial<PersonChoice>) => set({ ...choice, ...part });
  const other = otherCamera(plan, camera);
  const isAsked = target.kind === 'face' && target.looks !== undefined;
  const ways: readonly Choice<Way>[] = [
    { value: 'camera', label: `to ${camera.name}` },
    ...(isAsked ? [{ value: 'asked', label: 'as faces are asked for' } as const] : []),
    { value: 'bearing', label: 'along a bearing' },
    ...(places.length > 0 ? [{ value: 'place', label: 'to a place' } as const] : []),
  ];
  return (
    <UnwritableProvider value={null}>
      <div className={styles.controls}>
        <Stands {...{ editor, plan, standing, places }} />
        <Row>
          <Select<Way>
            label="Looks"
            viewing
            value={choice.way === 'asked' && !isAsked ? 'camera' : choice.way}
            choices={ways}
            set={(way) => change({ way, place: choice.place ?? overGround(places[0]?.at) })}
          />
          {choice.way === 'bearing' && (
            <NumberField
              label="Bearing"
              value={choice.bearing}
              measure={bearings}
              bounds={TURN}
              edit={shown(choice.bearing, (bearing) => change({ bearing }))}
            />
          )}
          {choice.way === 'place' && (
            <Select
              label="Place"
              viewing
              value={nameOf(places, choice.place)}
              choices={places.map(({ name }) => ({ value: name, label: name }))}
              set={(name) => change({ place: overGround(places.find((one) => one.name === name)?.at) })}
            />
          )}
          <Check label="Cap" checked={choice.cap} set={(cap) => change({ cap })} />
        </Row>
        <Row>
          <span aria-hidden="true">Moves across</span>
          <Segmented<Moving>
            label="Moves across the view"
            viewing
            value={choice.moving}
            choices={[
              { value: 'still', label: 'Still' },
              { value: 'walks', label: 'Walks' },
              { value: 'runs', label: 'Runs' },
            ]}
            set={(moving) => change({ moving })}
          />
        </Row>
        <Row>
          <span aria-hidden="true">Compare with</span>
          <Segmented<Compare>
            label="Compare with"
            viewing
            value={choice.compare}
            choices={[
              { value: 'nothing', label: 'Nothing' },
              { value: 'lens', label: 'A lens' },
              ...(other === undefined ? [] : [{ value: 'camera', label: 'A camera' } as const]),
              { value: 'bands', label: 'Bands' },
            ]}
            set={(compare) => change({ compare })}
          />
          {choice.compare === 'camera' && other !== undefined && (
            <Select
              label="Camera"
              viewing
              value={choice.camera ?? other.id}
              choices={plan.cameraOrder.flatMap((id) => {
                const name = plan.cameras[id]?.name;
                return id === camera.id || name === undefined ? [] : [{ value: id, label: name }];
              })}
              set={(id) => change({ camera: id })}
            />
          )}
          {choice.compare === 'lens' && (
            <NumberField
              label="Focal length"
              value={choice.focalLength ?? otherLens(camera.device.lens.focalLength)}
              measure={MILLIMETRES}
              bounds={LENGTH}
              edit={shown(choice.focalLength ?? otherLens(camera.device.lens.focalLength), (focalLength) =>
                change({ focalLength }),
              )}
            />
          )}
        </Row>
      </div>
    </UnwritableProvider>
  );
}

const MILLIMETRES = numbers('mm', 0.1, [1, 3]);

function Row({ children }: { children: ReactNode }) {
  return <div className={styles.row}>{children}</div>;
}

interface StandsProps {
  readonly editor: Editor;
  readonly plan: Plan;
  readonly standing: Standing;
  readonly places: ReturnType<typeof namedPlaces>;
}

function Stands({ editor, plan, standing, places }: StandsProps) {
  const { ahead, at } = standing;
  const name = at === null ? AHEAD : nameOf(places, at);
  return (
    <Row>
      <Select
        label="Stands"
        viewing
        value={name}
        choices={[
          { value: AHEAD, label: 'ahead of the lens' },
          ...(name === PICKED ? [{ value: PICKED, label: 'where you picked' }] : []),
          ...places.map((place) => ({ value: place.name, label: `at ${place.name}` })),
        ]}
        set={(chosen) =>
          editor.stand({ at: overGround(places.find((place) => place.name === chosen)?.at) ?? null })
        }
      />
      {at === null && (
        <NumberField
          label="Distance"
          value={ahead}
          measure={lengths(plan.settings.units)}
          bounds={REACH}
          edit={shown(ahead, (value) => editor.stand({ ahead: value, at: null }))}
        />
      )}
      <Button
        press={() => {
          editor.hold('stand');
          document.querySelector<HTMLElement>('[role="application"]')?.focus();
        }}
      >
        Pick in the Model
      </Button>
    </Row>
  );
}

const overGround = (at: readonly [number, number, number] | undefined): Vec2 | null =>
  at === undefined ? null : [at[0], at[1]];

const nameOf = (places: ReturnType<typeof namedPlaces>, at: Vec2 | null): string =>
  places.find((place) => at !== null && place.at[0] === at[0] && place.at[1] === at[1])?.name ?? PICKED;

/** A number of what is shown: no step of the plan. */
const shown = (value: number, set: (value: number) => void): NumberEdit => ({
  set,
  step: set,
  drag: () => ({ to: set, commit: () => undefined, cancel: () => set(value) }),
});
