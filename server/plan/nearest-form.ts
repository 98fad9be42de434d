/**
 * Of all forms of a choice that are the same up to symmetry, one near to another choice: slots that are
 * alike are exchanged as long as fewer slots differ.
 */
export function nearestForm(
  symmetries: readonly (readonly number[])[],
  choice: readonly number[],
  to: readonly number[],
): readonly number[] {
  let [form, far] = [choice, differing(choice, to)];
  for (let better = true; better;) {
    better = false;
    for (const swap of symmetries) {
      const other = swap.map((slot) => form[slot]!);
      const distance = differing(other, to);
      if (distance >= far) continue;
      [form, far, better] = [other, distance, true];
    }
  }
  return form;
}

function differing(a: readonly number[], b: readonly number[]): number {
  return a.filter((design, slot) => design !== b[slot]).length;
}
