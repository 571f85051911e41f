import { useLayoutEffect, useRef } from 'react';
import type { Picture } from '../../draw/person/exposed.ts';
import styles from './person.module.css';

interface PixelCanvasProps {
  readonly picture: Picture;
  /** Spoken: what it shows. */
  readonly label: string;
  /** The longer side on the page, px; null: one pixel of the camera is one of the page. */
  readonly side: number | null;
}

/** A small picture with its pixels as hard squares. */
export function PixelCanvas({ picture, label, side }: PixelCanvasProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { width, height, step, bytes } = picture;
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    context?.putImageData(new ImageData(bytes, width, height), 0, 0);
  }, [bytes, width, height]);
  const scale = side === null ? step : side / Math.max(width, height);
  return (
    <canvas
      ref={canvas}
      className={styles.pixels}
      width={width}
      height={height}
      role="img"
      aria-label={label}
      style={{
        width: width * scale,
        height: height * scale,
        imageRendering: scale < 1 ? 'auto' : 'pixelated',
      }}
    />
  );
}
