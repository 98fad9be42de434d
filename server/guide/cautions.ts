/** Every caution of the guide, once; short reminders stand where blades are used. */
export const CAUTIONS: readonly { readonly head: string; readonly text: string }[] = [
  {
    head: 'Before the first cut',
    text: 'A photo is not a measurement. Hold the real papers and cardstock of a card together in daylight; if two quarrel, change the plan, not the paper.',
  },
  {
    head: 'Blades',
    text: 'A trimmer blade is sharp: fingers behind the guard, blade covered when you put it down. A fresh blade cuts clean edges and needs less force; follow the maker’s instructions. Cut one sheet first, then trust the stack.',
  },
  {
    head: 'Folding and posting',
    text: 'Fold each base with the bump of the score inside. Many layers are thick: ask your post office before you buy stamps.',
  },
  {
    head: 'Hot tools and powders',
    text: 'Dry everything on the card before you glue. Hot glue, heat tools and embossing powders burn and smoke: keep to the maker’s instructions and your local rules, and keep children and pets away.',
  },
];

/** Stands on every page on which a blade is used. */
export const BLADE_REMINDER = 'Fingers behind the guard; blade covered when you put it down.';
