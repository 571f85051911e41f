import { useEffect, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../../answers/store.ts';
import type { Assessment } from '../../assess/assessment.ts';
import { fixed } from '../../base/length.ts';
import type { Vec2, Vec3 } from '../../base/vector.ts';
import { pictureSentence, sizeWords, standingWords, turnWords } from '../../draw/picture/pictureWords.ts';
import { createShowPicture, namedInPicture, placeInPicture } from '../../draw/picture/shownPicture.ts';
import type { Editor } from '../../editor/editor.ts';
import { Button } from '../../fittings/Button.tsx';
import { Check } from '../../fittings/Check.tsx';
import { LiveRegion } from '../../fittings/LiveRegion.tsx';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { useBox } from '../section/useBox.ts';
import { aimHands, heightInPicture } from './aimHands.ts';
import { TINT, type Painter } from './painter.ts';
import { PictureRuler } from './PictureRuler.tsx';
import { PictureStage } from './PictureStage.tsx';
import { savePicture } from './savePicture.ts';
import { SpotReadout } from './SpotReadout.tsx';
import { useNarrow } from './useNarrow.ts';
import { useRestPicture } from './useRestPicture.ts';
import styles from './picture.module.css';

interface CameraPictureProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  /** Makes what paints into a canvas; the same function as long as the window stands. */
  painter(canvas: HTMLCanvasElement): Painter;
  /** Shows a place of the site in the Model; absent where there is none. */
  readonly find?: (point: Vec3) => void;
}

/** The picture that the selected camera gives, live with every drag; the last one looked through while something else is selected. */
export function CameraPicture({ editor, answers, painter, find }: CameraPictureProps) {
  const plan = useStore(editor.store, (state) => state.plan);
  const selected = useStore(editor.store, (state) => state.selected);
  const assessment = useStore(answers, (state) => state.assessment);
  const [last, setLast] = useState<string | null>(null);
  const chosen = selected?.kind === 'camera' ? selected.id : null;
  if (chosen !== null && chosen !== last) setLast(chosen);
  const id = chosen ?? last ?? plan.cameraOrder[0];
  const camera = id === undefined ? undefined : plan.cameras[id];
  const isThere = camera && assessment?.cameras.some((one) => one.camera.id === camera.id);
  if (camera === undefined || assessment === null || !isThere)
    return (
      <section className={styles.panel} data-empty="true" aria-label="Camera’s view">
        <p className={styles.empty}>
          {assessment === null
            ? 'Working out coverage.'
            : camera === undefined
              ? 'Place a camera, and what it sees is shown here.'
              : `${camera.name} is fixed to nothing that stands here, so there is no picture of it.`}
        </p>
      </section>
    );
  return <OnePicture key={camera.id} {...{ editor, answers, painter, plan, camera, assessment, find }} />;
}

interface OnePictureProps extends Omit<CameraPictureProps, 'find'> {
  readonly plan: Plan;
  readonly camera: PlanCamera;
  readonly assessment: Assessment;
  readonly find: CameraPictureProps['find'];
}

interface Spot {
  readonly point: Vec3;
  readonly solid: number | null;
}

function OnePicture({ editor, answers, painter, plan, camera, assessment, find }: OnePictureProps) {
  const [picturer] = useState(createShowPicture);
  const [tinted, setTinted] = useState(true);
  const [covered, setCovered] = useState(false);
  const [spot, setSpot] = useState<Spot | null>(null);
  const [placing, setPlacing] = useState(false);
  const [said, setSaid] = useState({ text: '', turn: 0 });
  const gesturing = useStore(editor.store, (state) => state.gesturing);
  const standing = useStore(editor.store, (state) => state.standing);
  const probe = useStore(answers, (state) => state.probe);
  const body = useRef<HTMLDivElement>(null);
  const box = useBox(body);
  const narrow = useNarrow();

  const around = useMemo(
    () => picturer.around(assessment, plan, camera.id),
    [picturer, assessment, plan, camera.id],
  );
  const person = useMemo(
    () => picturer.person(assessment, plan, camera.id, standing),
    [picturer, assessment, plan, camera.id, standing],
  );
  const picture = useRestPicture(picturer, assessment, plan, camera.id, gesturing);
  const say = (text: string) => setSaid(({ turn }) => ({ text, turn: turn + 1 }));

  // What was picked goes with the panel.
  useEffect(() => () => editor.point(null), [editor]);
  const answer =
    spot !== null && probe?.point === spot.point
      ? (probe.answers.find((one) => one.camera === camera.id) ?? null)
      : null;
  if (around === null) return null;

  const seen = around.camera;
  const aim = aimHands(editor, camera, seen);
  const clear = () => {
    setSpot(null);
    setPlacing(false);
    editor.point(null);
  };
  const pick = (at: Vec2) => {
    if (placing && spot) {
      aim.put(spot.point, at);
      setPlacing(false);
      return;
    }
    const found = picturer.spot(assessment, camera.id, at);
    if (found === null) {
      clear();
      say('Nothing of the site is there.');
      return;
    }
    setSpot(found);
    editor.point(found.point);
    if (found.solid === null && assessment.surface === null)
      editor.stand({ at: [found.point[0], found.point[1]] });
  };
  const turn = (right: number, down: number) => {
    aim.turn(right, down);
    const now = editor.store.getState().plan.cameras[camera.id] ?? camera;
    say(`${now.name} aimed: pan ${fixed(now.pan, 1)}, tilt ${fixed(now.tilt, 1)}.`);
  };
  const named = namedInPicture(assessment, plan);
  // On a phone the page scrolls, and the picture is as wide as that allows.
  const room = narrow ? TALLEST * box.width : Math.max(0, box.height - RULER);
  const fit = Math.min(box.width / around.width, room / around.height);
  const [width, height] = [Math.floor(around.width * fit), Math.floor(around.height * fit)];
  const turned = turnWords(around);
  const about = `${sizeWords(around)} in ${width}: one is shown as ${fixed(fit, 2)} of a screen pixel.`;
  return (
    <section className={styles.panel} data-narrow={narrow} aria-label={`Camera’s view of ${camera.name}`}>
      <div className={styles.head}>
        <h2 className={styles.title}>What {camera.name} sees</h2>
        <Check label="Bands" checked={tinted} set={setTinted} />
        <Check label="Edges behind" checked={covered} set={setCovered} />
        <Button
          look="quiet"
          off={picture === null ? 'The drawing is being made.' : null}
          press={() => picture && savePicture(editor, assessment, plan, picture, person, covered)}
        >
          Save drawing
        </Button>
      </div>
      <div ref={body} className={styles.body}>
        {width > 1 && height > 1 && (
          <>
            <PictureStage
              {...{ assessment, plan, around, picture, person, covered, width, height, painter, pick, clear }}
              wash={tinted ? TINT : 0}
              spot={spot && placeInPicture(seen, spot.point)}
              hands={{ ...aim, turn }}
              sentence={picture ? pictureSentence(picture, named) : ''}
            />
            <PictureRuler pixels={around.width} width={width} />
            <p className={styles.facts} style={{ width: Math.max(width, Math.min(box.width, 420)) }}>
              {turned === null ? about : `${about} ${turned}`}
            </p>
          </>
        )}
      </div>
      <div className={styles.foot}>
        {spot ? (
          <SpotReadout
            {...{ assessment, answer, placing, clear }}
            camera={seen}
            units={plan.settings.units}
            point={spot.point}
            solid={spot.solid}
            place={setPlacing}
            put={(up) =>
              aim.put(
                spot.point,
                up === null
                  ? [around.width / 2, around.height / 2]
                  : heightInPicture(seen, spot.point, around, up),
              )
            }
            find={find ? () => find(spot.point) : null}
          />
        ) : (
          <p className={styles.told}>Drag the picture to aim. Pick a place to ask what is seen there.</p>
        )}
        {person && around.lensInside === null && (
          <p className={styles.person}>{standingWords(person, named)}.</p>
        )}
      </div>
      <LiveRegion text={said.text} turn={said.turn} />
    </section>
  );
}

/** How tall a corridor picture may be on a phone, in widths. */
const TALLEST = 1.1;

/** What the ruler and the line below the picture take, px. */
const RULER = 68;
