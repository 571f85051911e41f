import { useId } from 'react';
import type { Page, PageBox, PageItem } from '../../exchange/paper/page.ts';

/** A page on the screen, as it will be printed; its words can be read out and selected. */
export function PageShown({ page, className }: { page: Page; className?: string | undefined }) {
  const id = useId().replaceAll(':', '');
  const boxes = [...new Set(page.items.flatMap((item) => boxKey(item) ?? []))];
  return (
    <svg
      className={className}
      viewBox={`0 0 ${page.width} ${page.height}`}
      role="group"
      aria-label={page.title}
      fontFamily="Helvetica, Arial, 'Liberation Sans', 'National Park', sans-serif"
    >
      <desc>{page.sentence}</desc>
      <defs>
        {boxes.map((key, at) => {
          const [x, y, width, height] = key.split(' ');
          return (
            <clipPath key={key} id={`${id}-${at}`}>
              <rect x={x} y={y} width={width} height={height} />
            </clipPath>
          );
        })}
      </defs>
      <rect width={page.width} height={page.height} fill="#FFFFFF" />
      {page.items.map((item, at) => (
        <Item key={at} item={item} clip={`${id}-${boxes.indexOf(boxKey(item) ?? '')}`} />
      ))}
    </svg>
  );
}

const boxKey = (item: PageItem): string | null =>
  item.kind === 'path' && item.clip !== null ? keyOf(item.clip) : null;

const keyOf = ({ x, y, width, height }: PageBox): string => `${x} ${y} ${width} ${height}`;

function Item({ item, clip }: { item: PageItem; clip: string }) {
  if (item.kind === 'path') {
    const { d, fill, line, width, dash, clip: box } = item;
    return (
      <path
        d={d}
        fill={fill ?? 'none'}
        fillRule="evenodd"
        stroke={line ?? 'none'}
        strokeWidth={width}
        strokeLinejoin="round"
        strokeDasharray={dash?.join(' ')}
        clipPath={box === null ? undefined : `url(#${clip})`}
      />
    );
  }
  const { x, y, text, long, size, bold, anchor, ink, turn } = item;
  if (text === '') return null;
  return (
    <text
      x={x}
      y={y}
      fontSize={size}
      fontWeight={bold ? 700 : 400}
      textAnchor={anchor}
      textLength={long}
      lengthAdjust="spacingAndGlyphs"
      fill={ink}
      transform={turn === 0 ? undefined : `rotate(${turn} ${x} ${y})`}
    >
      {text}
    </text>
  );
}
