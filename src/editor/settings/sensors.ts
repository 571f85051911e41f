import table from '../../../shared/tables/sensors.json';
import type { Extent } from '../../optics/camera.ts';

/** An active area that goes by a type number; sources stand in the table. */
export interface SensorType extends Extent {
  readonly key: string;
  readonly name: string;
  readonly source: string;
}

export const sensors: readonly SensorType[] = table.sensors;

/** The type whose active area a sensor has; undefined where it has one of its own. */
export const sensorTypeOf = ({ width, height }: Extent): SensorType | undefined =>
  sensors.find((type) => type.width === width && type.height === height);
