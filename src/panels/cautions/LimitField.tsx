import { setLimit } from '../../editor/settings/cautionActs.ts';
import type { Editor } from '../../editor/editor.ts';
import type { LengthUnit } from '../../base/length.ts';
import type { ShownThreshold } from '../../draw/cautions/thresholdWords.ts';
import { Button } from '../../fittings/Button.tsx';
import { NumberField } from '../../fittings/NumberField.tsx';
import { angles, lengths, numbers, type Measure } from '../../fittings/measure.ts';

const measureOf = ({ kind, unit }: ShownThreshold, units: LengthUnit): Measure => {
  if (kind === 'length') return lengths(units);
  return kind === 'angle' ? angles : numbers(unit, unit === '%' ? 1 : 0.1, [0, 4]);
};

/** A limit that cautions go by; changed for the whole plan, in one step of history. */
export function LimitField({
  editor,
  limit,
  units,
}: {
  editor: Editor;
  limit: ShownThreshold;
  units: LengthUnit;
}) {
  const { label, value, usual, least, most, times } = limit;
  const put = (shown: number, merge: boolean) =>
    setLimit(editor, limit, shown === usual ? null : shown / times, merge);
  const measure = measureOf(limit, units);
  const { text, unit } = measure.show(usual);
  return (
    <>
      <NumberField
        label={label}
        value={value}
        measure={measure}
        bounds={{ least, most }}
        edit={{
          set: (shown) => put(shown, false),
          step: (shown) => put(shown, true),
          drag: () => {
            let last = value;
            return {
              to: (shown) => {
                last = shown;
              },
              commit: () => put(last, false),
              cancel: () => undefined,
            };
          },
        }}
        note={value === usual ? null : `Usually ${text} ${unit}`.trim()}
      />
      {value !== usual && (
        <Button look="quiet" press={() => setLimit(editor, limit, null)}>
          As usual
        </Button>
      )}
    </>
  );
}
