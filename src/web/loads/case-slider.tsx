/** One figure of the case: slid from end to end, or typed. */
import { type Slid, slideRange } from '../../questions/index.ts';
import { plain, printedUnit } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';
import { useCar } from '../sheet/car-file.tsx';
import { marksOf } from '../sheet/marks.ts';
import { SlideScale } from '../sheet/slide-scale.tsx';
import { usePage } from '../state.tsx';
import { TypedAmount } from '../typed-amount.tsx';

interface Props {
  readonly slid: Slid;
  readonly words: string;
  readonly value: number;
  readonly si: string;
  readonly unit: string;
  readonly digits: number;
  /** How far apart the marks of its scale may be, in the unit. */
  readonly every: readonly number[];
  readonly onTake: (value: number) => void;
}

export function CaseSlider({ slid, words, value, si, unit, digits, every, onTake }: Props) {
  const { slide } = usePage();
  const { car } = useCar();
  const { low, high, step } = slideRange(car, slid, value);
  return (
    <div className="slide across case-slider">
      <span>{words}</span>
      <SlideScale
        aria-label={`slide ${words}`}
        aria-valuetext={`${plain(fromSI(value, unit), digits)} ${printedUnit(unit)}`}
        marks={marksOf({ low, high, unit, every, most: 7 })}
        // whole steps from nought of the figure, so that nought can be met
        min={Math.ceil(low / step - 1e-9)}
        max={Math.floor(high / step + 1e-9)}
        value={Math.round(value / step)}
        onFocus={() => slide(slid)}
        onBlur={() => slide(undefined)}
        onMove={(steps) => {
          // some browsers do not give the focus to a slider that is dragged
          slide(slid);
          onTake(steps * step);
        }}
      />
      <TypedAmount name={words} value={value} si={si} unit={unit} digits={digits} onTake={onTake} />
    </div>
  );
}
