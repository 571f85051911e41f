import { useEffect, useRef, useState } from 'react';
import type { PictureFile } from '../plan/plan.ts';
import type { PhotoActs } from './photoActs.ts';
import styles from './photo.module.css';

interface PhotoCanvasProps {
  readonly file: PictureFile;
  /** What it is, for those who do not see it. */
  readonly words: string;
  readonly bitmap: PhotoActs['bitmap'];
}

/** A photo is drawn with so many pixels along its longer side: finer than a sheet shows. */
const LONGEST = 1200;

/** The photo itself, as wide as its sheet. */
export function PhotoCanvas({ file, words, bitmap }: PhotoCanvasProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [missing, setMissing] = useState(false);
  const scale = Math.min(1, LONGEST / Math.max(file.width, file.height));
  useEffect(() => {
    let there = true;
    void bitmap(file.sha).then((found) => {
      if (!there) return;
      setMissing(found === null);
      const { current } = canvas;
      if (found) current?.getContext('2d')?.drawImage(found, 0, 0, current.width, current.height);
    });
    return () => {
      there = false;
    };
  }, [bitmap, file.sha]);
  return (
    <>
      <canvas
        ref={canvas}
        className={styles.photo}
        role="img"
        aria-label={words}
        width={Math.round(file.width * scale)}
        height={Math.round(file.height * scale)}
      />
      {missing && <p className={styles.missing}>This photo is not on this device. Put it in again.</p>}
    </>
  );
}
