import styles from './picture.module.css';

/** Marks of the ruler are no nearer than this, CSS px. */
const APART = 90;
const STEPS = [100, 160, 200, 320, 400, 640, 800, 1280, 1600];

/** How wide the picture is in its own pixels. @param pixels of the recorded picture, across @param width CSS px */
export function PictureRuler({ pixels, width }: { pixels: number; width: number }) {
  const scale = width / pixels;
  const step = STEPS.find((one) => one * scale >= APART) ?? pixels;
  const marks = Array.from({ length: Math.floor(pixels / step) + 1 }, (_, k) => k * step);
  return (
    <svg className={styles.ruler} width={width} height={26} aria-hidden="true">
      <path d={`M.5 0v7M.5 .5H${width - 0.5}M${width - 0.5} 0v7`} />
      {marks.map((at) => (
        <g key={at} transform={`translate(${at * scale} 0)`}>
          <path d="M0 0v7" />
          <text y={20} textAnchor={at === 0 ? 'start' : at * scale > width - 20 ? 'end' : 'middle'}>
            {at === 0 ? '0 px' : at}
          </text>
        </g>
      ))}
    </svg>
  );
}
