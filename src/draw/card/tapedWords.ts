import type { Taped } from '../../assess/card/taped.ts';
import type { LengthUnit } from '../../base/length.ts';
import { courses, tape } from './tape.ts';

/** How tapes are read and told. */
export interface Reading {
  readonly units: LengthUnit;
  /** Heights also by courses of brick. */
  readonly courses: boolean;
}

const GOT: Readonly<Record<Taped['got'], string>> = {
  measured: '',
  mapped: ' (edge off a map)',
  guessed: ' (edge guessed)',
};

/** "2400 from left jamb of Front door", "2640 = 35 courses + 15 mm above ground", "360 below underside of the eaves". */
export function tapedWords({ axis, edge, size, got, side }: Taped, reading: Reading): string {
  const told = tape(size, reading.units);
  if (axis === 'across') return `${told} from ${edge}${GOT[got]}`;
  const brick = reading.courses ? ` = ${courses(size, reading.units)}` : '';
  return `${told}${brick} ${side === 'above' ? 'below' : 'above'} ${edge}${GOT[got]}`;
}
