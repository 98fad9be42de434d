/** Said beside every verdict on a colour. */
export const CAUTION =
  'A photo is not a measurement: hold the two side by side in daylight before you cut.';
