/** Width of the thumb [px]; the style sheet gives it the same. */
export const thumbWidth = 28;

export interface SliderMargins {
  readonly left: number;
  readonly right: number;
}

/** Margins of the input, so that the middle of its thumb runs exactly between the two ends: a thumb never leaves its input. */
export function inputMargins({ left, right }: SliderMargins): { readonly marginLeft: number; readonly width: string } {
  return { marginLeft: left - thumbWidth / 2, width: `calc(100% - ${left + right - thumbWidth}px)` };
}
