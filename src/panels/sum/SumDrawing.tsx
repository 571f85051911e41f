import { useId, useRef, useState } from 'react';
import type { PointerEvent } from 'react';
import type { Section } from '../../assess/section/section.ts';
import type { Vec2 } from '../../base/vector.ts';
import { frameOf, type SectionView } from '../../draw/section/sectionView.ts';
import { metres } from '../../draw/section/sectionWords.ts';
import { drawSum, sumView } from '../../draw/sum/sumSheet.ts';
import type { SumNamed } from '../../draw/sum/sumWords.ts';
import type { Bounds } from '../../fittings/edit.ts';
import type { Held } from '../section/SectionHandle.tsx';
import { SectionHandle } from '../section/SectionHandle.tsx';
import { SectionMarks } from '../section/SectionMarks.tsx';
import { useBox } from '../section/useBox.ts';
import { SUM_BOUNDS } from './sumChoice.ts';
import styles from './sum.module.css';

/** Below this width it is a phone's: one ruler, px. */
const NARROW = 600;

interface SumDrawingProps {
  readonly section: Section;
  readonly named: SumNamed;
  set(part: { readonly height?: number; readonly tilt?: number; readonly distance?: number }): void;
}

/** The section of the sum: lens, tilt and whoever stands there are held and dragged. */
export function SumDrawing({ section, named, set }: SumDrawingProps) {
  const id = useId().replaceAll(':', '');
  const box = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  const { width, height } = useBox(box);
  // What is dragged does not rescale the drawing under the pointer.
  const [held, setHeld] = useState<Pick<SectionView, 'scale' | 'left'> | null>(null);
  const view = { ...sumView(section, width, height, width < NARROW), ...held };
  const drawn = width > 0 && height > 0 ? drawSum(section, view, named) : null;
  const frame = frameOf(section, view);
  const { camera, lens, person } = section;
  const place = (event: PointerEvent): Vec2 => {
    const corner = svg.current?.getBoundingClientRect();
    return [event.clientX - (corner?.left ?? 0), event.clientY - (corner?.top ?? 0)];
  };
  const about = ([x, y]: Vec2): number => {
    const [ox, oy] = frame.place([0, lens]);
    return (Math.atan2(y - oy, x - ox) * 180) / Math.PI;
  };
  const hold = (
    value: number,
    bounds: Bounds,
    step: number,
    by: (from: Vec2, to: Vec2) => number,
    put: (value: number) => void,
  ): Held => {
    const to = (next: number) =>
      put(Math.min(bounds.most, Math.max(bounds.least, Number((Math.round(next / step) * step).toFixed(6)))));
    const end = () => setHeld(null);
    return {
      begin: (from) => {
        setHeld({ scale: view.scale, left: view.left });
        return {
          to: (at) => to(value + by(from, at)),
          commit: end,
          cancel: () => {
            put(value);
            end();
          },
        };
      },
      step: (steps) => to(value + steps * step),
      restore: () => undefined,
    };
  };
  return (
    <div ref={box} className={styles.drawing}>
      {drawn !== null && (
        <svg ref={svg} width={width} height={height} role="group" aria-label="Section with no house">
          <g role="img" aria-label={drawn.sentence}>
            <SectionMarks drawing={drawn} id={id} />
          </g>
          <SectionHandle
            at={drawn.handles.height}
            label="Lens height"
            value={lens}
            least={SUM_BOUNDS.height.least}
            most={SUM_BOUNDS.height.most}
            text={metres(lens, named.units)}
            rising={['ArrowUp', 'ArrowRight']}
            held={hold(
              lens,
              SUM_BOUNDS.height,
              0.05,
              ([, from], [, to]) => (from - to) / view.scale,
              (next) => set({ height: next }),
            )}
            place={place}
          />
          <SectionHandle
            at={drawn.handles.tilt}
            label="Tilt"
            value={camera.tilt}
            least={-90}
            most={90}
            text={`${camera.tilt.toFixed(1)}° down`}
            rising={['ArrowDown', 'ArrowRight']}
            held={hold(
              camera.tilt,
              SUM_BOUNDS.tilt,
              0.5,
              (from, to) => about(to) - about(from),
              (next) => set({ tilt: next }),
            )}
            place={place}
          />
          <SectionHandle
            at={drawn.handles.person}
            label="Standing person"
            value={person.distance}
            least={SUM_BOUNDS.distance.least}
            most={SUM_BOUNDS.distance.most}
            text={`${metres(person.distance, named.units)} away`}
            rising={['ArrowRight', 'ArrowUp']}
            held={hold(
              person.distance,
              SUM_BOUNDS.distance,
              0.1,
              ([from], [to]) => (to - from) / view.scale,
              (next) => set({ distance: next }),
            )}
            place={place}
          />
        </svg>
      )}
    </div>
  );
}
