import { memo } from 'react';
import type { CSSProperties } from 'react';
import type { Mark } from '../../draw/section/marks.ts';
import { colourOf, PATTERN_LINES, PATTERNS, type Paint } from '../../draw/section/paint.ts';
import type { SectionDrawing } from '../../draw/section/sectionDrawing.ts';

interface SectionMarksProps {
  readonly drawing: Pick<SectionDrawing, 'marks' | 'scene' | 'levels'>;
  /** Unique in the page; patterns are named by it. */
  readonly id: string;
}

/** A section's or a picture's marks as the page's own SVG, in the inks of whichever theme the page has. */
export const SectionMarks = memo(function SectionMarks({ drawing, id }: SectionMarksProps) {
  const { marks, scene, levels } = drawing;
  // Marks have no names; their order is their place in the picture.
  const inOrder = marks.map((mark, place) => ({ place, mark }));
  return (
    <>
      <defs>
        {PATTERNS.map((pattern) => {
          const { side, d, width, dash } = PATTERN_LINES[pattern];
          return (
            <pattern
              key={pattern}
              id={`${id}-${pattern}`}
              width={side}
              height={side}
              patternUnits="userSpaceOnUse"
            >
              <path
                d={d}
                fill="none"
                strokeWidth={width}
                strokeDasharray={dash}
                style={{ stroke: tone({ pattern }, levels) }}
              />
            </pattern>
          );
        })}
        <clipPath id={`${id}-scene`}>
          <rect x={scene.left} width={Math.max(0, scene.right - scene.left)} height={scene.foot} />
        </clipPath>
      </defs>
      {inOrder.map(({ place, mark }) => (
        <MarkShape key={place} mark={mark} id={id} levels={levels} />
      ))}
    </>
  );
});

function MarkShape({ mark, id, levels }: { mark: Mark; id: string; levels: number }) {
  if (mark.kind === 'words') {
    const { x, y, text, size, weight, anchor, fill, halo, turn } = mark;
    const style: CSSProperties = {
      fill: tone(fill, levels),
      ...(halo
        ? { stroke: 'var(--paper)', strokeWidth: 3.5, strokeLinejoin: 'round', paintOrder: 'stroke' }
        : {}),
    };
    return (
      <text
        x={x}
        y={y}
        fontSize={size}
        fontWeight={weight}
        textAnchor={anchor}
        style={style}
        transform={turn === 0 ? undefined : `rotate(${turn} ${x} ${y})`}
      >
        {text}
      </text>
    );
  }
  const { d, fill, line, width, dash, opacity, clipped } = mark;
  return (
    <path
      d={d}
      fillRule="evenodd"
      strokeWidth={line === null ? undefined : width}
      strokeDasharray={dash ?? undefined}
      strokeLinejoin="round"
      opacity={opacity === 1 ? undefined : opacity}
      clipPath={clipped ? `url(#${id}-scene)` : undefined}
      style={{
        fill: fill === null ? 'none' : isPattern(fill) ? `url(#${id}-${fill.pattern})` : tone(fill, levels),
        stroke: line === null ? 'none' : tone(line, levels),
      }}
    />
  );
}

const isPattern = (paint: Paint): paint is Extract<Paint, { readonly pattern: unknown }> =>
  typeof paint === 'object' && 'pattern' in paint;

/** Either theme's colour; the page's colour scheme chooses. */
const tone = (paint: Paint, levels: number): string =>
  `light-dark(${colourOf(paint, 'light', levels)}, ${colourOf(paint, 'dark', levels)})`;
