/** An SVG opened by itself may draw and nothing else: its content security policy. */
export const ONLY_A_PICTURE =
  "default-src 'none'; img-src data:; style-src 'unsafe-inline'; frame-ancestors 'none'; sandbox";
