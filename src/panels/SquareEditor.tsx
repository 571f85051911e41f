import { useId, useRef, useState } from 'react';
import type { KeyboardEvent, PointerEvent } from 'react';
import type { Quad } from '../base/homography.ts';
import type { Editor } from '../editor/editor.ts';
import { changePicture } from '../editor/partActs.ts';
import { CORNER_NAMES, quadWords } from '../editor/pictures/quadWords.ts';
import { useUnwritable } from '../fittings/writable.ts';
import type { Picture, WallPicture } from '../plan/plan.ts';
import { PhotoCanvas } from './PhotoCanvas.tsx';
import type { PhotoActs } from './photoActs.ts';
import styles from './photo.module.css';

interface SquareEditorProps {
  readonly editor: Editor;
  readonly picture: Picture;
  readonly use: WallPicture;
  readonly bitmap: PhotoActs['bitmap'];
}

/** An arrow moves a point so far, px of the photo; with Shift ten times as far. */
const STEP = 1;
const LARGE = 10;

const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Four points of a photo, set by pointer, finger or arrows: the corners of a rectangle of its wall. */
export function SquareEditor({ editor, picture, use, bitmap }: SquareEditorProps) {
  const { file, name } = picture;
  const frame = useRef<HTMLDivElement>(null);
  const [draft, setDraft] = useState<Quad | null>(null);
  const unwritable = useUnwritable();
  const trouble = useId();
  const corners = draft ?? use.corners;
  const words = quadWords(corners);
  const step = `square ${picture.id}`;

  const within = ([u, v]: readonly [number, number]): readonly [number, number] => [
    Math.min(file.width, Math.max(0, u)),
    Math.min(file.height, Math.max(0, v)),
  ];
  const moved = (corner: number, to: readonly [number, number]): Quad => {
    const [a, b, c, d] = corners;
    const at = within(to);
    return [corner === 0 ? at : a, corner === 1 ? at : b, corner === 2 ? at : c, corner === 3 ? at : d];
  };
  /** What is no rectangle stays to be mended and is not the plan's. */
  const settle = (next: Quad, merge?: string) => {
    if (quadWords(next) !== null) return setDraft(next);
    setDraft(null);
    changePicture(editor, picture, { use: { ...use, corners: next } }, merge);
  };
  const drag = (corner: number) => (event: PointerEvent<HTMLButtonElement>) => {
    const box = frame.current?.getBoundingClientRect();
    if (!box || unwritable !== null || !event.currentTarget.hasPointerCapture(event.pointerId)) return;
    setDraft(
      moved(corner, [
        ((event.clientX - box.left) / box.width) * file.width,
        ((event.clientY - box.top) / box.height) * file.height,
      ]),
    );
  };
  const key = (corner: number) => (event: KeyboardEvent) => {
    if (event.key === 'Escape' && draft) {
      event.preventDefault();
      event.stopPropagation();
      setDraft(null);
      return;
    }
    const way = WAYS[event.key];
    if (!way || unwritable !== null) return;
    event.preventDefault();
    event.stopPropagation();
    const size = event.shiftKey ? STEP * LARGE : STEP;
    const [u, v] = corners[corner] ?? [0, 0];
    settle(moved(corner, [u + way[0] * size, v + way[1] * size]), step);
  };
  const points = corners.map(([u, v]) => `${u},${v}`).join(' ');

  return (
    <>
      <div ref={frame} className={styles.frame} data-wrong={words !== null}>
        <PhotoCanvas file={file} words={`Photo ${name}`} bitmap={bitmap} />
        <svg
          className={styles.lines}
          viewBox={`0 0 ${file.width} ${file.height}`}
          preserveAspectRatio="none"
          aria-hidden="true"
        >
          <polygon className={styles.casing} points={points} />
          <polygon className={styles.line} points={points} />
        </svg>
        {corners.map(([u, v], corner) => (
          <button
            key={CORNER_NAMES[corner]}
            type="button"
            className={styles.handle}
            style={{ left: `${(u / file.width) * 100}%`, top: `${(v / file.height) * 100}%` }}
            aria-label={`${CORNER_NAMES[corner] ?? ''} of the rectangle, ${Math.round(u)} right, ${Math.round(v)} down`}
            aria-describedby={trouble}
            onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
            onPointerMove={drag(corner)}
            onPointerUp={() => draft && settle(draft)}
            onPointerCancel={() => setDraft(null)}
            onKeyDown={key(corner)}
          />
        ))}
      </div>
      <p id={trouble} className={styles.trouble} role="status">
        {words !== null && `${words} The wall keeps the photo as it was.`}
      </p>
    </>
  );
}
