import { useId } from 'react';
import { inputMargins, type SliderMargins } from './sliderPlace.ts';
import './Slider.css';

interface SliderProps {
  readonly label: string;
  readonly min: number;
  readonly max: number;
  readonly value: number;
  readonly onChange: (value: number) => void;
  /** The position in words, for a reader who does not see it. */
  readonly text: string;
  /** Where the scale begins and ends from both edges [px]; the middle of the thumb stands on it. */
  readonly margins?: SliderMargins;
}

const none = { left: 14, right: 14 };

/** A slider whose thumb stands exactly under what it points at. */
export function Slider({ label, min, max, value, onChange, text, margins = none }: SliderProps) {
  const id = useId();
  return (
    <div className="slider">
      <label htmlFor={id}>{label}</label>
      <input id={id} type="range" min={min} max={max} step={1} value={Math.min(max, Math.max(min, value))} aria-valuetext={text} style={inputMargins(margins)} onChange={(event) => onChange(Number(event.target.value))} />
    </div>
  );
}
