export function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`;
}

/** 'card 3', 'cards 2, 4', 'cards 1, 3 to 6': three and more in a row are told by their ends. */
export function cardsNamed(cards: readonly number[]): string {
  const runs: number[][] = [];
  for (const card of [...cards].sort((a, b) => a - b)) {
    const run = runs.at(-1);
    if (run && card === run.at(-1)! + 1) run.push(card);
    else runs.push([card]);
  }
  const told = runs.flatMap((run) =>
    run.length > 2 ? [`${run[0]} to ${run.at(-1)}`] : run.map(String),
  );
  return `${cards.length === 1 ? 'card' : 'cards'} ${told.join(', ')}`;
}

export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** 'a', 'a and b', 'a, b and c'. */
export function listed(names: readonly string[]): string {
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)!}`;
}

/** The first few of some names, and how many more there are; names may have commas of their own. */
export function someOf(names: readonly string[]): string {
  const more = names.length - MOST_NAMED;
  return `${names.slice(0, MOST_NAMED).join('; ')}${more > 0 ? ` and ${more} more` : ''}`;
}

const MOST_NAMED = 3;

/** Papers are told apart by letters: A for the first. */
export function letter(index: number): string {
  return String.fromCharCode(65 + Math.max(0, index));
}
