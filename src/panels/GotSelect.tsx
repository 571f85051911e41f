import { Select, type Choice } from '../fittings/Select.tsx';
import type { Got } from '../model/structure.ts';

const GOT: readonly Choice<Got>[] = [
  { value: 'measured', label: 'measured' },
  { value: 'mapped', label: 'mapped' },
  { value: 'guessed', label: 'guessed' },
];

interface GotSelectProps {
  readonly what: string;
  readonly got: Got;
  readonly look?: 'row' | 'small';
  set(how: Got): void;
}

/** How a size was got: taped on site, read from a map, or guessed. */
export function GotSelect({ what, got, look = 'row', set }: GotSelectProps) {
  const label = look === 'row' ? 'Sizes were' : `How the ${what} was got`;
  return <Select label={label} look={look} value={got} choices={GOT} set={set} />;
}
