import type { Area } from '../coverage/area.ts';
import type { Edition } from '../coverage/band.ts';
import { areaFigures } from './areaText.ts';
import styles from './bandBars.module.css';

interface BandBarsProps {
  readonly label: string;
  readonly edition: Edition;
  /** Coarsest first, like the edition's bands. */
  readonly areas: readonly Area[];
  /** How far each band reaches, m; null where it never does. Left out for several cameras together. */
  readonly reach?: readonly (number | null)[];
}

/** Ground at each band, finest first: a bar on one scale, the area with its bound, and how far the band reaches. */
export function BandBars({ label, edition, areas, reach }: BandBarsProps) {
  const most = Math.max(...areas.map(({ value }) => value), 1e-9);
  const rows = edition.bands.map((band, index) => ({ band, index, area: areas[index] })).toReversed();
  return (
    <table className={styles.bars} aria-label={label}>
      <thead>
        <tr>
          <th scope="col">Enough to</th>
          <th aria-hidden />
          <th scope="col">m²</th>
          {reach && <th scope="col">reaches m</th>}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ band, index, area }) => {
          const figures = area ? areaFigures(area) : null;
          return (
            <tr key={band.key}>
              <th scope="row">{band.name}</th>
              <td aria-hidden className={styles.track}>
                {area && area.value >= 0.05 && (
                  <span
                    className={styles.bar}
                    style={{ '--share': area.value / most, '--band': `var(--band-${index + 1})` }}
                  />
                )}
              </td>
              <td>
                <b>{figures?.value}</b> {figures && <small>{figures.bound}</small>}
              </td>
              {reach && (
                <td>{reach[index] === null || reach[index] === undefined ? '–' : reach[index].toFixed(1)}</td>
              )}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
